/** Where two outlines come nearest to each other, in metres of a plane. */

/** Open chains of points; a single point is a chain of one. */
export type Chains = readonly Float64Array[];

export interface NearestPair {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly distanceM: number;
}

/** The nearest pair of points, one on each; null when either is empty. Quadratic in the points: for a map's few features. */
export function nearestPair(from: Chains, to: Chains): NearestPair | null {
  const there = fromPoints(from, to);
  const back = fromPoints(to, from);
  if (there === null || back === null) return null;
  return back.distanceM < there.distanceM ? { from: back.to, to: back.from, distanceM: back.distanceM } : there;
}

/** From every point of one to the edges of the other. */
function fromPoints(points: Chains, edges: Chains): NearestPair | null {
  let best: NearestPair | null = null;
  for (const chain of points)
    for (let i = 0; i + 1 < chain.length; i += 2)
      for (const other of edges) {
        const pair = toChain(chain[i], chain[i + 1], other);
        if (pair !== null && (best === null || pair.distanceM < best.distanceM)) best = pair;
      }
  return best;
}

function toChain(x: number, y: number, chain: Float64Array): NearestPair | null {
  let best: NearestPair | null = null;
  for (let i = 0; i + 1 < chain.length; i += 2) {
    const [ax, ay] = [chain[i], chain[i + 1]];
    // The last point ends no edge of its own.
    const [dx, dy] = i + 3 < chain.length ? [chain[i + 2] - ax, chain[i + 3] - ay] : [0, 0];
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1)));
    const [px, py] = [ax + t * dx, ay + t * dy];
    const distanceM = Math.hypot(x - px, y - py);
    if (best === null || distanceM < best.distanceM) best = { from: [x, y], to: [px, py], distanceM };
  }
  return best;
}
