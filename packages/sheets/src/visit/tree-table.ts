/** The table of a block's trees, laid out row by row; a row is never cut. */
import type { PaperMark, TextStyle } from '../drawing.ts';
import { linesHeightMm, linesOf, textMarks } from '../pdf/lay-text.ts';
import type { PageItem, TableRow } from '../pdf/page-list.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { HAIRLINE, RULE, STYLE } from './sheet-style.ts';
import type { VisitFacts } from './visit-facts.ts';
import type { Stop } from './visit-stops.ts';
import { shortDay } from './visit-words.ts';

/** A table cut to measure: its head, and every row with its height. */
export interface LaidTable {
  readonly about: string;
  readonly columns: readonly Column[];
  readonly headHeightMm: number;
  readonly heightsMm: readonly number[];
  readonly cells: readonly (readonly CellLines[])[];
}

interface Column {
  readonly words: readonly string[];
  readonly leftMm: number;
  readonly widthMm: number;
}

interface CellLines {
  readonly lines: readonly string[];
  readonly style: TextStyle;
}

/** Row height that leaves room for handwriting, mm. */
const LEAST_ROW_MM = 5.4;
const PAD_MM = 1.1;

/** Widths of the columns in parts of the whole; the last three are to be written in. */
const PARTS = [7, 33, 25, 21, 21, 41, 14, 14, 14];

export function treeTable(facts: VisitFacts, widthMm: number): LaidTable {
  const { words, fonts } = facts;
  const { columns: c } = words;
  const heads = [c.number, c.tree, c.browned, c.ratedOn, c.cause, c.look, c.today, c.galls, c.note];
  return laidTable(
    { about: words.tableAbout, heads, parts: PARTS },
    facts.stops.map((stop) => rowOf(stop, facts)),
    { widthMm, leastMm: LEAST_ROW_MM, fonts },
  );
}

/** Any table: heads and cells wrapped into columns of the given parts of the width. */
export function laidTable(
  {
    about,
    heads,
    parts,
  }: { readonly about: string; readonly heads: readonly string[]; readonly parts: readonly number[] },
  rows: readonly (readonly (readonly [text: string, style: TextStyle])[])[],
  { widthMm, leastMm, fonts }: { readonly widthMm: number; readonly leastMm: number; readonly fonts: SheetFonts },
): LaidTable {
  const whole = parts.reduce((sum, part) => sum + part, 0);
  let leftMm = 0;
  const columns = heads.map((head, i): Column => {
    const own = (parts[i] / whole) * widthMm;
    const column = { words: linesOf(head, STYLE.tableHead, own - PAD_MM, fonts), leftMm, widthMm: own };
    leftMm += own;
    return column;
  });
  const cells = rows.map((row) =>
    row.map(([text, style], i) => ({ lines: linesOf(text, style, columns[i].widthMm - PAD_MM, fonts), style })),
  );
  const most = Math.max(...columns.map((column) => column.words.length));
  return {
    about,
    columns,
    headHeightMm: linesHeightMm(most, STYLE.tableHead.sizeMm) + 2,
    heightsMm: cells.map((row) =>
      Math.max(leastMm, ...row.map(({ lines, style }) => linesHeightMm(lines.length, style.sizeMm) + 2)),
    ),
    cells,
  };
}

/** How many rows from `first` fit between two heights, the head included. */
export function rowsThatFit(table: LaidTable, first: number, roomMm: number): number {
  let left = roomMm - table.headHeightMm;
  let count = 0;
  while (first + count < table.heightsMm.length && table.heightsMm[first + count] <= left + 1e-9) {
    left -= table.heightsMm[first + count];
    count++;
  }
  return count;
}

/** The head and some rows, drawn from `topMm` down. */
export function tableItems(
  table: LaidTable,
  { first, count }: { readonly first: number; readonly count: number },
  { x, topMm }: { readonly x: number; readonly topMm: number },
): { readonly items: readonly PageItem[]; readonly bottomMm: number } {
  const { columns } = table;
  const rightMm = x + columns[columns.length - 1].leftMm + columns[columns.length - 1].widthMm;
  const head: TableRow = columns.map((column) => ({
    heads: 'Column',
    marks: textMarks(column.words, x + column.leftMm + PAD_MM / 2, topMm + 0.8, STYLE.tableHead),
  }));
  const rules: PaperMark[] = [ruleAt(x, topMm + table.headHeightMm, rightMm, RULE)];
  let y = topMm + table.headHeightMm;
  const rows: TableRow[] = [];
  for (let r = first; r < first + count; r++) {
    const height = table.heightsMm[r];
    rows.push(
      table.cells[r].map(({ lines, style }, i) => {
        const own = linesHeightMm(lines.length, style.sizeMm);
        const marks = textMarks(lines, x + columns[i].leftMm + PAD_MM / 2, y + (height - own) / 2, style);
        return i === 0 ? { heads: 'Row', marks } : { marks };
      }),
    );
    y += height;
    rules.push(ruleAt(x, y, rightMm, HAIRLINE));
  }
  const uprights = columns.slice(1).map((column): PaperMark => {
    const at = x + column.leftMm;
    return {
      mark: 'line',
      points: [
        [at, topMm + 0.6],
        [at, y],
      ],
      style: { stroke: HAIRLINE },
    };
  });
  return {
    items: [
      { item: 'ornament', marks: [...rules, ...uprights] },
      { item: 'table', about: table.about, rows: [head, ...rows] },
    ],
    bottomMm: y,
  };
}

function ruleAt(from: number, y: number, to: number, stroke: typeof RULE | typeof HAIRLINE): PaperMark {
  return {
    mark: 'line',
    points: [
      [from, y],
      [to, y],
    ],
    style: { stroke },
  };
}

function rowOf(stop: Stop, { words }: VisitFacts): readonly (readonly [string, TextStyle])[] {
  const { tree, last } = stop;
  const t = STYLE.table;
  return [
    [String(stop.number), STYLE.tableStrong],
    [`${tree.treeId} ${tree.host === null ? words.noHost : shortHost(tree.host)}`, t],
    [brownedText(stop, words), t],
    [last === null ? '–' : shortDay(last.ratedOn, words), t],
    [words.causes[last?.cause ?? tree.cause], t],
    [words.look[stop.look], t],
    ['', t],
    ['', t],
    ['', t],
  ];
}

/** `Terminalia buceras` as `T. buceras`: the genus is clear from the town's list. */
function shortHost(host: string): string {
  return host.replace(/^([A-Z])[a-z]+ (?=[a-z])/, '$1. ');
}

function brownedText({ tree, last }: Stop, words: VisitFacts['words']): string {
  if (last === null)
    return tree.severityPct === null ? words.notRated : words.group(wholePercent(tree.severityPct / 100));
  const { browned, defoliated } = last;
  if (browned === undefined) return defoliated === undefined ? '–' : words.defoliated(wholePercent(defoliated.share));
  const range = browned.hi > browned.lo ? ` (${Math.round(100 * browned.lo)}–${Math.round(100 * browned.hi)})` : '';
  return `${wholePercent(browned.share)}${range}`;
}

/** Eyes see no tenths, and a small point is lost in print. */
function wholePercent(share: number): string {
  return share > 0 && share < 0.005 ? '<1\u00a0%' : `${Math.round(100 * share)}\u00a0%`;
}
