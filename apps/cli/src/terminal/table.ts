/** Plain text tables: columns as wide as their widest cell, numbers to the right, the last text column wrapped. */

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
}

const GAP = '  ';
const NARROWEST_WRAP = 24;

/**
 * Lays out rows under their titles within `width` characters; only the last column is wrapped, onto lines of its own.
 * No rows give the titles alone. Example: `layOut([{ title: 'n', align: 'right' }], [['7']], 80)` is `['n', '─', '7']`.
 */
export function layOut(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string[] {
  const widths = columns.map((column, i) => Math.max(column.title.length, ...rows.map((row) => row[i].length)));
  const last = columns.length - 1;
  const before = widths.slice(0, last).reduce((sum, each) => sum + each + GAP.length, 0);
  widths[last] = Math.min(widths[last], Math.max(NARROWEST_WRAP, width - before));
  const titles = columns.map((column) => column.title);
  const rule = widths.map((each) => '─'.repeat(each)).join(GAP);
  return [...line(columns, titles, widths), rule, ...rows.flatMap((row) => line(columns, row, widths))];
}

function line(columns: readonly Column[], cells: readonly string[], widths: readonly number[]): string[] {
  const last = columns.length - 1;
  const wrapped = wrap(cells[last], widths[last]);
  return wrapped.map((part, n) => {
    const shown = cells.map((cell, i) => (i === last ? part : n === 0 ? cell : ''));
    return shown
      .map((cell, i) => (columns[i].align === 'right' ? cell.padStart(widths[i]) : cell.padEnd(widths[i])))
      .join(GAP)
      .trimEnd();
  });
}

function wrap(text: string, width: number): string[] {
  const out: string[] = [];
  let current = '';
  for (const word of text.split(' ')) {
    if (current !== '' && current.length + 1 + word.length > width) {
      out.push(current);
      current = word;
    } else {
      current = current === '' ? word : `${current} ${word}`;
    }
  }
  return [...out, current];
}
