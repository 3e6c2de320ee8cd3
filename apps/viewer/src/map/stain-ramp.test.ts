/**
 * The ramp's claims, checked with published colour science: OKLab (B. Ottosson, 2020) for evenness of lightness, and the
 * relative luminance of WCAG 2.2 for the order of the classes to a viewer who sees no hue at all.
 */
import { describe, expect, test } from 'vitest';
import { STAIN_CLASSES, type Theme } from './stain-ramp.ts';

function linearChannels(hex: string): number[] {
  return [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
}

function okLightness(hex: string): number {
  const [r, g, b] = linearChannels(hex);
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
}

function luminance(hex: string): number {
  const [r, g, b] = linearChannels(hex);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Two neighbouring greys are told apart side by side at a contrast of about 1.2 (common practice, no source). */
const NEIGHBOUR_CONTRAST = 1.2;
/** 8-bit colours move OKLab lightness by up to 0.004. */
const ROUNDING = 0.005;

describe.each<Theme>(['light', 'dark'])('the %s stain ramp', (theme) => {
  const colours = STAIN_CLASSES.map((each) => each[theme]);

  test('rises in equal steps of lightness', () => {
    const steps = colours.slice(1).map((colour, i) => okLightness(colour) - okLightness(colours[i]));
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    for (const step of steps) expect(Math.abs(step - mean)).toBeLessThan(ROUNDING);
  });

  test('keeps its order and its steps for a viewer who sees no hue', () => {
    const greys = colours.map(luminance);
    const ratios = greys
      .slice(1)
      .map((grey, i) => (Math.max(grey, greys[i]) + 0.05) / (Math.min(grey, greys[i]) + 0.05));
    for (const ratio of ratios) expect(ratio).toBeGreaterThan(NEIGHBOUR_CONTRAST);
    const sorted = [...greys].sort((a, b) => (theme === 'light' ? b - a : a - b));
    expect(greys).toEqual(sorted);
  });
});

test('hatching grows denser towards the worst class', () => {
  const spacings = STAIN_CLASSES.flatMap((each) => (each.hatchPx === null ? [] : [each.hatchPx]));
  expect(spacings).toEqual([...spacings].sort((a, b) => b - a));
  expect(new Set(spacings).size).toBe(spacings.length);
});
