/**
 * CIEDE2000: how different two colours look; 1 is about the least that is noticed side by side.
 * Source: Sharma, Wu and Dalal 2005, Color Research and Application 30, 21–30, equations 2–22 (k_L = k_C = k_H = 1).
 */
import type { Lab } from './cielab.ts';

const DEG = Math.PI / 180;
/** 25⁷, about which chroma is stretched for greys. */
const PIVOT = 25 ** 7;

/**
 * Difference of two CIELAB colours. Symmetric; 0 only for equal colours. Hues exactly opposite (where the mean hue jumps)
 * are decided on the angles' difference in degrees, exactly as published: 180° counts as not more than 180°.
 * @example ciede2000([50, 2.6772, -79.7751], [50, 0, -82.7485]) // 2.0425
 */
export function ciede2000([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const meanChroma = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const stretch = 1 + 0.5 * (1 - ratio7(meanChroma));
  const chroma1 = Math.hypot(a1 * stretch, b1);
  const chroma2 = Math.hypot(a2 * stretch, b2);
  const hue1 = hue(a1 * stretch, b1);
  const hue2 = hue(a2 * stretch, b2);
  const grey = chroma1 * chroma2 === 0;
  const turn = grey ? 0 : hueTurn(a1 * stretch, b1, a2 * stretch, b2, hue2 - hue1);
  const dL = l2 - l1;
  const dC = chroma2 - chroma1;
  const dH = 2 * Math.sqrt(chroma1 * chroma2) * Math.sin((turn / 2) * DEG);

  const l = (l1 + l2) / 2;
  const c = (chroma1 + chroma2) / 2;
  const h = grey ? hue1 + hue2 : meanHue(hue1, hue2, turn);
  const t = 1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.2 * cos(4 * h - 63);
  const sL = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sC = 1 + 0.045 * c;
  const sH = 1 + 0.015 * c * t;
  const rotation = -2 * ratio7(c) * Math.sin(60 * Math.exp(-(((h - 275) / 25) ** 2)) * DEG);
  const [x, y, z] = [dL / sL, dC / sC, dH / sH];
  return Math.sqrt(Math.max(0, x * x + y * y + z * z + rotation * y * z));
}

function ratio7(chroma: number): number {
  return Math.sqrt(chroma ** 7 / (chroma ** 7 + PIVOT));
}

/** Degrees from 0 up to 360; 0 for grey. */
function hue(a: number, b: number): number {
  const degrees = Math.atan2(b, a) / DEG;
  return degrees < 0 ? degrees + 360 : degrees;
}

/**
 * Signed way from the first hue to the second, −180° to 180°. Which side exactly opposite hues fall on must not hang on
 * the last digit of an arctangent, so it is told from the cross product, which is 0 for them.
 */
function hueTurn(a1: number, b1: number, a2: number, b2: number, difference: number): number {
  const opposite = a1 * b2 === a2 * b1 && a1 * a2 + b1 * b2 < 0;
  if (opposite) return difference > 0 ? 180 : -180;
  if (difference > 180) return difference - 360;
  return difference < -180 ? difference + 360 : difference;
}

function meanHue(hue1: number, hue2: number, turn: number): number {
  const half = (hue1 + hue2) / 2;
  const wraps = Math.abs(hue2 - hue1 - turn) > 1;
  if (!wraps) return half;
  return hue1 + hue2 < 360 ? half + 180 : half - 180;
}

function cos(degrees: number): number {
  return Math.cos(degrees * DEG);
}
