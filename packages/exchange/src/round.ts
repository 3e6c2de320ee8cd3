/**
 * The one place that decides how many digits a figure has on leaving. Rounded by value, not by text, so that no locale
 * can touch it; never a negative zero.
 */

/** To `decimals` places, halves away from zero; `null` for what is not finite. */
export function rounded(value: number, decimals: number): number | null {
  if (!Number.isFinite(value)) return null;
  const scale = 10 ** decimals;
  const scaled = Math.abs(value) * scale;
  // Beyond 2^52 the number has no decimals left to round.
  const size = scaled < 2 ** 52 ? Math.round(scaled) / scale : Math.abs(value);
  return size === 0 ? 0 : Math.sign(value) * size;
}

/** Areas, m²: 6 decimals, one square millimetre. */
export const m2 = (value: number): number | null => rounded(value, 6);
/** Lengths, m: 4 decimals. */
export const metre = (value: number): number | null => rounded(value, 4);
/** Shares 0–1, scores and doses: 9 decimals. */
export const share = (value: number): number | null => rounded(value, 9);
/** Per cent: 6 decimals. */
export const pct = (value: number): number | null => rounded(value, 6);
/** Degrees of longitude and latitude: 9 decimals, 0.1 mm on the ground. */
export const degree = (value: number): number | null => rounded(value, 9);
