/** Laws of the ledgers on random towns: they balance, and nothing depends on where, how turned or in what order things are. */
import { reckonOverlay } from '@crownfall/geometry';
import { balancedSum, reckonLedgers, type StainLedgers, savedByTreating, whatIf } from '@crownfall/stain';
import { describe, expect, test } from 'vitest';
import { LAYER_SHARES, movedTown, randomTown, seeded, type Town } from './ledger-town.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];
/** The bound that MODEL's ledgers promise, relative. */
const BALANCE = 1e-9;

function reckon(town: Town): StainLedgers {
  const ledger = reckonOverlay(town);
  return reckonLedgers(
    { ledger, layerShare: LAYER_SHARES, dose: town.dose },
    { pieceKind: town.pieceKind, blockCount: town.blocks.length },
  );
}
const expectSame = (got: number, expected: number, scale = expected) =>
  expect(Math.abs(got - expected)).toBeLessThanOrEqual(BALANCE * Math.max(1, Math.abs(scale)));
const expectAllSame = (got: Float64Array, expected: Float64Array) => {
  expect(got.length).toBe(expected.length);
  got.forEach((value, i) => {
    expectSame(value, expected[i]);
  });
};

describe.each(SEEDS)('random town %d', (seed) => {
  const town = randomTown(seed);
  const stain = reckon(town);

  test('there is something to reckon', () => {
    expect(stain.total.stainedM2[0]).toBeGreaterThan(50);
    expect(stain.byBlock.pavementM2[town.blocks.length]).toBeGreaterThan(0);
  });

  test('crowns, blocks with the outside, pieces and kinds each sum to the total', () => {
    for (const figure of ['pavementM2', 'driplineM2', 'falloutM2', 'stainedM2'] as const) {
      const total = stain.total[figure][0];
      for (const by of [stain.byBlock, stain.byPiece, stain.byBlockAndKind]) expectSame(balancedSum(by[figure]), total);
    }
    expectSame(balancedSum(stain.crowns.stainedM2), stain.total.stainedM2[0]);
  });

  test('what is attributed in a block sums to the block, and per crown to the crown', () => {
    const { blame } = stain;
    for (let block = -1; block < town.blocks.length; block++) {
      const here = blame.stainedM2.filter((_, row) => blame.block[row] === block);
      expectSame(balancedSum(here), stain.byBlock.stainedM2[block < 0 ? town.blocks.length : block]);
    }
    for (let zone = 0; zone < town.zones.length; zone++) {
      expectSame(
        balancedSum(blame.stainedM2.filter((_, row) => blame.zone[row] === zone)),
        stain.crowns.stainedM2[zone],
      );
    }
  });

  test('stained ≤ fallout, drip line ≤ fallout, fallout ≤ pavement, in every row', () => {
    for (const by of [stain.total, stain.byBlock, stain.byPiece, stain.byBlockAndKind]) {
      by.pavementM2.forEach((pavementM2, row) => {
        const slack = BALANCE * Math.max(1, pavementM2);
        expect(by.falloutM2[row]).toBeLessThanOrEqual(pavementM2 + slack);
        expect(by.driplineM2[row]).toBeLessThanOrEqual(by.falloutM2[row] + slack);
        expect(by.stainedM2[row]).toBeLessThanOrEqual(by.falloutM2[row] + slack);
        expect(by.stainedM2[row]).toBeGreaterThanOrEqual(-slack);
      });
    }
  });

  test('treating a tree lowers the stain by its marginal effect, and by no more than what is attributed to it', () => {
    const saved = savedByTreating(stain.field);
    for (let zone = 0; zone < town.zones.length; zone += 5) {
      const dose = town.dose.slice();
      dose[zone] = 0;
      const anew = reckonLedgers({ ...stain.field, dose }, stain.keys);
      const fall = stain.total.stainedM2[0] - anew.total.stainedM2[0];
      expectSame(saved[zone], fall, stain.total.stainedM2[0]);
      expectSame(-whatIf(stain.field, new Map([[zone, 0]])).changeM2, fall, stain.total.stainedM2[0]);
      expect(saved[zone]).toBeLessThanOrEqual(stain.crowns.stainedM2[zone] + BALANCE);
      expect(anew.crowns.stainedM2[zone]).toBe(0);
    }
  });

  test('moved by 500 km, or turned, every figure stays', () => {
    const [cos, sin] = [Math.cos(0.7), Math.sin(0.7)];
    for (const there of [
      movedTown(town, (x, y) => [x + 500_000, y - 500_000]),
      movedTown(town, (x, y) => [cos * x - sin * y, sin * x + cos * y]),
    ]) {
      const moved = reckon(there);
      for (const figure of ['pavementM2', 'driplineM2', 'falloutM2', 'stainedM2'] as const) {
        expectAllSame(moved.byBlockAndKind[figure], stain.byBlockAndKind[figure]);
      }
      expectAllSame(moved.crowns.stainedM2, stain.crowns.stainedM2);
    }
  });

  test('the order of crowns and blocks has no influence', () => {
    const random = seeded(1000 + seed);
    const crownOrder = shuffled(town.zones.length, random);
    const blockOrder = shuffled(town.blocks.length, random);
    const other = reckon({
      ...town,
      zones: crownOrder.map((zone) => town.zones[zone]),
      dose: Float64Array.from(crownOrder, (zone) => town.dose[zone]),
      blocks: blockOrder.map((block) => town.blocks[block]),
    });
    crownOrder.forEach((was, now) => {
      expectSame(other.crowns.stainedM2[now], stain.crowns.stainedM2[was]);
      expectSame(other.crowns.falloutM2[now], stain.crowns.falloutM2[was]);
    });
    blockOrder.forEach((was, now) => {
      expectSame(other.byBlock.stainedM2[now], stain.byBlock.stainedM2[was]);
      expectSame(other.byBlock.driplineM2[now], stain.byBlock.driplineM2[was]);
    });
  });

  test('a block taken away changes no other block', () => {
    const fewer = reckon({ ...town, blocks: town.blocks.slice(0, -1) });
    for (let block = 0; block < town.blocks.length - 1; block++) {
      expectSame(fewer.byBlock.stainedM2[block], stain.byBlock.stainedM2[block]);
    }
    expectSame(fewer.total.stainedM2[0], stain.total.stainedM2[0]);
  });
});

function shuffled(count: number, random: () => number): number[] {
  const order = [...Array(count).keys()];
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor((i + 1) * random());
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}
