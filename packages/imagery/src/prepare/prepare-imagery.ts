/**
 * Any readable image as a tiled, deflated GeoTIFF with overviews in the cloud-optimised layout. Pixels stream through a row of
 * tiles at a time; compressed tiles wait in a store, level by level, so that an interrupted run goes on where it stopped.
 */
import type { CrsCode } from '../geo-keys.ts';
import type { Imagery } from '../imagery.ts';
import type { ImageryFinding } from '../imagery-findings.ts';
import { missingPixels } from '../missing-pixels.ts';
import type { SampleArray } from '../raster.ts';
import { halvedBands } from './halved-bands.ts';
import type { PartStore } from './part-store.ts';
import { type PreparePlan, preparePlan, writtenBands } from './prepare-plan.ts';
import { preparedFile } from './prepared-file.ts';
import { type TileSpool, type TileStrip, tileSpool, type Zlib } from './tile-spool.ts';

export interface PrepareOptions {
  /** Tells this job from another in the same store: the file, its size and date, and what was asked. */
  readonly job: string;
  readonly zlib: Zlib;
  /** Side of a tile in pixels, a multiple of 16; 512 when absent. */
  readonly tileSize?: number;
  /** Written in place of what the image says about its coordinate system. */
  readonly crs?: CrsCode | null;
  /** BigTIFF whatever the size. */
  readonly big?: boolean;
  /** Told the share done, 0–1, after each row of tiles. */
  readonly onProgress?: (share: number) => void;
}

export interface PreparedImagery {
  readonly width: number;
  readonly height: number;
  readonly levels: number;
  readonly tiles: number;
  /** Rows of tiles that an earlier, interrupted run had done. */
  readonly rowsFound: number;
  readonly bytes: number;
  readonly findings: readonly ImageryFinding[];
}

/** Pixels read at once are at most this wide: bounds memory for images of any width. */
const CHUNK_PIXELS = 4096;

/**
 * Writes the prepared file, piece by piece, through `write`. Band roles found at opening are written down; a fourth band
 * of near-infrared is no longer tagged as transparency. A mask becomes a band of transparency (8 and 16 bits) or no-data.
 * Colours are kept to the digit; JPEG is not written.
 *
 * Memory: a row of tiles at its full width, twice, and what the image's block cache holds.
 * @throws RangeError for an image that nothing places, or a tile size that is no multiple of 16; Error when reading or writing
 * fails: the store then holds what was done
 */
export async function prepareImagery(
  image: Imagery,
  store: PartStore,
  write: (bytes: Uint8Array) => Promise<void>,
  options: PrepareOptions,
): Promise<PreparedImagery> {
  const tileSize = options.tileSize ?? 512;
  if (!(Number.isInteger(tileSize) && tileSize >= 16 && tileSize % 16 === 0)) {
    throw new RangeError(`prepareImagery: expected a tile size that is a multiple of 16, got ${tileSize}`);
  }
  if (!image.placed) throw new RangeError('prepareImagery: expected an image with a place on the ground');
  const [first] = (await image.readWindow({ left: 0, top: 0, width: 1, height: 1 })).bands;
  const plan = preparePlan(image, first, tileSize);
  await begun(store, JSON.stringify([options.job, plan.levels[0], plan.tileSize, plan.roles, options.crs ?? null]));
  const spools = await Promise.all(plan.levels.map((_, i) => tileSpool(store, plan, i, options.zlib)));
  const rowsFound = spools.reduce((sum, spool) => sum + spool.rowsDone(), 0);
  const step = progressOf(plan, spools, options.onProgress);
  const findings = await fullPicture(image, plan, spools[0], store, step);
  for (let i = 1; i < spools.length; i++) await overview(plan, spools[i - 1], spools[i], step);
  let bytes = 0;
  for await (const piece of preparedFile(image, plan, spools, store, {
    crs: options.crs ?? null,
    big: options.big === true,
  })) {
    await write(piece);
    bytes += piece.length;
  }
  const tiles = plan.levels.reduce((sum, level) => sum + level.across * level.down, 0);
  return { width: image.width, height: image.height, levels: spools.length, tiles, rowsFound, bytes, findings };
}

/** Work left by another job is thrown away. */
async function begun(store: PartStore, job: string): Promise<void> {
  if ((await store.text('job')) === job) return;
  await store.clear();
  await store.setText('job', job);
}

