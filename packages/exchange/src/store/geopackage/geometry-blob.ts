/**
 * Geometries as GeoPackage binary: a header (`GP`, version 0, flags, SRS id, envelope) before ISO well-known binary, x and
 * y always longitude and latitude. OGC 12-128r18 (GeoPackage 1.3), clause 2.1.3, requirements 19, 33 and 152.
 */
import type { Coordinates, LonLatGeometry } from '@crownfall/geometry';

/** EPSG:4326, the one system records are kept in. */
const LONLAT_SRS_ID = 4326;

const HEADER_BYTES = 8;
const ENVELOPE_BYTES = 32;
/** Bytes of the envelope by its code in the flags: none, xy, xyz, xym, xyzm. */
const ENVELOPE_SIZES = [0, 32, 48, 48, 64] as const;
const LITTLE_ENDIAN = 0x01;
const ENVELOPE_XY = 0x02;
const EMPTY = 0x10;

const WKB = { point: 1, line: 2, polygon: 3, points: 4, lines: 5, polygons: 6, collection: 7 } as const;

/**
 * The blob of a geometry: little-endian, with an envelope unless it is a single point or empty; one part is written as the
 * single type, several as the multi type. Rings are closed by repeating their first vertex. `none` gives null.
 *
 * @example blob({ kind: 'point', points: Float64Array.of(1, 2) }) // 47500001e6100000 0101000000 …f03f …0040
 */
export function geometryBlob(geometry: LonLatGeometry): Uint8Array | null {
  if (geometry.kind === 'none') return null;
  const writer = new BlobWriter(HEADER_BYTES + ENVELOPE_BYTES + wkbBytes(geometry));
  const box = extentOf(geometry);
  const empty = box === null && countOf(geometry) === 0;
  const enveloped = box !== null && !(geometry.kind === 'point' && geometry.points.length === 2);
  writer.bytes(0x47, 0x50, 0x00, LITTLE_ENDIAN | (empty ? EMPTY : 0) | (enveloped ? ENVELOPE_XY : 0));
  writer.int(LONLAT_SRS_ID);
  if (enveloped) for (const ordinate of box) writer.double(ordinate);
  writeWkb(writer, geometry);
  return writer.done();
}

/** Extent as GeoPackage orders it: min x, max x, min y, max y; null without a finite position. */
export type Envelope = readonly [minX: number, maxX: number, minY: number, maxY: number];

/** The envelope of a geometry in memory; positions that are no numbers do not count. */
export function extentOf(geometry: LonLatGeometry): Envelope | null {
  const box = [Infinity, -Infinity, Infinity, -Infinity];
  for (const flat of coordinatesOf(geometry)) {
    for (let i = 0; i + 1 < flat.length; i += 2) {
      const x = flat[i];
      const y = flat[i + 1];
      if (!Number.isFinite(x) || !Number.isFinite(y)) continue;
      if (x < box[0]) box[0] = x;
      if (x > box[1]) box[1] = x;
      if (y < box[2]) box[2] = y;
      if (y > box[3]) box[3] = y;
    }
  }
  return box[0] <= box[1] ? (box as unknown as Envelope) : null;
}

/** What a blob holds; `problem` says why nothing, or not all of it, can be read. */
export interface BlobReading {
  readonly geometry: LonLatGeometry;
  readonly problem?: string;
}

/**
 * Reads a blob by any writer: both byte orders, all envelopes, Z and M left out. A collection gives its members when all
 * are of one kind. Curves and foreign extensions give `none` and a problem, a blob that ends too soon as well.
 */
export function readGeometryBlob(blob: Uint8Array): BlobReading {
  const start = wkbStart(blob);
  if (start === null) return { geometry: { kind: 'none' }, problem: 'no GeoPackage geometry' };
  try {
    return { geometry: new WkbReader(blob, start).geometry() };
  } catch (error) {
    if (error instanceof RangeError) return { geometry: { kind: 'none' }, problem: 'the geometry ends too soon' };
    if (error instanceof UnreadableWkb) return { geometry: { kind: 'none' }, problem: error.message };
    throw error;
  }
}

