/** The bytes of a block, decompressed, as one array of samples per band. */
import { copied } from '../source/bytes-port.ts';
import type { Samples } from '../window.ts';
import type { BlockLayout } from './block-layout.ts';
import { undoFloatDifferences } from './float-differences.ts';

type Encoding = Pick<BlockLayout, 'bits' | 'format' | 'predictor' | 'littleEndian'>;

/** Rows and columns that a block holds, and how many bands stand together in it. */
export interface BlockSize {
  readonly width: number;
  readonly height: number;
  readonly together: number;
}

/**
 * Takes the bytes over (they are changed in place where they can be).
 * @throws Error when there are fewer bytes than the block needs
 */
export function unpackSamples(bytes: Uint8Array, encoding: Encoding, size: BlockSize): Samples[] {
  const row = size.width * size.together;
  const needed = Math.ceil((row * encoding.bits) / 8) * size.height;
  if (bytes.length < needed) throw new Error(`a block holds ${bytes.length} bytes where ${needed} are needed`);
  const samples = samplesOf(aligned(bytes, needed), encoding, size);
  return encoding.predictor === 2 ? apartFromDifferences(samples, size) : apart(samples, size.together);
}

/** Where typed arrays may start, and a plain array of bytes whatever the platform's own kind is (Node's `Buffer`). */
function aligned(bytes: Uint8Array, needed: number): Uint8Array {
  if (bytes.byteOffset % 8 !== 0) return copied(bytes.subarray(0, needed));
  return new Uint8Array(bytes.buffer, bytes.byteOffset, needed);
}

/** As stored, but in the machine's byte order; differences of whole numbers are still differences. */
function samplesOf(bytes: Uint8Array, encoding: Encoding, size: BlockSize): Samples {
  const { bits, format, predictor } = encoding;
  if (bits % 8 !== 0) return unpackedBits(bytes, bits, size);
  const bytesPerSample = bits / 8;
  if (predictor === 3) undoFloatDifferences(bytes, { ...size, bytesPerSample });
  else if (!encoding.littleEndian) swapBytes(bytes, bytesPerSample);
  return format === 3 ? floats(bytes, bits) : wholeNumbers(bytes, bits, format === 2);
}

function wholeNumbers(bytes: Uint8Array, bits: number, signed: boolean): Samples {
  const [buffer, at] = [bytes.buffer, bytes.byteOffset];
  if (bits === 8) return signed ? new Int8Array(buffer, at, bytes.length) : bytes;
  const count = (8 * bytes.length) / bits;
  if (bits === 16) return signed ? new Int16Array(buffer, at, count) : new Uint16Array(buffer, at, count);
  return signed ? new Int32Array(buffer, at, count) : new Uint32Array(buffer, at, count);
}

function floats(bytes: Uint8Array, bits: number): Samples {
  const [buffer, at] = [bytes.buffer, bytes.byteOffset];
  if (bits === 64) return new Float64Array(buffer, at, bytes.length / 8);
  if (bits === 32) return new Float32Array(buffer, at, bytes.length / 4);
  return Float32Array.from(new Uint16Array(buffer, at, bytes.length / 2), halfFloat);
}

/** IEEE 754 binary16. */
function halfFloat(half: number): number {
  const sign = half & 0x8000 ? -1 : 1;
  const exponent = (half >> 10) & 31;
  const fraction = half & 1023;
  if (exponent === 31) return fraction === 0 ? sign * Number.POSITIVE_INFINITY : Number.NaN;
  return sign * (exponent === 0 ? fraction * 2 ** -24 : (1024 + fraction) * 2 ** (exponent - 25));
}

function swapBytes(bytes: Uint8Array, bytesPerSample: number): void {
  if (bytesPerSample === 1) return;
  for (let start = 0; start < bytes.length; start += bytesPerSample) {
    bytes.subarray(start, start + bytesPerSample).reverse();
  }
}

/** Samples of 1 to 15 bits, the highest bit first; each row starts on a byte. */
function unpackedBits(bytes: Uint8Array, bits: number, size: BlockSize): Samples {
  const row = size.width * size.together;
  const out = bits <= 8 ? new Uint8Array(row * size.height) : new Uint16Array(row * size.height);
  const rowBits = 8 * Math.ceil((row * bits) / 8);
  for (let y = 0; y < size.height; y++) {
    let at = y * rowBits;
    for (let x = 0; x < row; x++, at += bits) {
      const first = at >> 3;
      const word = (bytes[first] << 16) | ((bytes[first + 1] ?? 0) << 8) | (bytes[first + 2] ?? 0);
      out[y * row + x] = (word >> (24 - bits - (at & 7))) & ((1 << bits) - 1);
    }
  }
  return out;
}

function apart(samples: Samples, together: number): Samples[] {
  if (together === 1) return [samples];
  const count = samples.length / together;
  return Array.from({ length: together }, (_, b) => {
    const band = new (samples.constructor as new (length: number) => Samples)(count);
    for (let i = 0, from = b; i < count; i++, from += together) band[i] = samples[from];
    return band;
  });
}

/**
 * The same where each sample is the difference from that of the pixel before in its row (TIFF 6.0, section 14, predictor 2).
 * Typed arrays wrap the sums around at the sample's size by themselves.
 */
function apartFromDifferences(samples: Samples, { width, together }: BlockSize): Samples[] {
  if (samples instanceof Uint8Array && (together === 3 || together === 4))
    return coloursApart(samples, width, together);
  const count = samples.length / together;
  return Array.from({ length: together }, (_, b) => {
    const band = new (samples.constructor as new (length: number) => Samples)(count);
    for (let row = 0; row < count; row += width) {
      let before = 0;
      for (let i = row, from = row * together + b; i < row + width; i++, from += together) {
        band[i] = before + samples[from];
        before = band[i];
      }
    }
    return band;
  });
}

/** The most frequent case by far, in one pass over the bytes. */
function coloursApart(bytes: Uint8Array, width: number, together: 3 | 4): Uint8Array[] {
  const count = bytes.length / together;
  const [first, second, third] = Array.from({ length: 3 }, () => new Uint8Array(count));
  const fourth = new Uint8Array(together === 4 ? count : 0);
  let from = 0;
  for (let row = 0; row < count; row += width) {
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let i = row; i < row + width; i++, from += together) {
      a += bytes[from];
      b += bytes[from + 1];
      c += bytes[from + 2];
      first[i] = a;
      second[i] = b;
      third[i] = c;
      if (together === 3) continue;
      d += bytes[from + 3];
      fourth[i] = d;
    }
  }
  return together === 3 ? [first, second, third] : [first, second, third, fourth];
}
