/** Areas and shares as people read them. Files and the server speak metres; only the screen offers feet. */
import { METRES_PER_FOOT } from '@crownfall/geometry';

export type Units = 'metric' | 'us';

/** Keeps a number and its unit on one line. */
const NBSP = '\u00a0';
const M2_PER_FT2 = METRES_PER_FOOT ** 2;

/**
 * An area in square metres or square feet, with its unit; below 100 with one decimal. Example:
 * `area(9.290304, 'us')` is `100 ft²`.
 */
export function area(areaM2: number, units: Units): string {
  return `${areaNumber(areaM2, units)}${NBSP}${areaUnit(units)}`;
}

/** The number of `area` without its unit. */
export function areaNumber(areaM2: number, units: Units): string {
  const value = units === 'us' ? areaM2 / M2_PER_FT2 : areaM2;
  return grouped(value, Math.abs(value) < 99.95 ? 1 : 0);
}

/** Both ends of a range with the unit once, decimals as the greater end has them. Example: `70–213 m²`. */
export function areaRange([lo, hi]: readonly [number, number], units: Units): string {
  const perUnit = units === 'us' ? M2_PER_FT2 : 1;
  const decimals = Math.max(Math.abs(lo), Math.abs(hi)) / perUnit < 99.95 ? 1 : 0;
  return `${grouped(lo / perUnit, decimals)}–${grouped(hi / perUnit, decimals)}${NBSP}${areaUnit(units)}`;
}

export const areaUnit = (units: Units): string => (units === 'us' ? 'ft²' : 'm²');

/** A length in metres or feet, with its unit; below 10 with one decimal. Example: `length(12.34, 'us')` is `40 ft`. */
export function length(lengthM: number, units: Units): string {
  const value = units === 'us' ? lengthM / METRES_PER_FOOT : lengthM;
  return `${grouped(value, Math.abs(value) < 9.95 ? 1 : 0)}${NBSP}${units === 'us' ? 'ft' : 'm'}`;
}

/** A share 0–1 in per cent; below 10 % with one decimal; less than shows is `<0.1 %`. Zero of zero is a dash. */
export function percent(share: number): string {
  if (!Number.isFinite(share)) return '–';
  if (share > 0 && share < 0.0005) return `<0.1${NBSP}%`;
  return `${grouped(share * 100, share < 0.0995 ? 1 : 0)}${NBSP}%`;
}

/** A number with the given decimals and thousands set off by commas, the same in every locale. */
export function grouped(value: number, decimals: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(decimals).split('.');
  const sign = value < 0 && Number(Math.abs(value).toFixed(decimals)) !== 0 ? '−' : '';
  const withCommas = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return sign + (fraction === undefined ? withCommas : `${withCommas}.${fraction}`);
}
