/**
 * The prepared file as one stream of bytes: header, directories, then the tiles, coarse levels first (OGC 21-026, Cloud Optimized
 * GeoTIFF 1.0). BigTIFF when it would not fit into 4 GB.
 */
import { type CrsCode, carriedFields, georeferenceFields } from '../geo-keys.ts';
import type { Imagery } from '../imagery.ts';
import { bandNameFields, GHOST, pictureFields } from '../picture-fields.ts';
import { sampleTypeOf } from '../raster.ts';
import { directorySize, type TiffField, writeDirectory, writeHeader } from '../tiff-directory.ts';
import type { BandRole } from '../window.ts';
import type { PartStore } from './part-store.ts';
import type { PreparePlan } from './prepare-plan.ts';
import { AROUND_TILE, type TileSpool } from './tile-spool.ts';

const CLASSIC_LIMIT = 2 ** 32 - 1;
const COPY_BYTES = 8 * 2 ** 20;

export interface PreparedFileOptions {
  /** Written in place of the GeoKeys of the image. */
  readonly crs: CrsCode | null;
  /** BigTIFF whatever the size. */
  readonly big: boolean;
}

/** Bytes in order; their total is the file. */
export async function* preparedFile(
  image: Imagery,
  plan: PreparePlan,
  spools: readonly TileSpool[],
  store: PartStore,
  options: PreparedFileOptions,
): AsyncGenerator<Uint8Array> {
  const sizes = spools.map((spool) => spool.sizes());
  const pixels = sizes.flatMap((list) => [...list]).reduce((sum, size) => sum + size + AROUND_TILE, 0);
  const start = (big: boolean) => headLength(directories(image, plan, sizes, { ...options, big }), big);
  const big = options.big || start(false) + pixels > CLASSIC_LIMIT;
  yield head(image, plan, sizes, { ...options, big }, start(big));
  for (const spool of spools.toReversed()) {
    const length = await store.size(spool.part);
    for (let at = 0; at < length; at += COPY_BYTES) {
      yield await store.read(spool.part, at, Math.min(COPY_BYTES, length - at));
    }
  }
}

type Sizes = readonly Uint32Array[];

function head(
  image: Imagery,
  plan: PreparePlan,
  sizes: Sizes,
  options: PreparedFileOptions,
  length: number,
): Uint8Array {
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  const fields = directories(image, plan, sizes, options, length);
  let at = firstDirectory(options.big);
  const offset = writeHeader(view, at, options.big);
  for (let i = 0; i < GHOST.length; i++) bytes[offset + i] = GHOST.charCodeAt(i);
  for (const [i, one] of fields.entries()) {
    const next = at + directorySize(one, options.big);
    writeDirectory(view, at, one, i === fields.length - 1 ? 0 : next, options.big);
    at = next;
  }
  return bytes;
}

function firstDirectory(big: boolean): number {
  const end = (big ? 16 : 8) + GHOST.length;
  return end + (end % 2);
}

function headLength(fields: readonly TiffField[][], big: boolean): number {
  return fields.reduce((sum, one) => sum + directorySize(one, big), firstDirectory(big));
}

/** The fields of each level; the tiles of the coarsest level start at `start`. */
function directories(
  image: Imagery,
  plan: PreparePlan,
  sizes: Sizes,
  { crs, big }: PreparedFileOptions,
  start = 0,
): TiffField[][] {
  const offsets = offsetsOf(sizes, start);
  const colour = photometricOf(plan.roles, image);
  return plan.levels.map((level, i) => {
    const fields = pictureFields({
      ...{ width: level.width, height: level.height, tileSize: plan.tileSize, big, nodata: plan.nodata },
      type: sampleTypeOf(plan.samples),
      bandCount: plan.roles.length,
      photometric: colour,
      extraSamples: plan.roles.slice(colour === 2 ? 3 : 1).map((role) => (role === 'alpha' ? 2 : 0)),
      colourMap: image.colourMap,
      offsets: offsets[i],
      sizes: sizes[i],
      overview: i > 0,
    });
    return i === 0 ? [...fields, ...placeFields(image, crs), ...bandNameFields(namesOf(plan.roles, colour))] : fields;
  });
}

function offsetsOf(sizes: Sizes, start: number): Float64Array[] {
  const out = sizes.map((list) => new Float64Array(list.length));
  let at = start;
  for (let i = sizes.length - 1; i >= 0; i--) {
    for (const [j, size] of sizes[i].entries()) {
      out[i][j] = at + 4;
      at += size + AROUND_TILE;
    }
  }
  return out;
}

function photometricOf(roles: readonly BandRole[], image: Imagery): 1 | 2 | 3 {
  if (roles[0] === 'red' && roles[1] === 'green' && roles[2] === 'blue') return 2;
  return roles[0] === 'palette' && roles.length === 1 && image.colourMap !== null ? 3 : 1;
}

/** Names where the tags alone would not tell a reader what a band is. */
function namesOf(roles: readonly BandRole[], photometric: 1 | 2 | 3): (string | null)[] {
  const telling: readonly BandRole[] =
    photometric === 2 ? ['near-infrared', 'height'] : ['red', 'green', 'blue', 'near-infrared', 'height'];
  return roles.map((role) => (telling.includes(role) ? role : null));
}

function placeFields({ geoKeys, transform }: Imagery, crs: CrsCode | null): readonly TiffField[] {
  if (crs !== null) return georeferenceFields(crs, transform);
  if (geoKeys === null) throw new RangeError('prepareImagery: expected a coordinate system, got an image without one');
  return carriedFields(geoKeys, transform);
}
