/**
 * JPEG as it lies in the blocks of a TIFF file: baseline and extended sequential, Huffman-coded, 8 bits (ITU-T T.81, with the
 * tables of TIFF Technical Note 2 given apart). Samples come out to the digit as libjpeg's default gives them.
 */
import { BitReader, type HuffmanTable, huffmanTable } from './entropy.ts';
import { inverseDct } from './inverse-dct.ts';
import { enlarged, type Plane } from './upsample.ts';

/** What the tables stream and the blocks' own headers have said so far. */
export interface JpegTables {
  readonly quantisation: Map<number, Uint16Array>;
  /** By class × 16 + number: class 0 for the first coefficient, 1 for the others. */
  readonly huffman: Map<number, HuffmanTable>;
}

interface Component {
  readonly id: number;
  readonly across: number;
  readonly down: number;
  readonly table: number;
  readonly blocksAcross: number;
  readonly blocksDown: number;
  readonly width: number;
  readonly height: number;
  readonly coefficients: Int16Array;
  previous: number;
}

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly components: readonly Component[];
  readonly mostAcross: number;
  readonly mostDown: number;
}

export interface DecodedJpeg {
  readonly width: number;
  readonly height: number;
  /** One array per component, each `width · height`. */
  readonly bands: Uint8Array[];
}

/** Natural position of the k-th coefficient along the zigzag (T.81, figure 5). */
const ZIGZAG = Uint8Array.of(
  ...[0, 1, 8, 16, 9, 2, 3, 10, 17, 24, 32, 25, 18, 11, 4, 5, 12, 19, 26, 33, 40, 48, 41, 34, 27, 20, 13, 6, 7, 14, 21],
  ...[28, 35, 42, 49, 56, 57, 50, 43, 36, 29, 22, 15, 23, 30, 37, 44, 51, 58, 59, 52, 45, 38, 31, 39, 46, 53, 60, 61],
  ...[54, 47, 55, 62, 63],
);

/** The tables of a `JPEGTables` tag; empty without one. */
export function jpegTables(stream?: Uint8Array): JpegTables {
  const tables: JpegTables = { quantisation: new Map(), huffman: new Map() };
  if (stream) readSegments(stream, tables);
  return tables;
}

/**
 * Decodes one block.
 * @param toRgb turn brightness and colour (YCbCr, three components) into red, green, blue
 * @throws Error when the data is damaged, or coded in a way that is not read here (progressive, arithmetic, 12 bits)
 */
export function decodeJpeg(data: Uint8Array, tables: JpegTables, toRgb: boolean): DecodedJpeg {
  const own = { quantisation: new Map(tables.quantisation), huffman: new Map(tables.huffman) };
  const frame = readSegments(data, own);
  if (!frame) throw new Error('the JPEG data holds no picture');
  const { width, height } = frame;
  const bands = frame.components.map((component) => cropped(planeOf(component, frame, own), width, height));
  if (toRgb && bands.length === 3) intoRgb(bands);
  return { width, height, bands };
}

function readSegments(data: Uint8Array, tables: JpegTables): Frame | undefined {
  let frame: Frame | undefined;
  let restartInterval = 0;
  let at = 2;
  while (at + 3 < data.length) {
    if (data[at] !== 0xff) throw new Error('the JPEG data is damaged: a marker is missing');
    const marker = data[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === 0xd9) break;
    const length = (data[at + 2] << 8) | data[at + 3];
    const segment = data.subarray(at + 4, at + 2 + length);
    at += 2 + length;
    if (marker === 0xdb) readQuantisation(segment, tables);
    else if (marker === 0xc4) readHuffman(segment, tables);
    else if (marker === 0xdd) restartInterval = (segment[0] << 8) | segment[1];
    else if (marker === 0xc0 || marker === 0xc1) frame = frameOf(segment);
    else if (marker >= 0xc2 && marker <= 0xcf && marker !== 0xc8) {
      throw new Error(marker === 0xc2 ? 'progressive JPEG is not read' : 'this coding of JPEG is not read');
    } else if (marker === 0xda && frame) at = readScan(data, at, segment, frame, tables, restartInterval);
  }
  return frame;
}

function readQuantisation(segment: Uint8Array, { quantisation }: JpegTables): void {
  for (let at = 0; at < segment.length; ) {
    const wide = segment[at] >> 4;
    const table = new Uint16Array(64);
    quantisation.set(segment[at++] & 15, table);
    for (let k = 0; k < 64; k++, at += 1 + wide) {
      table[ZIGZAG[k]] = wide ? (segment[at] << 8) | segment[at + 1] : segment[at];
    }
  }
}

function readHuffman(segment: Uint8Array, { huffman }: JpegTables): void {
  for (let at = 0; at + 17 <= segment.length; ) {
    const counts = segment.subarray(at + 1, at + 17);
    const total = counts.reduce((sum, count) => sum + count, 0);
    huffman.set(segment[at], huffmanTable(counts, segment.slice(at + 17, at + 17 + total)));
    at += 17 + total;
  }
}

