/**
 * Proposes crown outlines around points: for a person to accept, drag or refuse. Many points compete, so that neighbours
 * do not overlap. Method, assumptions and accuracy: docs/methods/outline-proposal.md.
 */
import { signedArea } from '@crownfall/geometry';
import { groundToPixel, pixelToGround } from '../georeference.ts';
import type { Window } from '../window.ts';
import { distanceMap } from './distance-map.ts';
import { type FoliageScene, foliageScene, type OutlineThresholds, outlineThresholds } from './foliage-scene.ts';
import { growCrowns } from './grow-crowns.ts';
import { type SharedRings, sharedRings } from './label-rings.ts';
import { occupiedCells } from './occupied-cells.ts';
import { fillHoles, type LabelRaster, tidyLabels } from './region-cells.ts';
import { simplifyRings } from './simplify-rings.ts';

export interface OutlineSeed {
  /** In the image's coordinate system. */
  readonly x: number;
  readonly y: number;
  /** Crown spread from the inventory, when known: the outline stays within 0.75 of it around the point. */
  readonly spreadM?: number;
}

export interface OutlineProposal {
  readonly proposed: true;
  /** Flat, open, in the image's coordinate system, counter-clockwise with y up; at most 48 vertices, no crossings. */
  readonly ring: Float64Array;
  readonly areaM2: number;
  /** From the two below: how likely a person would leave it as it is. */
  readonly confidence: 'low' | 'medium' | 'high';
  /** Share of the border beyond which there are no leaves: there the outline is seen, elsewhere it is inferred. */
  readonly freeBorder: number;
  /** 4π·area / perimeter²: 1 for a circle. */
  readonly roundness: number;
}

/**
 * Why no outline is proposed. `outside`: the point is not in the window, or has no data. `no-foliage`: no leaves within
 * 1 m of it. `taken`: it lies in another crown's outline, or nearer points took its leaves. `too-small`, `too-large`: what
 * grew from it is no single crown.
 */
export interface OutlineRefusal {
  readonly proposed: false;
  readonly because: 'outside' | 'no-foliage' | 'taken' | 'too-small' | 'too-large';
}

export type OutlineAnswer = OutlineProposal | OutlineRefusal;

export interface OutlineOptions {
  /** Of the whole image, so that its windows agree; found from this window when absent. */
  readonly thresholds?: OutlineThresholds;
  /** Metres above ground by pixel, NaN unknown: sharper than brightness where it exists, and tells trees from lawns. */
  readonly heights?: Float32Array;
  /** Outlines that exist already, flat rings in the image's coordinate system: no proposal enters them. */
  readonly occupied?: readonly ArrayLike<number>[];
  /** (A) Crowns reach at most this far from their point; 12 m when absent. */
  readonly reachM?: number;
  /** (A) Areas proposed, m²; 3 to 400 when absent. */
  readonly leastM2?: number;
  readonly mostM2?: number;
}

export const MOST_VERTICES = 48;

const DEFAULTS = { reachM: 12, leastM2: 3, mostM2: 400 } as const;
/** A point this near to leaves stands for them: trunks lean, and points are set beside crowns. */
const SEED_SLACK_M = 1;
/** (A) A crown stays within this many times its largest inscribed circle, from that circle's middle. */
const OF_INSCRIBED = 1.3;
/** That circle reaches the point to within this. */
const CIRCLE_SLACK_M = 0.5;
const LEAF_FROM_M = 2;
/** Vertices whose triangle is smaller are given up, m². */
const DETAIL_M2 = 0.05;
const WHISKER_M = 0.3;

/** The outline of a single crown at a point; other crowns in the window do not compete. */
export function proposeOutline(window: Window, seed: OutlineSeed, options: OutlineOptions = {}): OutlineAnswer {
  return proposeOutlines(window, [seed], options)[0];
}

/**
 * Outlines for points of a window, in their order; proposals do not overlap each other or `occupied` ones.
 *
 * Crowns that reach beyond the window are cut off by it: read some 15 m more than the points need on each side. Duplicate
 * points: the first takes the crown, the others are `taken`.
 * @throws RangeError when red, green or blue is missing, when the pixel size is unknown, or heights do not fit the window.
 */
