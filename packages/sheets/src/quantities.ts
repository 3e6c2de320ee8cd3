/**
 * Areas, lengths, shares, days and money as people read them. Results are metric; papers may offer feet. Digits are written
 * alike in both languages, so that a figure reads the same on every screen, paper and file.
 */
import { METRES_PER_FOOT } from '@crownfall/geometry';
import type { Language } from '@crownfall/survey';

export type Units = 'metric' | 'us';

/** Keeps a number and its unit on one line. */
const NBSP = '\u00a0';

/**
 * An area with its unit, one decimal below 100.
 * @example areaText(9.290304, 'us') // '100 ft²'
 */
export function areaText(areaM2: number, units: Units): string {
  return `${areaNumber(areaM2, units)}${NBSP}${areaUnit(units)}`;
}

export function areaNumber(areaM2: number, units: Units): string {
  const value = units === 'us' ? areaM2 / METRES_PER_FOOT ** 2 : areaM2;
  return grouped(value, Math.abs(value) < 99.95 ? 1 : 0);
}

export const areaUnit = (units: Units): string => (units === 'us' ? 'ft²' : 'm²');

/**
 * Both ends of a range of areas with the unit once; decimals as the greater end has them.
 * @example areaRange([69.9, 213.2], 'metric') // '70–213 m²'
 */
export function areaRange(range: readonly [lo: number, hi: number], units: Units): string {
  return `${rangeNumbers(range, units)}${NBSP}${areaUnit(units)}`;
}

export function rangeNumbers([lo, hi]: readonly [lo: number, hi: number], units: Units): string {
  const perUnit = units === 'us' ? METRES_PER_FOOT ** 2 : 1;
  const decimals = Math.max(Math.abs(lo), Math.abs(hi)) / perUnit < 99.95 ? 1 : 0;
  // A dash between numbers that have signs of their own cannot be read.
  const between = lo < 0 || hi < 0 ? ' … ' : '–';
  return `${grouped(lo / perUnit, decimals)}${between}${grouped(hi / perUnit, decimals)}`;
}

/**
 * A length with its unit, one decimal below 10.
 * @example lengthText(12.34, 'us') // '40 ft'
 */
export function lengthText(lengthM: number, units: Units): string {
  const value = units === 'us' ? lengthM / METRES_PER_FOOT : lengthM;
  return `${grouped(value, Math.abs(value) < 9.95 ? 1 : 0)}${NBSP}${units === 'us' ? 'ft' : 'm'}`;
}

/** A share 0–1 in per cent, one decimal below 10; less than shows is `<0.1 %`; nothing of nothing is a dash. */
export function percentText(share: number): string {
  if (!Number.isFinite(share)) return '–';
  if (share > 0 && share < 0.0005) return `<0.1${NBSP}%`;
  return `${grouped(share * 100, share < 0.0995 ? 1 : 0)}${NBSP}%`;
}

/** Both ends of a range of shares; decimals as the greater end has them. */
export function percentRange([lo, hi]: readonly [lo: number, hi: number]): string {
  const decimals = hi < 0.0995 ? 1 : 0;
  return `${grouped(lo * 100, decimals)}–${grouped(hi * 100, decimals)}${NBSP}%`;
}

/** Fixed decimals, thousands set off by commas, a true minus sign. */
export function grouped(value: number, decimals = 0): string {
  const [whole, fraction] = Math.abs(value).toFixed(decimals).split('.');
  const sign = value < 0 && Number(value.toFixed(decimals)) !== 0 ? '−' : '';
  const withCommas = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return sign + (fraction === undefined ? withCommas : `${withCommas}.${fraction}`);
}

const MONTHS: Readonly<Record<Language, readonly string[]>> = {
  en: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ],
  es: [
    'enero',
    'febrero',
    'marzo',
    'abril',
    'mayo',
    'junio',
    'julio',
    'agosto',
    'septiembre',
    'octubre',
    'noviembre',
    'diciembre',
  ],
};

/**
 * An ISO day in words, the month spelled out so that no order of numbers is guessed.
 * @example dayText('2026-05-20', 'es') // '20 de mayo de 2026'
 */
export function dayText(iso: string, language: Language): string {
  const [year, month, day] = iso.split('-').map(Number);
  const name = MONTHS[language][month - 1];
  if (name === undefined || !(day >= 1)) throw new RangeError(`dayText: expected a day as YYYY-MM-DD, got ${iso}`);
  return language === 'en' ? `${day} ${name} ${year}` : `${day} de ${name} de ${year}`;
}

/**
 * A sentence with its ISO days in words, for those who read letters.
 * @example withDays('Bees were there on 2026-05-20', 'en') // 'Bees were there on 20 May 2026'
 */
export function withDays(text: string, language: Language): string {
  return text.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (iso) => dayText(iso, language));
}
