import { pixelCoverage } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import type { Window } from '../window.ts';
import { brownedShare } from './browned-share.ts';
import { addCrowns, emptyFoliageHistogram } from './foliage-histogram.ts';
import { type FoliageSeparation, separateByOtsu } from './foliage-separation.ts';
import { imageQuality } from './image-quality.ts';
import { BROWN, CONCRETE, type Colour, GREEN, picture, SHADE, under } from './made-picture.test-data.ts';
import { type MarkedCrown, markedPixels, separateByMarks } from './marked-separation.ts';

const square = (x: number, y: number, side: number) => [
  Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side),
];
const coverOf = (window: Window, region: readonly Float64Array[]) => pixelCoverage(region, window);

/** A crown of 8 × 8 m: browned left of `border`, its south third in shade, gaps of concrete in a grid; else concrete. */
const crown =
  (border: number) =>
  (x: number, y: number): Colour => {
    if (x < 1 || y < 1 || x > 9 || y > 9) return CONCRETE;
    if (Math.floor(x / 0.25) % 8 === 0 && Math.floor(y / 0.25) % 8 === 0) return CONCRETE;
    const leaf = x < border ? BROWN : GREEN;
    return y > 6.5 ? under(SHADE, leaf) : leaf;
  };

function otsuOf(window: Window, region: readonly Float64Array[]): FoliageSeparation {
  const histogram = addCrowns(emptyFoliageHistogram('NGRDI', 255), window, [coverOf(window, region)]);
  const found = separateByOtsu(histogram);
  if (!found.separable) throw new Error(found.because);
  return found;
}

describe('browned share', () => {
  const region = square(4, 4, 32);

  test.each([2, 3.5, 7])('shade and gaps do not count; browned up to %d m of 1–9', (border) => {
    const window = picture(10, 10, 0.25, crown(border));
    const got = brownedShare(window, coverOf(window, region), otsuOf(window, region), { seed: 1 });
    if (!got.suggested) throw new Error(got.because);
    // The gaps take one pixel in 64 of either part, within a pixel row.
    expect(got.share).toBeCloseTo((border - 1) / 8, 1.9);
    const { litSound, litBrowned, shaded, notLeaf, noData } = got.makeUp;
    expect(litSound + litBrowned + shaded + notLeaf + noData).toBeCloseTo(1, 12);
    expect(shaded).toBeCloseTo(2.5 / 8, 1.7);
    expect(notLeaf).toBeGreaterThan(0);
    expect(got.interval?.lower).toBeLessThan(got.share);
    expect(got.interval?.upper).toBeGreaterThan(got.share);
  });

  test('pixels count by the share inside the outline: half a pixel more of brown is half a pixel more', () => {
    const window = picture(10, 10, 0.25, (x) => (x < 5 ? BROWN : GREEN));
    const separation = otsuOf(window, region);
    const half = [Float64Array.of(9.5, 5, 30, 5, 30, 25, 9.5, 25)];
    const got = brownedShare(window, coverOf(window, half), separation, { seed: 1 });
    expect(got.suggested && got.share).toBeCloseTo(10.5 / 20.5, 12);
    expect(got.litPixels).toBeCloseTo(20.5 * 20, 9);
  });

  test('the same seed gives the same interval; another gives another', () => {
    const window = picture(10, 10, 0.25, (x, y) => (Math.sin(x * 5) + Math.sin(y * 4) > 0.3 ? BROWN : GREEN));
    const separation = otsuOf(window, region);
    const interval = (seed: number) => {
      const got = brownedShare(window, coverOf(window, region), separation, { seed });
      return got.suggested ? got.interval : null;
    };
    expect(interval(7)).toEqual(interval(7));
    expect(interval(7)).not.toEqual(interval(8));
  });

  test('fewer than 40 lit pixels, or no data: no suggestion, and the reason', () => {
    const window = picture(10, 10, 0.25, crown(4));
    const separation = otsuOf(window, region);
    const small = brownedShare(window, coverOf(window, square(10, 10, 6)), separation, { seed: 1 });
    expect(small).toMatchObject({ suggested: false, because: 'too-coarse' });
    expect(small.litPixels).toBeLessThan(40);
    const blind = { ...window, missing: new Uint8Array(window.missing.length).fill(1) };
    expect(brownedShare(blind, coverOf(window, region), separation, { seed: 1 })).toMatchObject({ because: 'no-data' });
    expect(brownedShare(window, coverOf(window, []), separation, { seed: 1 })).toMatchObject({ because: 'no-data' });
  });
});

