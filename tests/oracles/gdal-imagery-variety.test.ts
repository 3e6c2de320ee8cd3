/** Every image of a varied set of real GeoTIFFs reads as GDAL reads it: samples, overviews, masks, corners, place on the globe. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { bytesPort, type Imagery, type OpenedImagery, openImagery, pixelToGround } from '@crownfall/imagery';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { gdal, gdalInfo, gdalLonLats, hasGdal } from './gdal-programs.ts';

const SHARED = process.env.CROWNFALL_SHARED ?? resolve(import.meta.dirname, '../../../shared');
const FOLDERS = ['data/geotiff-variety', 'data/aerial-trees'].map((folder) => join(SHARED, folder));
const folder = temporaryFolder('variety');

/** In units of the coordinate system and of a pixel's size: rounding in the products of a transform. */
const CORNER_TOLERANCE = 1e-9;
/** 1 mm: the series of two projection programs. */
const LONLAT_TOLERANCE_DEG = 1e-8;

function files(): string[] {
  const missing = FOLDERS.filter((path) => !existsSync(path));
  if (missing.length > 0) console.warn(`skipped: needs the images in ${missing.join(' and ')}`);
  return FOLDERS.filter((path) => existsSync(path)).flatMap((path) =>
    readdirSync(path)
      .filter((name) => name.endsWith('.tif') && name !== 'corrupt.tif')
      .map((name) => join(path, name)),
  );
}

async function opened(path: string): Promise<OpenedImagery> {
  const overviews = existsSync(`${path}.ovr`) ? bytesPort(readFileSync(`${path}.ovr`)) : undefined;
  return openImagery(bytesPort(readFileSync(path)), { file: path, beside: { overviews } });
}

async function readable(path: string): Promise<Imagery> {
  const { image, findings } = await opened(path);
  if (!image) throw new Error(JSON.stringify(findings));
  return image;
}

/** Samples band by band as GDAL writes them raw. */
function gdalBytes(path: string, ...args: string[]): Buffer {
  const raw = join(folder, 'read.raw');
  gdal('gdal_translate', ['-q', '-of', 'ENVI', '-co', 'INTERLEAVE=BSQ', ...args, path, raw]);
  return readFileSync(raw);
}

/** One by one: GDAL's raw format has no word for a rotated image. */
function gdalTextBytes(path: string): Buffer {
  const [width, height] = gdalInfo(path).size;
  const pixels = Array.from({ length: width * height }, (_, i) => `${i % width} ${Math.floor(i / width)}`);
  const samples = gdal('gdallocationinfo', ['-valonly', path], `${pixels.join('\n')}\n`);
  return Buffer.from(samples.trim().split('\n').map(Number));
}

async function ownBytes(image: Imagery, level = 0): Promise<Buffer> {
  const { width, height } = image.levels[level];
  const { bands, findings } = await image.readWindow({ left: 0, top: 0, width, height }, { level });
  expect(findings).toEqual([]);
  return Buffer.concat(bands.map((band) => Buffer.from(band.buffer, band.byteOffset, band.byteLength)));
}

const paths = hasGdal() ? files() : [];

