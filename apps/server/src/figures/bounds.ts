/** The box that holds everything a project shows. */
import type { Assessment } from '@crownfall/assessment';
import type { LonLatGeometry } from '@crownfall/geometry';

export type Bounds = [west: number, south: number, east: number, north: number];

/** Degrees; null when nothing has a place. */
export function boundsOf(assessment: Assessment): Bounds | null {
  const bounds: Bounds = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { geometry } of [...assessment.blocks, ...assessment.pavement, ...assessment.trees]) {
    for (const positions of positionsOf(geometry)) widen(bounds, positions);
  }
  return bounds[0] <= bounds[2] ? bounds : null;
}

function widen(bounds: Bounds, positions: Float64Array): void {
  for (let i = 0; i + 1 < positions.length; i += 2) {
    bounds[0] = Math.min(bounds[0], positions[i]);
    bounds[1] = Math.min(bounds[1], positions[i + 1]);
    bounds[2] = Math.max(bounds[2], positions[i]);
    bounds[3] = Math.max(bounds[3], positions[i + 1]);
  }
}

function positionsOf(geometry: LonLatGeometry): readonly Float64Array[] {
  switch (geometry.kind) {
    case 'none':
      return [];
    case 'point':
      return [geometry.points];
    case 'line':
      return geometry.lines;
    case 'area':
      return geometry.polygons.flat();
  }
}
