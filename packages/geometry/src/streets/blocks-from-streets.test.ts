import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { regionArea } from '../outline/region-measures.ts';
import { blocksFromStreets } from './blocks-from-streets.ts';
import { squareCells } from './square-cells.ts';

const line = (...numbers: number[]) => Float64Array.from(numbers);
const areas = (lines: Float64Array[], minAreaM2 = 0) =>
  blocksFromStreets(lines, { minAreaM2 }).blocks.map((block) => Math.round(regionArea(block) * 1000) / 1000);

/** Three by two blocks of 100 m × 60 m, streets running 20 m past the last crossing. */
const GRID = [...[0, 60, 120].map((y) => line(-20, y, 320, y)), ...[0, 100, 200, 300].map((x) => line(x, -20, x, 140))];

describe('faces of the network', () => {
  test('a grid with dead ends: six blocks from south-west to north-east', () => {
    const { blocks, network, findings } = blocksFromStreets(GRID, { minAreaM2: 200 });
    expect(blocks.map(regionArea)).toEqual([6000, 6000, 6000, 6000, 6000, 6000]);
    expect([...blocks[0][0]]).toEqual([0, 0, 100, 0, 100, 60, 0, 60]);
    expect([...blocks[5][0]]).toEqual([200, 60, 300, 60, 300, 120, 200, 120]);
    expect(findings).toEqual([]);
    expect(network).toMatchObject({ nodes: 12, edges: 17, faces: 6, parts: 1, facesTooSmall: 0 });
  });

  test('a street end 0.4 m short is joined, one 0.6 m short is a dead end', () => {
    const frame = line(0, 0, 90, 0, 90, 60, 0, 60, 0, 0);
    expect(areas([frame, line(30, 0, 30, 59.6)])).toEqual([1800, 3600]);
    expect(areas([frame, line(30, 0, 30, 59.4)])).toEqual([5400]);
    expect(blocksFromStreets([frame, line(30, 0.3, 30, 59.6)], { minAreaM2: 0 }).network.gapsClosed).toBe(2);
  });

  test('two ends that miss each other are joined', () => {
    expect(areas([line(0, 0, 50, 0, 50, 50), line(50.2, 50.1, 0, 50, 0, 0.3)])[0]).toBeCloseTo(2500, -2);
  });

  test('a loop at the end of a cul-de-sac is a block and a hole in the block around it', () => {
    const streets = [line(0, 0, 100, 0, 100, 100, 0, 100, 0, 0), line(50, 0, 50, 40, 60, 50, 50, 60, 40, 50, 50, 40)];
    const { blocks } = blocksFromStreets(streets, { minAreaM2: 0 });
    expect(blocks.map((block) => block.length)).toEqual([2, 1]);
    expect(blocks.map(regionArea)).toEqual([10_000 - 200, 200]);
  });

  test('streets in parts: a square within a square within a square', () => {
    const square = (h: number) => line(-h, -h, h, -h, h, h, -h, h, -h, -h);
    const { blocks, network } = blocksFromStreets([10, 20, 30].map(square), { minAreaM2: 0 });
    expect(blocks.map(regionArea).sort((a, b) => a - b)).toEqual([400, 1200, 2000]);
    expect(network.facesM2).toBe(3600);
    expect(network.enclosedM2).toBe(3600);
  });

  test('loops in contact at one crossing are two blocks', () => {
    expect(areas([line(0, 0, 10, 10, 20, 0, 10, -10, 0, 0), line(20, 0, 30, 10, 40, 0, 30, -10, 20, 0)])).toEqual([
      200, 200,
    ]);
  });

  test('overlapping and repeated lines change nothing', () => {
    const again = [...GRID, ...GRID.map((street) => street.slice().reverse()).map(swapped), line(50, 0, 250, 0)];
    expect(areas(again)).toEqual(areas(GRID));
  });

  test('faces below the least area are left out and counted', () => {
    const { blocks, network } = blocksFromStreets([...GRID, line(0, 1, 300, 1)], { minAreaM2: 200 });
    expect(blocks).toHaveLength(6);
    expect(network.facesTooSmall).toBe(3);
    expect(network.facesM2).toBeCloseTo(36_000, 6);
  });
});

