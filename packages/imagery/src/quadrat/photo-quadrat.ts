/**
 * The stained share of a measured plot from one photo: rectified by the frame's corners, judged by lightness against a
 * clean patch, shade told from stain by its colour. A suggestion that a person confirms.
 * Method, assumptions and accuracy: docs/methods/photo-quadrat.md.
 */
import type { Interval } from '@crownfall/statistics';
import { lightnessOfLight } from '../analysis/cielab.ts';
import { type CellLight, cellLight, cellTones, luminanceOf } from './cell-light.ts';
import { type CleanPatch, cleanPatch } from './clean-patch.ts';
import { groundToPhoto, type Homography, pixelsPerMetre } from './homography.ts';
import { expectPhotoAndFrame, type Photo, type PhotoPoint, type QuadratFrame } from './photo.ts';
import { type CellGrid, type GroundCells, groundCells } from './rectify.ts';
import { isBlurred } from './sharpness.ts';
import { lightHistogram, type StainedMixture, stainedMixture } from './stained-mixture.ts';
import { unevenLight } from './uneven-light.ts';

/** Why a photo is not measured. */
export const QUADRAT_REFUSALS = [
  'corners-not-convex',
  'corners-outside',
  'frame-too-small',
  'view-too-slanted',
  'blurred',
  'over-exposed',
  'patch-outside',
  'patch-too-small',
  'patch-too-dark',
  'patch-clipped',
  'patch-varied',
  'patch-darker-than-frame',
  'too-much-left-out',
] as const;
export type QuadratRefusal = (typeof QUADRAT_REFUSALS)[number];

/** What the person should know of a measured photo. */
export const QUADRAT_NOTES = ['shade-corrected', 'uneven-light', 'joints-not-in-patch'] as const;
export type QuadratNote = (typeof QUADRAT_NOTES)[number];

/** What a cell was taken for, by its number in `RectifiedQuadrat.kinds`. */
export const CELL_KINDS = ['clean', 'stained', 'shaded-clean', 'shaded-stained', 'left-out'] as const;

export interface QuadratRefused {
  readonly known: false;
  readonly because: QuadratRefusal;
}

/** The frame from straight above, to be shown with the cells that count as stained. */
export interface RectifiedQuadrat {
  readonly width: number;
  readonly height: number;
  /** sRGB, four samples a cell. */
  readonly rgba: Uint8ClampedArray;
  readonly kinds: Uint8Array;
}

export interface PhotoQuadrat {
  readonly known: true;
  /** Share of the frame's pavement that is stained, 0–1. */
  readonly stainedShare: number;
  readonly interval: Interval;
  /** Share that lies in shade and was corrected for it. */
  readonly shadedShare: number;
  /** Share that was not judged: clipped, leaves, things lying there. */
  readonly leftOutShare: number;
  readonly notes: readonly QuadratNote[];
  readonly cells: RectifiedQuadrat;
}

export interface PhotoQuadratOptions {
  /** Pavers whose joints the patch does not show get a note: joints then count as stain. */
  readonly surface?: 'concrete' | 'asphalt' | 'pavers' | 'other';
}

/** Cells a side: at most 256, each of a photo pixel and a fifth where the view is most slanted; fewer than 64 are too few. */
const CELLS = { most: 256, least: 64, pixels: 1.2 } as const;
/** Cells along the frame's edge that are not judged: corners are marked by hand. */
const EDGE_CELLS = 3;
/** (A) Shares of the frame: clipped cells, cells brighter than the patch, cells not judged. */
const MOST = { clipped: 0.05, brighter: 0.1, leftOut: 0.25 } as const;
/** (A) Brighter than the patch by this many spreads and this much L* is another light or another, cleaner ground. */
const BRIGHTER = { spreads: 3, leastL: 8 } as const;
/** (A) Of light divided by the patch's: greener is a leaf, more saturated a thing lying there. */
const STRANGE = { green: 0.1, saturation: 0.75 } as const;
/** (A) Of the patch's light: in darker cells noise has any colour. */
const COLOUR_TOLD = 0.3;
/** (A) L* of scatter from which shade cannot be corrected: the deep shade of dark grains is noise. */
const ROUGH_L = 3.5;
/** Less sun than this is shade that was corrected. */
const SUNLIT = 0.95;
/** (A) Standard deviation of the error, points: always, per share in shade, per L* of the surface's scatter above 1. */
const ERROR = { base: 1.2, shade: 2.5, scatter: 0.4 } as const;

/**
 * Measures the share of the frame that is stained. `cleanPatch` is a ring on the same pavement, inside the frame or out.
 *
 * Refused, with the reason, when corners, patch or picture do not allow a figure. Accuracy on invented photos held apart
 * from those the method was made with: docs/accuracy.md.
 * @throws TypeError or RangeError when samples and sizes cannot be those of a photo and a frame.
 * @example photoQuadrat(photo, frame, patch) // { known: true, stainedShare: 0.31, interval: { lower: 0.28, … }, … }
 */