function frameOf(segment: Uint8Array): Frame {
  if (segment[0] !== 8) throw new Error(`${segment[0]}-bit JPEG is not read`);
  const height = (segment[1] << 8) | segment[2];
  const width = (segment[3] << 8) | segment[4];
  const parts = Array.from({ length: segment[5] }, (_, i) => segment.subarray(6 + 3 * i, 9 + 3 * i));
  const mostAcross = Math.max(...parts.map((part) => part[1] >> 4));
  const mostDown = Math.max(...parts.map((part) => part[1] & 15));
  if (!(width > 0 && height > 0 && mostAcross > 0 && mostDown > 0)) throw new Error('the JPEG picture has no size');
  const components = parts.map(([id, sampling, table]) => {
    const [across, down] = [sampling >> 4, sampling & 15];
    const blocksAcross = Math.ceil(width / (8 * mostAcross)) * across;
    const blocksDown = Math.ceil(height / (8 * mostDown)) * down;
    return {
      ...{ id, across, down, table, blocksAcross, blocksDown, previous: 0 },
      width: Math.ceil((width * across) / mostAcross),
      height: Math.ceil((height * down) / mostDown),
      coefficients: new Int16Array(64 * blocksAcross * blocksDown),
    };
  });
  return { width, height, components, mostAcross, mostDown };
}

interface ScanPart {
  readonly component: Component;
  readonly first: HuffmanTable;
  readonly others: HuffmanTable;
}

function readScan(
  data: Uint8Array,
  start: number,
  header: Uint8Array,
  frame: Frame,
  tables: JpegTables,
  restartInterval: number,
): number {
  const parts = Array.from({ length: header[0] }, (_, i) => scanPart(header.subarray(1 + 2 * i), frame, tables));
  const reader = new BitReader(data, start);
  const alone = parts.length === 1 ? parts[0].component : undefined;
  const across = alone ? Math.ceil(alone.width / 8) : Math.ceil(frame.width / (8 * frame.mostAcross));
  const down = alone ? Math.ceil(alone.height / 8) : Math.ceil(frame.height / (8 * frame.mostDown));
  for (const { component } of parts) component.previous = 0;
  for (let unit = 0; unit < across * down; unit++) {
    if (restartInterval > 0 && unit > 0 && unit % restartInterval === 0) {
      reader.restart();
      for (const { component } of parts) component.previous = 0;
    }
    const [x, y] = [unit % across, Math.floor(unit / across)];
    for (const part of parts) {
      const { component } = part;
      const [h, v] = alone ? [1, 1] : [component.across, component.down];
      for (let block = 0; block < h * v; block++) {
        const column = x * h + (block % h);
        const row = y * v + Math.floor(block / h);
        readBlock(reader, part, 64 * (row * component.blocksAcross + column));
      }
    }
  }
  return nextMarker(data, reader.position);
}

function scanPart(choice: Uint8Array, frame: Frame, tables: JpegTables): ScanPart {
  const component = frame.components.find((one) => one.id === choice[0]);
  const first = tables.huffman.get(choice[1] >> 4);
  const others = tables.huffman.get(16 + (choice[1] & 15));
  if (!component || !first || !others) throw new Error('the JPEG data lacks a table');
  return { component, first, others };
}

function readBlock(reader: BitReader, { component, first, others }: ScanPart, at: number): void {
  const { coefficients } = component;
  component.previous += reader.signed(reader.code(first));
  coefficients[at] = component.previous;
  for (let k = 1; k < 64; k++) {
    const code = reader.code(others);
    const size = code & 15;
    if (size === 0) {
      if (code !== 0xf0) return;
      k += 15;
      continue;
    }
    k += code >> 4;
    if (k > 63) throw new Error('the JPEG data is damaged: a block runs over');
    coefficients[at + ZIGZAG[k]] = reader.signed(size);
  }
}

function nextMarker(data: Uint8Array, from: number): number {
  let at = from;
  while (at + 1 < data.length && !(data[at] === 0xff && data[at + 1] !== 0 && (data[at + 1] & 0xf8) !== 0xd0)) at++;
  return at;
}

function planeOf(component: Component, frame: Frame, { quantisation }: JpegTables): Plane {
  const table = quantisation.get(component.table);
  if (!table) throw new Error('the JPEG data lacks a table');
  const { blocksAcross, blocksDown, coefficients, width, height } = component;
  const stride = 8 * blocksAcross;
  const samples = new Uint8Array(stride * 8 * blocksDown);
  const work = new Int32Array(64);
  for (let row = 0, at = 0; row < blocksDown; row++) {
    for (let column = 0; column < blocksAcross; column++, at += 64) {
      inverseDct(coefficients, at, table, work, samples, row * 8 * stride + column * 8, stride);
    }
  }
  return enlarged(
    { samples, width, height, stride },
    frame.mostAcross / component.across,
    frame.mostDown / component.down,
  );
}

function cropped(plane: Plane, width: number, height: number): Uint8Array {
  if (plane.stride === width) return plane.samples.subarray(0, width * height);
  const out = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    out.set(plane.samples.subarray(y * plane.stride, y * plane.stride + width), y * width);
  }
  return out;
}

/** ITU-R BT.601 at full range (JFIF 1.02), in 16-bit fixed point, rounded as libjpeg rounds. */
function intoRgb([luma, blueDifference, redDifference]: readonly Uint8Array[]): void {
  for (let i = 0; i < luma.length; i++) {
    const y = luma[i];
    const cb = blueDifference[i] - 128;
    const cr = redDifference[i] - 128;
    luma[i] = clamped(y + ((91881 * cr + 32768) >> 16));
    blueDifference[i] = clamped(y + ((-22554 * cb - 46802 * cr + 32768) >> 16));
    redDifference[i] = clamped(y + ((116130 * cb + 32768) >> 16));
  }
}

function clamped(value: number): number {
  return Math.max(0, Math.min(value, 255));
}
