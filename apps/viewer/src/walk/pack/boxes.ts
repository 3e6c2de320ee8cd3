/** Boxes in degrees. */
export type Box = readonly [west: number, south: number, east: number, north: number];

export const meet = (a: Box, b: Box): boolean => a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

/** The box of all features; empty (infinite the wrong way round) without any. */
export function boxOf(features: readonly GeoJSON.Feature[]): Box {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  const take = (part: unknown): void => {
    if (!Array.isArray(part)) return;
    if (typeof part[0] !== 'number') {
      part.forEach(take);
      return;
    }
    west = Math.min(west, part[0]);
    east = Math.max(east, part[0]);
    south = Math.min(south, part[1]);
    north = Math.max(north, part[1]);
  };
  for (const { geometry } of features) if (geometry && 'coordinates' in geometry) take(geometry.coordinates);
  return [west, south, east, north];
}
