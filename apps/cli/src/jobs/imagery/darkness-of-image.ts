/** Darkness of visible pavement over a whole image, square by square, so that an image of any size fits. */
import type { Placed } from '@crownfall/assessment';
import {
  type DarknessRefused,
  type Imagery,
  type PavementDarkness,
  type PavementTone,
  type PixelWindow,
  pavementAwayFrom,
  pavementDarkness,
  pavementTone,
  type ReadWindow,
  viewOfPavement,
  whiteLevel,
} from '@crownfall/imagery';
import type { PavementKind, Surface } from '@crownfall/survey';
import { type PavementScene, sceneIn, within } from './pavement-scene.ts';

/** Pavement of one kind and surface, as far as it lies in the image. */
export interface SurfaceDarkness {
  readonly kind: PavementKind;
  readonly surface: Surface;
  /** Pavement in the fallout zones, and the part of it that no crown hides. */
  readonly zoneM2: number;
  readonly visibleM2: number;
  readonly judged: JudgedSurface | null;
  /** Why nothing of it could be judged. */
  readonly because: DarknessRefused['because'] | null;
}

interface JudgedSurface {
  /** Lit, judged pixels over those in view. */
  readonly litShare: number;
  readonly litPixels: number;
  /** Mean L* away from crowns, and in the zone. */
  readonly awayL: number;
  readonly zoneL: number;
  /** CIEDE2000 between the two mean colours. */
  readonly difference: number;
  /** Share of the lit pixels that are darker than the surface scatters away from crowns. */
  readonly darkShare: number;
}

/** Squares are at most this wide and high; each is compared with the clean pavement in it. */
const SQUARE_PIXELS = 2500;

/** Every kind and surface that has pavement in a fallout zone in the image, the largest first. */
export async function darknessOfImage(
  image: Imagery,
  placed: Placed,
  onProgress: (share: number) => void,
): Promise<readonly SurfaceDarkness[]> {
  const scene = sceneIn(image, placed);
  const sums = new Map<string, Sum>();
  const squares = squaresOf(image);
  for (const [i, square] of squares.entries()) {
    onProgress(i / squares.length);
    const here = within(scene, square);
    if (here.zones.length > 0 && here.pavement.length > 0) addSquare(sums, await image.readWindow(square), here);
  }
  const found = [...sums.values()].filter(({ zone }) => zone >= 1).map((sum) => surfaceOf(sum, image.pixelM ** 2));
  return found.sort((a, b) => b.zoneM2 - a.zoneM2);
}

/** Of one kind and surface over all squares: pixels, and figures weighted by lit pixels. */
interface Sum {
  readonly kind: PavementKind;
  readonly surface: Surface;
  zone: number;
  visible: number;
  lit: number;
  awayL: number;
  drop: number;
  difference: number;
  dark: number;
  because: DarknessRefused['because'] | null;
}

function addSquare(
  sums: Map<string, Sum>,
  window: ReadWindow,
  { crowns, zones, around, pavement }: PavementScene,
): void {
  const ringsOf = (shapes: readonly { readonly rings: readonly Float64Array[] }[]) =>
    shapes.flatMap(({ rings }) => rings);
  const white = whiteLevel(window);
  const viewOf = viewOfPavement(window, { zone: ringsOf(zones), crowns: ringsOf(crowns) });
  const awayOf = pavementAwayFrom(window, ringsOf(around));
  for (const key of new Set(pavement.map(keyOf))) {
    const pieces = pavement.filter((piece) => keyOf(piece) === key);
    const sum = sumOf(sums, pieces[0]);
    const paved = ringsOf(pieces);
    const view = viewOf(paved);
    sum.zone += view.pavementPixels;
    sum.visible += view.visiblePixels;
    const tone = pavementTone(window, awayOf(paved), white);
    const got = 'known' in tone ? tone : pavementDarkness(window, view.visible, tone);
    if (got.known) addJudged(sum, got, tone as PavementTone);
    else sum.because ??= got.because;
  }
}

function addJudged(sum: Sum, got: PavementDarkness, tone: PavementTone): void {
  const { litPixels } = got;
  sum.lit += litPixels;
  sum.awayL += litPixels * tone.lab[0];
  sum.drop += litPixels * got.lightnessDrop;
  sum.difference += litPixels * got.difference;
  sum.dark += litPixels * got.darkShare;
}

type SurfaceName = Pick<Sum, 'kind' | 'surface'>;

const keyOf = ({ kind, surface }: SurfaceName): string => `${kind} ${surface}`;

function sumOf(sums: Map<string, Sum>, { kind, surface }: SurfaceName): Sum {
  const key = keyOf({ kind, surface });
  const fresh: Sum = {
    kind,
    surface,
    zone: 0,
    visible: 0,
    lit: 0,
    awayL: 0,
    drop: 0,
    difference: 0,
    dark: 0,
    because: null,
  };
  const sum = sums.get(key) ?? fresh;
  sums.set(key, sum);
  return sum;
}

function surfaceOf({ kind, surface, zone, visible, lit, because, ...sum }: Sum, pixelM2: number): SurfaceDarkness {
  const judged =
    lit === 0
      ? null
      : {
          litShare: lit / visible,
          litPixels: lit,
          awayL: sum.awayL / lit,
          zoneL: (sum.awayL - sum.drop) / lit,
          difference: sum.difference / lit,
          darkShare: sum.dark / lit,
        };
  return {
    kind,
    surface,
    zoneM2: zone * pixelM2,
    visibleM2: visible * pixelM2,
    judged,
    because: judged === null ? because : null,
  };
}

/** Equal parts of the image, row by row. */
function squaresOf({ width, height }: Imagery): readonly PixelWindow[] {
  const [columns, rows] = [Math.ceil(width / SQUARE_PIXELS), Math.ceil(height / SQUARE_PIXELS)];
  const edge = (size: number, parts: number, i: number) => Math.round((size * i) / parts);
  return Array.from({ length: columns * rows }, (_, k) => {
    const [column, row] = [k % columns, Math.floor(k / columns)];
    const [left, top] = [edge(width, columns, column), edge(height, rows, row)];
    return {
      left,
      top,
      width: edge(width, columns, column + 1) - left,
      height: edge(height, rows, row + 1) - top,
    };
  });
}
