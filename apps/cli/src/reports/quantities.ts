/** Areas and shares as the command line prints them, alike in every locale. */
import { METRES_PER_FOOT } from '@crownfall/geometry';

/** Square metres in square feet (the international foot, exactly 0.3048 m). */
export const squareFeet = (areaM2: number): number => areaM2 / METRES_PER_FOOT ** 2;

/** `1,234 m²`, followed by square feet in a project with US units. */
export function areaText(areaM2: number, units: 'metric' | 'us'): string {
  const metric = `${grouped(areaM2, areaM2 < 99.95 ? 1 : 0)} m²`;
  return units === 'us' ? `${metric} (${grouped(squareFeet(areaM2), 0)} ft²)` : metric;
}

/** A share 0–1 in per cent, one decimal below 10 %; less than shows is `<0.1 %`; nothing of nothing is a dash. */
export function percentText(share: number): string {
  if (!Number.isFinite(share)) return '–';
  if (share > 0 && share < 0.0005) return '<0.1 %';
  return `${grouped(share * 100, share < 0.0995 ? 1 : 0)} %`;
}

/** Fixed decimals, thousands set off by commas. */
export function grouped(value: number, decimals: number): string {
  const [whole, fraction] = Math.abs(value).toFixed(decimals).split('.');
  const sign = Number(value.toFixed(decimals)) < 0 ? '-' : '';
  const withCommas = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return sign + (fraction === undefined ? withCommas : `${withCommas}.${fraction}`);
}
