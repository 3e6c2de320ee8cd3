/**
 * Where a feature lies, in longitude and latitude: whether its coordinates can be on the earth at all, its middle, its
 * extent, and the area of a small outline.
 */
import type { LonLat, LonLatGeometry } from '@crownfall/geometry';
import type { LayerName } from '../project-input.ts';
import type { RowReader } from './row-reader.ts';

type Polygons = Extract<LonLatGeometry, { kind: 'area' }>['polygons'];

/** Longitudes and latitudes between which something lies; decimal degrees. */
export interface Extent {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** All coordinate lists of a geometry: points, lines, rings. */
export function coordinateLists(geometry: LonLatGeometry): readonly Float64Array[] {
  if (geometry.kind === 'none') return [];
  if (geometry.kind === 'point') return [geometry.points];
  return geometry.kind === 'line' ? geometry.lines : geometry.polygons.flat();
}

/**
 * Whether a row's geometry is of one of the kinds asked for and all its coordinates are finite and on the earth. If not,
 * the row is spoiled with a finding that names the vertex.
 */
export function hasGeometry(row: RowReader<LayerName>, kinds: readonly LonLatGeometry['kind'][]): boolean {
  const { geometry } = row.feature;
  const lists = coordinateLists(geometry);
  if (geometry.kind === 'none' || lists.every((list) => list.length < 2)) {
    row.spoil('feature-without-geometry', {});
    return false;
  }
  if (!kinds.includes(geometry.kind)) {
    row.spoil('geometry-unexpected', { got: geometry.kind, expected: kinds.join(', ') });
    return false;
  }
  for (const list of lists) {
    for (let i = 0; i + 1 < list.length; i += 2) {
      if (!goodPosition(row, list[i], list[i + 1], i / 2 + 1)) return false;
    }
  }
  return true;
}

/** The middle: of a point itself, of an area its largest part's centroid, of a line or several points their mean vertex. */
export function middleOf(geometry: LonLatGeometry): LonLat {
  if (geometry.kind !== 'area') return meanVertex(coordinateLists(geometry));
  const shells = geometry.polygons.map(([shell]) => shell);
  let best = centroid(shells[0]);
  for (const shell of shells.slice(1)) {
    const other = centroid(shell);
    if (other.area > best.area) best = other;
  }
  return best.area > 0 ? { lon: best.lon, lat: best.lat } : meanVertex(shells);
}

/** Extent of several geometries; `undefined` when none has a coordinate. */
export function extentOf(lists: Iterable<Float64Array>): Extent | undefined {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const list of lists) {
    for (let i = 0; i + 1 < list.length; i += 2) {
      west = Math.min(west, list[i]);
      east = Math.max(east, list[i]);
      south = Math.min(south, list[i + 1]);
      north = Math.max(north, list[i + 1]);
    }
  }
  return west <= east ? { west, south, east, north } : undefined;
}

/** Whether two extents come within `slackDeg` of each other. */
export function extentsMeet(a: Extent, b: Extent, slackDeg: number): boolean {
  const lonMeet = a.west <= b.east + slackDeg && b.west <= a.east + slackDeg;
  return lonMeet && a.south <= b.north + slackDeg && b.south <= a.north + slackDeg;
}

/** `13.4301 52.4800 … 13.4400 52.4900`: south-west and north-east corner, longitude first. */
export function extentText(extent: Extent): string {
  const digits = (degrees: number): string => degrees.toFixed(4);
  return `${digits(extent.west)} ${digits(extent.south)} … ${digits(extent.east)} ${digits(extent.north)}`;
}

/**
 * Area of an outline a few metres across, m², on the WGS 84 ellipsoid: the plane area with degrees scaled by the radii of
 * curvature at its first vertex. Good to 1e-5 up to 100 m; holes are taken off.
 */
export function smallAreaM2(polygons: Polygons): number {
  const EQUATORIAL_M = 6378137;
  const E2 = 0.00669437999014;
  const radians = Math.PI / 180;
  let total = 0;
  for (const rings of polygons) {
    const latitude = rings[0][1] * radians;
    const w2 = 1 - E2 * Math.sin(latitude) ** 2;
    const eastM = (EQUATORIAL_M / Math.sqrt(w2)) * Math.cos(latitude) * radians;
    const northM = ((EQUATORIAL_M * (1 - E2)) / w2 ** 1.5) * radians;
    const [shell, ...holes] = rings.map((ring) => centroid(ring).area * eastM * northM);
    total += shell - holes.reduce((sum, hole) => sum + hole, 0);
  }
  return total;
}

function goodPosition(row: RowReader<LayerName>, lon: number, lat: number, vertex: number): boolean {
  if (Math.abs(lon) <= 180 && Math.abs(lat) <= 90) return true;
  const where = { ...row.place(), vertex };
  if (!Number.isFinite(lon) || !Number.isFinite(lat)) {
    row.spoilAt(where, 'coordinates-not-finite', { got: `${lon} ${lat}` });
    return false;
  }
  row.spoilAt({ ...where, lon, lat }, 'lonlat-out-of-range', { got: `${lon} ${lat}` });
  return false;
}

function meanVertex(lists: readonly Float64Array[]): LonLat {
  let [lon, lat, count] = [0, 0, 0];
  for (const list of lists) {
    for (let i = 0; i + 1 < list.length; i += 2) {
      lon += list[i];
      lat += list[i + 1];
      count++;
    }
  }
  return { lon: lon / count, lat: lat / count };
}

/** Centroid and unsigned area of a ring in degrees, about its first vertex. */
function centroid(ring: Float64Array): { lon: number; lat: number; area: number } {
  const [lon0, lat0] = ring;
  let [twice, lon, lat] = [0, 0, 0];
  for (let i = 2; i + 3 < ring.length; i += 2) {
    const [ax, ay, bx, by] = [ring[i] - lon0, ring[i + 1] - lat0, ring[i + 2] - lon0, ring[i + 3] - lat0];
    const cross = ax * by - bx * ay;
    twice += cross;
    lon += cross * (ax + bx);
    lat += cross * (ay + by);
  }
  if (twice === 0) return { lon: lon0, lat: lat0, area: 0 };
  return { lon: lon0 + lon / (3 * twice), lat: lat0 + lat / (3 * twice), area: Math.abs(twice) / 2 };
}
