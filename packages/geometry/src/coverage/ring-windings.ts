/**
 * Whether rings can be summed as they are: apart from each other and from themselves, and winding around every point 0 times or
 * once. Only then is the sum of signed shares the share inside.
 */

/**
 * 1 when every point has a winding number of 0 or 1 by the signed area `½ Σ cross` of the coordinates as given, −1 when all have 0
 * or −1; 0 when rings cross, touch or nest otherwise, and must be resolved first.
 */
export function windingOf(rings: readonly Float64Array[]): 1 | -1 | 0 {
  if (rings.length === 0) return 1;
  if (ringsMeet(rings)) return 0;
  let [least, most] = [0, 0];
  for (const ring of rings) {
    const around = rings.length === 1 ? 0 : windingAround(rings, ring);
    const inside = around + (turn(ring) > 0 ? 1 : -1);
    least = Math.min(least, around, inside);
    most = Math.max(most, around, inside);
  }
  if (least >= 0 && most <= 1) return 1;
  return most <= 0 && least >= -1 ? -1 : 0;
}

function turn(ring: Float64Array): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    twice += (ring[j] - ring[0]) * (ring[i + 1] - ring[1]) - (ring[i] - ring[0]) * (ring[j + 1] - ring[1]);
  }
  return twice;
}

/** Winding number of all other rings around a vertex of this one; they do not touch, so any vertex does. */
function windingAround(rings: readonly Float64Array[], of: Float64Array): number {
  const [x, y] = [of[0], of[1]];
  let winding = 0;
  for (const ring of rings) {
    if (ring === of) continue;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [ay, by] = [ring[j + 1], ring[i + 1]];
      if (ay <= y === by <= y) continue;
      const side = (ring[i] - ring[j]) * (y - ay) - (x - ring[j]) * (by - ay);
      if (ay <= y && side > 0) winding++;
      else if (ay > y && side < 0) winding--;
    }
  }
  return winding;
}

/** Edges by their lowest y; `next` of an edge shares a vertex with it. */
interface Edges {
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly next: Int32Array;
  readonly order: Int32Array;
}

/** With fewer edges, comparing all of them costs less than sorting. */
const FEW_EDGES = 64;

/** Whether any two edges that are not neighbours in a ring have a point in common. */
function ringsMeet(rings: readonly Float64Array[]): boolean {
  if (rings.length === 1 && rings[0].length <= 2 * FEW_EDGES) return smallRingMeets(rings[0]);
  const { ax, ay, bx, by, next, order } = edgesOf(rings);
  for (let i = 0; i < order.length; i++) {
    const e = order[i];
    const bottom = Math.max(ay[e], by[e]);
    for (let k = i + 1; k < order.length; k++) {
      const f = order[k];
      if (Math.min(ay[f], by[f]) > bottom) break;
      if (next[e] === f || next[f] === e) continue;
      if (edgesMeet(ax[e], ay[e], bx[e], by[e], ax[f], ay[f], bx[f], by[f])) return true;
    }
  }
  return false;
}

function smallRingMeets(ring: Float64Array): boolean {
  const n = ring.length;
  for (let e = 0, d = n - 2; e < n; d = e, e += 2) {
    // A repeated vertex makes an edge of no length, which would part two neighbours.
    if (ring[d] === ring[e] && ring[d + 1] === ring[e + 1]) return true;
  }
  for (let e = 0; e + 3 < n; e += 2) {
    const last = e === 0 ? n - 2 : n;
    for (let f = e + 4; f < last; f += 2) {
      const g = f + 2 === n ? 0 : f + 2;
      const meet = edgesMeet(
        ring[e],
        ring[e + 1],
        ring[e + 2],
        ring[e + 3],
        ring[f],
        ring[f + 1],
        ring[g],
        ring[g + 1],
      );
      if (meet) return true;
    }
  }
  return false;
}

function edgesMeet(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
): boolean {
  if ((cx > ax && cx > bx && dx > ax && dx > bx) || (cx < ax && cx < bx && dx < ax && dx < bx)) return false;
  if ((cy > ay && cy > by && dy > ay && dy > by) || (cy < ay && cy < by && dy < ay && dy < by)) return false;
  if (cross(ax, ay, bx, by, cx, cy) * cross(ax, ay, bx, by, dx, dy) > 0) return false;
  return cross(cx, cy, dx, dy, ax, ay) * cross(cx, cy, dx, dy, bx, by) <= 0;
}

function cross(ax: number, ay: number, bx: number, by: number, x: number, y: number): number {
  return (bx - ax) * (y - ay) - (x - ax) * (by - ay);
}

function edgesOf(rings: readonly Float64Array[]): Edges {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const [ax, ay, bx, by] = Array.from({ length: 4 }, () => new Float64Array(count));
  const next = new Int32Array(count).fill(-1);
  let n = 0;
  for (const ring of rings) {
    const first = n;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      // A repeated vertex makes an edge of no length, which would part two neighbours.
      if (ring[i] === ring[j] && ring[i + 1] === ring[j + 1]) continue;
      [ax[n], ay[n], bx[n], by[n]] = [ring[j], ring[j + 1], ring[i], ring[i + 1]];
      next[n] = n + 1;
      n++;
    }
    if (n > first) next[n - 1] = first;
  }
  const lowest = new Float64Array(n);
  for (let e = 0; e < n; e++) lowest[e] = Math.min(ay[e], by[e]);
  const order = new Int32Array(n);
  for (let e = 0; e < n; e++) order[e] = e;
  order.sort((e, f) => lowest[e] - lowest[f]);
  return { ax, ay, bx, by, next, order };
}
