/** Boxes of numbered things, found by what they touch; some may move. */
import Flatbush from 'flatbush';
import type { Region } from '../ring.ts';
import type { Box } from './ledger.ts';

/** A box that touches nothing. */
export const EMPTY_BOX: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** Moved boxes are looked through one by one; beyond this many the packed index is built anew. */
const MOST_MOVED = 256;

/** A packed index as plain bytes, null when there are no boxes. */
export type PackedBoxes = ArrayBuffer | SharedArrayBuffer | null;

/** A packed index over boxes 0 … n − 1. `boxAt` is asked again for a number that was told to have moved. */
export class BoxIndex {
  private readonly boxAt: (i: number) => Box;
  private packed: Flatbush | null = null;
  private packedCount = 0;
  private readonly moved = new Set<number>();

  /** `packed` is what another index over the same boxes gave as its bytes. */
  constructor(count: number, boxAt: (i: number) => Box, packed?: PackedBoxes) {
    this.boxAt = boxAt;
    this.packedCount = count;
    if (packed === undefined) {
      this.pack(count);
    } else {
      this.packed = packed && Flatbush.from(packed);
    }
  }

  /** The packed index as bytes, in shared memory if wanted; boxes that moved since are not in it. */
  bytes(shared: boolean): PackedBoxes {
    const data = this.packed?.data ?? null;
    if (data === null || !shared) {
      return data;
    }
    const copy = new SharedArrayBuffer(data.byteLength);
    new Uint8Array(copy).set(new Uint8Array(data));
    return copy;
  }

  /** Numbers of the boxes that touch `box`, ascending. */
  near(box: Box): number[] {
    const stays = this.moved.size > 0 ? (i: number) => !this.moved.has(i) : undefined;
    const found = this.packed?.search(box.minX, box.minY, box.maxX, box.maxY, stays) ?? [];
    for (const i of this.moved) {
      if (touch(this.boxAt(i), box)) {
        found.push(i);
      }
    }
    return found.sort((a, b) => a - b);
  }

  /** Tells that box `i` is new or lies elsewhere now. */
  move(i: number): void {
    this.moved.add(i);
    if (this.moved.size > MOST_MOVED) {
      this.pack(Math.max(this.packedCount, ...[...this.moved].map((number) => number + 1)));
    }
  }

  private pack(count: number): void {
    this.moved.clear();
    this.packedCount = count;
    this.packed = null;
    if (count > 0) {
      this.packed = new Flatbush(count);
      for (let i = 0; i < count; i++) {
        const { minX, minY, maxX, maxY } = this.boxAt(i);
        this.packed.add(minX, minY, maxX, maxY);
      }
      this.packed.finish();
    }
  }
}

/** The box of a region's finite coordinates; an empty region has an empty box. */
export function boxOf(region: Region): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const ring of region) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const x = ring[i];
      const y = ring[i + 1];
      if (Number.isFinite(x) && Number.isFinite(y)) {
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x);
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y);
      }
    }
  }
  return { minX, minY, maxX, maxY };
}

/** The box that holds both. */
export function joined(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

function touch(a: Box, b: Box): boolean {
  return a.minX <= b.maxX && a.maxX >= b.minX && a.minY <= b.maxY && a.maxY >= b.minY;
}
