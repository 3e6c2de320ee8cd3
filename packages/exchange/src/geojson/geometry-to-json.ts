import { type LonLatGeometry, signedArea } from '@crownfall/geometry';

/** A geometry as GeoJSON, its coordinates ready to be written; `null` for none. */
export type JsonGeometry = { readonly type: string; readonly coordinates: unknown } | null;

type Position = readonly [number, number];

/** How a coordinate is rounded; `null` where it is no number. */
export type RoundCoordinate = (degrees: number) => number | null;

/**
 * A geometry as RFC 7946 wants it: single types for single parts, rings closed, shells counter-clockwise and holes
 * clockwise (section 3.1.6). What cannot be valid is left out: a ring of fewer than three positions, a line of fewer than
 * two, and any part with a coordinate that is no number; nothing left gives `null`.
 *
 * @example geometryToJson({ kind: 'point', points: Float64Array.of(13.4, 52.5) }, degree) // { type: 'Point', … }
 */
export function geometryToJson(geometry: LonLatGeometry, round: RoundCoordinate): JsonGeometry {
  if (geometry.kind === 'point') return single('Point', positions(geometry.points, round) ?? []);
  if (geometry.kind === 'line') {
    const lines = geometry.lines.map((line) => positions(line, round));
    return single(
      'LineString',
      lines.filter((line): line is Position[] => line !== null && line.length >= 2),
    );
  }
  if (geometry.kind === 'none') return null;
  const polygons = geometry.polygons.map((rings) => polygonOf(rings, round));
  return single(
    'Polygon',
    polygons.filter((polygon): polygon is Position[][] => polygon !== null),
  );
}

function single(type: string, parts: readonly unknown[]): JsonGeometry {
  if (parts.length === 0) return null;
  return parts.length === 1 ? { type, coordinates: parts[0] } : { type: `Multi${type}`, coordinates: parts };
}

function polygonOf(rings: readonly Float64Array[], round: RoundCoordinate): Position[][] | null {
  const closed = rings.map((ring, i) => closedRing(ring, i === 0, round));
  // Without its shell a polygon is nothing; a hole that vanished takes nothing along.
  return closed[0] ? closed.filter((ring): ring is Position[] => ring !== null) : null;
}

function closedRing(ring: Float64Array, shell: boolean, round: RoundCoordinate): Position[] | null {
  const flat = roundedFlat(ring, round);
  if (flat === null || flat.length < 6) return null;
  const area = signedArea(flat);
  const open = pairs(flat);
  if (area < 0 === shell && area !== 0) open.reverse();
  return [...open, open[0]];
}

function positions(flat: Float64Array, round: RoundCoordinate): Position[] | null {
  const at = roundedFlat(flat, round);
  return at && pairs(at);
}

/** Rounded coordinates; null when one is no number. A half position at the end is left out. */
function roundedFlat(flat: Float64Array, round: RoundCoordinate): Float64Array | null {
  const out = new Float64Array(flat.length - (flat.length % 2));
  for (let i = 0; i < out.length; i++) {
    const value = round(flat[i]);
    if (value === null) return null;
    out[i] = value;
  }
  return out;
}

function pairs(flat: Float64Array): Position[] {
  const out: Position[] = [];
  for (let i = 0; i < flat.length; i += 2) out.push([flat[i], flat[i + 1]]);
  return out;
}
