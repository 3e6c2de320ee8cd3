/** The streets of the invented town: rows from the waterfront inland, columns from west to east, a diagonal, a lane. */
import type { Point } from './loop.ts';

export interface StreetKind {
  readonly name: string;
  /** Kerb to kerb, m. */
  readonly width: number;
  readonly footTraffic: 'low' | 'medium' | 'high';
  /** Hosts by weight, as planted along it. */
  readonly hosts: readonly (readonly [string, number])[];
}

const OLIVE = 'Terminalia buceras';
const OAK = 'Quercus virginiana';
const PALM = 'Sabal palmetto';
const LIME = 'Tilia americana';
const MYRTLE = 'Lagerstroemia indica';
const MAHOGANY = 'Swietenia mahagoni';

export const STREETS: Readonly<Record<string, StreetKind>> = {
  R0: {
    name: 'Strand Parade',
    width: 9,
    footTraffic: 'high',
    hosts: [
      [PALM, 5],
      [OLIVE, 4],
      ['Coccoloba uvifera', 2],
    ],
  },
  R1: {
    name: 'Lantern Street',
    width: 9,
    footTraffic: 'high',
    hosts: [
      [OLIVE, 8],
      [PALM, 1],
      [OAK, 1],
    ],
  },
  R2: {
    name: 'Cistern Row',
    width: 7.5,
    footTraffic: 'medium',
    hosts: [
      [LIME, 6],
      [OLIVE, 2],
      [OAK, 2],
    ],
  },
  R3: {
    name: 'Almanac Street',
    width: 8.5,
    footTraffic: 'medium',
    hosts: [
      [OAK, 6],
      [OLIVE, 3],
      [PALM, 1],
    ],
  },
  R4: {
    name: 'Ropewalk',
    width: 7,
    footTraffic: 'low',
    hosts: [
      [OLIVE, 4],
      [MAHOGANY, 4],
      [MYRTLE, 2],
    ],
  },
  R5: {
    name: 'North Dyke Road',
    width: 7,
    footTraffic: 'low',
    hosts: [
      [OAK, 5],
      [PALM, 3],
      [MAHOGANY, 2],
    ],
  },
  C0: {
    name: 'Westmark Lane',
    width: 6.5,
    footTraffic: 'low',
    hosts: [
      [PALM, 4],
      [OAK, 4],
      [OLIVE, 1],
    ],
  },
  C1: {
    name: 'Ferrier Street',
    width: 7.5,
    footTraffic: 'medium',
    hosts: [
      [MYRTLE, 5],
      [OLIVE, 3],
      [OAK, 2],
    ],
  },
  C2: {
    name: 'Tally Street',
    width: 7.5,
    footTraffic: 'medium',
    hosts: [
      [OLIVE, 6],
      [LIME, 3],
      [PALM, 1],
    ],
  },
  C3: {
    name: 'Bellfounder Street',
    width: 7.5,
    footTraffic: 'medium',
    hosts: [
      [LIME, 5],
      [OLIVE, 4],
      [OAK, 1],
    ],
  },
  C4: {
    name: 'Quillon Street',
    width: 7,
    footTraffic: 'low',
    hosts: [
      [OAK, 5],
      [MYRTLE, 3],
      [OLIVE, 2],
    ],
  },
  C5: {
    name: 'Signal Street',
    width: 8,
    footTraffic: 'medium',
    hosts: [
      [OLIVE, 5],
      [MAHOGANY, 4],
      [PALM, 2],
    ],
  },
  C6: {
    name: 'Saltmarsh Street',
    width: 7,
    footTraffic: 'low',
    hosts: [
      [LIME, 4],
      [OAK, 4],
      [OLIVE, 2],
    ],
  },
  C7: {
    name: 'Heron Gate',
    width: 7,
    footTraffic: 'low',
    hosts: [
      [MYRTLE, 5],
      [PALM, 3],
      [OLIVE, 2],
    ],
  },
  C8: {
    name: 'Eastmark Lane',
    width: 6.5,
    footTraffic: 'low',
    hosts: [
      [OAK, 5],
      [PALM, 4],
      [OLIVE, 1],
    ],
  },
  D: {
    name: 'Caravel Avenue',
    width: 12,
    footTraffic: 'high',
    hosts: [
      [OLIVE, 9],
      [PALM, 1],
      [OAK, 1],
    ],
  },
  L: { name: 'Netmender’s Lane', width: 5, footTraffic: 'low', hosts: [[MYRTLE, 1]] },
};

/** Between seawall and carriageway of the waterfront street, m. */
export const PROMENADE = 6;

const STEP = 8;
const EAST = 920;

/** Height of row `j` at `x`: the waterfront swings, the rows behind it less and less. */
function rowHeight(j: number, x: number): number {
  const swing = 24 * Math.sin(x / 150 - 0.6) + 10 * Math.sin(x / 61);
  return (
    [0, 92, 176, 256, 347, 437][j] + swing * [1, 0.42, 0.14, 0, 0, 0][j] + x * [0, 0, 0.008, 0.016, 0.02, 0.012][j]
  );
}

/** The line of a row, a vertex every 8 m from beyond the west to beyond the east. */
export const ROW_LINES: readonly (readonly Point[])[] = [0, 1, 2, 3, 4, 5].map((j) =>
  Array.from(
    { length: (EAST + 2 * STEP) / STEP + 1 },
    (_, i) => [i * STEP - STEP, rowHeight(j, i * STEP - STEP)] as const,
  ),
);

interface ColumnLine {
  readonly at: Point;
  /** Metres east per metre north. */
  readonly lean: number;
}

/** The diagonal runs through the crossings of column i and row i, 1 to 5, so that it makes no slivers. */
export const DIAGONAL = { from: onRow(1, 112), lean: 1.39 };

function onRow(j: number, x: number): Point {
  return [x, heightOnRow(j, x)];
}

/** The row's own chord at `x`, not the curve: neighbours on both sides must share it. */
function heightOnRow(j: number, x: number): number {
  const line = ROW_LINES[j];
  const i = Math.floor((x - line[0][0]) / STEP);
  const t = (x - line[i][0]) / STEP;
  return line[i][1] + (line[i + 1][1] - line[i][1]) * t;
}

/** Where the leaning line through `at` meets row `j`. */
export function crossing(line: ColumnLine, j: number): Point {
  let y = heightOnRow(j, line.at[0]);
  // The rows are far flatter than the columns steep: each round gains two digits or more.
  for (let round = 0; round < 60; round++) y = heightOnRow(j, line.at[0] + line.lean * (y - line.at[1]));
  return [line.at[0] + line.lean * (y - line.at[1]), y];
}

const onDiagonal = (j: number): Point => crossing({ at: DIAGONAL.from, lean: DIAGONAL.lean }, j);

export const COLUMNS: readonly ColumnLine[] = [
  { at: [0, 0], lean: 0.03 },
  { at: onDiagonal(1), lean: 0.02 },
  { at: onDiagonal(2), lean: -0.03 },
  { at: onDiagonal(3), lean: 0.01 },
  { at: onDiagonal(4), lean: 0.04 },
  { at: onDiagonal(5), lean: 0.02 },
  { at: [700, 250], lean: -0.03 },
  { at: [806, 250], lean: 0.02 },
  { at: [902, 250], lean: 0.01 },
];
