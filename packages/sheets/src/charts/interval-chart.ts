/** Rows with a value and its ranges: blocks with stained areas, formulas of efficacy, before and after. */
import type { Drawing } from '../drawing.ts';
import { axisOf, placeOn } from './axis.ts';
import { acrossAxis } from './chart-axes.ts';
import { CHART, type ChartWords, chartSvg, type Page } from './chart-frame.ts';
import { type ChartMark, chartDrawing, dot, markText, rule, words } from './chart-marks.ts';

export interface IntervalRow {
  readonly label: string;
  /** null: undefined, and `instead` says why. */
  readonly value: number | null;
  /** Drawn thick, then thin. */
  readonly inner?: readonly [lo: number, hi: number] | null;
  readonly outer?: readonly [lo: number, hi: number] | null;
  /** Where it was before; drawn hollow and joined to the value. */
  readonly before?: number | null;
  readonly instead?: string;
}

export interface IntervalChart extends ChartWords {
  readonly across: string;
  readonly rows: readonly IntervalRow[];
  readonly within?: { readonly from?: number; readonly to?: number };
  /** Always on the axis: 0 for areas and changes. */
  readonly anchor?: number;
}

const ROW_PX = 24;
const WIDTH = 720;
const TOP = 44;
/** Below the plot: ticks and title of the axis; on a screen also the note. */
const FOOT = 76;
const FOOT_ON_PAPER = 42;

/** The chart as SVG text; its height grows with the rows. RangeError for values that are not finite. */
export function intervalChart(chart: IntervalChart): string {
  const { page, marks } = laidOut(chart);
  return chartSvg(chart, page, marks.map(markText));
}

/** The chart as a drawing `widthMm` wide, without title and note: on paper the caption says them. */
export function intervalDrawing(chart: IntervalChart, widthMm: number): Drawing {
  const { page, marks } = laidOut(chart);
  const shown = { width: page.width, height: page.plot.bottom + FOOT_ON_PAPER, top: TOP - 4 };
  return chartDrawing(chart, shown, marks, widthMm);
}

function laidOut(chart: IntervalChart): { readonly page: Page; readonly marks: readonly ChartMark[] } {
  const longest = Math.max(0, ...chart.rows.map(({ label }) => label.length));
  const left = Math.min(300, Math.max(96, 24 + 7 * longest));
  const bottom = TOP + 8 + ROW_PX * Math.max(1, chart.rows.length);
  const page: Page = { width: WIDTH, height: bottom + FOOT, plot: { left, right: WIDTH - 32, top: TOP, bottom } };
  const values = chart.rows.flatMap(({ value, inner, outer, before }) =>
    [value, before, ...(inner ?? []), ...(outer ?? [])].filter((one) => one !== null && one !== undefined),
  );
  const axis = axisOf([...values, ...(chart.anchor === undefined ? [] : [chart.anchor])], chart.within);
  const x = (value: number) => placeOn(axis, value, [page.plot.left, page.plot.right]);
  const rows = chart.rows.flatMap((row, i) => rowMarks(row, TOP + 8 + ROW_PX * (i + 0.5), x, page));
  return { page, marks: [...acrossAxis(axis, page.plot, chart.across), ...rows] };
}

function rowMarks(row: IntervalRow, y: number, x: (value: number) => number, { plot }: Page): ChartMark[] {
  const label = words([plot.left - 10, y + 4], row.label, { anchor: 'end' });
  if (row.value === null) {
    return [label, words([plot.left + 8, y + 4], row.instead ?? 'not defined', { colour: CHART.muted })];
  }
  const bar = (ends: readonly [number, number] | null | undefined, width: number, colour: string): ChartMark[] =>
    ends ? [rule([x(ends[0]), y], [x(ends[1]), y], colour, width)] : [];
  const before = row.before ?? null;
  const was = before === null ? [] : [dot([x(before), y], 4.5, '#ffffff', { colour: CHART.muted, widthPx: 1.5 })];
  return [
    label,
    ...bar(row.outer, 2, CHART.first),
    ...bar(row.inner, 8, CHART.firstPale),
    ...(before === null ? [] : bar([before, row.value], 2, CHART.muted)),
    ...was,
    dot([x(row.value), y], 4.5, CHART.first),
  ];
}
