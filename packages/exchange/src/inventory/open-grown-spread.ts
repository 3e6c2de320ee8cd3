/**
 * Crown spread of open-grown trees by trunk diameter: ln(spread, m) = a + b · ln(diameter at breast height, cm).
 * Source: Hasenauer (1997), Dimensional relationships of open-grown trees in Austria, Forest Ecology and Management
 * 96:197–206; coefficients and mean squared errors as transcribed in public forestry code (the paper was not opened).
 */
import { CONIFERS, PALMS } from './known-species.ts';

interface Relation {
  readonly a: number;
  readonly b: number;
  /** Mean squared error of the logarithm. */
  readonly mse: number;
}

const RELATIONS: Readonly<Record<string, Relation>> = {
  Picea: { a: -0.3232, b: 0.6441, mse: 0.026 },
  Abies: { a: 0.092, b: 0.538, mse: 0.03 },
  Larix: { a: -0.3396, b: 0.6823, mse: 0.035 },
  /** Scots pine; black pine differs by 4 % and is not told apart. */
  Pinus: { a: -0.1797, b: 0.6267, mse: 0.037 },
  Fagus: { a: 0.2662, b: 0.6072, mse: 0.058 },
  Quercus: { a: -0.3973, b: 0.7328, mse: 0.038 },
  Fraxinus: { a: 0.1366, b: 0.6183, mse: 0.051 },
  Acer: { a: 0.418, b: 0.5285, mse: 0.025 },
  Betula: { a: 0.1783, b: 0.5665, mse: 0.025 },
};
const BROADLEAVES = ['Fagus', 'Quercus', 'Fraxinus', 'Acer', 'Betula'] as const;
const CONIFER_RELATIONS = ['Picea', 'Abies', 'Larix', 'Pinus'] as const;

/**
 * An assumption: beyond these the relation is not stretched; the diameter is taken as the nearer limit. A sapling's crown
 * and an ancient tree's are both pruned more than they grow.
 */
const DIAMETERS_CM = [3, 120] as const;

export interface SpreadEstimate {
  readonly spreadM: number;
  /** Standard deviation of the estimate for one tree. */
  readonly sdM: number;
  /** Where it comes from, in words for people. */
  readonly basis: string;
}

/**
 * The spread expected of a trunk, and how far a single tree may be off it: the relation's own scatter, that between genera
 * where the genus has no relation, and `siteSd`, the assumed scatter of street trees (share of the spread). Half the
 * variance of the logarithm is added in it, so that the spread is a mean, not a median. Palms give null: their crowns do not follow their trunks.
 * @example openGrownSpread(40, 'Quercus robur', 0).spreadM // 10.21…
 */
export function openGrownSpread(trunkCm: number, host: string | null, siteSd: number): SpreadEstimate | null {
  const genus = host?.split(' ')[0] ?? '';
  if (PALMS.has(genus)) return null;
  const own = Object.hasOwn(RELATIONS, genus) ? [genus] : undefined;
  const genera = own ?? (CONIFERS.has(genus) ? CONIFER_RELATIONS : BROADLEAVES);
  const log = Math.log(Math.min(DIAMETERS_CM[1], Math.max(DIAMETERS_CM[0], trunkCm)));
  const curves = genera.map((name) => RELATIONS[name]);
  const logs = curves.map(({ a, b }) => a + b * log);
  const mean = average(logs);
  const between = genera.length > 1 ? logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (logs.length - 1) : 0;
  const scatter = average(curves.map(({ mse }) => mse)) + between;
  const spreadM = Math.exp(mean + scatter / 2);
  const group = own ? genus : CONIFERS.has(genus) ? 'conifers' : 'broadleaves';
  // Variance of a lognormal, and the assumed scatter beside it.
  const sdM = spreadM * Math.sqrt(Math.exp(scatter) - 1 + siteSd ** 2);
  return { spreadM, sdM, basis: `the open-grown relation of ${group}` };
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
