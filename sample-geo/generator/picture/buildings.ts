/** Roofs with their heights, so that the sun finds their slopes and their shadows. */
import { cellHash } from '../random.ts';
import type { Building } from '../town/grounds.ts';
import type { Point } from '../town/loop.ts';
import { centroid, distanceToRing, isInside, rectangle } from '../town/shapes.ts';
import { type Canvas, cover, fill } from './canvas.ts';
import { material } from './materials.ts';

const HIP_ROOFS = ['roof terracotta', 'roof grey', 'roof brown', 'roof sand', 'roof slate', 'roof terracotta'];
const FLAT_ROOFS = ['roof white', 'roof grey', 'roof sand', 'roof white', 'roof slate', 'roof grey'];
const PITCH = 0.42;

export function paintBuilding(canvas: Canvas, building: Building): void {
  const names = building.roof === 'hip' ? HIP_ROOFS : FLAT_ROOFS;
  const roof = material(names[building.colour]);
  fill(canvas, [building.ring], (cell, x, y) => {
    const in_ = distanceToRing(building.ring, [x, y]);
    const parapet = in_ < 0.35 ? 0.6 : 0;
    canvas.material[cell] = roof;
    canvas.heightM[cell] = building.eaves + (building.roof === 'hip' ? PITCH * in_ : parapet);
    canvas.grain[cell] = Math.round(
      128 * (1 + 0.16 * (cellHash(building.colour, Math.round(building.eaves * 100), 5) - 0.5)),
    );
  });
  if (building.roof === 'flat') paintMachines(canvas, building);
}

/** Cooling machines and skylights. */
function paintMachines(canvas: Canvas, building: Building): void {
  const middle = centroid(building.ring);
  const seed = Math.round(middle[0] * 8 + middle[1]);
  for (let k = 0; k < 5; k++) {
    const at: Point = [middle[0] + (cellHash(seed, k, 1) - 0.5) * 14, middle[1] + (cellHash(seed, k, 2) - 0.5) * 12];
    if (!isInside(building.ring, at) || distanceToRing(building.ring, at) < 2) continue;
    const size = 1 + 1.6 * cellHash(seed, k, 3);
    cover(
      canvas,
      [rectangle(at, [1, 0], [size * 1.4, size])],
      material(k % 2 === 0 ? 'roof white' : 'roof slate'),
      building.eaves + 1.3,
    );
  }
}
