/** Points and lines over two axes: observed against fitted, differences against means, gain against effort. */
import { type Axis, axisOf, placeOn } from './axis.ts';
import { acrossAxis, upAxis } from './chart-axes.ts';
import { CHART, type ChartWords, chartSvg, type Page, px, text } from './chart-frame.ts';
import { markText } from './chart-marks.ts';

export interface ScatterPoint {
  readonly x: number;
  readonly y: number;
  /** Shown when the pointer rests on it. */
  readonly label?: string;
}

export interface ChartLine {
  readonly points: readonly (readonly [x: number, y: number])[];
  /** Written at its end. */
  readonly label?: string;
  readonly dashed?: boolean;
}

export interface ScatterChart extends ChartWords {
  readonly across: string;
  readonly up: string;
  readonly points: readonly ScatterPoint[];
  readonly lines?: readonly ChartLine[];
  /** Ends the axes may not pass. */
  readonly within?: { readonly from?: number; readonly to?: number };
}

const PAGE: Page = { width: 720, height: 460, plot: { left: 72, right: 600, top: 44, bottom: 380 } };

/** The chart as SVG text. No points and no lines give empty axes. RangeError for values that are not finite. */
export function scatterChart(chart: ScatterChart): string {
  const { plot } = PAGE;
  const lines = chart.lines ?? [];
  const ends = lines.flatMap(({ points }) => points);
  const across = axisOf([...chart.points.map(({ x }) => x), ...ends.map(([x]) => x)], chart.within);
  const up = axisOf([...chart.points.map(({ y }) => y), ...ends.map(([, y]) => y)], chart.within);
  const at = (x: number, y: number) => placed(across, up, x, y);
  const body = [
    ...[...acrossAxis(across, plot, chart.across), ...upAxis(up, plot, chart.up)].map(markText),
    ...lines.flatMap((line) => lineText(line, at)),
    ...chart.points.map(({ x, y, label }) => {
      const [left, top] = at(x, y);
      const about =
        label === undefined ? '' : `<title>${label.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>`;
      return `<circle cx="${px(left)}" cy="${px(top)}" r="4" fill="${CHART.first}" fill-opacity="0.65" stroke="#fff">${about}</circle>`;
    }),
  ];
  return chartSvg(chart, PAGE, body);
}

function placed(across: Axis, up: Axis, x: number, y: number): readonly [number, number] {
  const { left, right, top, bottom } = PAGE.plot;
  return [placeOn(across, x, [left, right]), placeOn(up, y, [bottom, top])];
}

function lineText(
  { points, label, dashed }: ChartLine,
  at: (x: number, y: number) => readonly [number, number],
): string[] {
  if (points.length === 0) return [];
  const places = points.map(([x, y]) => at(x, y));
  const path = places.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
  const [endX, endY] = places[places.length - 1];
  const dash = dashed ? ' stroke-dasharray="5 4"' : '';
  return [
    `<path d="${path}" fill="none" stroke="${CHART.second}" stroke-width="1.6"${dash}/>`,
    ...(label === undefined ? [] : [text(endX + 6, endY + 4, label, `fill="${CHART.second}"`)]),
  ];
}
