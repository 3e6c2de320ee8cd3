/**
 * The neighbourhood of one pavement piece: all edges that can matter inside it, as x-monotone parts in the piece's own frame.
 *
 * The frame has its origin at the lower left corner of the piece's box and its x axis along the piece's longest edge, so that
 * the box of a strip of sidewalk is the strip. Nothing left, right or above the box changes the cover of a spot inside it, so
 * such edges are left out. Edges below the box only shift winding numbers: a flat line stands in for each run of them. Vertical edges
 * enclose nothing under an integral over x and are dropped.
 */
import type { Region } from '../ring.ts';
import type { Box } from './ledger.ts';

/** What a layer's winding says about a spot. */
const MASK = 0;
export const EXCLUSION = 1;
export const BLOCK = 2;
export const ZONE = 3;

export interface Layer {
  readonly role: typeof MASK | typeof EXCLUSION | typeof BLOCK | typeof ZONE;
  /** Piece, block or zone number. */
  readonly number: number;
  /** Of a zone: 0 = drip line, then the drift rings. */
  readonly ring: number;
}

/** The number of the mask's layer: it is added first. */
export const MASK_LAYER = 0;

/** Height of the flat lines that stand in for edges below the box: lower than any region reaches. */
const FAR_BELOW_M = -1e8;

/**
 * x is rounded to this share of the box's extent, about the rounding of the coordinates themselves (1.4e-14 m for a 40 m strip):
 * of the edges that turning has left vertical but for rounding most become vertical, so that the sweep seldom meets one that
 * rises metres within one rounding.
 */
const SNAP_SHARE = 2 ** -52;

/** The box is this much larger than the piece on every side, so that rounding far from the origin cannot cut the piece. */
const MARGIN_M = 1e-3;

export class Neighbourhood {
  readonly layers: Layer[] = [];
  /** Extent of the box, m; its lower left corner is the origin. */
  width = 0;
  height = 0;
  private hasExtent = false;

  /**
   * Vertices of all parts, x and y interleaved, x growing strictly along a part. Part `p` owns vertices
   * `firstVertex[p] … firstVertex[p + 1] − 1`; its first edge reaches the box and so does its last.
   */
  xy = new Float64Array(4096);
  firstVertex = new Int32Array(256);
  layer = new Int32Array(256);
  /** What the winding number of its layer gains on crossing a part upwards: +1 where the ring ran left to right, else −1. */
  sign = new Int8Array(256);
  partCount = 0;
  private vertexCount = 0;

  // The frame: x = (X − originX) · cos + (Y − originY) · sin, y across it.
  private cos = 1;
  private sin = 0;
  private originX = 0;
  private originY = 0;
  private snap = 0;

  // The part and the run below the box that are being read.
  private direction = 0;
  private runFrom = Number.NaN;
  private runTo = Number.NaN;

  /** Begins anew in the frame of a piece, with the piece itself as the mask; false when it has no extent. */
  begin(piece: Region, number: number): boolean {
    this.layers.length = 0;
    this.partCount = 0;
    this.vertexCount = 0;
    if (!this.turnTo(piece)) {
      return false;
    }
    this.add(piece, { role: MASK, number, ring: 0 });
    return true;
  }

  /** Takes the frame of a piece, for {@link reaches} alone; false when the piece has no extent. */
  turnTo(piece: Region): boolean {
    this.setFrame(piece);
    return this.hasExtent;
  }

  /** Whether a box, given in the plane, can reach into the piece's own box. */
  reaches({ minX, minY, maxX, maxY }: Box): boolean {
    const x = (minX + maxX) / 2 - this.originX;
    const y = (minY + maxY) / 2 - this.originY;
    const halfX = (maxX - minX) / 2;
    const halfY = (maxY - minY) / 2;
    const u = x * this.cos + y * this.sin;
    const v = y * this.cos - x * this.sin;
    const halfU = halfX * Math.abs(this.cos) + halfY * Math.abs(this.sin);
    const halfV = halfX * Math.abs(this.sin) + halfY * Math.abs(this.cos);
    return u + halfU >= 0 && u - halfU <= this.width && v + halfV >= 0 && v - halfV <= this.height;
  }

  /** Takes back all parts from number `part` on. */
  forgetFrom(part: number): void {
    this.partCount = part;
    this.vertexCount = this.firstVertex[part];
  }

  add(region: Region, layer: Layer): void {
    const number = this.layers.push(layer) - 1;
    for (const ring of region) {
      this.addRing(ring, number, layer.role === MASK);
    }
  }

  private addRing(ring: Float64Array, layer: number, whole: boolean): void {
    const { cos, sin, originX, originY, width, height, snap } = this;
    const n = ring.length & ~1;
    this.direction = 0;
    this.runFrom = Number.NaN;
    const lastX = ring[n - 2] - originX;
    const lastY = ring[n - 1] - originY;
    let ax = lastX * cos + lastY * sin + snap - snap;
    let ay = lastY * cos - lastX * sin;
    for (let i = 0; i < n; i += 2) {
      const fromOriginX = ring[i] - originX;
      const fromOriginY = ring[i + 1] - originY;
      const bx = fromOriginX * cos + fromOriginY * sin + snap - snap;
      const by = fromOriginY * cos - fromOriginX * sin;
      const beside = (ax <= 0 && bx <= 0) || (ax >= width && bx >= width);
      if (beside || (ay >= height && by >= height && !whole)) {
        this.closePart();
        this.closeRun(layer);
      } else if (ay <= 0 && by <= 0 && !whole) {
        this.closePart();
        this.runFrom = Number.isNaN(this.runFrom) ? ax : this.runFrom;
        this.runTo = bx;
      } else {
        this.closeRun(layer);
        this.addEdge(ax, ay, bx, by, layer);
      }
      ax = bx;
      ay = by;
    }
    this.closePart();
    this.closeRun(layer);
  }

