/** Places on the ground in classes, north up: hot and cold spots. */
import type { Drawing } from '../drawing.ts';
import { CHART, type ChartWords, chartSvg, type Page } from './chart-frame.ts';
import { type ChartMark, chartDrawing, dot, markText, rule, words } from './chart-marks.ts';

export interface PlacedPoint {
  /** Metres in a plane, x east, y north. */
  readonly x: number;
  readonly y: number;
  readonly spot: 'hot' | 'cold' | 'none';
  readonly label?: string;
}

export interface PointMap extends ChartWords {
  readonly points: readonly PlacedPoint[];
  readonly words: Readonly<Record<PlacedPoint['spot'], string>>;
}

const WIDTH = 720;
const PLOT = { left: 32, right: 560, top: 44 } as const;
const SHAPES = { hot: 6, cold: 6, none: 3 } as const;

/** The map as SVG text with a legend and a scale bar. No points give an empty map. RangeError for places not finite. */
export function pointMap(map: PointMap): string {
  const { page, marks } = laidOut(map);
  return chartSvg(map, page, marks.map(markText));
}

/** The map as a drawing `widthMm` wide, without title and note: on paper the caption says them. */
export function pointDrawing(map: PointMap, widthMm: number): Drawing {
  const { page, marks } = laidOut(map);
  return chartDrawing(map, { width: page.width, height: page.height - 42, top: PLOT.top - 4 }, marks, widthMm);
}

function laidOut(map: PointMap): { readonly page: Page; readonly marks: readonly ChartMark[] } {
  const xs = map.points.map(({ x }) => x);
  const ys = map.points.map(({ y }) => y);
  const [west, east] = xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : [0, 1];
  const [south, north] = ys.length > 0 ? [Math.min(...ys), Math.max(...ys)] : [0, 1];
  const perMetre = Math.min((PLOT.right - PLOT.left) / Math.max(east - west, 1), 520 / Math.max(north - south, 1));
  const bottom = PLOT.top + 16 + (north - south) * perMetre;
  const points = (['none', 'cold', 'hot'] as const).flatMap((spot) =>
    map.points
      .filter((point) => point.spot === spot)
      .map(({ x, y, label }) =>
        spotMark(spot, PLOT.left + 8 + (x - west) * perMetre, PLOT.top + 8 + (north - y) * perMetre, label),
      ),
  );
  const legend = (['hot', 'cold', 'none'] as const).flatMap((spot, i) => {
    const y = PLOT.top + 16 + 24 * i;
    return [spotMark(spot, PLOT.right + 24, y), words([PLOT.right + 36, y + 4], map.words[spot])];
  });
  const page = { width: WIDTH, height: bottom + 72, plot: { ...PLOT, bottom } };
  return { page, marks: [...points, ...legend, ...scaleBar(perMetre, bottom + 20)] };
}

function spotMark(spot: PlacedPoint['spot'], x: number, y: number, about?: string): ChartMark {
  const fill = spot === 'none' ? CHART.plain : CHART[spot];
  const r = SHAPES[spot];
  const said = about === undefined ? {} : { about };
  if (spot !== 'cold') return { ...dot([x, y], r, fill), ...said };
  // A square, so that hot and cold are told apart without colour.
  const box = { leftMm: x - r, topMm: y - r, widthMm: 2 * r, heightMm: 2 * r };
  return { mark: 'box', box, style: { fill }, ...said };
}

/** A bar of a round length, at most 120 px. */
function scaleBar(perMetre: number, y: number): ChartMark[] {
  const most = 120 / perMetre;
  const power = 10 ** Math.floor(Math.log10(most));
  const metres = ([5, 2, 1].find((factor) => factor * power <= most) ?? 1) * power;
  const end = PLOT.left + metres * perMetre;
  return [
    rule([PLOT.left, y - 4], [PLOT.left, y], CHART.ink),
    rule([PLOT.left, y], [end, y], CHART.ink),
    rule([end, y], [end, y - 4], CHART.ink),
    words([end + 6, y + 2], `${metres} m`),
  ];
}
