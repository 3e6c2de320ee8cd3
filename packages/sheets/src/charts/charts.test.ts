import { describe, expect, test } from 'vitest';
import { axisOf, placeOn } from './axis.ts';
import { intervalChart } from './interval-chart.ts';
import { pointMap } from './point-map.ts';
import { scatterChart } from './scatter-chart.ts';

const WORDS = { title: 'A < B & C', description: 'What "it" shows', note: 'invented' };

/** Well formed enough for a browser: every element closed, no number that is none. */
function expectWhole(svg: string): void {
  const open: string[] = [];
  for (const [, closing, name, self] of svg.matchAll(/<(\/?)([a-z]+)[^>]*?(\/?)>/g)) {
    if (closing === '/') expect(open.pop()).toBe(name);
    else if (self !== '/') open.push(name);
  }
  expect(open).toEqual([]);
  expect(svg).not.toMatch(/NaN|undefined|Infinity|null/);
  expect(svg).toContain('A &lt; B &amp; C');
}

describe('axes', () => {
  test('have round ticks that hold all values', () => {
    expect(axisOf([3, 47]).ticks.map(({ text }) => text)).toEqual(['0', '10', '20', '30', '40', '50']);
    expect(axisOf([-1200, 800]).ticks.map(({ text }) => text)).toEqual([
      '−1,500',
      '−1,000',
      '−500',
      '0',
      '500',
      '1,000',
    ]);
    expect(axisOf([0.012, 0.047]).ticks[0].text).toBe('0.01');
  });

  test('of no values, one value, zeros have a length', () => {
    for (const values of [[], [7], [0, 0], [-3, -3]]) {
      const axis = axisOf(values);
      expect(axis.to).toBeGreaterThan(axis.from);
      for (const value of values) {
        expect(placeOn(axis, value, [0, 100])).toBeGreaterThanOrEqual(0);
        expect(placeOn(axis, value, [0, 100])).toBeLessThanOrEqual(100);
      }
    }
  });

  test('stay within limits that values cannot pass', () => {
    expect(axisOf([2, 98], { from: 0, to: 100 })).toMatchObject({ from: 0, to: 100 });
  });

  test('refuse what is no number', () => {
    expect(() => axisOf([1, Number.NaN])).toThrow(RangeError);
    expect(() => axisOf([1, Number.POSITIVE_INFINITY])).toThrow(RangeError);
  });
});

describe('charts', () => {
  test('scatter, with and without points', () => {
    const points = [
      { x: 1, y: 2, label: 'T<1>' },
      { x: 3, y: 5 },
    ];
    const lines = [
      {
        points: [
          [0, 0],
          [4, 6],
        ] as const,
        label: 'a line',
        dashed: true,
      },
    ];
    expectWhole(scatterChart({ ...WORDS, across: 'x', up: 'y', points, lines }));
    expectWhole(scatterChart({ ...WORDS, across: 'x', up: 'y', points: [] }));
    expect(() => scatterChart({ ...WORDS, across: 'x', up: 'y', points: [{ x: Number.NaN, y: 1 }] })).toThrow(
      RangeError,
    );
  });

  test('intervals, with what is undefined said in words', () => {
    const svg = intervalChart({
      ...WORDS,
      across: 'm²',
      anchor: 0,
      rows: [
        { label: 'B1', value: 5, inner: [4, 6], outer: [3, 8], before: 2 },
        { label: 'B2', value: null, instead: 'no trees' },
      ],
    });
    expectWhole(svg);
    expect(svg).toContain('no trees');
    expectWhole(intervalChart({ ...WORDS, across: 'm²', rows: [] }));
  });

  test('point map keeps shape: as far east as north', () => {
    const words = { hot: 'hot', cold: 'cold', none: 'none' };
    const points = [
      { x: 0, y: 0, spot: 'none' as const },
      { x: 100, y: 100, spot: 'hot' as const },
      { x: 0, y: 100, spot: 'cold' as const },
    ];
    const svg = pointMap({ ...WORDS, points, words });
    expectWhole(svg);
    const [sw, ne] = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map((m) => [Number(m[1]), Number(m[2])]);
    expect(ne[0] - sw[0]).toBeCloseTo(sw[1] - ne[1], 1);
    expectWhole(pointMap({ ...WORDS, points: [], words }));
  });
});
