/**
 * Regions as x-monotone chains: the form in which the sweep reads them.
 *
 * A ring is cut where it turns back in x and at vertical edges; vertical edges enclose no area under an integral over x and
 * are dropped. Each chain runs left to right with strictly growing x. Its sign is what the winding number gains on crossing
 * it upwards: +1 where the ring ran left to right (a lower boundary of a counter-clockwise ring), −1 where it ran back.
 */
import type { Region } from '../ring.ts';

/** Chains of many regions in flat arrays. Region `r` owns chains `regionStart[r] … regionStart[r + 1] − 1`. */
export class ChainStore {
  /** Vertices of all chains, x and y interleaved. Chain `c` owns vertices `vertexStart[c] … vertexStart[c + 1] − 1`. */
  xy = new Float64Array(1024);
  vertexStart = new Int32Array(64);
  sign = new Int8Array(64);
  minY = new Float64Array(64);
  maxY = new Float64Array(64);
  regionStart = new Int32Array(16);
  chainCount = 0;
  regionCount = 0;
  vertexCount = 0;

  /** Appends a region and returns its number. Edges with coordinates that are not finite are left out. */
  add(region: Region): number {
    const number = this.regionCount++;
    this.regionStart = roomFor(this.regionStart, this.regionCount + 1);
    for (const ring of region) {
      this.addRing(ring);
    }
    this.regionStart[this.regionCount] = this.chainCount;
    return number;
  }

  /** Forgets all regions; the room stays. */
  clear(): void {
    this.regionCount = 0;
    this.chainCount = 0;
    this.vertexCount = 0;
  }

  firstX(chain: number): number {
    return this.xy[2 * this.vertexStart[chain]];
  }

  lastX(chain: number): number {
    return this.xy[2 * this.vertexStart[chain + 1] - 2];
  }

  private addRing(ring: Float64Array): void {
    const n = ring.length >> 1;
    const first = firstTurn(ring, n);
    if (first < 0) {
      return;
    }
    let i = first;
    for (let steps = 0; steps < n; ) {
      const direction = stepDirection(ring, n, i);
      let length = 1;
      if (direction !== 0) {
        while (steps + length < n && stepDirection(ring, n, (i + length) % n) === direction) {
          length++;
        }
        this.addChain(ring, n, i, length, direction);
      }
      i = (i + length) % n;
      steps += length;
    }
  }

  /** Adds `length` edges from vertex `from`; a chain that ran right to left is stored reversed. */
  private addChain(ring: Float64Array, n: number, from: number, length: number, direction: number): void {
    const chain = this.chainCount++;
    this.vertexStart = roomFor(this.vertexStart, this.chainCount + 1);
    this.sign = roomFor(this.sign, this.chainCount);
    this.minY = roomFor(this.minY, this.chainCount);
    this.maxY = roomFor(this.maxY, this.chainCount);
    this.xy = roomFor(this.xy, 2 * (this.vertexCount + length + 1));
    this.sign[chain] = direction;
    let lowest = Infinity;
    let highest = -Infinity;
    for (let step = 0; step <= length; step++) {
      const source = (from + (direction > 0 ? step : length - step)) % n;
      const y = ring[2 * source + 1];
      this.xy[2 * this.vertexCount] = ring[2 * source];
      this.xy[2 * this.vertexCount + 1] = y;
      this.vertexCount++;
      lowest = Math.min(lowest, y);
      highest = Math.max(highest, y);
    }
    this.vertexStart[this.chainCount] = this.vertexCount;
    this.minY[chain] = lowest;
    this.maxY[chain] = highest;
  }
}

/** +1 when the edge from vertex `i` runs to greater x, −1 to smaller, 0 when it is vertical, vanishing or not finite. */
function stepDirection(ring: Float64Array, n: number, i: number): number {
  const j = i + 1 === n ? 0 : i + 1;
  const dx = ring[2 * j] - ring[2 * i];
  const slope = (ring[2 * j + 1] - ring[2 * i + 1]) / dx;
  return Number.isFinite(slope) ? Math.sign(dx) : 0;
}

/** A vertex at which no chain runs through, so that cutting there cuts no chain; −1 when every edge is vertical. */
function firstTurn(ring: Float64Array, n: number): number {
  for (let i = 0; i < n; i++) {
    const before = stepDirection(ring, n, i === 0 ? n - 1 : i - 1);
    if (stepDirection(ring, n, i) !== before) {
      return i;
    }
  }
  return -1;
}

function roomFor<T extends Float64Array | Int32Array | Int8Array>(array: T, length: number): T {
  if (length <= array.length) {
    return array;
  }
  const Constructor = array.constructor as new (length: number) => T;
  const grown = new Constructor(Math.max(length, 2 * array.length));
  grown.set(array as never);
  return grown;
}
