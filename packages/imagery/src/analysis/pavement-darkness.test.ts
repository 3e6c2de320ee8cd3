import { pixelCoverage } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { CONCRETE, type Colour, GREEN, picture, SHADE, under } from './made-picture.test-data.ts';
import { type PavementTone, pavementDarkness, pavementTone } from './pavement-darkness.ts';
import { pavementInView } from './pavement-in-view.ts';

const square = (x: number, y: number, side: number) => [
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side),
];
const STAIN: Colour = [0.52, 0.48, 0.44, 0.6];

/** Left half reference with shade in its upper third; right half the zone: `stained` of each metre, shade in its lower third. */
const scene = (stained: number) =>
  picture(40, 20, 0.25, (x, y) => {
    const grain = 1 + 0.02 * Math.sin(71 * x + 133 * y);
    const clean: Colour = [CONCRETE[0] * grain, CONCRETE[1] * grain, CONCRETE[2] * grain, CONCRETE[3]];
    const own = x > 20 && x % 2 < 2 * stained ? under(STAIN, clean) : clean;
    const shaded = x < 20 ? y < 6.5 : y > 13.5;
    return shaded ? under(SHADE, own) : own;
  });
const reference = square(0, 0, 80);
const zone = square(80, 0, 80);

function toneOf(window: ReturnType<typeof scene>): PavementTone {
  const tone = pavementTone(window, pixelCoverage(reference, window), 255);
  if ('known' in tone) throw new Error(tone.because);
  return tone;
}

describe('pavement darkness', () => {
  test.each([0, 0.25, 0.5])('%d of the lit pavement stained, whatever the shade', (stained) => {
    const window = scene(stained);
    const got = pavementDarkness(window, pixelCoverage(zone, window), toneOf(window));
    if (!got.known) throw new Error(got.because);
    expect(got.darkShare).toBeCloseTo(stained, 2);
    expect(got.litShare).toBeCloseTo(13.25 / 20, 1.5);
    if (stained === 0) {
      expect(Math.abs(got.lightnessDrop)).toBeLessThan(0.2);
      expect(got.difference).toBeLessThan(0.2);
    } else expect(got.lightnessDrop).toBeGreaterThan(20 * stained);
  });

  test('stain in full: the drop is the difference of the two colours’ own lightness', () => {
    const window = scene(1);
    const tone = toneOf(window);
    const got = pavementDarkness(window, pixelCoverage(zone, window), tone);
    // (190, 186, 178) has L* 75.63 and, times (0.52, 0.48, 0.44), (98.8, 89.3, 78.3) 38.4 (sRGB, D65).
    expect(got.known && got.lightnessDrop).toBeCloseTo(75.6 - 38.4, 0);
    expect(got.known && got.darkShare).toBe(1);
  });

  test('all in shade, or too little: refused, not guessed', () => {
    const window = scene(0.5);
    const tone = toneOf(window);
    const shade = pavementDarkness(window, pixelCoverage(square(100, 60, 18), window), tone);
    expect(shade).toMatchObject({ known: false, because: 'too-few-pixels' });
    expect(pavementTone(window, pixelCoverage(square(0, 30, 5), window), 255)).toMatchObject({
      because: 'too-few-pixels',
    });
  });

  test('grey shade cannot be told from stain: refused', () => {
    const window = picture(20, 20, 0.25, (_x, y) => (y < 10 ? under([0.35, 0.35, 0.35, 0.35], CONCRETE) : CONCRETE));
    expect(pavementTone(window, pixelCoverage(reference, window), 255)).toMatchObject({ because: 'shade-not-told' });
  });

  test('leaves over the pavement are not pavement', () => {
    const window = picture(40, 20, 0.25, (x, y) =>
      x > 20 && y < 10 ? GREEN : y > 17 && x < 20 ? under(SHADE, CONCRETE) : CONCRETE,
    );
    const got = pavementDarkness(window, pixelCoverage(zone, window), toneOf(window));
    expect(got.known && got.darkShare).toBe(0);
    expect(got.known && got.litShare).toBeCloseTo(0.5, 1);
  });
});

describe('pavement in view', () => {
  test('what no crown covers, to the part of a pixel', () => {
    const view = pavementInView(
      { width: 40, height: 40 },
      { pavement: square(0, 0, 20), zone: square(0, 0, 10), crowns: square(0, 0, 4.5) },
    );
    expect(view.pavementPixels).toBe(100);
    expect(view.visiblePixels).toBeCloseTo(100 - 4.5 ** 2, 12);
    expect(view.visibleShare).toBeCloseTo(1 - 0.2025, 12);
    expect(view.visible.weights.reduce((a, b) => a + b, 0)).toBeCloseTo(view.visiblePixels, 12);
  });

  test('no pavement, no zone, crowns that overlap', () => {
    const grid = { width: 8, height: 8 };
    expect(pavementInView(grid, { pavement: [], zone: null, crowns: [] }).visibleShare).toBe(0);
    const two = [...square(0, 0, 4), ...square(2, 0, 4)];
    expect(pavementInView(grid, { pavement: square(0, 0, 8), zone: null, crowns: two }).visiblePixels).toBeCloseTo(
      40,
      9,
    );
  });
});
