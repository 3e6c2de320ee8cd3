/** Rows with a value and its ranges: blocks with stained areas, formulas of efficacy, before and after. */
import { axisOf, placeOn } from './axis.ts';
import { acrossAxis, CHART, type ChartWords, chartSvg, type Page, px, text } from './chart-frame.ts';

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

/** The chart as SVG text; its height grows with the rows. RangeError for values that are not finite. */
export function intervalChart(chart: IntervalChart): string {
  const longest = Math.max(0, ...chart.rows.map(({ label }) => label.length));
  const left = Math.min(300, Math.max(96, 24 + 7 * longest));
  const bottom = 52 + ROW_PX * Math.max(1, chart.rows.length);
  const page: Page = { width: WIDTH, height: bottom + 76, plot: { left, right: WIDTH - 32, top: 44, bottom } };
  const values = chart.rows.flatMap(({ value, inner, outer, before }) =>
    [value, before, ...(inner ?? []), ...(outer ?? [])].filter((one) => one !== null && one !== undefined),
  );
  const axis = axisOf([...values, ...(chart.anchor === undefined ? [] : [chart.anchor])], chart.within);
  const x = (value: number) => placeOn(axis, value, [page.plot.left, page.plot.right]);
  const rows = chart.rows.flatMap((row, i) => rowText(row, 52 + ROW_PX * (i + 0.5), x, page));
  return chartSvg(chart, page, [...acrossAxis(axis, page.plot, chart.across), ...rows]);
}

function rowText(row: IntervalRow, y: number, x: (value: number) => number, { plot }: Page): string[] {
  const label = text(plot.left - 10, y + 4, row.label, 'text-anchor="end"');
  if (row.value === null) {
    return [
      label,
      text(plot.left + 8, y + 4, row.instead ?? 'not defined', `fill="${CHART.muted}" font-style="italic"`),
    ];
  }
  const bar = (ends: readonly [number, number] | null | undefined, width: number, colour: string): string[] =>
    ends
      ? [`<path d="M${px(x(ends[0]))} ${px(y)}H${px(x(ends[1]))}" stroke="${colour}" stroke-width="${width}"/>`]
      : [];
  const before = row.before ?? null;
  return [
    label,
    ...bar(row.outer, 2, CHART.first),
    ...bar(row.inner, 8, CHART.firstPale),
    ...(before === null ? [] : bar([before, row.value], 2, CHART.muted)),
    ...(before === null
      ? []
      : [
          `<circle cx="${px(x(before))}" cy="${px(y)}" r="4.5" fill="#fff" stroke="${CHART.muted}" stroke-width="1.5"/>`,
        ]),
    `<circle cx="${px(x(row.value))}" cy="${px(y)}" r="4.5" fill="${CHART.first}"/>`,
  ];
}
