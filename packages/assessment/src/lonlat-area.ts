/** Regions and recorded polygons as longitude–latitude areas fit for RFC 7946: shells counter-clockwise, holes clockwise. */
import {
  type Coordinates,
  type LonLatGeometry,
  type Region,
  type Ring,
  reversed,
  signedArea,
} from '@crownfall/geometry';
import { boundsOf, holdsPoint } from './region-lookup.ts';

type Polygons = readonly (readonly Coordinates<'lonlat'>[])[];

/** Recorded polygons with each ring turned the right way (first ring the shell). Rings already right are not copied. */
export function orientedArea(polygons: Polygons): LonLatGeometry {
  return {
    kind: 'area',
    polygons: polygons.map((rings) => rings.map((ring, position) => turned(ring, position === 0))),
  };
}

function turned(ring: Float64Array, isShell: boolean): Float64Array {
  return signedArea(ring) > 0 === isShell ? ring : reversed(ring);
}

/**
 * A region of the plane as an area: every counter-clockwise ring a shell, every clockwise one a hole of the smallest shell
 * that holds it. Rings of a region made by this program do not cross. An empty region gives `none`.
 */
export function lonLatArea(region: Region, inverse: (ring: Ring) => Coordinates<'lonlat'>): LonLatGeometry {
  const shells = region.filter((ring) => signedArea(ring) > 0).map((ring) => ({ ring, holes: [] as Ring[] }));
  if (shells.length === 0) return { kind: 'none' };
  if (region.length > shells.length) assignHoles(region, shells);
  return { kind: 'area', polygons: shells.map(({ ring, holes }) => [ring, ...holes].map(inverse)) };
}

function assignHoles(region: Region, shells: readonly { readonly ring: Ring; readonly holes: Ring[] }[]): void {
  const bySize = [...shells].sort((a, b) => signedArea(a.ring) - signedArea(b.ring));
  for (const hole of region) {
    if (signedArea(hole) >= 0) continue;
    const shell = bySize.find(({ ring }) => boxHolds(boundsOf([ring]), boundsOf([hole])) && mostlyHolds(ring, hole));
    (shell ?? bySize[bySize.length - 1]).holes.push(hole);
  }
}

function boxHolds(outer: readonly number[], inner: readonly number[]): boolean {
  return outer[0] <= inner[0] && outer[1] <= inner[1] && outer[2] >= inner[2] && outer[3] >= inner[3];
}

/** Most vertices decide, because a hole may touch its shell. */
function mostlyHolds(shell: Ring, hole: Ring): boolean {
  let inside = 0;
  for (let i = 0; i < hole.length; i += 2) if (holdsPoint([shell], hole[i], hole[i + 1])) inside++;
  return 4 * inside > hole.length;
}
