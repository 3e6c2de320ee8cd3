/** Whether a geometry meets a box of longitudes and latitudes: exact, edges straight in degrees as RFC 7946 draws them. */
import type { Box } from './item-query.ts';

type Position = readonly [number, number];
type Line = readonly Position[];

export interface GeoJsonGeometry {
  readonly type: string;
  readonly coordinates: unknown;
}

/** True when they share at least a point; touching counts. Knows points, lines, polygons and their multiples. */
export function meetsBox({ type, coordinates }: GeoJsonGeometry, box: Box): boolean {
  switch (type) {
    case 'Point':
      return inside(coordinates as Position, box);
    case 'MultiPoint':
      return (coordinates as Line).some((position) => inside(position, box));
    case 'LineString':
      return lineMeets(coordinates as Line, box);
    case 'MultiLineString':
      return (coordinates as Line[]).some((line) => lineMeets(line, box));
    case 'Polygon':
      return polygonMeets(coordinates as Line[], box);
    case 'MultiPolygon':
      return (coordinates as Line[][]).some((polygon) => polygonMeets(polygon, box));
    default:
      throw new TypeError(`geometry type: expected one of RFC 7946, got ${type}`);
  }
}

/** Boundaries that do not meet: then the box lies wholly in the polygon or wholly outside it; one corner decides. */
function polygonMeets(rings: readonly Line[], box: Box): boolean {
  return rings.some((ring) => lineMeets(ring, box)) || (rings.length > 0 && holds(rings, [box[0], box[1]]));
}

function lineMeets(line: Line, box: Box): boolean {
  if (line.some((position) => inside(position, box))) return true;
  for (let i = 1; i < line.length; i++) {
    if (edgeMeets(line[i - 1], line[i], box)) return true;
  }
  return false;
}

const inside = ([x, y]: Position, [west, south, east, north]: Box): boolean =>
  x >= west && x <= east && y >= south && y <= north;

/** Clips the edge to the box by its four sides (Liang and Barsky 1984); what is left meets it. */
function edgeMeets(p: Position, q: Position, [west, south, east, north]: Box): boolean {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const sides = [
    [-dx, p[0] - west],
    [dx, east - p[0]],
    [-dy, p[1] - south],
    [dy, north - p[1]],
  ];
  let [from, to] = [0, 1];
  for (const [way, room] of sides) {
    if (way === 0 && room < 0) return false;
    if (way < 0) from = Math.max(from, room / way);
    if (way > 0) to = Math.min(to, room / way);
  }
  return from <= to;
}

/** Even-odd over all rings: a hole turns the count back. */
function holds(rings: readonly Line[], [x, y]: Position): boolean {
  let within = false;
  for (const ring of rings) {
    for (let i = 1; i < ring.length; i++) {
      const [x0, y0] = ring[i - 1];
      const [x1, y1] = ring[i];
      if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) within = !within;
    }
  }
  return within;
}
