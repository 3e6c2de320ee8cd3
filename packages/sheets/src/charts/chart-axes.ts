/** Ticks, grid and title of a chart's axes. */
import { type Axis, placeOn } from './axis.ts';
import { CHART, type Plot } from './chart-frame.ts';
import { type ChartMark, rule, words } from './chart-marks.ts';

/** The horizontal axis, below the plot. */
export function acrossAxis(axis: Axis, { left, right, top, bottom }: Plot, title: string): ChartMark[] {
  const lines = axis.ticks.flatMap(({ value, text }) => {
    const x = placeOn(axis, value, [left, right]);
    return [
      rule([x, top], [x, bottom], CHART.grid),
      words([x, bottom + 16], text, { anchor: 'middle', colour: CHART.muted }),
    ];
  });
  return [...lines, words([(left + right) / 2, bottom + 34], title, { anchor: 'middle' })];
}

/** The vertical axis, left of the plot. */
export function upAxis(axis: Axis, { left, right, top, bottom }: Plot, title: string): ChartMark[] {
  const lines = axis.ticks.flatMap(({ value, text }) => {
    const y = placeOn(axis, value, [bottom, top]);
    return [
      rule([left, y], [right, y], CHART.grid),
      words([left - 8, y + 4], text, { anchor: 'end', colour: CHART.muted }),
    ];
  });
  return [...lines, words([16, (top + bottom) / 2], title, { anchor: 'middle', turnDeg: 90 })];
}
