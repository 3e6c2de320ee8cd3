/** One shape of a .shp file (ESRI Shapefile Technical Description, July 1998) as GeoJSON, in the coordinates of the file. */
import { signedArea } from '@crownfall/geometry';

type Position = [number, number];
type Ring = Position[];

export interface JsonShape {
  readonly type: string;
  readonly coordinates: unknown;
}

/** Shape types; those with altitudes and measures are 10 and 20 more and begin with the same parts. */
const KINDS: Readonly<Record<number, 'point' | 'line' | 'area' | 'points'>> = {
  1: 'point',
  3: 'line',
  5: 'area',
  8: 'points',
};
const NULL_SHAPE = 0;
const MULTIPATCH = 31;

/**
 * Reads the content of one record: null for the null shape; altitudes and measures are dropped. Throws a `RangeError`
 * when the content is shorter than it says, or of a type that is no point, line or area.
 */
export function shapeRecord(content: Uint8Array): JsonShape | null {
  const view = new DataView(content.buffer, content.byteOffset, content.byteLength);
  const type = view.getInt32(0, true);
  if (type === NULL_SHAPE) return null;
  const kind = type === MULTIPATCH ? undefined : KINDS[type % 10];
  if (kind === undefined) throw new RangeError(`shapes of type ${type} are not read`);
  if (kind === 'point') return { type: 'Point', coordinates: positionAt(view, 4) };
  if (kind === 'points') {
    return { type: 'MultiPoint', coordinates: positionsAt(view, 40, view.getInt32(36, true)) };
  }
  const parts = partsOf(view);
  if (kind === 'line') return { type: 'MultiLineString', coordinates: parts };
  const polygons = polygonsOf(parts);
  return polygons.length === 1
    ? { type: 'Polygon', coordinates: polygons[0] }
    : { type: 'MultiPolygon', coordinates: polygons };
}

function partsOf(view: DataView): Position[][] {
  const partCount = view.getInt32(36, true);
  const pointCount = view.getInt32(40, true);
  const pointsAt = 44 + 4 * partCount;
  if (partCount < 0 || pointCount < 0 || pointsAt + 16 * pointCount > view.byteLength) {
    throw new RangeError(`a shape of ${partCount} parts and ${pointCount} points does not fit its record`);
  }
  return Array.from({ length: partCount }, (_, i) => {
    const from = view.getInt32(44 + 4 * i, true);
    const to = i + 1 < partCount ? view.getInt32(48 + 4 * i, true) : pointCount;
    return positionsAt(view, pointsAt + 16 * from, to - from);
  });
}

function positionsAt(view: DataView, at: number, count: number): Position[] {
  if (count < 0 || at + 16 * count > view.byteLength) throw new RangeError('a part points outside its record');
  return Array.from({ length: count }, (_, i) => positionAt(view, at + 16 * i));
}

/** Numbers below -1e38 stand for "no data" (page 2 of the description). */
function positionAt(view: DataView, at: number): Position {
  const [x, y] = [view.getFloat64(at, true), view.getFloat64(at + 8, true)];
  return [x < -1e38 ? Number.NaN : x, y < -1e38 ? Number.NaN : y];
}

/**
 * Rings as polygons: shells run clockwise and holes the other way (page 9); a hole belongs to the smallest shell around
 * it, and one that no shell is around is a shell wound the wrong way.
 */
function polygonsOf(rings: readonly Ring[]): Ring[][] {
  const sized = rings.map((ring) => ({ ring, area: signedArea(Float64Array.from(ring.flat())) }));
  const shells = sized.filter(({ area }) => area <= 0).sort((a, b) => b.area - a.area);
  const polygons = new Map(shells.map(({ ring }) => [ring, [ring]]));
  for (const { ring, area } of sized) {
    if (area <= 0) continue;
    const around = shells.find((shell) => -shell.area >= area && liesIn(ring, shell.ring));
    if (around) polygons.get(around.ring)?.push(ring);
    else polygons.set(ring, [ring]);
  }
  return [...polygons.values()];
}

/** By the first corner of the hole that is not a corner of the shell as well; one that shares all corners lies in it. */
function liesIn(hole: Ring, shell: Ring): boolean {
  const corners = new Set(shell.map(String));
  const corner = hole.find((position) => !corners.has(String(position)));
  return corner === undefined || contains(shell, corner);
}

function contains(ring: Ring, [x, y]: Position): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [xi, yi] = ring[i];
    const [xj, yj] = ring[j];
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}
