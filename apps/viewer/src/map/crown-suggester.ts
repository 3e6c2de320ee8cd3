/** What an open picture suggests of single crowns: an outline about a point, a browned share. Knows nothing of a worker. */
import { pixelCoverage } from '@crownfall/geometry';
import {
  type BrownedShare,
  brownedShare,
  type FoliageSeparation,
  foliageOfCrowns,
  groundToLonLat,
  type Imagery,
  imageQuality,
  lonLatToGround,
  type NotSeparable,
  type OutlineProposal,
  type OutlineRefusal,
  type OutlineThresholds,
  type PixelWindow,
  proposeOutlines,
  type QualityFlag,
  separateByOtsu,
  thresholdsOfImage,
} from '@crownfall/imagery';

/** Flat rings of longitude and latitude, open. */
export type Rings = readonly ArrayLike<number>[];
type LonLat = readonly [lon: number, lat: number];

export interface OutlineWish {
  readonly at: LonLat;
  /** From the inventory: bounds the outline. */
  readonly spreadM?: number;
  /** Trees nearby without an outline of their own: they compete for the leaves. */
  readonly rivals: readonly LonLat[];
  /** Outlines nearby: not entered. */
  readonly drawn: Rings;
}

export type SuggestedOutline =
  | (Pick<OutlineProposal, 'proposed' | 'confidence' | 'areaM2'> & { readonly ring: ArrayLike<number> })
  | { readonly proposed: false; readonly because: OutlineRefusal['because'] | 'no-colours' };

export type SuggestedShare =
  | (Extract<BrownedShare, { readonly suggested: true }> & LookedOver & { readonly separation: FoliageSeparation })
  | ({ readonly suggested: false; readonly because: ShareRefusal; readonly litPixels: number } & LookedOver);
export type ShareRefusal =
  | Extract<BrownedShare, { readonly suggested: false }>['because']
  | NotSeparable['because']
  | 'outside'
  | 'no-colours';

/** What was found looking at all crowns together. */
interface LookedOver {
  /** Crowns looked at. */
  readonly crowns: number;
  readonly quality: readonly QualityFlag[];
}

/** Leaves, rivals and neighbours within this square bear on an outline. */
const WINDOW_M = 30;
/** Proposals look at cells of 0.2 m: of finer pixels a coarser level tells them as much. */
const FINE_ENOUGH_M = 0.2;
/** With more crowns in the picture, parts spread evenly over it tell as much. */
const CROWNS_MOST = 1000;

export class CrownSuggester {
  readonly #image: Imagery;
  #thresholds: Promise<OutlineThresholds> | null = null;
  #separation: Promise<LookedOver & { found: FoliageSeparation | NotSeparable }> | null = null;

  constructor(image: Imagery) {
    this.#image = image;
  }

