/** Crowns, their fallout and the pavement in pixel coordinates of an image, to be looked at square by square. */
import type { Placed } from '@crownfall/assessment';
import { falloutZone, offsetRegion, type Region } from '@crownfall/geometry';
import { type Imagery, type PixelWindow, regionInPixels } from '@crownfall/imagery';
import type { PavementKind, Surface } from '@crownfall/survey';

/** A region in pixels, and its box. */
interface Shape {
  readonly rings: readonly Float64Array[];
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

export interface PavementScene {
  readonly crowns: readonly Shape[];
  /** Fallout zones, and the same widened by `CLEAR_M`: beyond those pavement is clean. */
  readonly zones: readonly Shape[];
  readonly around: readonly Shape[];
  readonly pavement: readonly (Shape & { readonly kind: PavementKind; readonly surface: Surface })[];
}

/** (A) Clean pavement lies at least this far beyond every fallout zone. */
const CLEAR_M = 2;
/** How far a chord may lie from its arc: a fraction of any pixel. */
const CHORD_M = 0.02;

/** What of a project lies in the image. */
export function sceneIn(image: Imagery, { ground, settings }: Placed): PavementScene {
  const whole: PixelWindow = { left: 0, top: 0, width: image.width, height: image.height };
  const shape = (region: Region): Shape => shapeOf(regionInPixels(image, ground.plane, region));
  const zones = ground.crowns.map(
    ({ outline }) => falloutZone(outline, settings.drift_rings, CHORD_M, settings.wind).layers.at(-1) ?? [],
  );
  const pavement = ground.pieces.pavement.map(({ pavement: { kind, surface } }, i) => ({
    ...shape(ground.pieces.regions[i]),
    kind,
    surface,
  }));
  return within(
    {
      crowns: ground.crowns.map(({ outline }) => shape(outline)),
      zones: zones.map(shape),
      around: zones.map((zone) => shape(offsetRegion(zone, CLEAR_M, CHORD_M))),
      pavement,
    },
    whole,
  );
}

/** What of it lies in a part of the image, in that part's own pixels. */
export function within({ crowns, zones, around, pavement }: PavementScene, part: PixelWindow): PavementScene {
  const here = <Kind extends Shape>(shapes: readonly Kind[]): readonly Kind[] =>
    shapes.filter(({ box }) => meets(box, part)).map((each) => ({ ...each, ...shifted(each, part) }));
  return { crowns: here(crowns), zones: here(zones), around: here(around), pavement: here(pavement) };
}

function shapeOf(rings: readonly Float64Array[]): Shape {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      [left, right] = [Math.min(left, ring[i]), Math.max(right, ring[i])];
      [top, bottom] = [Math.min(top, ring[i + 1]), Math.max(bottom, ring[i + 1])];
    }
  }
  return { rings, box: [left, top, right, bottom] };
}

function meets([left, top, right, bottom]: Shape['box'], part: PixelWindow): boolean {
  return left < part.left + part.width && right > part.left && top < part.top + part.height && bottom > part.top;
}

function shifted({ rings, box }: Shape, { left, top }: PixelWindow): Shape {
  if (left === 0 && top === 0) return { rings, box };
  return {
    rings: rings.map((ring) => ring.map((value, i) => value - (i % 2 === 0 ? left : top))),
    box: [box[0] - left, box[1] - top, box[2] - left, box[3] - top],
  };
}
