/** Decoded blocks of an image, the ones used last, up to a stated number of bytes. */
import type { Samples } from '../window.ts';

/** One array per band of the block; null for a block that is damaged. */
export type Block = readonly Samples[] | null;

export class BlockCache {
  private readonly limit: number;
  private readonly blocks = new Map<string, Block>();
  private bytes = 0;

  constructor(limitBytes: number) {
    if (!(limitBytes >= 0)) throw new RangeError(`block cache: expected a size in bytes, got ${limitBytes}`);
    this.limit = limitBytes;
  }

  /** Bytes of samples that are kept now; never above the limit. */
  get size(): number {
    return this.bytes;
  }

  /** The block, now the one used last; undefined when it is not kept. */
  get(key: string): Block | undefined {
    const block = this.blocks.get(key);
    if (block === undefined) return undefined;
    this.blocks.delete(key);
    this.blocks.set(key, block);
    return block;
  }

  set(key: string, block: Block): void {
    const size = sizeOf(block);
    if (size > this.limit) return;
    this.bytes += size - sizeOf(this.blocks.get(key) ?? null);
    this.blocks.delete(key);
    this.blocks.set(key, block);
    for (const [oldest, old] of this.blocks) {
      if (this.bytes <= this.limit) return;
      this.blocks.delete(oldest);
      this.bytes -= sizeOf(old);
    }
  }
}

function sizeOf(block: Block): number {
  return block === null ? 0 : block.reduce((sum, band) => sum + band.byteLength, 0);
}
