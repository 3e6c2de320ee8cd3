import { PAVEMENT_KINDS } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { figuresAt } from './area-columns.ts';
import { crownFiguresAt } from './crown-columns.ts';
import { type HandCell, handLedger } from './hand-ledger.ts';
import { reckonLedgers } from './ledgers.ts';
import type { DoseField } from './stained-share.ts';

const SHARES = [1, 0.5, 0.25];
const field = (cells: readonly HandCell[], dose: readonly number[]): DoseField => ({
  ledger: handLedger(cells),
  layerShare: SHARES,
  dose: Float64Array.from(dose),
});
const sidewalk = PAVEMENT_KINDS.indexOf('sidewalk');
const plaza = PAVEMENT_KINDS.indexOf('plaza');
const keys = { pieceKind: Uint8Array.of(sidewalk, plaza), blockCount: 2 };

describe('stained area of a hand-made ledger', () => {
  // Worked by hand; the exponentials from the closed form 1 − e^−D.
  const cells: HandCell[] = [
    { piece: 0, block: 0, areaM2: 30 },
    { piece: 0, block: 0, areaM2: 10, under: [[0, 0]] },
    { piece: 0, block: 0, areaM2: 4, under: [[0, 1]] },
    {
      piece: 0,
      block: 0,
      areaM2: 2,
      under: [
        [0, 0],
        [1, 0],
      ],
    },
    { piece: 1, block: 1, areaM2: 5, under: [[1, 2]] },
    { piece: 1, areaM2: 7, under: [[2, 0]] },
  ];
  const stain = reckonLedgers(field(cells, [0.5, 0.3, 0]), keys);

  test('per block, per kind, outside and in total', () => {
    const b0 = 10 * (1 - Math.exp(-0.5)) + 4 * (1 - Math.exp(-0.25)) + 2 * (1 - Math.exp(-0.8));
    const b1 = 5 * (1 - Math.exp(-0.075));
    expect(b0).toBeCloseTo(5.9208, 4);
    expect(figuresAt(stain.byBlock, 0)).toEqual({
      pavementM2: 46,
      driplineM2: 12,
      falloutM2: 16,
      stainedM2: { value: expect.closeTo(b0, 12), range80: null, range95: null },
    });
    expect(stain.byBlock.stainedM2[1]).toBeCloseTo(b1, 12);
    expect(figuresAt(stain.byBlock, 2)).toMatchObject({ pavementM2: 7, driplineM2: 7, falloutM2: 7 });
    expect(stain.byBlock.stainedM2[2]).toBe(0);
    expect(stain.byBlockAndKind.stainedM2[PAVEMENT_KINDS.length + plaza]).toBeCloseTo(b1, 12);
    expect(stain.byBlockAndKind.pavementM2[PAVEMENT_KINDS.length + sidewalk]).toBe(0);
    expect(stain.byPiece.pavementM2).toEqual(Float64Array.of(46, 12));
    expect(stain.total.stainedM2[0]).toBeCloseTo(b0 + b1, 12);
  });

  test('attribution is in proportion to dose and says who stains which block', () => {
    const shared = 2 * (1 - Math.exp(-0.8));
    const own = 10 * (1 - Math.exp(-0.5)) + 4 * (1 - Math.exp(-0.25));
    expect(stain.crowns.stainedM2[0]).toBeCloseTo(own + (shared * 5) / 8, 12);
    expect(stain.crowns.stainedM2[1]).toBeCloseTo((shared * 3) / 8 + 5 * (1 - Math.exp(-0.075)), 12);
    expect(crownFiguresAt(stain.crowns, 2)).toMatchObject({ driplineM2: 7, falloutM2: 7, stainedM2: { value: 0 } });
    expect([...stain.blame.block]).toEqual([0, 0, 1]);
    expect([...stain.blame.zone]).toEqual([0, 1, 1]);
    expect(stain.blame.stainedM2[2]).toBeCloseTo(stain.byBlock.stainedM2[1], 12);
  });

  test('an empty ledger gives zeros', () => {
    const nothing = reckonLedgers(field([], []), { pieceKind: new Uint8Array(0), blockCount: 0 });
    expect(figuresAt(nothing.total, 0)).toEqual({
      pavementM2: 0,
      driplineM2: 0,
      falloutM2: 0,
      stainedM2: { value: 0, range80: null, range95: null },
    });
  });

  test('a dose too small for 1 − exp to see still stains', () => {
    const faint = reckonLedgers(field([{ areaM2: 1, under: [[0, 0]] }], [1e-18]), keys);
    expect(faint.total.stainedM2[0]).toBe(1e-18);
  });

  test.each([Number.NaN, -0.1, Number.POSITIVE_INFINITY])('a dose of %d is refused by name', (dose) => {
    expect(() => reckonLedgers(field(cells, [dose, 0, 0]), keys)).toThrow(/dose of zone 0/);
  });

  test('a missing dose or ring share is refused', () => {
    expect(() => reckonLedgers(field(cells, [1, 1]), keys)).toThrow(RangeError);
    expect(() => reckonLedgers({ ...field(cells, [1, 1, 1]), layerShare: [1, 0.5] }, keys)).toThrow(RangeError);
  });
});
