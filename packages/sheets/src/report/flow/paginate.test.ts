import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FlowBox, paginate } from './paginate.ts';

const PAGE_MM = 100;
const box = (heightMm: number, more: Partial<FlowBox> = {}): FlowBox => ({ heightMm, gapMm: 0, ...more });
const tops = (boxes: readonly FlowBox[]) =>
  paginate(boxes, PAGE_MM).map((page) => page.map(({ index, topMm }) => [index, topMm]));

describe('paginate, cases worked by hand', () => {
  test('boxes fill a page to its last millimetre; gaps vanish at the top', () => {
    expect(tops([box(40), box(50, { gapMm: 10 }), box(30, { gapMm: 10 })])).toEqual([
      [
        [0, 0],
        [1, 50],
      ],
      [[2, 0]],
    ]);
  });

  test('a heading goes over with what it heads', () => {
    expect(tops([box(80), box(10, { withNext: true }), box(15)])).toEqual([
      [[0, 0]],
      [
        [1, 0],
        [2, 10],
      ],
    ]);
  });

  test('a table goes on below its head', () => {
    const row = box(30, { headMm: 10 });
    const pages = paginate([box(10, { withNext: true }), row, row, row, row], PAGE_MM);
    expect(pages.map((page) => page.map(({ topMm }) => topMm))).toEqual([[0, 10, 40, 70], [10]]);
    expect(pages[1][0].headAgain).toBe(true);
    expect(pages[0].some(({ headAgain }) => headAgain)).toBe(false);
  });

  test('a new page is started where one is asked for, and no empty one before it', () => {
    expect(tops([box(10, { newPage: true }), box(10), box(10, { newPage: true })]).map((page) => page.length)).toEqual([
      2, 1,
    ]);
  });

  test('what belongs together but is taller than a page breaks; a single tall box stands alone', () => {
    const chained = [box(60, { withNext: true }), box(60, { withNext: true }), box(10)];
    expect(tops(chained).map((page) => page.length)).toEqual([1, 2]);
    expect(tops([box(20), box(150), box(20)]).map((page) => page.length)).toEqual([1, 1, 1]);
  });

  test('nothing gives no page; impossible measures are refused', () => {
    expect(paginate([], PAGE_MM)).toEqual([]);
    expect(() => paginate([box(1)], 0)).toThrow(RangeError);
    expect(() => paginate([box(-1)], PAGE_MM)).toThrow(RangeError);
    expect(() => paginate([box(Number.NaN)], PAGE_MM)).toThrow(RangeError);
  });
});

const anyBox: fc.Arbitrary<FlowBox> = fc.record(
  {
    heightMm: fc.double({ min: 0.5, max: 45, noNaN: true }),
    gapMm: fc.double({ min: 0, max: 8, noNaN: true }),
    withNext: fc.boolean(),
    newPage: fc.constantFrom(true, false, false, false, false, false),
    headMm: fc.double({ min: 1, max: 12, noNaN: true }),
  },
  { requiredKeys: ['heightMm', 'gapMm'] },
);

/** Rounding of sums of some dozens of heights. */
const ROUNDING_MM = 1e-6;

describe('paginate, laws on random boxes', () => {
  test('every box once and in order, none cut, none over another, none beyond the foot', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 60 }), (boxes) => {
        const pages = paginate(boxes, PAGE_MM);
        expect(pages.flat().map(({ index }) => index)).toEqual(boxes.map((_, i) => i));
        for (const page of pages) {
          let foot = 0;
          for (const { index, topMm } of page) {
            expect(topMm).toBeGreaterThanOrEqual(foot - ROUNDING_MM);
            foot = topMm + boxes[index].heightMm;
            expect(foot).toBeLessThanOrEqual(PAGE_MM + ROUNDING_MM);
          }
        }
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  test('no heading ends a page, unless what it stays with would not fit any page', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { maxLength: 60 }), (boxes) => {
        for (const page of paginate(boxes, PAGE_MM).slice(0, -1)) {
          const { index } = page[page.length - 1];
          if (boxes[index].withNext !== true || boxes[index + 1].newPage === true) continue;
          let start = index;
          while (start > 0 && boxes[start - 1].withNext === true && boxes[start].newPage !== true) start--;
          let end = index + 1;
          while (boxes[end].withNext === true && end + 1 < boxes.length && boxes[end + 1].newPage !== true) end++;
          const chain = boxes.slice(start, end + 1);
          const heights = chain.reduce((sum, each, i) => sum + each.heightMm + (i === 0 ? 0 : each.gapMm), 0);
          expect(heights + (chain[0].headMm ?? 0)).toBeGreaterThan(PAGE_MM - ROUNDING_MM);
        }
      }),
      { seed: 12, numRuns: 400 },
    );
  });

  test('a row that comes first on a page has its head above it, and room for it', () => {
    fc.assert(
      fc.property(fc.array(anyBox, { minLength: 1, maxLength: 60 }), (boxes) => {
        for (const [first] of paginate(boxes, PAGE_MM)) {
          const head = boxes[first.index].headMm;
          expect(first.headAgain).toBe(head !== undefined);
          expect(first.topMm).toBe(head ?? 0);
        }
      }),
      { seed: 13, numRuns: 200 },
    );
  });
});
