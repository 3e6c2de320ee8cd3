/** The outline that a sketch stands for, as the map draws it: by the same functions as the reckoning. */
import { type CrownShape, crownOutline, crownShapeInPlane, equalAreaPlane } from '@crownfall/geometry';
import type { Position, Sketch } from './sketch.ts';

/** Open ring in longitude and latitude; empty while there is nothing to draw. */
export function sketchOutline(sketch: Sketch): readonly Position[] {
  if (sketch.tool === 'polygon') return sketch.vertices;
  if (!sketch.trunk) return [];
  const at = { lon: sketch.trunk[0], lat: sketch.trunk[1] };
  const plane = equalAreaPlane(at);
  const [ring] = crownOutline(crownShapeInPlane(shapeAt(sketch, at), plane)).region;
  if (!ring) return [];
  const lonLat = plane.inverse(ring);
  return Array.from({ length: lonLat.length / 2 }, (_, i): Position => [lonLat[2 * i], lonLat[2 * i + 1]]);
}

function shapeAt(sketch: Sketch, at: { readonly lon: number; readonly lat: number }): CrownShape {
  if (sketch.tool === 'spread') return { from: 'spread', at, spreadM: sketch.spreadM };
  if (sketch.tool === 'radii') return { from: 'radii', at, radiiM: sketch.radiiM };
  return {
    from: 'diameters',
    at,
    aM: sketch.diametersM[0],
    bM: sketch.diametersM[1],
    bearingDeg: sketch.bearingDeg,
  };
}
