/** Where a feature is: the middle of its box. */
import type { Position } from '../outline/sketch.ts';

/** Null for a feature without a place. */
export function middleOf(feature: GeoJSON.Feature | undefined): Position | null {
  const geometry = feature?.geometry;
  const ring =
    geometry?.type === 'Polygon'
      ? geometry.coordinates[0]
      : geometry?.type === 'MultiPolygon'
        ? geometry.coordinates[0][0]
        : geometry?.type === 'Point'
          ? [geometry.coordinates]
          : [];
  if (ring.length === 0) return null;
  const lons = ring.map(([lon]) => lon);
  const lats = ring.map(([, lat]) => lat);
  return [(Math.min(...lons) + Math.max(...lons)) / 2, (Math.min(...lats) + Math.max(...lats)) / 2];
}
