/** Random neighbourhoods that hurt: rectangles on a coarse grid, so that edges, corners and crossings coincide; then turned. */
import type { OverlayInput, Region } from '@crownfall/geometry';
import type { RandomStream } from '@crownfall/statistics';

/** Turns in radians: none, odd ones, and ones so slight that edges are almost upright. */
const ANGLES = [0, 0.3, Math.PI / 4, 1.234567, Math.PI / 2, 0.001, 1e-9, 1e-12];
/** Grid to which turned corners are snapped, in cells per metre; 0 = not at all. A power of two and a decimal one. */
const SNAPS = [0, 2 ** 20, 1e3];
/** Distance from the origin to which all is shifted, m. */
const SHIFTS_M = [0, 5e6];

export interface Placing {
  readonly angle: number;
  readonly snap: number;
  readonly shiftM: number;
}

/** All 48 placings. */
export const PLACINGS: readonly Placing[] = ANGLES.flatMap((angle) =>
  SNAPS.flatMap((snap) => SHIFTS_M.map((shiftM) => ({ angle, snap, shiftM }))),
);

/** A region turned about the origin, snapped and shifted. */
export function placed(region: Region, { angle, snap, shiftM }: Placing): Region {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const snapped = (value: number) => (snap > 0 ? Math.round(value * snap) / snap : value);
  return region.map((ring) => {
    const out = new Float64Array(ring.length);
    for (let i = 0; i < ring.length; i += 2) {
      out[i] = snapped(ring[i] * cos - ring[i + 1] * sin) + shiftM;
      out[i + 1] = snapped(ring[i] * sin + ring[i + 1] * cos) - shiftM;
    }
    return out;
  });
}

/** Five to twelve rectangles as one or two pieces, up to two blocks, and crowns, some with a hole or a drift ring. */
export function gridNeighbourhood(random: RandomStream, placing: Placing): OverlayInput {
  const count = 5 + random.wholeBelow(8);
  const pieceCount = 1 + random.wholeBelow(2);
  const blockCount = random.wholeBelow(3);
  const shape = (): Region => {
    const rings = [rectangle(random, false)];
    if (random.wholeBelow(4) === 0) rings.push(rectangle(random, true));
    return placed(rings, placing);
  };
  const shapes = (n: number) => Array.from({ length: n }, shape);
  const zoneCount = count - pieceCount - blockCount;
  return {
    pieces: shapes(pieceCount),
    blocks: shapes(blockCount),
    zones: shapes(zoneCount).map((region) => ({ layers: random.wholeBelow(4) === 0 ? [region, shape()] : [region] })),
  };
}

/** Corners on a 14 × 14 grid; a hole runs clockwise. */
function rectangle(random: RandomStream, isHole: boolean): Float64Array {
  const [x0, y0] = [random.wholeBelow(8), random.wholeBelow(8)];
  const [x1, y1] = [x0 + 1 + random.wholeBelow(6), y0 + 1 + random.wholeBelow(6)];
  return isHole ? Float64Array.of(x0, y0, x0, y1, x1, y1, x1, y0) : Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);
}
