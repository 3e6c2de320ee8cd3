/** Lets a point fall on a vertex of a crown or pavement nearby, so that outlines meet. */
import type { Map as MapLibreMap } from 'maplibre-gl';
import type { Position } from '../outline/sketch.ts';

const REACH_PX = 8;

/** The nearest recorded vertex within reach on the screen, else the point. `except`: the tree that is being drawn. */
export function snappedTo(map: MapLibreMap, at: Position, source: SnapSource): Position {
  const here = map.project([at[0], at[1]]);
  const box: [[number, number], [number, number]] = [
    [here.x - REACH_PX, here.y - REACH_PX],
    [here.x + REACH_PX, here.y + REACH_PX],
  ];
  let best: Position = at;
  let least = REACH_PX;
  for (const { id } of map.queryRenderedFeatures(box, { layers: ['crown-fill'] })) {
    for (const vertex of source.verticesOf(String(id))) {
      const there = map.project([vertex[0], vertex[1]]);
      const distance = Math.hypot(there.x - here.x, there.y - here.y);
      if (distance < least) {
        least = distance;
        best = [vertex[0], vertex[1]];
      }
    }
  }
  return best;
}

export interface SnapSource {
  readonly verticesOf: (treeId: string) => readonly GeoJSON.Position[];
}
