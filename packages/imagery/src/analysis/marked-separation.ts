/**
 * Sound and browned leaves told apart from crowns that a person marked: a linear discriminant and a logistic regression
 * are both fitted, and the one that errs less on crowns left out is taken.
 *
 * Sources (from memory): Fisher 1936, Annals of Eugenics 7, 179–188; Hastie, Tibshirani and Friedman 2009, The Elements of
 * Statistical Learning, sections 4.3 (linear discriminant), 4.4 (logistic), 7.10 (cross-validation).
 */

import type { PixelCoverage } from '@crownfall/geometry';
import { fitBinomial } from '@crownfall/statistics';
import type { Window } from '../window.ts';
import { BRIGHTNESS_BINS, binOf, SATURATION_BINS, saturation } from './foliage-histogram.ts';
import {
  type FoliageSeparation,
  type LinearRule,
  medianOfBins,
  SEPARATION_DEFAULTS,
  type SeparationOptions,
} from './foliage-separation.ts';
import { colourBands, type PixelColour } from './vegetation-index.ts';

/** Pixels of one marked crown. */
export interface MarkedCrown {
  readonly mark: 'sound' | 'browned';
  readonly pixels: readonly PixelColour[];
}

/** Pixels taken of one marked crown at most, evenly: enough for three weights, and the fit stays quick. */
const PIXELS_PER_CROWN = 400;

/**
 * Pixels of a crown for `separateByMarks`, at most 400, evenly spread over those wholly inside the outline that hold data.
 */
export function markedPixels(window: Window, { pixels, weights }: PixelCoverage): readonly PixelColour[] {
  const { red, green, blue, nearInfrared } = colourBands(window);
  const inside = Array.from(pixels).filter((p, k) => weights[k] > 0.999 && window.missing[p] === 0);
  const step = Math.max(1, inside.length / PIXELS_PER_CROWN);
  return Array.from({ length: Math.min(inside.length, PIXELS_PER_CROWN) }, (_, i) => {
    const p = inside[Math.floor(i * step)];
    const colour = { red: red[p], green: green[p], blue: blue[p] };
    return nearInfrared === null ? colour : { ...colour, nearInfrared: nearInfrared[p] };
  });
}

/** Rounds in which the leaves of crowns marked as browned that look sound are set aside. */
const SETTLING_ROUNDS = 6;

/**
 * Separation from marked crowns; each crown weighs alike, whatever its size. A crown marked as browned may still have
 * sound leaves: those on the sound side of the discriminant are set aside, and the border is drawn again, until it
 * settles. Null below two crowns of either kind, or when no rule can be fitted.
 */
export function separateByMarks(
  crowns: readonly MarkedCrown[],
  white: number,
  options: SeparationOptions = {},
): FoliageSeparation | null {
  const gate = gateOf(crowns, white, { ...SEPARATION_DEFAULTS, ...options });
  const marked = crowns
    .map(({ mark, pixels }) => ({ mark, points: leafPoints(pixels, gate.leafSaturation) }))
    .filter(({ points }) => points.length > 0);
  const sets = settled(marked);
  const count = (mark: string) => sets.filter((set) => set.mark === mark).length;
  if (count('sound') < 2 || count('browned') < 2) return null;
  const discriminant = scored('linear-discriminant', sets);
  const logistic = scored('logistic', sets);
  const [best, other] =
    logistic !== null && (discriminant === null || logistic.error < discriminant.error)
      ? [logistic, discriminant]
      : [discriminant, logistic];
  if (best === null) return null;
  const rule = { ...best.line, crossValidatedError: best.error, otherError: other?.error ?? null };
  return { rule, gate, white };
}

function settled(marked: readonly PointSet[]): readonly PointSet[] {
  let sets = marked;
  for (let round = 0; round < SETTLING_ROUNDS; round++) {
    const kinds = new Set(sets.map((set) => set.mark));
    const line = kinds.size === 2 ? discriminantLine(sets) : null;
    if (line === null) break;
    sets = marked
      .map((set) =>
        set.mark === 'sound' ? set : { ...set, points: set.points.filter((point) => scoreOf(line, point) > 0) },
      )
      .filter(({ points }) => points.length > 0);
  }
  return sets;
}

/** Positive for browned leaves. */
export function linearScore(
  { constant, weights }: Pick<LinearRule, 'constant' | 'weights'>,
  pixel: PixelColour,
): number {
  const point = markedFeatures(pixel);
  return weights.reduce((sum, weight, i) => sum + weight * (point[i] ?? 0), constant);
}

/** What the rules look at: the shares of red and green in the colour, and NDVI where near infrared exists. 0 for black. */
function markedFeatures({ red, green, blue, nearInfrared }: PixelColour): readonly number[] {
  const sum = red + green + blue;
  const colour = sum === 0 ? [0, 0] : [red / sum, green / sum];
  if (nearInfrared === undefined) return colour;
  return [...colour, nearInfrared + red === 0 ? 0 : (nearInfrared - red) / (nearInfrared + red)];
}

type Point = readonly number[];

interface PointSet {
  readonly mark: 'sound' | 'browned';
  readonly points: readonly Point[];
}

type Line = Pick<LinearRule, 'by' | 'constant' | 'weights'>;

