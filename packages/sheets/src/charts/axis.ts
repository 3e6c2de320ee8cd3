/** Axes of a chart: round ticks and the way from values to the page. */

export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

/** About this many ticks to an axis. */
const TICKS = 5;

/**
 * An axis that holds all values, its ends and ticks at multiples of 1, 2 or 5 times a power of ten. `within` keeps the ends
 * inside limits that the values cannot pass (shares: 0 and 1). No values, or all alike, give an axis of some length about
 * them. RangeError for a value that is not finite: a chart never shows one.
 * @example axisOf([3, 47]) // from 0 to 50, ticks 0, 10, 20, 30, 40, 50
 */
export function axisOf(values: readonly number[], within: { readonly from?: number; readonly to?: number } = {}): Axis {
  for (const value of values) {
    if (!Number.isFinite(value)) throw new RangeError(`chart: expected finite values, got ${value}`);
  }
  let least = Math.min(...(values.length > 0 ? values : [0]));
  let most = Math.max(...(values.length > 0 ? values : [1]));
  if (least === most) {
    const half = least === 0 ? 1 : Math.abs(least) / 2;
    least -= half;
    most += half;
  }
  least = Math.max(least, within.from ?? Number.NEGATIVE_INFINITY);
  most = Math.min(most, within.to ?? Number.POSITIVE_INFINITY);
  const step = roundStep((most - least) / TICKS);
  const first = Math.floor(least / step + ROUNDING);
  const last = Math.ceil(most / step - ROUNDING);
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => {
    const value = (first + i) * step;
    return { value, text: tickText(value, decimals) };
  });
  return { from: first * step, to: last * step, ticks };
}

/** A value's place between two ends of the page. */
export function placeOn(axis: Axis, value: number, ends: readonly [start: number, end: number]): number {
  const part = (value - axis.from) / (axis.to - axis.from);
  return ends[0] + part * (ends[1] - ends[0]);
}

const ROUNDING = 1e-9;

/** The least of 1, 2, 5 times a power of ten that is at least `rough`. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((one) => one * power >= rough * (1 - ROUNDING)) ?? 10;
  return factor * power;
}

function tickText(value: number, decimals: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(decimals).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  const sign = value < 0 && Number(value.toFixed(decimals)) !== 0 ? '−' : '';
  return sign + (fraction === undefined ? grouped : `${grouped}.${fraction}`);
}