export function photoQuadrat(
  photo: Photo,
  frame: QuadratFrame,
  patchRing: readonly PhotoPoint[],
  { surface }: PhotoQuadratOptions = {},
): PhotoQuadrat | QuadratRefused {
  expectPhotoAndFrame(photo, frame);
  const map = groundToPhoto(frame);
  if (map === null) return refused('corners-not-convex');
  if (!frame.corners.every(([x, y]) => x >= 0 && y >= 0 && x <= photo.width && y <= photo.height)) {
    return refused('corners-outside');
  }
  const grid = cellGrid(frame, map);
  if (Math.min(grid.width, grid.height) < CELLS.least)
    return refused(slanted(frame, map) ? 'view-too-slanted' : 'frame-too-small');
  const patch = cleanPatch(photo, map, patchRing, grid.cellM);
  if (!patch.known) return patch;
  const cells = groundCells(photo, map, grid);
  const told = judgedCells(cells, patch);
  if (told.clipped > MOST.clipped) return refused('over-exposed');
  if (told.leftOut > MOST.leftOut) return refused('too-much-left-out');
  const judgedLight = lightOf(cells, patch, told.cells);
  const { logLight, light } = judgedLight;
  const judged = patch.spread > ROUGH_L ? withoutShade(told, light) : told;
  if (judged.leftOut > MOST.leftOut) return refused('too-much-left-out');
  const spread = lnSpread(patch);
  const brighter = lnOf(BRIGHTER.leastL, patch);
  const bright =
    countOf(judged.cells, (p) => logLight[p] > Math.max(brighter, BRIGHTER.spreads * spread)) / judged.count;
  if (bright > MOST.brighter) return refused('patch-darker-than-frame');
  if (isBlurred(lightnesses(logLight, patch), judged.cells, grid.width)) return refused('blurred');
  const mixture = stainedMixture(
    lightHistogram(logLight.filter((_, p) => judged.cells[p] === 1)),
    lightHistogram(patch.logLight),
    spread,
  );
  const shadedShare = countOf(judged.cells, (p) => light.sun[p] < SUNLIT) / judged.count;
  const notes: QuadratNote[] = [];
  if (shadedShare > 0) notes.push('shade-corrected');
  if (judgedLight.unevenness > UNEVEN) notes.push('uneven-light');
  if (surface === 'pavers' && patch.jointShare === 0) notes.push('joints-not-in-patch');
  return {
    known: true,
    stainedShare: mixture.share,
    interval: intervalOf(mixture.share, shadedShare, judged.leftOut, patch.spread),
    shadedShare,
    leftOutShare: judged.leftOut,
    notes,
    cells: {
      width: grid.width,
      height: grid.height,
      rgba: pictureOf(cells),
      kinds: kindsOf(judged.cells, judgedLight, mixture),
    },
  };
}

/** (A) ln of light from one corner's clean ground to another's that is worth a note. */
const UNEVEN = 0.2;

function cellGrid({ widthM, heightM }: QuadratFrame, map: Homography): CellGrid {
  const least = Math.min(...scales({ widthM, heightM }, map).map((scale) => scale.least));
  const cellM = Math.max(Math.min(widthM, heightM) / CELLS.most, CELLS.pixels / least);
  return { left: 0, top: 0, width: Math.round(widthM / cellM), height: Math.round(heightM / cellM), cellM };
}

function scales({ widthM, heightM }: Pick<QuadratFrame, 'widthM' | 'heightM'>, map: Homography) {
  return [0, 1, 2, 3].map((k) => pixelsPerMetre(map, (k & 1) * widthM, (k >> 1) * heightM));
}

/** Whether the photo has pixels enough, only not at the far side. */
function slanted(frame: QuadratFrame, map: Homography): boolean {
  const most = Math.max(...scales(frame, map).map((scale) => scale.most));
  return (Math.min(frame.widthM, frame.heightM) * most) / CELLS.pixels >= 2 * CELLS.least;
}

interface JudgedCells {
  readonly cells: Uint8Array;
  readonly count: number;
  /** Shares of the cells inside the edge. */
  readonly clipped: number;
  readonly leftOut: number;
}

/** Inside the marked edge, not clipped, of a colour that pavement and its stains can have. */
function judgedCells({ width, height, red, green, blue, clipped }: GroundCells, { colour }: CleanPatch): JudgedCells {
  const cells = new Uint8Array(width * height);
  let [inside, count, clippedCount] = [0, 0, 0];
  for (let row = EDGE_CELLS; row < height - EDGE_CELLS; row++) {
    for (let column = EDGE_CELLS; column < width - EDGE_CELLS; column++) {
      const p = row * width + column;
      inside++;
      clippedCount += clipped[p];
      const [r, g, b] = [red[p] / colour[0], green[p] / colour[1], blue[p] / colour[2]];
      const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)];
      const strange = 2 * g - r - b > STRANGE.green * (r + g + b) || most - least > STRANGE.saturation * most;
      if (clipped[p] === 1 || (strange && g > COLOUR_TOLD) || !(most > 0)) continue;
      cells[p] = 1;
      count++;
    }
  }
  return { cells, count, clipped: clippedCount / inside, leftOut: 1 - count / inside };
}

