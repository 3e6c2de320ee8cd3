/** A table as boxes: its caption, its head, one box for each row; the head stands again on each further page. */
import type { PageItem, TableCell, TableRow } from '../../pdf/page-list.ts';
import type { Run, Table } from '../content.ts';
import { HAIRLINE, LOOKS, RULE } from './looks.ts';
import { type Measure, type ReportBox, ruled } from './report-box.ts';
import { blockMarks, type Look, linesHeight, type RunLine, runLines } from './run-lines.ts';
import { textBoxes } from './text-boxes.ts';

/** Between columns, and above and below the text of a row. */
const GUTTER_MM = 2.4;
const PAD_MM = 0.75;
/** Lower tables are kept on one page. */
const KEPT_MM = 95;

interface Place {
  readonly leftMm: number;
  readonly widthMm: number;
  readonly align: 'left' | 'right';
}

/** A row laid out: the lines of its cells, and the room they take. */
interface LaidRow {
  readonly cells: readonly (readonly RunLine[])[];
  readonly heightMm: number;
}

export function tableBoxes(table: Table, owner: number, measure: Measure): readonly ReportBox[] {
  const places = columnPlaces(table, measure);
  const head = laidRow(
    table.columns.map(({ title }) => [title]),
    places,
    LOOKS.head,
    measure,
  );
  const rows = table.rows.map((row) => laidRow(row, places, LOOKS.cell, measure));
  const headItems = (topMm: number): readonly PageItem[] => rowItems(head, places, topMm, { table, head: true });
  const noted = table.note !== undefined;
  const bodyMm = rows.reduce((sum, { heightMm }) => sum + heightMm, 0);
  const kept = (i: number): boolean => {
    if (i === rows.length - 1) return noted;
    return bodyMm <= KEPT_MM || i === 0 || i === rows.length - 2;
  };
  const caption = textBoxes([table.caption], { owner, look: LOOKS.caption, tag: 'Caption', gapMm: 5 }, measure);
  return [
    ...(table.captionHidden ? [] : caption.map((box): ReportBox => ({ ...box, withNext: true }))),
    { owner, heightMm: head.heightMm, gapMm: table.captionHidden ? 3 : 0.8, withNext: true, items: headItems },
    ...rows.map(
      (row, i): ReportBox => ({
        owner,
        heightMm: row.heightMm,
        gapMm: 0,
        headMm: head.heightMm,
        ...(kept(i) ? { withNext: true } : {}),
        items: (topMm, headAgain) => [
          ...(headAgain ? headItems(topMm - head.heightMm) : []),
          ...rowItems(row, places, topMm, { table, head: false }),
        ],
      }),
    ),
    ...(table.note === undefined ? [] : noteBoxes(table.note, owner, measure)),
  ];
}

function noteBoxes(note: Run, owner: number, measure: Measure): readonly ReportBox[] {
  const boxes = textBoxes(note, { owner, look: LOOKS.note, tag: 'P', gapMm: 0.9 }, measure);
  return boxes.map((box, i) => (i < boxes.length - 1 ? { ...box, withNext: true } : box));
}

function columnPlaces({ columns }: Table, { leftMm, widthMm, fonts }: Measure): readonly Place[] {
  const room = widthMm - GUTTER_MM * (columns.length - 1);
  const longest = columns.map(({ title }) =>
    Math.max(...title.split(' ').map((word) => fonts.widthMm(word, LOOKS.head) + ROUNDING_MM)),
  );
  const widths = sharedWidths(
    columns.map(({ weight }) => weight),
    longest,
    room,
  );
  let left = leftMm;
  return columns.map(({ align }, i) => {
    const place = { leftMm: left, widthMm: widths[i], align };
    left += place.widthMm + GUTTER_MM;
    return place;
  });
}

const ROUNDING_MM = 0.01;

/** Widths by weight, but none less than its column's longest word in the head, unless all of these together do not fit. */
function sharedWidths(weights: readonly number[], least: readonly number[], room: number): readonly number[] {
  const fixed = new Set<number>();
  for (;;) {
    const free = room - [...fixed].reduce((sum, i) => sum + least[i], 0);
    const all = weights.reduce((sum, weight, i) => sum + (fixed.has(i) ? 0 : weight), 0);
    const widths = weights.map((weight, i) => (fixed.has(i) ? least[i] : (free * weight) / all));
    const narrow = widths.findIndex((width, i) => !fixed.has(i) && width < least[i]);
    if (narrow < 0 || free <= least[narrow]) return widths.map((width) => Math.max(0, width));
    fixed.add(narrow);
  }
}

function laidRow(row: readonly Run[], places: readonly Place[], look: Look, { fonts }: Measure): LaidRow {
  const cells = row.map((cell, i) => runLines(cell, look, places[i].widthMm, fonts));
  const most = Math.max(1, ...cells.map((lines) => lines.length));
  return { cells, heightMm: linesHeight(most, look) + 2 * PAD_MM };
}

function rowItems(
  row: LaidRow,
  places: readonly Place[],
  topMm: number,
  { table, head }: { readonly table: Table; readonly head: boolean },
): readonly PageItem[] {
  const look = head ? LOOKS.head : LOOKS.cell;
  const foot = topMm + row.heightMm;
  const cells: TableRow = row.cells.map((lines, i): TableCell => {
    const { leftMm, widthMm, align } = places[i];
    const x = align === 'right' ? leftMm + widthMm : leftMm;
    // Heads stand on their rule, cells hang from the row above.
    const top = head ? foot - PAD_MM - linesHeight(lines.length, look) : topMm + PAD_MM;
    const heads = head ? { heads: 'Column' as const } : i === 0 ? { heads: 'Row' as const } : {};
    return { ...heads, marks: blockMarks(lines, { x, top, align }, look) };
  });
  const last = places[places.length - 1];
  return [
    ruled([places[0].leftMm, foot], [last.leftMm + last.widthMm, foot], head ? RULE : HAIRLINE),
    { item: 'table', about: table.caption, rows: [cells] },
  ];
}
