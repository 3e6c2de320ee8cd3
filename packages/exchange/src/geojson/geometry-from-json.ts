import type { Coordinates, LonLatGeometry } from '@crownfall/geometry';

/** Told while a geometry is taken in; ring and polygon count from 1. */
export interface GeometryNotes {
  /** A ring whose last position is not its first: it is closed by a straight edge. */
  unclosed(polygon: number, ring: number, gap: readonly [number, number, number, number]): void;
  /** Members of a collection that are of another kind than its first, and are left out. */
  collectionMixed(kept: string, leftOut: number): void;
}

const NONE: LonLatGeometry = { kind: 'none' };

/**
 * A GeoJSON geometry as flat, open coordinates in the units of the file. Altitudes are dropped; a coordinate that is no
 * number becomes NaN. Empty coordinates, null, and what is no geometry at all give `none` (RFC 7946, section 3.1). A
 * GeometryCollection gives its members joined when all are of one kind, else those of the first one's kind.
 *
 * @example geometryFromJson({ type: 'Point', coordinates: [13.4, 52.5, 40] }, notes) // point [13.4, 52.5]
 */
export function geometryFromJson(geometry: unknown, notes: GeometryNotes): LonLatGeometry {
  if (typeof geometry !== 'object' || geometry === null) return NONE;
  const { type, coordinates, geometries } = geometry as Record<string, unknown>;
  switch (type) {
    case 'Point':
      return pointsFrom([coordinates]);
    case 'MultiPoint':
      return pointsFrom(listOf(coordinates));
    case 'LineString':
      return linesFrom([coordinates]);
    case 'MultiLineString':
      return linesFrom(listOf(coordinates));
    case 'Polygon':
      return areaFrom([coordinates], notes);
    case 'MultiPolygon':
      return areaFrom(listOf(coordinates), notes);
    case 'GeometryCollection':
      return joined(
        listOf(geometries).map((member) => geometryFromJson(member, notes)),
        notes,
      );
    default:
      return NONE;
  }
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function pointsFrom(positions: readonly unknown[]): LonLatGeometry {
  const given = positions.filter((position) => listOf(position).length > 0);
  return given.length === 0 ? NONE : { kind: 'point', points: flat(given) };
}

function linesFrom(lines: readonly unknown[]): LonLatGeometry {
  const given = lines.map(listOf).filter((line) => line.length > 0);
  return given.length === 0 ? NONE : { kind: 'line', lines: given.map(flat) };
}

function areaFrom(polygons: readonly unknown[], notes: GeometryNotes): LonLatGeometry {
  const given: Coordinates<'lonlat'>[][] = [];
  polygons.forEach((polygon, p) => {
    const rings: Coordinates<'lonlat'>[] = [];
    listOf(polygon).forEach((ring, r) => {
      if (listOf(ring).length === 0) return;
      rings.push(opened(flat(listOf(ring)), (...gap) => notes.unclosed(p + 1, r + 1, gap)));
    });
    if (rings.length > 0) given.push(rings);
  });
  return given.length === 0 ? NONE : { kind: 'area', polygons: given };
}

function flat(positions: readonly unknown[]): Coordinates<'lonlat'> {
  const out = new Float64Array(positions.length * 2);
  positions.forEach((position, i) => {
    const [x, y] = listOf(position);
    out[2 * i] = typeof x === 'number' ? x : Number.NaN;
    out[2 * i + 1] = typeof y === 'number' ? y : Number.NaN;
  });
  return out;
}

function opened(
  ring: Coordinates<'lonlat'>,
  unclosed: (x0: number, y0: number, xn: number, yn: number) => void,
): Coordinates<'lonlat'> {
  const n = ring.length;
  if (Object.is(ring[0], ring[n - 2]) && Object.is(ring[1], ring[n - 1])) return n > 2 ? ring.slice(0, n - 2) : ring;
  unclosed(ring[0], ring[1], ring[n - 2], ring[n - 1]);
  return ring;
}

function joined(members: readonly LonLatGeometry[], notes: GeometryNotes): LonLatGeometry {
  const given = members.filter((member) => member.kind !== 'none');
  const first = given[0];
  if (first === undefined) return NONE;
  const alike = given.filter((member) => member.kind === first.kind);
  if (alike.length < given.length) notes.collectionMixed(first.kind, given.length - alike.length);
  if (first.kind === 'point') {
    return {
      kind: 'point',
      points: Float64Array.from(alike.flatMap((m) => (m.kind === 'point' ? [...m.points] : []))),
    };
  }
  if (first.kind === 'line') return { kind: 'line', lines: alike.flatMap((m) => (m.kind === 'line' ? m.lines : [])) };
  return { kind: 'area', polygons: alike.flatMap((m) => (m.kind === 'area' ? m.polygons : [])) };
}