describe.skipIf(paths.length === 0)('a varied set of images reads as GDAL reads it', () => {
  test.each(paths)('%s: samples to the last bit', async (path) => {
    const image = await readable(path);
    const expected = path.endsWith('rotated.tif') ? gdalTextBytes(path) : gdalBytes(path);
    expect((await ownBytes(image)).equals(expected)).toBe(true);
  });

  test.each(paths)('%s: size, bands and corners', async (path) => {
    const image = await readable(path);
    const info = gdalInfo(path);
    expect([image.width, image.height, image.bandCount]).toEqual([...info.size, info.bands.length]);
    const [x, columnX, rowX, y, columnY, rowY] = info.geoTransform ?? [0, 1, 0, 0, 0, 1];
    for (const [column, row] of [
      [0, 0],
      [image.width, 0],
      [0, image.height],
      [image.width, image.height],
    ]) {
      const [gx, gy] = pixelToGround(image.transform, column, row);
      const size = Math.hypot(columnX, columnY) * Math.max(image.width, image.height) + Math.abs(x) + Math.abs(y);
      expect(Math.abs(gx - (x + columnX * column + rowX * row))).toBeLessThan(CORNER_TOLERANCE * size);
      expect(Math.abs(gy - (y + columnY * column + rowY * row))).toBeLessThan(CORNER_TOLERANCE * size);
    }
  });

  test.each(paths)('%s: overviews to the last bit', async (path) => {
    const image = await readable(path);
    const sizes = gdalInfo(path).bands[0].overviews?.map(({ size }) => size) ?? [];
    expect(image.levels.slice(1).map(({ width, height }) => [width, height])).toEqual(sizes);
    for (const level of sizes.keys()) {
      const expected = gdalBytes(path, '-oo', `OVERVIEW_LEVEL=${level}`);
      expect((await ownBytes(image, level + 1)).equals(expected)).toBe(true);
    }
  });

  test.each(paths)('%s: place on the globe, or a finding that says why there is none', async (path) => {
    const { image, findings } = await opened(path);
    if (!image?.crs) {
      expect(findings.map((finding) => finding.code)).toContainEqual(
        expect.stringMatching(/^crs-(missing|unknown|datum-refused)$/),
      );
      return;
    }
    const pixels = [0.1, 0.5, 0.9].flatMap((u) =>
      [0.1, 0.5, 0.9].map((v) => [u * image.width, v * image.height] as const),
    );
    const own = image.pixelToLonLat(pixels.flat());
    for (const [i, expected] of gdalLonLats(path, pixels).entries()) {
      expect(Math.abs(own[i] - expected)).toBeLessThan(LONLAT_TOLERANCE_DEG);
    }
  });

  const masked = paths.filter((path) => gdalInfo(path).bands[0].mask?.flags.join(' ') === 'PER_DATASET');
  test.each(masked)('%s: mask', async (path) => {
    const image = await readable(path);
    const { missing } = await image.readWindow({ left: 0, top: 0, width: image.width, height: image.height });
    expect(Buffer.from(missing.map((one) => (one === 0 ? 255 : 0))).equals(gdalBytes(path, '-b', 'mask'))).toBe(true);
  });

  test('near-infrared tagged as transparency is recognised, transparency left in peace', async () => {
    const rolesOf = async (path: string) => (await readable(path)).roles[3];
    for (const path of paths.filter((one) => one.includes('aerial-trees'))) {
      expect(await rolesOf(path)).toBe('near-infrared');
    }
    for (const path of paths.filter((one) => /alpha\.tif|RGBA\.uint16/.test(one))) {
      expect(await rolesOf(path)).toBe('alpha');
    }
  });
});

const corrupt = join(FOLDERS[0], 'corrupt.tif');
describe.skipIf(!existsSync(corrupt))('an image damaged on purpose', () => {
  test('gives what can be read, and a finding for the rest', async () => {
    const image = await readable(corrupt);
    const { findings, missing } = await image.readWindow({ left: 0, top: 0, width: 1024, height: 1024 });
    expect(findings).toMatchObject([
      { code: 'imagery-block-damaged', effect: 'left_out', facts: { count: 1, column: 512, row: 512 } },
    ]);
    expect(missing.reduce((sum, one) => sum + one, 0)).toBe(512 * 512);
    const sound = await image.readWindow({ left: 0, top: 0, width: 1024, height: 512 });
    expect(sound.findings).toEqual([]);
  });

  test('in its directories: no image, and a finding', async () => {
    const { image, findings } = await openImagery(bytesPort(readFileSync(corrupt).subarray(0, 300)));
    expect(image).toBeNull();
    expect(findings).toMatchObject([{ code: 'file-damaged', severity: 'error' }]);
  });
});
