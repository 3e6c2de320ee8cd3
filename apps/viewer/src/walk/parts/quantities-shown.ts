/** Lengths, sizes and days as the walk says them. */
import { METRES_PER_FOOT } from '@crownfall/geometry';
import { grouped, type Units } from '../../language/quantities.ts';

const NBSP = '\u00a0';

/** A length in metres or feet, with its unit. Example: `lengthOf(9.144, 'us')` is `30 ft`. */
export function lengthOf(metres: number, units: Units): string {
  return units === 'us'
    ? `${grouped(metres / METRES_PER_FOOT, 0)}${NBSP}ft`
    : `${grouped(metres, metres < 9.95 ? 1 : 0)}${NBSP}m`;
}

/** Bytes as people read them. Example: `sizeOfBytes(412_300)` is `412 kB`. */
export function sizeOfBytes(bytes: number): string {
  if (bytes < 999_500) return `${grouped(Math.max(1, bytes / 1000), 0)}${NBSP}kB`;
  return `${grouped(bytes / 1e6, bytes < 99.5e6 ? 1 : 0)}${NBSP}MB`;
}

/** A share given in per cent. */
export const pctOf = (pct: number): string => `${grouped(pct, 0)}${NBSP}%`;