function withoutShade(told: JudgedCells, { sun }: CellLight): JudgedCells {
  const cells = told.cells.map((one, p) => (sun[p] < SUNLIT ? 0 : one));
  const count = cells.reduce((sum, one) => sum + one, 0);
  return { cells, count, clipped: told.clipped, leftOut: 1 - ((1 - told.leftOut) * count) / told.count };
}

interface JudgedLight {
  /** ln of each cell's light against the patch, as it would be in the patch's light. */
  readonly logLight: Float32Array;
  readonly light: CellLight;
  readonly unevenness: number;
}

function lightOf(cells: GroundCells, patch: CleanPatch, judged: Uint8Array): JudgedLight {
  const light = cellLight(cellTones(cells, patch, 1), judged, cells.width);
  const darkness = cells.red.map(
    (red, p) => Math.log(patch.luminance / luminanceOf(red, cells.green[p], cells.blue[p])) - light.lift[p],
  );
  const uneven = unevenLight(darkness, judged, cells.width, lnSpread(patch));
  const ends = [0, cells.width - 1, uneven.length - cells.width, uneven.length - 1].map((p) => uneven[p]);
  const even = darkness.map((value, p) => uneven[p] - value);
  const offset = shadeOffset(even, light.sun, judged);
  return {
    logLight: even.map((value, p) => value - offset * (1 - light.sun[p])),
    light,
    unevenness: Math.max(...ends) - Math.min(...ends),
  };
}

/** Full shade, and how near clean ground in it lies to clean ground in the sun once it is lifted, ln of light. */
const [FULL_SHADE, OFFSET_REACH, OFFSET_MOST] = [0.2, 0.25, 0.4] as const;

/**
 * By how much clean ground in full shade is still darker or lighter than in the sun: the median of cells near, found by
 * turns from 0, since leaves let more or less of the sky through from place to place.
 */
function shadeOffset(logLight: Float32Array, sun: Float32Array, judged: Uint8Array): number {
  const shaded = logLight.filter((_, p) => judged[p] === 1 && sun[p] < FULL_SHADE);
  let offset = 0;
  for (let round = 0; round < 5; round++) {
    const near = shaded.filter((value) => Math.abs(value - offset) < OFFSET_REACH).sort();
    if (near.length < 0.1 * shaded.length || near.length === 0) return 0;
    offset = near[near.length >> 1];
  }
  return Math.abs(offset) < OFFSET_MOST ? offset : 0;
}

/** The patch's spread in ln of light. */
function lnSpread(patch: CleanPatch): number {
  return lnOf(patch.spread, patch);
}

/** A difference in L* near the patch's, in ln of light: L* + 16 goes with the cube root of light. */
function lnOf(differenceL: number, { lightness }: CleanPatch): number {
  return (3 * differenceL) / (lightness + 16);
}

function lightnesses(logLight: Float32Array, { luminance }: CleanPatch): Float32Array {
  return logLight.map((value) => {
    const light = luminance * Math.exp(value);
    return lightnessOfLight(light, light, light);
  });
}

/** Normal limits of the error model; what was left out may be clean or stained. */
function intervalOf(share: number, shaded: number, leftOut: number, spreadL: number): Interval {
  const parts = [ERROR.base, ERROR.shade * shaded, ERROR.scatter * Math.max(0, spreadL - 1)];
  const reach = 0.0196 * Math.hypot(...parts) + leftOut / 2;
  return { lower: Math.max(0, share - reach), upper: Math.min(1, share + reach), confidence: 0.95 };
}

function pictureOf({ red, green, blue }: GroundCells): Uint8ClampedArray {
  const rgba = new Uint8ClampedArray(red.length * 4);
  const encoded = (light: number): number =>
    255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
  for (let p = 0; p < red.length; p++) rgba.set([encoded(red[p]), encoded(green[p]), encoded(blue[p]), 255], p * 4);
  return rgba;
}

function kindsOf(judged: Uint8Array, { logLight, light }: JudgedLight, { cut }: StainedMixture): Uint8Array {
  return judged.map((one, p) => {
    if (one === 0) return CELL_KINDS.indexOf('left-out');
    return (logLight[p] < cut ? 1 : 0) + (light.sun[p] < SUNLIT ? 2 : 0);
  });
}

function countOf(judged: Uint8Array, which: (p: number) => boolean): number {
  return judged.reduce((sum, one, p) => sum + (one === 1 && which(p) ? 1 : 0), 0);
}

function refused(because: QuadratRefusal): QuadratRefused {
  return { known: false, because };
}
