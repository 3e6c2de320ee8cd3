/** Huffman-coded numbers of a JPEG scan (ITU-T T.81, annexes C and F). */

export interface HuffmanTable {
  /** For the next 8 bits: length of the code × 256 + its value; 0 when the code is longer. */
  readonly short: Uint16Array;
  /** Per length 1–16: the largest code, −1 when there is none; and what to add to a code to find its value. */
  readonly largest: Int32Array;
  readonly shift: Int32Array;
  readonly values: Uint8Array;
}

/** A table from the number of codes of each length 1–16 and their values in order (T.81, annex C). */
export function huffmanTable(counts: Uint8Array, values: Uint8Array): HuffmanTable {
  const short = new Uint16Array(256);
  const largest = new Int32Array(17).fill(-1);
  const shift = new Int32Array(17);
  let code = 0;
  let at = 0;
  for (let length = 1; length <= 16; length++) {
    shift[length] = at - code;
    for (let i = 0; i < counts[length - 1]; i++, code++, at++) {
      largest[length] = code;
      if (length > 8) continue;
      const first = code << (8 - length);
      short.fill(length * 256 + values[at], first, first + (1 << (8 - length)));
    }
    code <<= 1;
  }
  return { short, largest, shift, values };
}

/** Reads bits of a scan, passing over stuffed zeros, up to the next marker; beyond it there are zeros for a while. */
export class BitReader {
  position: number;
  private readonly data: Uint8Array;
  private bits = 0;
  private count = 0;
  private borrowed = 0;

  constructor(data: Uint8Array, position: number) {
    this.data = data;
    this.position = position;
  }

  /** The value of the next code. */
  code(table: HuffmanTable): number {
    this.need(16);
    const next = (this.bits >>> (this.count - 16)) & 0xffff;
    const quick = table.short[next >> 8];
    if (quick !== 0) {
      this.count -= quick >> 8;
      return quick & 255;
    }
    for (let length = 9; length <= 16; length++) {
      const code = next >> (16 - length);
      if (code <= table.largest[length]) {
        this.count -= length;
        return table.values[code + table.shift[length]];
      }
    }
    throw new Error('the JPEG data holds a code that is in none of its tables');
  }

  /** A number of `size` bits in JPEG's signed way: the upper half positive, the lower negative (T.81, figure F.12). */
  signed(size: number): number {
    if (size === 0) return 0;
    this.need(size);
    this.count -= size;
    const value = (this.bits >>> this.count) & ((1 << size) - 1);
    return value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
  }

  /** Goes past a restart marker (RST0–RST7), dropping what is left of the byte. */
  restart(): void {
    this.count = 0;
    this.borrowed = 0;
    const { data } = this;
    let at = this.position;
    while (at + 1 < data.length && !(data[at] === 0xff && data[at + 1] >= 0xd0 && data[at + 1] <= 0xd7)) at++;
    this.position = at + 2;
  }

  private need(size: number): void {
    while (this.count < size) {
      this.bits = ((this.bits << 8) | this.byte()) >>> 0;
      this.count += 8;
    }
  }

  private byte(): number {
    const { data } = this;
    const byte = data[this.position];
    if (byte === undefined || (byte === 0xff && data[this.position + 1] !== 0)) {
      // Two bytes may be looked at beyond what is used; more means that the scan has stopped short.
      if (++this.borrowed > 4) throw new Error('the JPEG data ends too soon');
      return 0;
    }
    this.position += byte === 0xff ? 2 : 1;
    return byte;
  }
}