  /** `reckoned` is told how long the reckoning took once the pixels were there, ms. */
  async outline(
    { at, spreadM, rivals, drawn }: OutlineWish,
    reckoned?: (ms: number) => void,
  ): Promise<SuggestedOutline> {
    const image = this.#image;
    if (!showsColours(image)) return { proposed: false, because: 'no-colours' };
    const level = levelFor(image, FINE_ENOUGH_M);
    const [column, row] = image.lonLatToPixel(at);
    if (!(column >= 0 && row >= 0 && column < image.width && row < image.height))
      return { proposed: false, because: 'outside' };
    this.#thresholds ??= thresholdsOfImage(image).catch((error) => {
      this.#thresholds = null;
      throw error;
    });
    const [thresholds, window] = await Promise.all([
      this.#thresholds,
      image.readWindow(windowAbout(image, level, [column, row]), { level }),
    ]);
    const begun = performance.now();
    const seeds = [at, ...rivals].map((point) => {
      const [x, y] = lonLatToGround(image, point);
      return { x, y };
    });
    if (spreadM !== undefined) seeds[0] = Object.assign(seeds[0], { spreadM });
    const occupied = drawn.map((ring) => lonLatToGround(image, ring));
    const [answer] = proposeOutlines(window, seeds, { thresholds, occupied });
    reckoned?.(performance.now() - begun);
    if (!answer.proposed) return answer;
    const { confidence, areaM2, ring } = answer;
    return { proposed: true, confidence, areaM2, ring: groundToLonLat(image, ring) };
  }

  /** Looks at all crowns together, once: what tells sound from browned leaves in this picture. */
  async look(crowns: readonly Rings[], told?: (share: number) => void): Promise<void> {
    if (!showsColours(this.#image)) return;
    this.#separation ??= this.#lookedOver(crowns, told).catch((error) => {
      this.#separation = null;
      throw error;
    });
    await this.#separation;
  }

  /** A crown against what `look` found. */
  async browned(crown: Rings): Promise<SuggestedShare> {
    const looked = await this.#separation;
    if (looked === null) return { suggested: false, because: 'no-colours', litPixels: 0, crowns: 0, quality: [] };
    const { found, ...over } = looked;
    if ('separable' in found) return { suggested: false, because: found.because, litPixels: 0, ...over };
    const rings = crown.map((ring) => this.#image.lonLatToPixel(ring));
    const box = boxOf(rings);
    if (!liesIn(this.#image, box)) return { suggested: false, because: 'outside', litPixels: 0, ...over };
    const window = await this.#image.readWindow(box);
    const cover = pixelCoverage(
      rings.map((ring) => ring.map((value, i) => value - (i % 2 === 0 ? box.left : box.top))),
      window,
    );
    const share = brownedShare(window, cover, found, { seed: SEED });
    return share.suggested ? { ...share, ...over, separation: found } : { ...share, ...over };
  }

  async #lookedOver(crowns: readonly Rings[], told?: (share: number) => void) {
    const regions = crowns.map((rings) => rings.map((ring) => this.#image.lonLatToPixel(ring)));
    const { histogram, crowns: count } = await foliageOfCrowns(this.#image, regions, {
      index: 'NGRDI',
      crownsMost: CROWNS_MOST,
      onProgress: (done) => told?.(done / Math.min(CROWNS_MOST, regions.length)),
    });
    const found = separateByOtsu(histogram);
    return {
      crowns: count,
      quality: imageQuality(histogram),
      found: found.separable ? { rule: found.rule, gate: found.gate, white: found.white } : found,
    };
  }
}

/** As the command line's: the same crown gives the same interval. */
const SEED = 1;

const showsColours = ({ roles }: Imagery): boolean =>
  (['red', 'green', 'blue'] as const).every((role) => roles.includes(role));

/** The coarsest level whose pixels are no larger than `m`, else the finest. */
function levelFor({ width, pixelM, levels }: Imagery, m: number): number {
  return Math.max(
    0,
    levels.findLastIndex((level) => pixelM * (width / level.width) <= m),
  );
}

function windowAbout(image: Imagery, level: number, [column, row]: readonly [number, number]): PixelWindow {
  const scale = image.width / image.levels[level].width;
  const half = Math.ceil(WINDOW_M / 2 / (image.pixelM * scale));
  return {
    left: Math.floor(column / scale) - half,
    top: Math.floor(row / scale) - half,
    width: 2 * half,
    height: 2 * half,
  };
}

function boxOf(rings: readonly Float64Array[]): PixelWindow {
  const columns = rings.flatMap((ring) => [...ring.filter((_, i) => i % 2 === 0)]);
  const rows = rings.flatMap((ring) => [...ring.filter((_, i) => i % 2 === 1)]);
  const [left, top] = [Math.floor(Math.min(...columns)), Math.floor(Math.min(...rows))];
  return { left, top, width: Math.ceil(Math.max(...columns)) - left, height: Math.ceil(Math.max(...rows)) - top };
}

function liesIn({ width, height }: Imagery, box: PixelWindow): boolean {
  return box.left >= 0 && box.top >= 0 && box.left + box.width <= width && box.top + box.height <= height;
}
