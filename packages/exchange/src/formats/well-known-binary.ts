/** Geometry as well-known binary (OGC 06-103r4, clause 8), little-endian, two-dimensional. */
import type { JsonGeometry } from '../geojson/geometry-to-json.ts';

type Position = readonly [number, number];

const CODES = { Point: 1, LineString: 2, Polygon: 3, MultiPoint: 4, MultiLineString: 5, MultiPolygon: 6 } as const;
type Name = keyof typeof CODES;
const SINGLE: Readonly<Partial<Record<Name, Name>>> = {
  MultiPoint: 'Point',
  MultiLineString: 'LineString',
  MultiPolygon: 'Polygon',
};

/**
 * A GeoJSON geometry as well-known binary; null gives null.
 * @example wellKnownBinary({ type: 'Point', coordinates: [1, 2] }) // 01 01000000 000000000000f03f 0000000000000040
 */
export function wellKnownBinary(geometry: JsonGeometry): Uint8Array | null {
  if (geometry === null) return null;
  const name = geometry.type as Name;
  const bytes = new Uint8Array(sizeOf(name, geometry.coordinates));
  write(new DataView(bytes.buffer), 0, name, geometry.coordinates);
  return bytes;
}

function sizeOf(name: Name, coordinates: unknown): number {
  const single = SINGLE[name];
  if (single) return 9 + (coordinates as unknown[]).reduce((sum: number, part) => sum + sizeOf(single, part), 0);
  if (name === 'Point') return 21;
  if (name === 'LineString') return 9 + 16 * (coordinates as Position[]).length;
  return 9 + (coordinates as Position[][]).reduce((sum, ring) => sum + 4 + 16 * ring.length, 0);
}

function write(view: DataView, at: number, name: Name, coordinates: unknown): number {
  view.setUint8(at, 1);
  view.setUint32(at + 1, CODES[name], true);
  const to = at + 5;
  const single = SINGLE[name];
  if (single) {
    const parts = coordinates as unknown[];
    view.setUint32(to, parts.length, true);
    return parts.reduce((next: number, part) => write(view, next, single, part), to + 4);
  }
  if (name === 'Point') return position(view, to, coordinates as Position);
  if (name === 'LineString') return positions(view, to, coordinates as Position[]);
  const rings = coordinates as Position[][];
  view.setUint32(to, rings.length, true);
  return rings.reduce((next, ring) => positions(view, next, ring), to + 4);
}

function positions(view: DataView, at: number, list: readonly Position[]): number {
  view.setUint32(at, list.length, true);
  return list.reduce((next, each) => position(view, next, each), at + 4);
}

function position(view: DataView, at: number, [x, y]: Position): number {
  view.setFloat64(at, x, true);
  view.setFloat64(at + 8, y, true);
  return at + 16;
}
