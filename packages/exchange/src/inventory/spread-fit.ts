/** Spread by trunk diameter, fitted to a project's own measured pairs by least squares; two forms, the better one taken. */

/** A tree whose trunk and spread were both measured. */
export interface MeasuredPair {
  readonly trunkCm: number;
  readonly spreadM: number;
  readonly host?: string | null;
}

export interface SpreadFit {
  /** `line`: spread = a + b · d; `power`: ln spread = a + b · ln d. */
  readonly form: 'line' | 'power';
  readonly a: number;
  readonly b: number;
  readonly pairs: number;
  /** Root mean square of leave-one-out errors, m: what a new tree of this kind is off by. */
  readonly looRmseM: number;
  /** Least and greatest diameter of the pairs, cm. */
  readonly range: readonly [number, number];
  /** Spread of a trunk with the standard deviation of a single new tree about it, m. */
  predict(trunkCm: number): { readonly spreadM: number; readonly sdM: number };
}

/** Diameters beyond the pairs' own are taken as at most so much further: a fit says little outside of what it saw. */
const STRETCH = 0.25;

/**
 * Fits both forms by ordinary least squares and takes the one whose leave-one-out errors, in metres of spread, are smaller
 * (the hat matrix gives them without refitting for the line; Allen 1974, PRESS). The power form comes back from logarithms
 * with the smearing factor mean(exp(residual)) (Duan 1983), which is kept while a pair is left out. Fewer than five pairs, or all of one diameter, give null.
 * @example fitSpread(pairs of spread = 0.25 · d).form // 'line', with a = 0 and b = 0.25
 */
export function fitSpread(pairs: readonly MeasuredPair[]): SpreadFit | null {
  const usable = pairs.filter(({ trunkCm, spreadM }) => trunkCm > 0 && spreadM > 0);
  const forms = [lineFit(usable), powerFit(usable)].filter((fit) => fit !== null);
  return forms.reduce<SpreadFit | null>((best, fit) => (best && best.looRmseM <= fit.looRmseM ? best : fit), null);
}

/** Ordinary least squares of y on x. */
export interface LeastSquares {
  readonly a: number;
  readonly b: number;
  readonly residuals: readonly number[];
  /** Leverage of each point, hᵢ = 1/n + (xᵢ − x̄)²/Sxx. */
  readonly leverages: readonly number[];
  /** Residual standard deviation, n − 2 degrees of freedom. */
  readonly sd: number;
  leverageAt(x: number): number;
}

/** The fit; null for fewer than five points or without spread in x. */
export function leastSquares(x: readonly number[], y: readonly number[]): LeastSquares | null {
  const n = x.length;
  if (n < 5) return null;
  const [meanX, meanY] = [mean(x), mean(y)];
  const sxx = x.reduce((sum, xi) => sum + (xi - meanX) ** 2, 0);
  if (!(sxx > 1e-12 * Math.max(1, meanX * meanX) * n)) return null;
  const b = x.reduce((sum, xi, i) => sum + (xi - meanX) * (y[i] - meanY), 0) / sxx;
  const a = meanY - b * meanX;
  const residuals = x.map((xi, i) => y[i] - a - b * xi);
  const leverageAt = (at: number): number => 1 / n + (at - meanX) ** 2 / sxx;
  const sd = Math.sqrt(residuals.reduce((sum, e) => sum + e * e, 0) / (n - 2));
  return { a, b, residuals, leverages: x.map(leverageAt), sd, leverageAt };
}

function lineFit(pairs: readonly MeasuredPair[]): SpreadFit | null {
  const d = pairs.map(({ trunkCm }) => trunkCm);
  const fit = leastSquares(
    d,
    pairs.map(({ spreadM }) => spreadM),
  );
  if (!fit) return null;
  const range = rangeOf(d);
  return {
    form: 'line',
    a: fit.a,
    b: fit.b,
    pairs: pairs.length,
    looRmseM: rootMeanSquare(fit.residuals.map((e, i) => e / (1 - fit.leverages[i]))),
    range,
    predict(trunkCm) {
      const at = within(trunkCm, range);
      // A line may cross zero below its range: no crown is smaller than its trunk.
      const spreadM = Math.max(at / 100, fit.a + fit.b * at);
      return { spreadM, sdM: fit.sd * Math.sqrt(1 + fit.leverageAt(at)) };
    },
  };
}

function powerFit(pairs: readonly MeasuredPair[]): SpreadFit | null {
  const d = pairs.map(({ trunkCm }) => trunkCm);
  const x = d.map(Math.log);
  const fit = leastSquares(
    x,
    pairs.map(({ spreadM }) => Math.log(spreadM)),
  );
  if (!fit) return null;
  const smearing = mean(fit.residuals.map(Math.exp));
  const range = rangeOf(d);
  const left = fit.residuals.map((e, i) => e / (1 - fit.leverages[i]));
  const looErrors = pairs.map(({ spreadM }, i) => spreadM - Math.exp(Math.log(spreadM) - left[i]) * smearing);
  return {
    form: 'power',
    a: fit.a,
    b: fit.b,
    pairs: pairs.length,
    looRmseM: rootMeanSquare(looErrors),
    range,
    predict(trunkCm) {
      const at = within(trunkCm, range);
      const log = Math.log(at);
      const spreadM = Math.exp(fit.a + fit.b * log) * smearing;
      const variance = fit.sd ** 2 * (1 + fit.leverageAt(log));
      return { spreadM, sdM: spreadM * Math.sqrt(Math.exp(variance) - 1) };
    },
  };
}

function within(trunkCm: number, [least, greatest]: readonly [number, number]): number {
  return Math.min(greatest * (1 + STRETCH), Math.max(least * (1 - STRETCH), trunkCm));
}

function rangeOf(values: readonly number[]): readonly [number, number] {
  return values.reduce<readonly [number, number]>(
    ([least, greatest], value) => [Math.min(least, value), Math.max(greatest, value)],
    [Infinity, -Infinity],
  );
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(mean(values.map((value) => value * value)));
}
