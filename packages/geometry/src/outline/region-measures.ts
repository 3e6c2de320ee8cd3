/**
 * Area and centroid of a region whose rings do not overlap (shells counter-clockwise, holes clockwise).
 */
import { type Region, signedArea } from '../ring.ts';

/**
 * Area of a region in m²: the sum of its rings' signed areas, `Σ ½ Σ cross`. Exact where no two rings overlap; where they
 * may, take {@link cleanRegion} first. An empty region has 0.
 *
 * @example regionArea([Float64Array.of(0, 0, 10, 0, 10, 6, 0, 6)]) // 60
 */
export function regionArea(region: Region): number {
  return region.reduce((sum, ring) => sum + signedArea(ring), 0);
}

/**
 * Centroid `[x, y]` of a region whose rings do not overlap, in the plane's metres: the area-weighted mean of the triangles
 * about a common point. A region without area gives the mean of its vertices, an empty one `[NaN, NaN]`.
 *
 * @example regionCentroid([Float64Array.of(0, 0, 10, 0, 10, 6, 0, 6)]) // [5, 3]
 */
export function regionCentroid(region: Region): [number, number] {
  const first = region.find((ring) => ring.length > 0);
  if (!first) return [Number.NaN, Number.NaN];
  const [x0, y0] = first;
  let twice = 0;
  let sumX = 0;
  let sumY = 0;
  for (const ring of region) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const ax = ring[j] - x0;
      const ay = ring[j + 1] - y0;
      const bx = ring[i] - x0;
      const by = ring[i + 1] - y0;
      const cross = ax * by - bx * ay;
      twice += cross;
      sumX += cross * (ax + bx);
      sumY += cross * (ay + by);
    }
  }
  return twice === 0 ? vertexMean(region) : [x0 + sumX / (3 * twice), y0 + sumY / (3 * twice)];
}

function vertexMean(region: Region): [number, number] {
  let count = 0;
  let x = 0;
  let y = 0;
  for (const ring of region) {
    for (let i = 0; i < ring.length; i += 2) {
      count++;
      x += ring[i];
      y += ring[i + 1];
    }
  }
  return [x / count, y / count];
}
