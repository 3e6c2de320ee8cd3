/** The faces between the streets' middle lines: the town's blocks before anything is built. Together they leave no gap. */
import { type Corner, gap, type Point } from './loop.ts';
import { COLUMNS, crossing, ROW_LINES } from './streets.ts';

export interface Face {
  readonly corners: readonly Corner[];
  readonly use: Use;
}

export type Use = 'homes' | 'shops' | 'park' | 'school' | 'clinic' | 'plaza';

/** Columns that end at a row instead of crossing the band above it: the blocks beside them are one. */
const ENDING: readonly (readonly [band: number, column: number])[] = [
  [0, 4],
  [2, 7],
  [3, 6],
];
/** The band and column whose block a lane cuts in two. */
const LANE = { band: 0, column: 6, at: 752 };

/** All faces, from the waterfront inland and from west to east. */
export function faces(): readonly Face[] {
  const all: Face[] = [];
  for (let band = 0; band < 5; band++) {
    for (let west = 0; west < 8; west++) {
      if (isEnding(band, west)) continue;
      let east = west + 1;
      while (isEnding(band, east)) east++;
      for (const corners of cut(band, west, east)) all.push({ corners, use: useOf(band, west, corners) });
    }
  }
  return all;
}

function isEnding(band: number, column: number): boolean {
  return ENDING.some(([b, c]) => b === band && c === column);
}

function cut(band: number, west: number, east: number): readonly (readonly Corner[])[] {
  const line = (i: number) => ({ street: `C${i}`, at: (j: number) => crossing(COLUMNS[i], j) });
  const [w, e] = [line(west), line(east)];
  if (band === LANE.band && west === LANE.column) {
    const lane = { street: 'L', at: (j: number) => crossing({ at: [LANE.at, 50], lean: 0 }, j) };
    return [cell(band, w, lane), cell(band, lane, e)];
  }
  if (band === 0 || west !== band) return [cell(band, w, e)];
  // The diagonal runs from the south-west corner to the north-east one.
  const [sw, ne] = [w.at(band), e.at(band + 1)];
  const lower = rowBetween(band, sw, e.at(band));
  const upper = rowBetween(band + 1, w.at(band + 1), ne);
  return [
    [...named(lower, `R${band}`), { at: e.at(band), street: e.street }, { at: ne, street: 'D' }],
    [
      { at: sw, street: 'D' },
      ...named([ne, ...upper.slice(1).toReversed()], `R${band + 1}`),
      { at: w.at(band + 1), street: w.street },
    ],
  ];
}

interface Boundary {
  readonly street: string;
  readonly at: (row: number) => Point;
}

function cell(band: number, west: Boundary, east: Boundary): readonly Corner[] {
  const lower = rowBetween(band, west.at(band), east.at(band));
  const upper = rowBetween(band + 1, west.at(band + 1), east.at(band + 1));
  return [
    ...named(lower, `R${band}`),
    { at: east.at(band), street: east.street },
    ...named([east.at(band + 1), ...upper.slice(1).toReversed()], `R${band + 1}`),
    { at: west.at(band + 1), street: west.street },
  ];
}

/** The row's vertices from `from` up to, without, `to`. */
function rowBetween(row: number, from: Point, to: Point): readonly Point[] {
  const between = ROW_LINES[row].filter((p) => p[0] > from[0] && p[0] < to[0]);
  return [from, ...between.filter((p) => gap(p, from) > 1e-6 && gap(p, to) > 1e-6)];
}

function named(points: readonly Point[], street: string): readonly Corner[] {
  return points.map((at) => ({ at, street }));
}

function useOf(band: number, west: number, corners: readonly Corner[]): Use {
  const triangle = corners.some((corner) => corner.street === 'D');
  if (band === 3 && west === 5) return 'park';
  if (band === 2 && west === 6) return 'school';
  if (band === 3 && west === 2) return 'clinic';
  if (triangle && band === 2 && corners[0].street === 'D') return 'plaza';
  const busy = triangle || (band <= 1 && west >= 1 && west <= 5) || (band === 2 && west <= 4 && west >= 2);
  return busy ? 'shops' : 'homes';
}