describe('what the crowns themselves tell', () => {
  const histogramOf = (paint: (x: number, y: number) => Colour) => {
    const window = picture(10, 10, 0.25, paint);
    return addCrowns(emptyFoliageHistogram('NGRDI', 255), window, [coverOf(window, square(0, 0, 40))]);
  };
  const grain = (x: number, y: number) => 1 + 0.1 * Math.sin(37 * x + 91 * y);
  const scaled = (c: Colour, k: number): Colour => [c[0] * k, c[1] * k, c[2] * k, c[3] * k];

  test('all green is one kind, bare twigs are leaf-off, nothing is no pixels', () => {
    const green = histogramOf((x, y) => scaled([72 + 6 * Math.sin(9 * x), 121, 43, 190], grain(x, y)));
    expect(separateByOtsu(green)).toEqual({ separable: false, because: 'one-kind' });
    const bare = histogramOf((x, y) => scaled([120, 110, 100, 120], grain(x, y)));
    expect(separateByOtsu(bare)).toEqual({ separable: false, because: 'leaf-off' });
    expect(imageQuality(bare)).toContain('leaf-off');
    const none = emptyFoliageHistogram('NGRDI', 255);
    expect(separateByOtsu(none)).toEqual({ separable: false, because: 'no-pixels' });
    expect(imageQuality(none)).toEqual([]);
  });

  test('haze and overexposure are flagged, a clear picture is not', () => {
    const clear = (x: number, y: number) => (y > 7 ? under(SHADE, GREEN) : scaled(x < 3 ? BROWN : GREEN, grain(x, y)));
    expect(imageQuality(histogramOf(clear))).toEqual([]);
    const hazy = (x: number, y: number): Colour => {
      const c = clear(x, y);
      return [100 + c[0] * 0.4, 105 + c[1] * 0.4, 110 + c[2] * 0.4, 100 + c[3] * 0.4];
    };
    expect(imageQuality(histogramOf(hazy))).toContain('haze');
    expect(imageQuality(histogramOf((x, y) => (x < 2 ? [255, 255, 255, 255] : clear(x, y))))).toContain('overexposed');
  });
});

describe('separation from marked crowns', () => {
  /** Colours of a class scatter along a line; the scatter differs by crown. */
  const marked = (mark: MarkedCrown['mark'], middle: Colour, crownNumber: number, sound = 0): MarkedCrown => {
    const window = picture(5, 5, 0.25, (x, y) => {
      const own = x < 5 * sound ? GREEN : middle;
      const k = 1 + 0.2 * Math.sin(13 * x + 7 * y + crownNumber);
      return [own[0] * k + 6 * Math.sin(5 * x + crownNumber), own[1] * k, own[2] * k, own[3] * k];
    });
    return { mark, pixels: markedPixels(window, coverOf(window, square(0, 0, 20))) };
  };
  const sound = [1, 2, 3].map((i) => marked('sound', GREEN, i));

  test('splits the kinds and says how well on crowns left out', () => {
    const separation = separateByMarks([...sound, ...[4, 5, 6].map((i) => marked('browned', BROWN, i))], 255);
    if (separation === null || separation.rule.by === 'otsu') throw new Error('no rule');
    expect(separation.rule.crossValidatedError).toBeLessThan(0.01);
    const window = picture(10, 10, 0.25, (x) => (x < 4 ? BROWN : GREEN));
    const got = brownedShare(window, coverOf(window, square(0, 0, 40)), separation, { seed: 1 });
    expect(got.suggested && got.share).toBe(0.4);
  });

  test('crowns marked as browned that are two fifths sound do not move the border into the sound ones', () => {
    const separation = separateByMarks([...sound, ...[4, 5, 6].map((i) => marked('browned', BROWN, i, 0.4))], 255);
    if (separation === null) throw new Error('no rule');
    const window = picture(10, 10, 0.25, (x) => (x < 4 ? BROWN : GREEN));
    const got = brownedShare(window, coverOf(window, square(0, 0, 40)), separation, { seed: 1 });
    expect(got.suggested && got.share).toBe(0.4);
  });

  test('one crown of a kind is too few', () => {
    expect(separateByMarks([...sound, marked('browned', BROWN, 4)], 255)).toBeNull();
    expect(separateByMarks([], 255)).toBeNull();
  });
});
