/** The trees of a block in walking order. */
import { equalAreaPlane, walkingOrder } from '@crownfall/geometry';
import { middleOf } from '../session/middle-of.ts';

/**
 * The trees that have a place, in the order of a short walk; along the block's outline, when it is known, rather than
 * across the block.
 */
export function blockWalk(
  trees: readonly GeoJSON.Feature[],
  outline: GeoJSON.Feature | undefined,
): readonly GeoJSON.Feature[] {
  const placed = trees.flatMap((tree) => {
    const at = middleOf(tree);
    return at ? [{ tree, at }] : [];
  });
  if (placed.length === 0) return [];
  const plane = equalAreaPlane(placed.map(({ at }) => Float64Array.of(at[0], at[1])));
  const places = placed.map(({ at }) => {
    const [x, y] = plane.forward(Float64Array.of(at[0], at[1]));
    return { x, y };
  });
  const kerbs = outlinesOf(outline).map((ring) => plane.forward(Float64Array.from(ring.flat())));
  return walkingOrder(places, { streets: kerbs }).map((i) => placed[i].tree);
}

function outlinesOf(block: GeoJSON.Feature | undefined): readonly GeoJSON.Position[][] {
  const geometry = block?.geometry;
  const polygons =
    geometry?.type === 'Polygon'
      ? [geometry.coordinates]
      : geometry?.type === 'MultiPolygon'
        ? geometry.coordinates
        : [];
  return polygons.map(([shell]) => shell.map(([lon, lat]) => [lon, lat]));
}
