/** Where each figure comes from: files, rows and columns of the run. */
import { grouped } from '../../quantities.ts';
import type { Figure, Inline, Part, Run, Table, Trace } from '../content.ts';
import type { Reading } from '../reading.ts';

/** The figures of the text above, where they stand in the files, and the run that wrote these. */
export function traceSection(reading: Reading, above: readonly Part[]): readonly Part[] {
  const { words } = reading;
  return [
    { part: 'heading', level: 2, text: words.trace.title },
    { part: 'paragraph', text: [words.trace.intro] },
    figureTable(reading, above),
    runTable(reading),
  ];
}

/** Rows that are added up and named one by one. */
const MOST_IDS = 6;

/** Each table with a note of the files and columns that its figures come from. */
export function withSources(parts: readonly Part[], { words }: Reading): readonly Part[] {
  return parts.map((part) => {
    if (part.part !== 'table') return part;
    const figures = part.rows.flat(2).filter(isFigure);
    if (figures.length === 0) return part;
    const source = `${words.from} ${sourcesOf(figures)}.`;
    return { ...part, note: part.note === undefined ? [source] : [...part.note, ' ', source] };
  });
}

function isFigure(inline: Inline): inline is Figure {
  return typeof inline !== 'string' && 'figure' in inline;
}

/** Every figure outside tables, in reading order; the same figure once. */
function figuresOf(parts: readonly Part[]): readonly Figure[] {
  const runs = parts.flatMap((part): readonly Run[] => {
    if (part.part === 'paragraph') return [part.text];
    if (part.part === 'list') return part.items;
    if (part.part === 'notice') return part.lines;
    if (part.part !== 'key-figures') return [];
    return part.figures.map(({ figure, range }) => (range === null ? [figure] : [figure, range]));
  });
  const seen = new Map<string, Figure>();
  for (const figure of runs.flat().filter(isFigure)) seen.set(JSON.stringify(figure), figure);
  return [...seen.values()];
}

function figureTable(reading: Reading, above: readonly Part[]): Table {
  const { trace } = reading.words;
  return {
    part: 'table',
    caption: trace.title,
    captionHidden: true,
    columns: [
      { title: trace.figure, align: 'left', weight: 1.6 },
      { title: trace.file, align: 'left', weight: 1.4 },
      { title: trace.row, align: 'left', weight: 2 },
      { title: trace.column, align: 'left', weight: 3 },
    ],
    rows: figuresOf(above).map(({ figure, from }) => [
      [figure],
      [unique(from.map(({ file }) => file))],
      [unique(from.map((one) => rowText(one, trace)))],
      [unique(from.map(columnText))],
    ]),
  };
}

function rowText({ row, sum }: Trace, trace: { readonly all: string; readonly one: string }): string {
  if (sum) return trace.all;
  if (row === undefined) return trace.one;
  if (typeof row === 'string') return row;
  return row.length > MOST_IDS ? `${row.slice(0, MOST_IDS).join(' + ')} + … (${grouped(row.length)})` : row.join(' + ');
}

function columnText({ file, column, per }: Trace): string {
  if (per === undefined) return column;
  return `${column} ÷ ${per.file === file ? '' : `${per.file} `}${per.column}`;
}

/** `blocks.geojson: stained_m2, stained_lo80_m2`; the columns of one file together. */
function sourcesOf(figures: readonly Figure[]): string {
  const columns = new Map<string, Set<string>>();
  for (const trace of figures.flatMap(({ from }) => from)) {
    const known = columns.get(trace.file) ?? new Set();
    columns.set(trace.file, known.add(columnText(trace)));
  }
  return [...columns].map(([file, names]) => `${file}: ${[...names].join(', ')}`).join('; ');
}

function runTable({ words, assessment, run }: Reading): Table {
  const { runItems, run: caption, item, value } = words.trace;
  const { plane, draws, seed } = assessment.run;
  const inputs = (run?.inputs ?? []).map(({ file, sha256 }) => `${file} ${sha256.slice(0, 12)}`);
  return {
    part: 'table',
    caption,
    columns: [
      { title: item, align: 'left', weight: 1.4 },
      { title: value, align: 'left', weight: 4 },
    ],
    rows: [
      ...(run === undefined ? [] : [[[runItems.program], [run.program]]]),
      [[runItems.draws], [`${grouped(draws)}, ${seed}`]],
      [[runItems.plane], [plane]],
      ...(inputs.length === 0 ? [] : [[[runItems.inputs], [inputs.join(', ')]]]),
    ],
  };
}

const unique = (texts: readonly string[]): string => [...new Set(texts)].join('; ');