  private addEdge(ax: number, ay: number, bx: number, by: number, layer: number): void {
    const direction = Number.isFinite((by - ay) / (bx - ax)) ? Math.sign(bx - ax) : 0;
    if (direction !== this.direction) {
      this.closePart();
      if (direction === 0) {
        return;
      }
      this.openPart(layer, direction);
      this.addVertex(ax, ay);
    } else if (direction === 0) {
      return;
    }
    this.addVertex(bx, by);
  }

  private addVertex(x: number, y: number): void {
    if (2 * this.vertexCount + 2 > this.xy.length) {
      this.xy = grown(this.xy);
    }
    this.xy[2 * this.vertexCount] = x;
    this.xy[2 * this.vertexCount + 1] = y;
    this.vertexCount++;
  }

  private openPart(layer: number, direction: number): void {
    if (this.partCount + 2 > this.firstVertex.length) {
      this.firstVertex = grown(this.firstVertex);
      this.layer = grown(this.layer);
      this.sign = grown(this.sign);
    }
    this.layer[this.partCount] = layer;
    this.sign[this.partCount] = direction;
    this.firstVertex[this.partCount] = this.vertexCount;
    this.direction = direction;
  }

  /** Ends the part being read; one that ran right to left is turned round. */
  private closePart(): void {
    if (this.direction === 0) {
      return;
    }
    if (this.direction < 0) {
      const { xy } = this;
      let low = 2 * this.firstVertex[this.partCount];
      for (let high = 2 * this.vertexCount - 2; low < high; low += 2, high -= 2) {
        const x = xy[low];
        const y = xy[low + 1];
        xy[low] = xy[high];
        xy[low + 1] = xy[high + 1];
        xy[high] = x;
        xy[high + 1] = y;
      }
    }
    this.partCount++;
    this.firstVertex[this.partCount] = this.vertexCount;
    this.direction = 0;
  }

  /** Ends the run of edges below the box and puts a flat line in its place. */
  private closeRun(layer: number): void {
    if (Number.isNaN(this.runFrom)) {
      return;
    }
    const from = Math.min(Math.max(this.runFrom, 0), this.width);
    const to = Math.min(Math.max(this.runTo, 0), this.width);
    if (from !== to) {
      this.openPart(layer, Math.sign(to - from));
      this.addVertex(from, FAR_BELOW_M);
      this.addVertex(to, FAR_BELOW_M);
      this.closePart();
    }
    this.runFrom = Number.NaN;
  }

  /** Turns the frame along the longest edge and puts its origin at the lower left corner of the piece's box in it. */
  private setFrame(piece: Region): void {
    let longest = 0;
    this.cos = 1;
    this.sin = 0;
    for (const ring of piece) {
      for (let i = 0; i + 3 < ring.length; i += 2) {
        const dx = ring[i + 2] - ring[i];
        const dy = ring[i + 3] - ring[i + 1];
        const length = dx * dx + dy * dy;
        if (length > longest && length < Infinity) {
          longest = length;
          this.cos = dx / Math.sqrt(length);
          this.sin = dy / Math.sqrt(length);
        }
      }
    }
    this.setOrigin(piece);
  }

  private setOrigin(piece: Region): void {
    const { cos, sin } = this;
    const referenceX = piece[0]?.[0] ?? 0;
    const referenceY = piece[0]?.[1] ?? 0;
    let minU = Infinity;
    let minV = Infinity;
    let maxU = -Infinity;
    let maxV = -Infinity;
    for (const ring of piece) {
      for (let i = 0; i + 1 < ring.length; i += 2) {
        const x = ring[i] - referenceX;
        const y = ring[i + 1] - referenceY;
        const u = x * cos + y * sin;
        const v = y * cos - x * sin;
        if (Number.isFinite(u) && Number.isFinite(v)) {
          minU = Math.min(minU, u);
          maxU = Math.max(maxU, u);
          minV = Math.min(minV, v);
          maxV = Math.max(maxV, v);
        }
      }
    }
    this.hasExtent = maxU > minU && maxV > minV;
    this.width = maxU - minU + 2 * MARGIN_M;
    this.height = maxV - minV + 2 * MARGIN_M;
    // Adding and taking away 1.5 · 2⁵² units rounds to whole units, as long as the number stays below 2⁵¹ units.
    this.snap = 1.5 * 2 ** 52 * SNAP_SHARE * 2 ** Math.ceil(Math.log2(Math.max(this.width, this.height)));
    this.originX = referenceX + (minU - MARGIN_M) * cos - (minV - MARGIN_M) * sin;
    this.originY = referenceY + (minU - MARGIN_M) * sin + (minV - MARGIN_M) * cos;
  }
}

function grown<T extends Float64Array | Int32Array | Int8Array>(array: T): T {
  const Constructor = array.constructor as new (length: number) => T;
  const larger = new Constructor(2 * array.length);
  larger.set(array as never);
  return larger;
}
