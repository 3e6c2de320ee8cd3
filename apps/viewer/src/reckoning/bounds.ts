/** Where a project lies. */
import type { Assessment, TreeResult } from '@crownfall/assessment';
import type { Bounds } from '../project/project.ts';

type Placed = Pick<TreeResult, 'geometry'>;

/** The box of all that has an outline; null when nothing has. */
export function boundsOf({ blocks, pavement, trees }: Assessment): Bounds | null {
  return boxOf([blocks, pavement, trees]);
}

/** The box `before` once some trees are gone and others have come: all is looked through only if one gone lay at its edge. */
export function boundsAfter(
  before: Bounds | null,
  { gone, come }: { readonly gone: readonly Placed[]; readonly come: readonly Placed[] },
  now: Assessment,
): Bounds | null {
  const lost = boxOf([gone]);
  const atEdge = lost?.some((side, i) => side === before?.[i]) ?? false;
  const [gained, kept] = [boxOf([come]), atEdge ? boundsOf(now) : before];
  if (gained === null || kept === null) return kept ?? gained;
  const least = (i: number): number => Math.min(gained[i], kept[i]);
  const greatest = (i: number): number => Math.max(gained[i], kept[i]);
  return [least(0), least(1), greatest(2), greatest(3)];
}

function boxOf(lists: readonly (readonly Placed[])[]): Bounds | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  const widen = (ring: Float64Array): void => {
    for (let i = 0; i < ring.length; i += 2) {
      if (ring[i] < west) west = ring[i];
      if (ring[i] > east) east = ring[i];
      if (ring[i + 1] < south) south = ring[i + 1];
      if (ring[i + 1] > north) north = ring[i + 1];
    }
  };
  for (const list of lists)
    for (const { geometry } of list)
      if (geometry.kind === 'area') for (const rings of geometry.polygons) for (const ring of rings) widen(ring);
  return west <= east ? [west, south, east, north] : null;
}