function progressOf(plan: PreparePlan, spools: readonly TileSpool[], tell?: (share: number) => void): () => void {
  const total = plan.levels.reduce((sum, level) => sum + level.across * level.down, 0);
  return () => tell?.(spools.reduce((sum, spool) => sum + spool.rowsDone() * spool.level.across, 0) / total);
}

async function fullPicture(
  image: Imagery,
  plan: PreparePlan,
  spool: TileSpool,
  store: PartStore,
  step: () => void,
): Promise<readonly ImageryFinding[]> {
  const { tileSize } = plan;
  const chunk = Math.max(1, Math.floor(CHUNK_PIXELS / tileSize)) * tileSize;
  const found = new Map<string, ImageryFinding>(JSON.parse((await store.text('findings')) ?? '[]'));
  for (let row = spool.rowsDone(); row < spool.level.down; row++) {
    const top = row * tileSize;
    const height = Math.min(tileSize, image.height - top);
    const strips: TileStrip[] = [];
    for (let left = 0; left < image.width; left += chunk) {
      const width = Math.min(chunk, image.width - left);
      const { bands, missing, findings } = await image.readWindow({ left, top, width, height });
      for (const finding of findings) found.set(JSON.stringify([finding.code, finding.facts]), finding);
      strips.push({ width, height, bands: writtenBands(plan, bands, missing) });
    }
    if (found.size > 0) await store.setText('findings', JSON.stringify([...found]));
    await spool.addRow(strips);
    step();
  }
  return [...found.values()];
}

async function overview(plan: PreparePlan, fine: TileSpool, coarse: TileSpool, step: () => void): Promise<void> {
  const tilesAtOnce = Math.max(1, Math.floor(CHUNK_PIXELS / plan.tileSize / 2));
  for (let row = coarse.rowsDone(); row < coarse.level.down; row++) {
    const strips: TileStrip[] = [];
    for (let first = 0; first < coarse.level.across; first += tilesAtOnce) {
      const last = Math.min(2 * (first + tilesAtOnce), fine.level.across);
      strips.push(await halvedStrip(plan, fine, { row, first: 2 * first, last }));
    }
    await coarse.addRow(strips);
    step();
  }
}

/** Two rows of tiles of the finer level, one under the other. */
async function finePixels(fine: TileSpool, { row, first, last }: FineTiles): Promise<SampleArray[]> {
  const upper = (await fine.readRow(2 * row, first, last)) as SampleArray[];
  const lower = await fine.readRow(2 * row + 1, first, last);
  if (lower === null) return upper;
  return upper.map((band, b) => {
    const both = new (band.constructor as new (length: number) => SampleArray)(2 * band.length);
    both.set(band);
    both.set(lower[b], band.length);
    return both;
  });
}

/** Tiles of the finer level that make part of a row of the coarser one: `row` is the coarser level's. */
interface FineTiles {
  readonly row: number;
  readonly first: number;
  readonly last: number;
}

async function halvedStrip(plan: PreparePlan, fine: TileSpool, tiles: FineTiles): Promise<TileStrip> {
  const { tileSize } = plan;
  const bands = await finePixels(fine, tiles);
  const padded = (tiles.last - tiles.first) * tileSize;
  const width = Math.min(padded, fine.level.width - tiles.first * tileSize);
  const height = Math.min(bands[0].length / padded, fine.level.height - 2 * tiles.row * tileSize);
  const real = bands.map((band) => cropped(band, padded, width, height));
  const alpha = plan.roles.indexOf('alpha');
  const missing = missingPixels({
    length: width * height,
    bands: real.filter((_, b) => b !== alpha),
    nodata: plan.nodata,
    alpha: real[alpha],
    mask: undefined,
  });
  const halved = halvedBands({ width, height, bands: real, missing }, plan.roles, plan.nodata ?? 0);
  return { width: Math.ceil(width / 2), height: Math.ceil(height / 2), bands: halved };
}

function cropped(band: SampleArray, stride: number, width: number, height: number): SampleArray {
  if (stride === width) return band.subarray(0, width * height);
  const out = new (band.constructor as new (length: number) => SampleArray)(width * height);
  for (let y = 0; y < height; y++) out.set(band.subarray(y * stride, y * stride + width), y * width);
  return out;
}