/** A reversed array holds y before x: put right. */
function swapped(reversedLine: Float64Array): Float64Array {
  return reversedLine.map((_, i) => reversedLine[i % 2 === 0 ? i + 1 : i - 1]);
}

describe('laws', () => {
  const street = fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 })), {
    minLength: 2,
    maxLength: 5,
  });
  const town = fc
    .array(street, { minLength: 1, maxLength: 25 })
    .map((streets) => streets.map((s) => line(...s.flat())));

  test('faces tile what the streets enclose, and V − E + F = 1 + C (Euler)', () => {
    fc.assert(
      fc.property(town, (streets) => {
        const { network } = blocksFromStreets(streets, { minAreaM2: 0 });
        expect(network.nodes - network.edges + network.faces + 1).toBe(1 + network.parts);
        expect(Math.abs(network.facesM2 - network.enclosedM2)).toBeLessThanOrEqual(1e-9 * (1 + network.enclosedM2));
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('order and direction of the streets change no digit', () => {
    fc.assert(
      fc.property(town, (streets) => {
        const other = streets.map((s, i) => (i % 2 === 0 ? swapped(s.slice().reverse()) : s)).reverse();
        const options = { minAreaM2: 10 };
        expect(blocksFromStreets(other, options).blocks).toEqual(blocksFromStreets(streets, options).blocks);
      }),
      { seed: 12, numRuns: 200 },
    );
  });
});

describe('nothing enclosed', () => {
  test.each([
    ['no streets', []],
    ['one street', [line(0, 0, 50, 50)]],
    ['a tree of dead ends', [line(0, 0, 100, 0), line(50, 0, 50, 80), line(50, 40, 90, 60)]],
  ])('%s: a finding', (_, streets) => {
    const { blocks, findings } = blocksFromStreets(streets, { minAreaM2: 200 });
    expect(blocks).toEqual([]);
    expect(findings.map(({ code }) => code)).toEqual(['streets-enclose-nothing']);
  });

  test('lines that cannot be used are named by their place', () => {
    const { blocks, findings } = blocksFromStreets([line(1, 1, 1, 1), line(0, Number.NaN, 4, 4), ...GRID], {
      minAreaM2: 200,
    });
    expect(blocks).toHaveLength(6);
    expect(findings.map(({ code, where }) => [code, where.feature])).toEqual([
      ['line-too-short', '#1'],
      ['coordinates-not-finite', '#2'],
    ]);
  });

  test('misuse', () => {
    expect(() => blocksFromStreets(GRID, { minAreaM2: Number.NaN })).toThrow(RangeError);
    expect(() => blocksFromStreets(GRID, { minAreaM2: 1, gapM: -1 })).toThrow(RangeError);
  });
});

describe('square cells', () => {
  test('cover the extent, row by row from the south-west, on multiples of the side', () => {
    const cells = squareCells({ minX: -30, minY: 5, maxX: 150, maxY: 60 }, 100);
    expect(cells.map(([ring]) => [ring[0], ring[1]])).toEqual([
      [-100, 0],
      [0, 0],
      [100, 0],
    ]);
    expect(cells.map(regionArea)).toEqual([10_000, 10_000, 10_000]);
  });

  test('a point gets a cell, nothing gets none, a mistaken extent is refused', () => {
    expect(squareCells({ minX: 5, minY: 5, maxX: 5, maxY: 5 }, 100)).toHaveLength(1);
    expect(squareCells({ minX: 1, minY: 1, maxX: 0, maxY: 0 }, 100)).toEqual([]);
    expect(() => squareCells({ minX: 0, minY: 0, maxX: Number.POSITIVE_INFINITY, maxY: 1 }, 100)).toThrow(RangeError);
    expect(() => squareCells({ minX: 0, minY: 0, maxX: 1, maxY: 1 }, 0)).toThrow(RangeError);
  });
});