export function proposeOutlines(
  window: Window,
  seeds: readonly OutlineSeed[],
  options: OutlineOptions = {},
): readonly OutlineAnswer[] {
  const { reachM, leastM2, mostM2 } = { ...DEFAULTS, ...options };
  checkInput(window, options);
  const thresholds = options.thresholds ?? outlineThresholds(window);
  const scene = foliageScene(window, thresholds, options.heights ?? null, LEAF_FROM_M);
  const occupied = occupiedCells(window, scene, options.occupied ?? []);
  for (let p = 0; p < scene.foliage.length; p++) if (occupied.cells[p] === 1) scene.foliage[p] = 0;
  const cells = seeds.map((seed) => cellOf(window, scene, seed));
  const anchors = cells.map((cell) => (cell < 0 ? -1 : nearestFoliage(scene, cell)));
  const reaches = seeds.map(({ spreadM }) => Math.min(reachM, spreadM === undefined ? reachM : 0.75 * spreadM + 1));
  const { labels } = growCrowns(scene, anchors, reaches);
  const raster = { width: scene.width, height: scene.height, labels };
  // Gaps between leaf clumps would shrink the inscribed circle.
  fillHoles(raster);
  keepCompact(raster, anchors, Math.max(1, CIRCLE_SLACK_M / scene.cellM));
  tidyLabels(raster, anchors, Math.round(WHISKER_M / scene.cellM));
  const shared = sharedRings(raster, seeds.length);
  const detail = DETAIL_M2 / scene.cellM ** 2;
  const simplified = simplifyRings(shared, {
    areaBelow: detail,
    mostVertices: MOST_VERTICES,
    keepClear: occupied.borderPoints,
  });
  const free = freeBorders(raster, scene.foliage, seeds.length);
  return seeds.map((_, i) => {
    if (cells[i] < 0) return refused('outside');
    if (anchors[i] < 0) return refused(occupied.cells[cells[i]] === 1 ? 'taken' : 'no-foliage');
    const ring = groundRing(window, scene, shared, simplified[i + 1]);
    if (ring.length < 8)
      return refused(labels[anchors[i]] === i + 1 || labels[anchors[i]] === 0 ? 'too-small' : 'taken');
    return judged(ring, { areaM2: areaM2(window, ring), freeBorder: free[i + 1], leastM2, mostM2 });
  });
}

function checkInput(window: Window, { heights }: OutlineOptions): void {
  if (!(window.pixelM > 0)) {
    throw new RangeError(
      'proposeOutlines: expected an image with a known pixel size, got one without a coordinate system',
    );
  }
  if (heights !== undefined && heights.length !== window.width * window.height) {
    throw new RangeError(
      `proposeOutlines: expected ${window.width * window.height} heights, one per pixel, got ${heights.length}`,
    );
  }
}

function refused(because: OutlineRefusal['because']): OutlineRefusal {
  return { proposed: false, because };
}

function cellOf(window: Window, scene: FoliageScene, { x, y }: OutlineSeed): number {
  const [column, row] = groundToPixel(window.transform, x, y);
  const [c, r] = [Math.floor(column / scene.factor), Math.floor(row / scene.factor)];
  if (!(c >= 0 && r >= 0 && c < scene.width && r < scene.height)) return -1;
  const pixel = Math.floor(row) * window.width + Math.floor(column);
  return window.missing[pixel] === 1 ? -1 : r * scene.width + c;
}

/** The nearest cell of leaves within the slack, −1 when there is none. */
function nearestFoliage({ width, height, foliage, cellM }: FoliageScene, cell: number): number {
  const reach = Math.max(1, Math.floor(SEED_SLACK_M / cellM));
  const [column, row] = [cell % width, Math.floor(cell / width)];
  let [best, nearest] = [-1, reach * reach + 0.5];
  for (let r = Math.max(0, row - reach); r <= Math.min(height - 1, row + reach); r++) {
    for (let c = Math.max(0, column - reach); c <= Math.min(width - 1, column + reach); c++) {
      const square = (c - column) ** 2 + (r - row) ** 2;
      if (square < nearest && foliage[r * width + c] === 1) [best, nearest] = [r * width + c, square];
    }
  }
  return best;
}

/**
 * Gives up the cells of each label far from the middle of the largest circle inscribed in it that reaches the seed: a
 * larger one elsewhere is another crown.
 */
