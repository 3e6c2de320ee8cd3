import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balancedSum } from './balanced-sum.ts';
import { type HandCell, handLedger } from './hand-ledger.ts';
import { type DoseField, stainedShares } from './stained-share.ts';
import { savedByTreating, whatIf, zoneCells } from './what-if.ts';

const ZONES = 6;
const SHARES = [1, 0.5, 0.25];
/** Two evaluations of the same sum in different order, areas up to 100 m² in up to 30 cells. */
const ROUNDING_M2 = 1e-10;

const someCells = fc.array(
  fc.record({
    piece: fc.integer({ min: 0, max: 3 }),
    block: fc.integer({ min: -1, max: 2 }),
    areaM2: fc.double({ min: 0, max: 100, noNaN: true }),
    under: fc
      .uniqueArray(fc.tuple(fc.integer({ min: 0, max: ZONES - 1 }), fc.integer({ min: 0, max: 2 })), {
        selector: ([zone]) => zone,
      })
      .map((cover) => cover.sort((a, b) => a[0] - b[0])),
  }),
  { maxLength: 30 },
);
const doses = fc.array(fc.double({ min: 0, max: 5, noNaN: true }), { minLength: ZONES, maxLength: ZONES });

const fieldOf = (cells: readonly HandCell[], dose: readonly number[]): DoseField => ({
  ledger: handLedger(cells),
  layerShare: SHARES,
  dose: Float64Array.from(dose),
});
const stainedM2 = (field: DoseField, keep: (cell: number) => boolean = () => true) => {
  const share = stainedShares(field);
  return balancedSum([...field.ledger.areaM2].map((areaM2, cell) => (keep(cell) ? areaM2 * share[cell] : 0)));
};

describe('what if', () => {
  // Law: a weighted sum over the touched cells equals reckoning everything anew.
  test('equals the difference of two full reckonings, in total and by block', () => {
    fc.assert(
      fc.property(someCells, doses, doses, fc.subarray([...Array(ZONES).keys()]), (cells, before, after, changed) => {
        const field = fieldOf(cells, before);
        const changes = new Map(changed.map((zone) => [zone, after[zone]]));
        const anew = fieldOf(
          cells,
          before.map((dose, zone) => changes.get(zone) ?? dose),
        );
        const effect = whatIf(field, changes);
        expect(Math.abs(effect.changeM2 - (stainedM2(anew) - stainedM2(field)))).toBeLessThan(ROUNDING_M2);
        for (const [block, changeM2] of effect.changeByBlock) {
          const here = (cell: number) => field.ledger.block[cell] === block;
          expect(Math.abs(changeM2 - (stainedM2(anew, here) - stainedM2(field, here)))).toBeLessThan(ROUNDING_M2);
        }
      }),
      { seed: 20260501, numRuns: 300 },
    );
  });

  test('treating each tree alone saves what the what-if of its dose 0 says', () => {
    fc.assert(
      fc.property(someCells, doses, (cells, dose) => {
        const field = fieldOf(cells, dose);
        const saved = savedByTreating(field);
        for (let zone = 0; zone < ZONES; zone++) {
          expect(Math.abs(saved[zone] + whatIf(field, new Map([[zone, 0]])).changeM2)).toBeLessThan(ROUNDING_M2);
        }
      }),
      { seed: 20260502, numRuns: 100 },
    );
  });

  // Closed form: 10 m² · (1 − e^−1) = 6.3212 m².
  test('one crown treated gives its whole stain back', () => {
    const field = fieldOf([{ areaM2: 10, under: [[0, 0]] }], [1]);
    expect(whatIf(field, new Map([[0, 0]])).changeM2).toBeCloseTo(-6.3212, 4);
    expect(whatIf(field, new Map()).changeM2).toBe(0);
  });

  test('very great doses neither overflow nor turn into NaN', () => {
    const field = fieldOf([{ areaM2: 10, under: [[0, 0]] }], [2000]);
    expect(whatIf(field, new Map([[0, 0]])).changeM2).toBe(-10);
    expect(whatIf(fieldOf([{ areaM2: 10, under: [[0, 0]] }], [0]), new Map([[0, 2000]])).changeM2).toBe(10);
  });

  test('a zone that is not there, or a negative dose, is refused', () => {
    const field = fieldOf([{ areaM2: 10, under: [[0, 0]] }], [1]);
    expect(() => whatIf(field, new Map([[3, 0]]))).toThrow(/zone below 1, got 3/);
    expect(() => whatIf(field, new Map([[0, -1]]))).toThrow(RangeError);
  });

  test('the cells under each zone are the covers, turned round', () => {
    const ledger = handLedger([
      { areaM2: 1, under: [[1, 0]] },
      { areaM2: 1 },
      {
        areaM2: 1,
        under: [
          [0, 2],
          [1, 1],
        ],
      },
    ]);
    expect(zoneCells(ledger, 3)).toEqual({ start: Int32Array.of(0, 1, 3, 3), cell: Int32Array.of(2, 0, 2) });
  });
});
