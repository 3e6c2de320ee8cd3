/** How far each rater reads off: against known answers, or against the mean of the raters where no one knows the truth. */
import { type Defined, defined, undefinedBecause } from '@crownfall/statistics';
import { type RatedVisit, type RaterSettings, strayAt } from '@crownfall/survey';

/** Bias and scatter of a rater at half severity, % of the crown. */
export interface RaterBias {
  readonly rater: string;
  /** Readings it rests on. */
  readonly readings: number;
  readonly reading: Defined<RaterSettings>;
}

/** A picture or tree whose answer is known, and what a rater said of it; shares 0–1. */
export interface TrainingReading {
  readonly item: string;
  readonly rater: string;
  readonly known: number;
  readonly rated: number;
}

/** Below this part of the mid-scale scatter (shares under 0.25 % or over 99.75 %) an answer says nothing of a bias. */
const LEAST_STRAY = 0.1;

/**
 * Biases against known answers: the mean of (rated − known)/stray(known), its standard error, and the scatter about it.
 * Undefined below two answers between 0 and 100 %. Raters by name.
 *
 * Example: answers 50 %, 50 %, ratings 56 %, 60 %: bias 8, standard error 2, scatter 2.83.
 */
export function biasesAgainstKnown(readings: readonly TrainingReading[]): RaterBias[] {
  const byRater = new Map<string, number[]>();
  for (const { rater, known, rated } of readings) {
    const own = byRater.get(rater) ?? [];
    byRater.set(rater, own);
    const stray = strayAt(known);
    if (stray >= LEAST_STRAY) own.push((rated - known) / stray);
  }
  return [...byRater].sort(byName).map(([rater, offs]) => ({ rater, readings: offs.length, reading: meanOff(offs) }));
}

function meanOff(offs: readonly number[]): Defined<RaterSettings> {
  const n = offs.length;
  if (n === 0) return undefinedBecause('no-observations');
  if (n < 2) return undefinedBecause('too-few-observations');
  const mean = offs.reduce((sum, off) => sum + off, 0) / n;
  const sd = Math.sqrt(offs.reduce((sum, off) => sum + (off - mean) ** 2, 0) / (n - 1));
  return defined({ bias_pct: 100 * mean, bias_se_pct: (100 * sd) / Math.sqrt(n), error_sd_pct: 100 * sd });
}

/**
 * Biases against the mean of the raters, from trees that two or more rated: least squares of
 * rated = tree + stray · bias + error with biases that sum to 0, errors of equal scatter. What all raters share cannot be
 * seen. Only raters linked by common trees can be compared: those of the largest linked group get a figure. Undefined for the
 * others, and where no scatter is left to measure (as many unknowns as readings).
 *
 * Example: on each of three trees of about 50 % B reads 8 points above A: A −4, B +4.
 */
export function biasesAgainstMean(visits: readonly RatedVisit[]): RaterBias[] {
  const shared = visits
    .filter(({ readings }) => readings.length > 1)
    .map(scaledTree)
    .filter((tree) => tree !== null);
  const raters = [...new Set(visits.flatMap(({ readings }) => readings.map(({ rater }) => rater)))].sort();
  const linked = largestLinked(shared);
  const trees = shared.filter(([first]) => linked.has(first.rater));
  const names = raters.filter((rater) => linked.has(rater));
  const found = names.length > 1 ? fitted(trees, names) : new Map<string, RaterSettings>();
  return raters.map((rater) => {
    const reading = found.get(rater);
    const readings = trees.flat().filter((one) => one.rater === rater).length;
    const because = readings === 0 ? 'no-links' : 'no-residual-freedom';
    return { rater, readings, reading: reading ? defined(reading) : undefinedBecause(because) };
  });
}

/**
 * The defined readings by rater. `sharedSdPct` is how far all raters together may be off, one by one (0 when the answers were
 * known): the mean of m raters is then off by that over √m, which no comparison among them shows, and joins each error.
 */
