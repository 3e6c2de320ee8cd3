/**
 * sRGB to CIELAB (D65 white, 2° observer): lightness L* 0–100 as the eye judges it, a* from green to red, b* from blue
 * to yellow. Sources: IEC 61966-2-1:1999 (sRGB, its four-digit matrix); CIE 15:2004, ISO/CIE 11664-4 (CIELAB). The
 * white is the matrix's own (its rows' sums), so that greys have a* = b* = 0 exactly.
 */
export type Lab = readonly [lightness: number, a: number, b: number];

const MATRIX = [
  [0.4124, 0.3576, 0.1805],
  [0.2126, 0.7152, 0.0722],
  [0.0193, 0.1192, 0.9505],
] as const;

const WHITE = MATRIX.map(([r, g, b]) => r + g + b);

/** CIE 15: the cube root gives way to a line below (6/29)³, whose slope is (29/3)³. */
const EDGE = (6 / 29) ** 3;
const SLOPE = (29 / 3) ** 3;

/**
 * CIELAB of an sRGB colour with channels from 0 to `white` (255 for 8 bits). Values outside are clamped.
 * @example srgbToLab(119, 119, 119) // [50.034, 0, 0]
 */
export function srgbToLab(red: number, green: number, blue: number, white = 255): Lab {
  const [r, g, b] = [linearLight(red / white), linearLight(green / white), linearLight(blue / white)];
  const [x, y, z] = MATRIX.map((row, i) => curve((row[0] * r + row[1] * g + row[2] * b) / WHITE[i]));
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** L* alone, for whole bands. */
export function lightness(red: number, green: number, blue: number, white = 255): number {
  return lightnessOfLight(linearLight(red / white), linearLight(green / white), linearLight(blue / white));
}

/** L* of linear light, channels 0–1. */
export function lightnessOfLight(red: number, green: number, blue: number): number {
  return 116 * curve((MATRIX[1][0] * red + MATRIX[1][1] * green + MATRIX[1][2] * blue) / WHITE[1]) - 16;
}

/** Light of an sRGB channel, both 0–1; clamped. */
export function linearLight(channel: number): number {
  const c = Math.min(1, Math.max(0, channel));
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

function curve(t: number): number {
  return t > EDGE ? Math.cbrt(t) : (SLOPE * t + 16) / 116;
}
