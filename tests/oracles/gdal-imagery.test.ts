/** GDAL (gdalinfo, gdal_translate, gdallocationinfo) as the outside reader and writer of GeoTIFFs. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bytesPort, northUp, openImagery, type Raster, writeGeoTiff } from '@crownfall/imagery';
import { describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const folder = temporaryFolder('imagery');
/** 0.25 m in US survey feet, 3937/1200 ft per metre. */
const QUARTER_METRE_FT = (0.25 * 3937) / 1200;
const TRANSFORM = northUp(1_000_000.5, 1_200_000.25, QUARTER_METRE_FT);
const CRS = { epsg: 2236, kind: 'projected' } as const;

function run(program: string, ...args: string[]): string {
  return execFileSync(program, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}

/** gdalinfo ends with 0 in spite of warnings; they go to stderr. */
function warningsOf(file: string): string {
  return execFileSync('sh', ['-c', 'gdalinfo -checksum "$0" 2>&1 >/dev/null', file], { encoding: 'utf8' });
}

function hasGdal(): boolean {
  try {
    run('gdalinfo', '--version');
    return true;
  } catch {
    console.warn('skipped: needs GDAL (Debian: apt-get install gdal-bin)');
    return false;
  }
}

function sample(width: number, height: number, count: number): Raster {
  const bands = Array.from({ length: count }, (_, b) =>
    new Uint8Array(width * height).map((_, i) => (i % width) * (b + 1) + Math.floor(i / width) * 3),
  );
  return { width, height, bands };
}

describe.skipIf(!hasGdal())('GDAL reads what we write', () => {
  const raster = sample(600, 350, 4);
  const file = join(folder, 'ours.tif');
  const names = ['red', 'green', 'blue', 'near infrared'];
  writeFileSync(file, writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS, bandNames: names }));

  test('without a warning, with code, unit, transform, overviews and layout', () => {
    expect(warningsOf(file)).toBe('');
    const info = JSON.parse(run('gdalinfo', '-json', file));
    expect(info.coordinateSystem.wkt).toContain('ID["EPSG",2236]');
    expect(info.coordinateSystem.wkt).toContain('LENGTHUNIT["US survey foot",0.304800609601219');
    expect(info.geoTransform).toEqual([1_000_000.5, QUARTER_METRE_FT, 0, 1_200_000.25, 0, -QUARTER_METRE_FT]);
    expect(info.metadata.IMAGE_STRUCTURE.LAYOUT).toBe('COG');
    expect(info.metadata[''].AREA_OR_POINT).toBe('Area');
    expect(info.bands.map((band: { description: string }) => band.description)).toEqual(names);
    expect(info.bands[0].overviews.map((o: { size: number[] }) => o.size)).toEqual([
      [300, 175],
      [150, 88],
    ]);
    expect(info.bands[0].block).toEqual([256, 256]);
  });

  test('to the same samples', () => {
    const raw = join(folder, 'ours.raw');
    run('gdal_translate', '-q', '-of', 'ENVI', '-co', 'INTERLEAVE=BSQ', file, raw);
    const expected = Buffer.concat(raster.bands.map((band) => Buffer.from(band as Uint8Array)));
    expect(readFileSync(raw).equals(expected)).toBe(true);
  });

  test('and finds the sample of a ground position where we do', () => {
    const [x, y] = [1_000_000.5 + 123.4 * QUARTER_METRE_FT, 1_200_000.25 - 45.6 * QUARTER_METRE_FT];
    const answer = run('gdallocationinfo', '-valonly', '-b', '3', '-geoloc', file, String(x), String(y));
    expect(Number(answer)).toBe(raster.bands[2][45 * 600 + 123]);
  });

  test('with no-data left out of its statistics', () => {
    const gaps = join(folder, 'gaps.tif');
    const bands = [Float32Array.of(1, 2, -9999, 6)];
    writeFileSync(
      gaps,
      writeGeoTiff({ width: 2, height: 2, bands }, { transform: TRANSFORM, crs: CRS, nodata: -9999 }),
    );
    const { bands: read } = JSON.parse(run('gdalinfo', '-json', '-stats', '--config', 'GDAL_PAM_ENABLED', 'NO', gaps));
    expect([read[0].noDataValue, read[0].mean]).toEqual([-9999, 3]);
  });
});

describe.skipIf(!hasGdal())('we read what GDAL writes', () => {
  const raster = sample(200, 120, 3);
  const source = join(folder, 'source.tif');
  writeFileSync(source, writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS }));
  const translated = async (name: string, ...args: string[]) => {
    const file = join(folder, name);
    run('gdal_translate', '-q', ...args, source, file);
    const { image } = await openImagery(bytesPort(readFileSync(file)));
    if (!image) throw new Error('not opened');
    return image;
  };

  const layouts: readonly [string, readonly string[]][] = [
    ['strips, LZW', ['-co', 'COMPRESS=LZW']],
    ['tiles by band, DEFLATE', ['-co', 'TILED=YES', '-co', 'COMPRESS=DEFLATE', '-co', 'INTERLEAVE=BAND']],
    ['BigTIFF, big-endian, PACKBITS', ['-co', 'BIGTIFF=YES', '-co', 'ENDIANNESS=BIG', '-co', 'COMPRESS=PACKBITS']],
  ];
  for (const [name, args] of layouts) {
    test(name, async () => {
      const image = await translated(`${name}.tif`, ...args);
      const part = await image.readWindow({ left: 17, top: 40, width: 90, height: 33 }, { bands: [1] });
      expect(image.crs?.code).toBe('EPSG:2236');
      expect([part.bands[0][0], part.bands[0].at(-1)]).toEqual([
        raster.bands[1][40 * 200 + 17],
        raster.bands[1][72 * 200 + 106],
      ]);
    });
  }

  test('PixelIsPoint: the tie point is the middle of the pixel, our origin its corner', async () => {
    const image = await translated('point.tif', '-mo', 'AREA_OR_POINT=Point');
    expect(image.transform.originX).toBeCloseTo(TRANSFORM.originX, 6);
    expect(image.transform.originY).toBeCloseTo(TRANSFORM.originY, 6);
  });
});
