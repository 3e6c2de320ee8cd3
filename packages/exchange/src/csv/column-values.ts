import { columnStyle, type NumberStyle, numberIn } from './number-style.ts';

/** How the cells of one column become values. */
export type ColumnReading =
  | { readonly as: 'text' }
  | { readonly as: 'json' }
  | { readonly as: 'number'; readonly style: NumberStyle; readonly ambiguous: boolean };

const NUMBER_FIELDS = /(?:_m|_m2|_pct|_deg)$|^(?:bbch|lon|lat|x|y)$/;
/** Fields of ours that hold text even when it looks like a number: ids, dates, names, class codes. */
const TEXT_FIELDS =
  /(?:^|_)id$|_on$|^(?:host|cultivar|name|rater|by|outlined_by|note|evidence|scale|class|cause|kind|surface|about|state|radii_m)$/;

/**
 * Decides from the name and all cells of a column what its cells are. A column that we know holds text stays text; any
 * other is one of numbers when every cell is a number that can be written back: no leading zeros (postcodes), no more
 * digits than a number holds.
 */
export function columnReading(name: string, cells: readonly string[], given?: 'text' | 'json'): ColumnReading {
  if (given) return { as: given };
  if (TEXT_FIELDS.test(name)) return { as: 'text' };
  if (!NUMBER_FIELDS.test(name) && cells.some(losesAsNumber)) return { as: 'text' };
  const { style, ambiguous } = columnStyle(cells);
  return style === null ? { as: 'text' } : { as: 'number', style, ambiguous };
}

function losesAsNumber(cell: string): boolean {
  const digits = cell.trim();
  return /^[-+]?0\d/.test(digits) || (/^[-+]?\d+$/.test(digits) && !Number.isSafeInteger(Number(digits)));
}

/** The value of a cell; `undefined` for an empty one, which is no value. Cells that are not as decided stay text. */
export function cellValue(cell: string, reading: ColumnReading): unknown {
  if (cell === '') return undefined;
  if (reading.as === 'number') return numberIn(cell, reading.style) ?? cell;
  if (reading.as === 'text') return unguarded(cell);
  try {
    return JSON.parse(cell);
  } catch {
    return cell;
  }
}

/** Undoes the apostrophe that the writer puts before a text which a spreadsheet would take for a formula. */
function unguarded(cell: string): string {
  return /^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}