/** The envelope of a blob, from its header when it has one, else from its positions; null when empty or unreadable. */
export function blobEnvelope(blob: Uint8Array): Envelope | null {
  if (wkbStart(blob) === null) return null;
  const code = (blob[3] >> 1) & 7;
  if (code === 0 || blob.length < HEADER_BYTES + ENVELOPE_BYTES) return extentOf(readGeometryBlob(blob).geometry);
  const view = viewOf(blob);
  const little = (blob[3] & LITTLE_ENDIAN) === 1;
  const box = [0, 8, 16, 24].map((at) => view.getFloat64(HEADER_BYTES + at, little));
  return box.every(Number.isFinite) ? (box as unknown as Envelope) : null;
}

/** Where well-known binary begins; null when the header is not one of GeoPackage 1.x standard geometries. */
function wkbStart(blob: Uint8Array): number | null {
  if (blob.length < HEADER_BYTES || blob[0] !== 0x47 || blob[1] !== 0x50) return null;
  const code = (blob[3] >> 1) & 7;
  const extended = (blob[3] & 0x20) !== 0;
  return code > 4 || extended ? null : HEADER_BYTES + ENVELOPE_SIZES[code];
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function coordinatesOf(geometry: LonLatGeometry): readonly Float64Array[] {
  if (geometry.kind === 'point') return [geometry.points];
  if (geometry.kind === 'line') return geometry.lines;
  return geometry.kind === 'area' ? geometry.polygons.flat() : [];
}

function countOf(geometry: LonLatGeometry): number {
  return coordinatesOf(geometry).reduce((count, flat) => count + flat.length, 0);
}

/** An upper bound: every part with its own head, every ring closed. */
function wkbBytes(geometry: LonLatGeometry): number {
  const flats = coordinatesOf(geometry);
  const parts = geometry.kind === 'area' ? geometry.polygons.length : 0;
  const doubles = flats.reduce((sum, flat) => sum + flat.length + 2, 2);
  return 9 + 9 * (parts + flats.length) + 8 * doubles + (geometry.kind === 'point' ? 5 * geometry.points.length : 0);
}

function writeWkb(writer: BlobWriter, geometry: LonLatGeometry): void {
  if (geometry.kind === 'point') {
    const count = geometry.points.length / 2;
    if (count > 1) writer.head(WKB.points, count);
    for (let i = 0; i < Math.max(count, 1); i++) writer.point(geometry.points.subarray(2 * i, 2 * i + 2));
  } else if (geometry.kind === 'line') {
    if (geometry.lines.length !== 1) writer.head(WKB.lines, geometry.lines.length);
    for (const line of geometry.lines) writer.line(line);
  } else if (geometry.kind === 'area') {
    if (geometry.polygons.length !== 1) writer.head(WKB.polygons, geometry.polygons.length);
    for (const rings of geometry.polygons) writer.polygon(rings);
  }
}

class BlobWriter {
  readonly #blob: Uint8Array;
  readonly #view: DataView;
  #at = 0;

  constructor(bytes: number) {
    this.#blob = new Uint8Array(bytes);
    this.#view = viewOf(this.#blob);
  }

  bytes(...bytes: number[]): void {
    this.#blob.set(bytes, this.#at);
    this.#at += bytes.length;
  }

  int(value: number): void {
    this.#view.setUint32(this.#at, value, true);
    this.#at += 4;
  }

  double(value: number): void {
    this.#view.setFloat64(this.#at, value, true);
    this.#at += 8;
  }

  head(type: number, count: number): void {
    this.bytes(LITTLE_ENDIAN);
    this.int(type);
    this.int(count);
  }

  /** An empty point is one whose ordinates are quiet NaNs (requirement 152). */
  point(xy: Float64Array): void {
    this.bytes(LITTLE_ENDIAN);
    this.int(WKB.point);
    this.double(xy.length > 0 ? xy[0] : Number.NaN);
    this.double(xy.length > 1 ? xy[1] : Number.NaN);
  }

  line(flat: Float64Array): void {
    this.head(WKB.line, flat.length / 2);
    for (const ordinate of flat) this.double(ordinate);
  }

  polygon(rings: readonly Float64Array[]): void {
    this.head(WKB.polygon, rings.length);
    for (const ring of rings) {
      const empty = ring.length === 0;
      this.int(empty ? 0 : ring.length / 2 + 1);
      for (const ordinate of ring) this.double(ordinate);
      if (!empty) for (const ordinate of ring.subarray(0, 2)) this.double(ordinate);
    }
  }

  done(): Uint8Array {
    return this.#blob.subarray(0, this.#at);
  }
}

class UnreadableWkb extends Error {}

class WkbReader {
  readonly #view: DataView;
  #at: number;
  #little = true;
  /** Ordinates per position. */
  #dimension = 2;

  constructor(blob: Uint8Array, start: number) {
    this.#view = viewOf(blob);
    this.#at = start;
  }

  geometry(): LonLatGeometry {
    const type = this.#head();
    switch (type) {
      case WKB.point: {
        const points = this.#positions(1);
        return { kind: 'point', points: Number.isNaN(points[0] + points[1]) ? new Float64Array() : points };
      }
      case WKB.line:
        return { kind: 'line', lines: [this.#positions(this.#int())] };
      case WKB.polygon:
        return { kind: 'area', polygons: [this.#rings()] };
      case WKB.points:
      case WKB.lines:
      case WKB.polygons:
      case WKB.collection:
        return joined(type, this.#members());
      default:
        throw new UnreadableWkb(`geometry of type ${type}`);
    }
  }

  #members(): LonLatGeometry[] {
    const count = this.#count(5);
    const members: LonLatGeometry[] = [];
    for (let i = 0; i < count; i++) members.push(this.geometry());
    return members;
  }

  #rings(): Coordinates<'lonlat'>[] {
    const count = this.#count(4);
    const rings: Coordinates<'lonlat'>[] = [];
    for (let i = 0; i < count; i++) rings.push(opened(this.#positions(this.#int())));
    return rings;
  }

  /** ISO codes (1001 Z, 2001 M, 3001 ZM) and the older high bits alike. */
  #head(): number {
    this.#little = this.#view.getUint8(this.#at) === 1;
    this.#at += 1;
    const code = this.#int();
    const iso = Math.floor((code & 0x0fffffff) / 1000);
    const z = iso === 1 || iso === 3 || code >>> 31 === 1;
    const m = iso === 2 || iso === 3 || ((code >>> 30) & 1) === 1;
    this.#dimension = 2 + Number(z) + Number(m);
    return (code & 0x0fffffff) % 1000;
  }

  /** A count that fits into what is left: a damaged one must not ask for all memory. */
  #count(bytesEach: number): number {
    const count = this.#int();
    if (count * bytesEach > this.#view.byteLength - this.#at) throw new RangeError('count exceeds the blob');
    return count;
  }

  #int(): number {
    const value = this.#view.getUint32(this.#at, this.#little);
    this.#at += 4;
    return value;
  }

  #positions(count: number): Coordinates<'lonlat'> {
    const step = 8 * this.#dimension;
    if (count * step > this.#view.byteLength - this.#at) throw new RangeError('count exceeds the blob');
    const flat = new Float64Array(2 * count);
    for (let i = 0; i < count; i++) {
      flat[2 * i] = this.#view.getFloat64(this.#at, this.#little);
      flat[2 * i + 1] = this.#view.getFloat64(this.#at + 8, this.#little);
      this.#at += step;
    }
    return flat;
  }
}

/** Without the closing vertex; what a writer left open stays as it is. */
function opened(ring: Coordinates<'lonlat'>): Coordinates<'lonlat'> {
  const n = ring.length;
  const closed = n > 2 && Object.is(ring[0], ring[n - 2]) && Object.is(ring[1], ring[n - 1]);
  return closed ? ring.slice(0, n - 2) : ring;
}

const KIND_OF = { [WKB.points]: 'point', [WKB.lines]: 'line', [WKB.polygons]: 'area' } as const;

function joined(type: 4 | 5 | 6 | 7, members: readonly LonLatGeometry[]): LonLatGeometry {
  const kind = type === WKB.collection ? members[0]?.kind : KIND_OF[type];
  if (members.some((member) => member.kind !== kind)) throw new UnreadableWkb('collection of several kinds');
  if (kind === 'point') {
    return { kind, points: Float64Array.from(members.flatMap((m) => (m.kind === 'point' ? [...m.points] : []))) };
  }
  if (kind === 'line') return { kind, lines: members.flatMap((m) => (m.kind === 'line' ? m.lines : [])) };
  if (kind === 'area') return { kind, polygons: members.flatMap((m) => (m.kind === 'area' ? m.polygons : [])) };
  return { kind: 'none' };
}
