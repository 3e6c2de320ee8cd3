/** The streets' middle lines, from end to end, and the names people give to blocks. */

import type { Point } from './loop.ts';
import { COLUMNS, crossing, DIAGONAL, ROW_LINES, STREETS } from './streets.ts';

export interface StreetLine {
  readonly street: string;
  readonly name: string;
  readonly line: readonly Point[];
}

/** Rows as drawn between the first and the last column; columns and the avenue from row to row. */
export function streetLines(): readonly StreetLine[] {
  const rows = ROW_LINES.map((line, j) => {
    const [from, to] = [crossing(COLUMNS[0], j), crossing(COLUMNS[8], j)];
    return named(`R${j}`, [from, ...line.filter((p) => p[0] > from[0] + 1e-6 && p[0] < to[0] - 1e-6), to]);
  });
  const columns = COLUMNS.flatMap((column, i) =>
    runs(i).map((js) =>
      named(
        `C${i}`,
        js.map((j) => crossing(column, j)),
      ),
    ),
  );
  const avenue = [1, 2, 3, 4, 5].map((j) => crossing({ at: DIAGONAL.from, lean: DIAGONAL.lean }, j));
  const lane = [0, 1].map((j) => crossing({ at: [752, 50], lean: 0 }, j));
  return [...rows, ...columns, named('D', avenue), named('L', lane)];
}

/** The rows a column meets, in unbroken runs: some end at a large block and go on behind it. */
function runs(column: number): readonly (readonly number[])[] {
  if (column === 4) return [[1, 2, 3, 4, 5]];
  if (column === 7)
    return [
      [0, 1, 2],
      [3, 4, 5],
    ];
  if (column === 6)
    return [
      [0, 1, 2, 3],
      [4, 5],
    ];
  return [[0, 1, 2, 3, 4, 5]];
}

function named(street: string, line: readonly Point[]): StreetLine {
  return { street, name: STREETS[street].name, line };
}

/** A block by its use, or by the street south of it and the one west of it (at the avenue: by the avenue). */
export function blockName(sides: readonly string[], use: string): string {
  if (use === 'park') return 'Lockkeeper’s Park';
  if (use === 'school') return 'Heron Gate School';
  if (use === 'plaza') return 'Caravel Triangle';
  return `${STREETS[sides[0]].name} / ${STREETS[sides[sides.length - 1]].name}`;
}
