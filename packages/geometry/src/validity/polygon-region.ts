/**
 * One polygon's rings as a region under the non-zero winding rule, in which no part winds backwards: then polygons can be
 * put side by side, overlapping or not, without one taking from the other.
 */
import { cleanRegion } from '../offset/clean-region.ts';
import { type Region, type Ring, reversed, signedArea } from '../ring.ts';
import { type Contact, MOST_COUNTED, ringContacts } from './ring-contacts.ts';

export interface Polygon {
  /** The shell, counter-clockwise, then holes, clockwise. */
  readonly rings: readonly {
    readonly ring: Ring;
    /** For each vertex its number in the ring as it came, from 1. */
    readonly vertexNumbers: Int32Array;
    /** Place of the ring in the polygon as it came, from 0. */
    readonly number: number;
  }[];
}

export interface PolygonRegion {
  readonly region: Region;
  /** Where the polygon crosses itself, when it does. */
  readonly crossing: Contact | undefined;
  readonly crossings: number;
}

/** Degrees to about the size of a metre's grid, by a power of two so that nothing is rounded. */
const GRID = { plane: 1, lonlat: 2 ** 17 } as const;
/** Areas before and after: a part that winds twice or backwards makes them differ by more. */
const SAME_AREA = 1e-9;

/**
 * The region of a polygon. Without crossings and touches, and with every hole plainly in the shell and in no other hole, the rings
 * as they are. Else each ring counts as what it winds around, and the shell less its holes is made of simple rings.
 */
export function polygonRegion(polygon: Polygon, frame: 'plane' | 'lonlat'): PolygonRegion {
  const rings = polygon.rings.map((one) => one.ring);
  const { crossing, crossings, touch, complete } = ringContacts(rings);
  const asTheyAre = { region: rings, crossing, crossings };
  if (!complete || crossings >= MOST_COUNTED) return asTheyAre;
  if (!crossing && !touch && plainlyNested(rings)) return asTheyAre;
  const region = shellLessHoles(rings, GRID[frame]);
  if (crossing) return { region, crossing, crossings };
  const same = Math.abs(totalArea(region) - totalArea(rings)) <= SAME_AREA * Math.abs(signedArea(rings[0]));
  if (same) return asTheyAre;
  // A ring that only touches itself, yet encloses another area than it should, goes through itself at a vertex.
  const through = touch?.ring === touch?.otherRing ? touch : undefined;
  return { region, crossing: through, crossings: through ? 1 : 0 };
}

/** Holes are subtracted from shell and holes together, so that no hole reaches beyond what it is taken from. */
function shellLessHoles(rings: readonly Ring[], grid: number): Region {
  const [x0, y0] = rings[0];
  // Counted from the shell's first vertex, so that the grid has digits to spare.
  const [shell, ...holes] = rings.map((ring) => ring.map((value, i) => (value - (i % 2 ? y0 : x0)) * grid));
  const inPlace = (ring: Ring) => ring.map((value, i) => value / grid + (i % 2 ? y0 : x0));
  const solid = cleanRegion([shell]);
  if (holes.length === 0) return solid.map(inPlace);
  const gap = cleanRegion(holes.flatMap((hole) => cleanRegion([hole])));
  const together = cleanRegion([...solid, ...gap]);
  return cleanRegion([...together, ...gap.map(reversed)]).map(inPlace);
}

function totalArea(region: Region): number {
  return region.reduce((sum, ring) => sum + signedArea(ring), 0);
}

function plainlyNested([shell, ...holes]: readonly Ring[]): boolean {
  return holes.every(
    (hole, h) => encloses(shell, hole) && holes.every((other, o) => o === h || !encloses(other, hole)),
  );
}

/** Whether a ring that neither crosses nor touches `outer` lies in it: any one vertex tells. */
function encloses(outer: Ring, inner: Ring): boolean {
  const x = inner[0];
  const y = inner[1];
  let inside = false;
  for (let i = 0, j = outer.length - 2; i < outer.length; j = i, i += 2) {
    if (outer[i + 1] > y === outer[j + 1] > y) continue;
    const at = outer[i] + ((y - outer[i + 1]) / (outer[j + 1] - outer[i + 1])) * (outer[j] - outer[i]);
    if (at > x) inside = !inside;
  }
  return inside;
}