function keepCompact({ width, height, labels }: LabelRaster, anchors: readonly number[], slack: number): void {
  const depth = distanceMap(innerCells({ width, height, labels }), width, height);
  const radius = new Float64Array(anchors.length + 1);
  const middle = Int32Array.of(0, ...anchors);
  const apart = (p: number, q: number): number =>
    Math.hypot((p % width) - (q % width), Math.floor(p / width) - Math.floor(q / width));
  for (let p = 0; p < depth.length; p++) {
    const label = labels[p];
    if (depth[p] <= radius[label] || apart(p, anchors[label - 1]) > depth[p] + slack) continue;
    radius[label] = depth[p];
    middle[label] = p;
  }
  for (let p = 0; p < labels.length; p++) {
    const label = labels[p];
    if (label > 0 && apart(p, middle[label]) > OF_INSCRIBED * (radius[label] + 1) + 1) labels[p] = 0;
  }
}

/** Cells whose four neighbours bear the same label. */
function innerCells({ width, height, labels }: LabelRaster): Uint8Array {
  const inner = new Uint8Array(labels.length);
  for (let row = 1; row < height - 1; row++) {
    for (let column = 1; column < width - 1; column++) {
      const p = row * width + column;
      const label = labels[p];
      const same = labels[p - 1] === label && labels[p + 1] === label && labels[p - width] === label;
      if (label > 0 && same && labels[p + width] === label) inner[p] = 1;
    }
  }
  return inner;
}

/** Share of each label's border sides beyond which there are no leaves; the raster's edge counts as unseen. */
function freeBorders({ width, height, labels }: LabelRaster, foliage: Uint8Array, count: number): Float64Array {
  const free = new Float64Array(count + 1);
  const all = new Float64Array(count + 1);
  for (let p = 0; p < labels.length; p++) {
    const label = labels[p];
    if (label === 0) continue;
    const column = p % width;
    const sides = [column > 0 ? p - 1 : -1, column < width - 1 ? p + 1 : -1, p - width, p + width];
    for (const q of sides) {
      const inside = q >= 0 && q < width * height;
      if (inside && labels[q] === label) continue;
      all[label]++;
      if (inside && labels[q] === 0 && foliage[q] === 0) free[label]++;
    }
  }
  return free.map((sides, label) => (all[label] === 0 ? 0 : sides / all[label]));
}

function groundRing(window: Window, scene: FoliageScene, { x, y }: SharedRings, ring: readonly number[]): Float64Array {
  const out = new Float64Array(2 * ring.length);
  ring.forEach((v, i) => {
    [out[2 * i], out[2 * i + 1]] = pixelToGround(window.transform, x[v] * scene.factor, y[v] * scene.factor);
  });
  if (signedArea(out) >= 0) return out;
  const pairs = Array.from({ length: ring.length }, (_, i) => [out[2 * i], out[2 * i + 1]]).toReversed();
  return Float64Array.from(pairs.flat());
}

/** By the pixel's ground area, so that feet need no conversion. */
function areaM2({ transform: t, pixelM }: Window, ring: Float64Array): number {
  const pixelArea = Math.abs(t.columnX * t.rowY - t.rowX * t.columnY);
  return (signedArea(ring) / pixelArea) * pixelM ** 2;
}

function judged(
  ring: Float64Array,
  found: { readonly areaM2: number; readonly freeBorder: number; readonly leastM2: number; readonly mostM2: number },
): OutlineAnswer {
  if (found.areaM2 < found.leastM2) return refused('too-small');
  if (found.areaM2 > found.mostM2) return refused('too-large');
  const { freeBorder } = found;
  const roundness = roundnessOf(ring);
  const confidence =
    freeBorder >= 0.7 && roundness >= 0.6 ? 'high' : freeBorder >= 0.4 && roundness >= 0.4 ? 'medium' : 'low';
  return { proposed: true, ring, areaM2: found.areaM2, confidence, freeBorder, roundness };
}

function roundnessOf(ring: Float64Array): number {
  let perimeter = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    perimeter += Math.hypot(ring[i] - ring[j], ring[i + 1] - ring[j + 1]);
  }
  return (4 * Math.PI * signedArea(ring)) / perimeter ** 2;
}