function leafPoints(pixels: readonly PixelColour[], leafSaturation: number): readonly Point[] {
  return pixels
    .filter(({ red, green, blue }) => red + green + blue > 0 && saturation(red, green, blue) >= leafSaturation)
    .map(markedFeatures);
}

function gateOf(
  crowns: readonly MarkedCrown[],
  white: number,
  { leafSaturationShare, litShare }: Required<SeparationOptions>,
): FoliageSeparation['gate'] {
  const saturations = new Float64Array(SATURATION_BINS);
  const brightness = { sound: new Float64Array(BRIGHTNESS_BINS), browned: new Float64Array(BRIGHTNESS_BINS) };
  for (const { mark, pixels } of crowns) {
    for (const { red, green, blue } of pixels) {
      const weight = 1 / pixels.length;
      if (mark === 'sound') saturations[binOf(saturation(red, green, blue), SATURATION_BINS)] += weight;
      brightness[mark][binOf((red + green + blue) / 3 / white, BRIGHTNESS_BINS)] += weight;
    }
  }
  return {
    leafSaturation: leafSaturationShare * medianOfBins(saturations),
    soundLitFrom: litShare * medianOfBins(brightness.sound),
    brownedLitFrom: litShare * medianOfBins(brightness.browned),
  };
}

/** The rule fitted to all crowns, with its error on each crown when that crown is left out. */
function scored(by: Line['by'], sets: readonly PointSet[]): { readonly line: Line; readonly error: number } | null {
  const fit = by === 'logistic' ? logisticLine : discriminantLine;
  const line = fit(sets);
  if (line === null) return null;
  const errors = { sound: [] as number[], browned: [] as number[] };
  for (const [i, left] of sets.entries()) {
    const without = fit(sets.filter((_, j) => j !== i));
    if (without === null) return null;
    const wrong = left.points.filter((point) => scoreOf(without, point) > 0 !== (left.mark === 'browned'));
    errors[left.mark].push(wrong.length / left.points.length);
  }
  return { line, error: (mean(errors.sound) + mean(errors.browned)) / 2 };
}

function scoreOf({ constant, weights }: Line, point: Point): number {
  return weights.reduce((sum, weight, i) => sum + weight * point[i], constant);
}

/** Weights W = S⁻¹(m₁ − m₀) with the pooled covariance S; the border half-way between the means (equal priors). */
function discriminantLine(sets: readonly PointSet[]): Line | null {
  const [sound, browned] = (['sound', 'browned'] as const).map((mark) => {
    const own = sets.filter((set) => set.mark === mark);
    return weightedMoments(own);
  });
  const size = sound.mean.length;
  const pooled = sound.covariance.map((row, i) => row.map((value, j) => (value + browned.covariance[i][j]) / 2));
  const difference = browned.mean.map((value, i) => value - sound.mean[i]);
  const weights = solve(pooled, difference);
  if (weights === null) return null;
  let constant = 0;
  for (let i = 0; i < size; i++) constant -= (weights[i] * (browned.mean[i] + sound.mean[i])) / 2;
  return { by: 'linear-discriminant', constant, weights };
}

function logisticLine(sets: readonly PointSet[]): Line | null {
  const points = sets.flatMap((set) => set.points);
  const kinds = sets.flatMap((set) => set.points.map(() => (set.mark === 'browned' ? 1 : 0)));
  const crownsOf = (mark: string) => sets.filter((set) => set.mark === mark).length;
  const weights = sets.flatMap((set) => set.points.map(() => 1 / (set.points.length * crownsOf(set.mark))));
  const terms = points[0].map((_, i) => ({ name: `x${i}`, values: points.map((point) => point[i]) }));
  const fit = fitBinomial({ shares: kinds, terms, weights, link: 'logit', family: 'quasi-binomial' });
  if (!fit.defined) return null;
  const [constant, ...slopes] = fit.value.coefficients;
  return { by: 'logistic', constant, weights: slopes };
}

function weightedMoments(sets: readonly PointSet[]): { readonly mean: number[]; readonly covariance: number[][] } {
  const size = sets[0].points[0].length;
  const mean = new Array<number>(size).fill(0);
  const covariance = mean.map(() => new Array<number>(size).fill(0));
  const each = (visit: (point: Point, weight: number) => void): void => {
    for (const { points } of sets) for (const point of points) visit(point, 1 / (points.length * sets.length));
  };
  each((point, weight) => {
    for (let i = 0; i < size; i++) mean[i] += weight * point[i];
  });
  each((point, weight) => {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) covariance[i][j] += weight * (point[i] - mean[i]) * (point[j] - mean[j]);
    }
  });
  return { mean, covariance };
}

/** Gaussian elimination with row exchange; null when the matrix is singular to rounding. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i]]);
  const scale = Math.max(...matrix.flat().map(Math.abs));
  for (let i = 0; i < rows.length; i++) {
    const pivot = rows.reduce((best, row, r) => (r >= i && Math.abs(row[i]) > Math.abs(rows[best][i]) ? r : best), i);
    [rows[i], rows[pivot]] = [rows[pivot], rows[i]];
    if (!(Math.abs(rows[i][i]) > 1e-12 * scale)) return null;
    for (let r = 0; r < rows.length; r++) {
      if (r === i) continue;
      const factor = rows[r][i] / rows[i][i];
      rows[r] = rows[r].map((value, c) => value - factor * rows[i][c]);
    }
  }
  return rows.map((row, i) => row[rows.length] / row[i]);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
