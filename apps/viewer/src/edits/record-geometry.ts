/** Geometries between the readers' flat arrays and GeoJSON. */
import type { Coordinates, LonLatGeometry } from '@crownfall/geometry';

/** Rings closed, as RFC 7946 wants; null for what has no place. Every digit is kept. */
export function toGeoJson(geometry: LonLatGeometry): GeoJSON.Geometry | null {
  switch (geometry.kind) {
    case 'none':
      return null;
    case 'point':
      return { type: 'Point', coordinates: [geometry.points[0], geometry.points[1]] };
    case 'line':
      return { type: 'MultiLineString', coordinates: geometry.lines.map((line) => pairs(line)) };
    case 'area': {
      const polygons = geometry.polygons.map((rings) => rings.map(closedPairs));
      return polygons.length === 1
        ? { type: 'Polygon', coordinates: polygons[0] }
        : { type: 'MultiPolygon', coordinates: polygons };
    }
  }
}

/** Points and polygons; rings opened. */
export function fromGeoJson(geometry: GeoJSON.Point | GeoJSON.Polygon | GeoJSON.MultiPolygon): LonLatGeometry {
  if (geometry.type === 'Point') return { kind: 'point', points: Float64Array.from(geometry.coordinates.slice(0, 2)) };
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return { kind: 'area', polygons: polygons.map((rings) => rings.map(openFlat)) };
}

function pairs(flat: Coordinates<'lonlat'>): GeoJSON.Position[] {
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]]);
}

function closedPairs(flat: Coordinates<'lonlat'>): GeoJSON.Position[] {
  const ring = pairs(flat);
  return ring.length > 0 ? [...ring, ring[0]] : ring;
}

function openFlat(ring: readonly GeoJSON.Position[]): Float64Array {
  const last = ring[ring.length - 1];
  const isClosed = ring.length > 1 && ring[0][0] === last[0] && ring[0][1] === last[1];
  return Float64Array.from(ring.slice(0, isClosed ? -1 : undefined).flat());
}