export function keptReadings(
  biases: readonly RaterBias[],
  sharedSdPct: number,
): Readonly<Record<string, RaterSettings>> {
  const told = biases.flatMap(({ rater, reading }) => (reading.defined ? [{ rater, reading: reading.value }] : []));
  const shared = sharedSdPct / Math.sqrt(Math.max(1, told.length));
  return Object.fromEntries(
    told.map(({ rater, reading }) => [rater, { ...reading, bias_se_pct: Math.hypot(reading.bias_se_pct, shared) }]),
  );
}

interface ScaledReading {
  readonly rater: string;
  /** Reading minus the tree's mean, over the stray there. */
  readonly off: number;
}

function scaledTree({ readings }: RatedVisit): ScaledReading[] | null {
  const mean = readings.reduce((sum, { figure }) => sum + figure.share, 0) / readings.length;
  const stray = strayAt(mean);
  return stray < LEAST_STRAY
    ? null
    : readings.map(({ rater, figure }) => ({ rater, off: (figure.share - mean) / stray }));
}

/** Raters linked by common trees, the most of them; of equals those with the first name. */
function largestLinked(trees: readonly (readonly ScaledReading[])[]): Set<string> {
  const groups: Set<string>[] = [];
  for (const tree of trees) {
    const joined = new Set(tree.map(({ rater }) => rater));
    for (const group of [...groups]) {
      if (![...group].some((rater) => joined.has(rater))) continue;
      for (const rater of group) joined.add(rater);
      groups.splice(groups.indexOf(group), 1);
    }
    groups.push(joined);
  }
  const first = (group: Set<string>): string => [...group].sort()[0];
  return groups.sort((a, b) => b.size - a.size || (first(a) < first(b) ? -1 : 1))[0] ?? new Set();
}

/** Normal equations of the within-tree comparisons; their matrix is a graph's Laplacian, whose null space the zero sum fills. */
function fitted(trees: readonly (readonly ScaledReading[])[], names: readonly string[]): Map<string, RaterSettings> {
  const m = names.length;
  const index = new Map(names.map((name, i) => [name, i]));
  const matrix = Array.from({ length: m }, () => new Array<number>(m).fill(1 / m));
  const right = new Array<number>(m).fill(0);
  for (const tree of trees) {
    const places = tree.map(({ rater }) => index.get(rater) as number);
    for (const [n, i] of places.entries()) {
      matrix[i][i] += 1;
      right[i] += tree[n].off;
      for (const j of places) matrix[i][j] -= 1 / tree.length;
    }
  }
  const inverse = inverted(matrix);
  const biases = inverse.map((row) => row.reduce((sum, value, j) => sum + value * right[j], 0));
  const freedom = trees.reduce((sum, tree) => sum + tree.length - 1, 0) - (m - 1);
  if (freedom < 1) return new Map();
  let squares = 0;
  for (const tree of trees) {
    const own = tree.map(({ rater }) => biases[index.get(rater) as number]);
    const mean = own.reduce((sum, bias) => sum + bias, 0) / own.length;
    tree.forEach(({ off }, n) => {
      squares += (off - (own[n] - mean)) ** 2;
    });
  }
  const sd = Math.sqrt(squares / freedom);
  // The inverse of the filled matrix is the Laplacian's pseudoinverse plus 1/m.
  const settings = names.map((name, i): [string, RaterSettings] => [
    name,
    {
      bias_pct: 100 * biases[i],
      bias_se_pct: 100 * sd * Math.sqrt(Math.max(0, inverse[i][i] - 1 / m)),
      error_sd_pct: 100 * sd,
    },
  ]);
  return new Map(settings);
}

/** Inverse of a positive definite matrix by Gauss and Jordan; no pivoting is needed for such. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let pivot = 0; pivot < n; pivot++) {
    const scale = rows[pivot][pivot];
    rows[pivot] = rows[pivot].map((value) => value / scale);
    for (let i = 0; i < n; i++) {
      const factor = rows[i][pivot];
      if (i !== pivot) rows[i] = rows[i].map((value, j) => value - factor * rows[pivot][j]);
    }
  }
  return rows.map((row) => row.slice(n));
}

function byName([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number {
  return a < b ? -1 : 1;
}
