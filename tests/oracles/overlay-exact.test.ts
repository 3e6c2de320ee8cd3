/** The overlay against the exact judge: a seeded part of overlay-exact.ts, and the special cases at every placing. */
import { type OverlayInput, type Region, reckonOverlay } from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { exactAreas } from './compare-areas.ts';
import { areasByCover, cellsOf, exactCells, WRONG_M2, worstCell } from './exact-area.ts';
import { gridNeighbourhood, PLACINGS } from './grid-neighbourhood.ts';
import { overlayAreas } from './overlay-case.ts';
import { lobed, specialCases } from './special-cases.ts';

/** Far from the numbers of the long run. */
const FIRST = 3_000_000_000;
const NEIGHBOURHOODS = 960;

function expectRight(input: OverlayInput, name: string): void {
  const { cell, offM2 } = worstCell(cellsOf(reckonOverlay(input)), exactCells(input));
  expect(offM2, `${name}, cell ${cell}`).toBeLessThan(WRONG_M2);
}

describe('the judge itself', () => {
  const square = (x: number, y: number, side: number): Region => [
    Float64Array.of(x, y, x + side, y, x + side, y + side, x, y + side),
  ];

  test('squares, and coordinates far smaller and larger than one another', () => {
    expect(areasByCover([square(0, 0, 2), square(1, 1, 2)])).toEqual(
      new Map([
        ['0', 3],
        ['0,1', 1],
        ['1', 3],
      ]),
    );
    expect(areasByCover([square(2 ** 30, 0, 2 ** -20), square(0, 0, 2 ** -40)])).toEqual(
      new Map([
        ['0', 2 ** -40],
        ['1', 2 ** -80],
      ]),
    );
  });

  test('a pentagram by both rules: the middle winds twice', () => {
    const points = [0, 2, 4, 1, 3].flatMap((k) => [Math.sin((k * Math.PI * 2) / 5), Math.cos((k * Math.PI * 2) / 5)]);
    const area = (rule: 'non-zero' | 'even-odd') => areasByCover([[Float64Array.from(points)]], rule).get('0');
    // Inner pentagon of circumradius 1/φ²; the decagonal outline has vertices at 1 and 1/φ² by turns, φ = (1 + √5)/2.
    const inner = (2.5 * Math.sin((72 * Math.PI) / 180)) / ((1 + Math.sqrt(5)) / 2) ** 4;
    const whole = 10 * 0.5 * ((Math.sqrt(5) - 1) / 2) ** 2 * Math.sin(Math.PI / 5);
    expect(area('non-zero')).toBeCloseTo(whole, 14);
    expect(area('even-odd')).toBeCloseTo(whole - inner, 14);
  });

  test('a coordinate that is no number is refused', () => {
    expect(() => areasByCover([[Float64Array.of(0, 0, 1, Number.NaN, 1, 1)]])).toThrow(RangeError);
  });
});

describe('no wrong area', () => {
  test(`${NEIGHBOURHOODS} neighbourhoods of rectangles on a grid, in ${PLACINGS.length} placings`, () => {
    for (let number = FIRST; number < FIRST + NEIGHBOURHOODS; number++) {
      const placing = PLACINGS[number % PLACINGS.length];
      expectRight(
        gridNeighbourhood(new RandomStream(4, number), placing),
        `neighbourhood ${number} ${JSON.stringify(placing)}`,
      );
    }
  });

  test.each(Object.keys(specialCases(PLACINGS[0])))('%s', (name) => {
    for (const placing of PLACINGS) expectRight(specialCases(placing)[name], JSON.stringify(placing));
  });

  test.each([3, 10, 1000, 100_000])('a crown of %d vertices', (n) => {
    const strip: Region = [Float64Array.of(0, -1, 30, -1, 30, 1.5, 0, 1.5)];
    expectRight({ pieces: [strip], blocks: [], zones: [{ layers: [lobed(n, 9, 11, 2)] }] }, `${n} vertices`);
    expectRight(
      { pieces: [lobed(n, 9, 11, 2)], blocks: [], zones: [{ layers: [strip] }] },
      `${n} vertices, as pavement`,
    );
  });

  test('forty crowns over one point', () => {
    const pavement: Region = [Float64Array.of(-4, -2, 4, -2, 4, 2, -4, 2)];
    const crowns = Array.from({ length: 40 }, (_, i) =>
      lobed(5 + (i % 4), 3 + i / 50, Math.sin(i) / 2, Math.cos(i) / 2),
    );
    expectRight({ pieces: [pavement], blocks: [], zones: crowns.map((crown) => ({ layers: [crown] })) }, 'forty');
  });

  test('two hundred crowns over one point: each on the pavement, by itself', () => {
    const pavement: Region = [Float64Array.of(-4, -2, 4, -2, 4, 2, -4, 2)];
    const crowns = Array.from({ length: 200 }, (_, i) => lobed(24, 3 + i / 100, Math.sin(i), Math.cos(i)));
    const got = overlayAreas({ pavement, crowns });
    crowns.forEach((crown, i) => {
      expect(Math.abs(got[i] - exactAreas({ pavement, crowns: [crown] })[0])).toBeLessThan(200 * WRONG_M2);
    });
  });
});
