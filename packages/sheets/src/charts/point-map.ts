/** Places on the ground in classes, north up: hot and cold spots. */
import { CHART, type ChartWords, chartSvg, px, text } from './chart-frame.ts';

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
  const xs = map.points.map(({ x }) => x);
  const ys = map.points.map(({ y }) => y);
  const [west, east] = xs.length > 0 ? [Math.min(...xs), Math.max(...xs)] : [0, 1];
  const [south, north] = ys.length > 0 ? [Math.min(...ys), Math.max(...ys)] : [0, 1];
  const perMetre = Math.min((PLOT.right - PLOT.left) / Math.max(east - west, 1), 520 / Math.max(north - south, 1));
  const bottom = PLOT.top + 16 + (north - south) * perMetre;
  const marks = (['none', 'cold', 'hot'] as const).flatMap((spot) =>
    map.points
      .filter((point) => point.spot === spot)
      .map(({ x, y, label }) =>
        mark(spot, PLOT.left + 8 + (x - west) * perMetre, PLOT.top + 8 + (north - y) * perMetre, label),
      ),
  );
  const legend = (['hot', 'cold', 'none'] as const).flatMap((spot, i) => {
    const y = PLOT.top + 16 + 24 * i;
    return [mark(spot, PLOT.right + 24, y), text(PLOT.right + 36, y + 4, map.words[spot])];
  });
  const page = { width: WIDTH, height: bottom + 72, plot: { ...PLOT, bottom } };
  return chartSvg(map, page, [...marks, ...legend, ...scaleBar(perMetre, bottom + 20)]);
}

function mark(spot: PlacedPoint['spot'], x: number, y: number, label?: string): string {
  const colour = spot === 'none' ? CHART.plain : CHART[spot];
  const r = SHAPES[spot];
  const about = label === undefined ? '' : `<title>${label.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</title>`;
  if (spot !== 'cold') return `<circle cx="${px(x)}" cy="${px(y)}" r="${r}" fill="${colour}">${about}</circle>`;
  // A square, so that hot and cold are told apart without colour.
  return `<rect x="${px(x - r)}" y="${px(y - r)}" width="${2 * r}" height="${2 * r}" fill="${colour}">${about}</rect>`;
}

/** A bar of a round length, at most 120 px. */
function scaleBar(perMetre: number, y: number): string[] {
  const most = 120 / perMetre;
  const power = 10 ** Math.floor(Math.log10(most));
  const metres = ([5, 2, 1].find((factor) => factor * power <= most) ?? 1) * power;
  const end = PLOT.left + metres * perMetre;
  return [
    `<path d="M${PLOT.left} ${px(y - 4)}V${px(y)}H${px(end)}V${px(y - 4)}" fill="none" stroke="${CHART.ink}"/>`,
    text(end + 6, y + 2, `${metres} m`),
  ];
}
