/**
 * A matrix of encodings made by gdal_translate (which version, `gdalinfo --version` says; made with 3.6.2) out of one small image
 * of ours, read back and compared with what GDAL itself reads; and a matrix of coordinate systems, compared with where GDAL puts
 * them. packages/imagery tests what our own writer makes, without GDAL.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bytesPort, type OpenedImagery, openImagery, writeGeoTiff } from '@crownfall/imagery';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';
import { gdal, gdalLonLats, hasGdal } from './gdal-programs.ts';

const folder = temporaryFolder('encodings');
const source = join(folder, 'source.tif');
const [WIDTH, HEIGHT] = [203, 117];
const TRANSFORM = { originX: 922_000, columnX: 0.5, rowX: 0, originY: 519_900, columnY: 0, rowY: -0.5 };

/** Smooth, so that JPEG has little to lose, and no two rows or bands alike. */
function writeSource(): void {
  const bands = [0, 1, 2].map((b) =>
    Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => {
      const [column, row] = [i % WIDTH, Math.floor(i / WIDTH)];
      return 128 + 90 * Math.sin(column / (9 + b)) * Math.cos(row / (7 + 2 * b));
    }),
  );
  const raster = { width: WIDTH, height: HEIGHT, bands };
  writeFileSync(source, writeGeoTiff(raster, { transform: TRANSFORM, crs: { epsg: 2236, kind: 'projected' } }));
}

const tiled = ['-co', 'TILED=YES', '-co', 'BLOCKXSIZE=64', '-co', 'BLOCKYSIZE=48'];
const co = (...options: string[]) => options.flatMap((option) => ['-co', option]);

const ENCODINGS: Readonly<Record<string, readonly string[]>> = {
  'plain strips': [],
  'strips of one row, bands apart': co('BLOCKYSIZE=1', 'INTERLEAVE=BAND'),
  'plain tiles, bands apart': [...tiled, ...co('INTERLEAVE=BAND')],
  'LZW tiles, differences': [...tiled, ...co('COMPRESS=LZW', 'PREDICTOR=2')],
  'deflate strips, differences, bands apart': co('COMPRESS=DEFLATE', 'PREDICTOR=2', 'INTERLEAVE=BAND'),
  'PackBits strips': co('COMPRESS=PACKBITS'),
  'Zstandard tiles, differences': [...tiled, ...co('COMPRESS=ZSTD', 'PREDICTOR=2')],
  'LERC tiles': [...tiled, ...co('COMPRESS=LERC')],
  'JPEG tiles, colour at half size': [...tiled, ...co('COMPRESS=JPEG', 'PHOTOMETRIC=YCBCR')],
  'JPEG strips, colour at half size': co('COMPRESS=JPEG', 'PHOTOMETRIC=YCBCR', 'BLOCKYSIZE=16'),
  'JPEG tiles, red green blue': [...tiled, ...co('COMPRESS=JPEG', 'PHOTOMETRIC=RGB', 'JPEG_QUALITY=90')],
  'JPEG strips, bands apart': co('COMPRESS=JPEG', 'INTERLEAVE=BAND'),
  'BigTIFF, highest byte first, 16 bits, differences': [
    ...['-ot', 'UInt16', '-scale', '0', '255', '0', '65535'],
    ...co('BIGTIFF=YES', 'ENDIANNESS=BIG', 'COMPRESS=LZW', 'PREDICTOR=2'),
  ],
  '16 bits with sign, differences': [
    ...['-ot', 'Int16', '-scale', '0', '255', '-30000', '30000'],
    ...co('COMPRESS=DEFLATE', 'PREDICTOR=2'),
  ],
  '32 bits, highest byte first, differences': [
    ...['-ot', 'UInt32', '-scale', '0', '255', '0', '4000000000'],
    ...co('ENDIANNESS=BIG', 'COMPRESS=DEFLATE', 'PREDICTOR=2'),
  ],
  '32 bits with sign': ['-ot', 'Int32', '-scale', '0', '255', '-2000000000', '2000000000'],
  'float32, differences': ['-ot', 'Float32', '-scale', '0', '255', '-1', '1', ...co('COMPRESS=DEFLATE', 'PREDICTOR=3')],
  'float32, highest byte first, differences': [
    ...['-ot', 'Float32', '-scale', '0', '255', '-1', '1', ...tiled],
    ...co('ENDIANNESS=BIG', 'COMPRESS=LZW', 'PREDICTOR=3'),
  ],
  'float32, LERC': ['-ot', 'Float32', '-scale', '0', '255', '-1', '1', ...co('COMPRESS=LERC')],
  'float64, highest byte first': ['-ot', 'Float64', '-scale', '0', '255', '-1', '1', ...co('ENDIANNESS=BIG')],
  'float64, differences': ['-ot', 'Float64', '-scale', '0', '255', '-1', '1', ...co('COMPRESS=ZSTD', 'PREDICTOR=3')],
  float16: ['-ot', 'Float32', '-scale', '0', '255', '-1', '1', ...co('NBITS=16')],
  '1 bit': ['-b', '1', '-scale', '0', '255', '0', '1', ...co('NBITS=1')],
  '2 bits': ['-b', '1', '-scale', '0', '255', '0', '3', ...co('NBITS=2', 'COMPRESS=DEFLATE')],
  '4 bits': ['-scale', '0', '255', '0', '15', ...co('NBITS=4')],
  '12 bits': ['-ot', 'UInt16', '-scale', '0', '255', '0', '4095', ...tiled, ...co('NBITS=12', 'COMPRESS=LZW')],
};

async function translated(name: string, args: readonly string[]): Promise<OpenedImagery & { readonly file: string }> {
  const file = join(folder, `${name.replaceAll(/\W/g, '-')}.tif`);
  gdal('gdal_translate', ['-q', ...args, source, file]);
  return { ...(await openImagery(bytesPort(readFileSync(file)))), file };
}

describe.skipIf(!hasGdal())('encodings that GDAL writes', () => {
  beforeAll(writeSource);

  test.each(Object.keys(ENCODINGS))('%s', async (name) => {
    const { image, file, findings } = await translated(name, ENCODINGS[name]);
    if (!image) throw new Error(JSON.stringify(findings));
    const raw = join(folder, 'read.raw');
    gdal('gdal_translate', ['-q', '-of', 'ENVI', '-co', 'INTERLEAVE=BSQ', file, raw]);
    const whole = await image.readWindow({ left: 0, top: 0, width: WIDTH, height: HEIGHT });
    expect(whole.findings).toEqual([]);
    const own = whole.bands.map((band) => Buffer.from(band.buffer, band.byteOffset, band.byteLength));
    expect(Buffer.concat(own).equals(readFileSync(raw))).toBe(true);
    const part = await image.readWindow({ left: 61, top: 44, width: 70, height: 60 });
    expect(part.bands[0][0]).toBe(whole.bands[0][44 * WIDTH + 61]);
    expect(part.bands.at(-1)?.at(-1)).toBe(whole.bands.at(-1)?.[103 * WIDTH + 130]);
  });

  test('pixel-is-point, rotated', async () => {
    const { image } = await translated('point', ['-mo', 'AREA_OR_POINT=Point']);
    expect(image?.transform).toEqual(TRANSFORM);
  });

  test('several compressions that are not read are named', async () => {
    const { image, findings } = await translated('lzma', co('COMPRESS=LZMA'));
    expect(image).toBeNull();
    expect(findings).toMatchObject([
      { code: 'imagery-encoding-unsupported', facts: { problem: 'compression number 34925' } },
    ]);
  });
});

const FLORIDA_EAST = '+proj=tmerc +lat_0=24.3333333333333 +lon_0=-81 +k=0.999941177 +y_0=0';
const SYSTEMS: Readonly<Record<string, string>> = {
  'US survey feet by code': 'EPSG:2236',
  'international feet by code': 'EPSG:2222',
  'metres by code': 'EPSG:26917',
  'Web Mercator': 'EPSG:3857',
  'US survey feet by parts': `${FLORIDA_EAST} +x_0=200000.0001016 +ellps=GRS80 +units=us-ft`,
  'international feet by parts': `${FLORIDA_EAST} +x_0=200000 +ellps=GRS80 +units=ft`,
  'metres by parts': `${FLORIDA_EAST} +x_0=200000 +ellps=GRS80 +units=m`,
  'a cone by parts in US survey feet':
    '+proj=lcc +lat_0=29 +lon_0=-84.5 +lat_1=30.75 +lat_2=29.5833333333333 +x_0=600000 +y_0=0 +ellps=GRS80 +units=us-ft',
  'a cone of one parallel by parts':
    '+proj=lcc +lat_1=27 +lat_0=27 +lon_0=-81 +k_0=0.9999 +x_0=3e5 +y_0=2e5 +ellps=GRS80',
  'Albers by parts':
    '+proj=aea +lat_0=24 +lon_0=-84 +lat_1=24 +lat_2=31.5 +x_0=400000 +y_0=0 +ellps=GRS80 +units=us-ft',
};
/** 0.1 mm: twice scaled feet would be off by 220 km, a wrong foot by 2 ppm of 300 km, 0.6 m. */
const LONLAT_TOLERANCE_DEG = 1e-9;

describe.skipIf(!hasGdal())('coordinate systems that GDAL writes', () => {
  beforeAll(writeSource);

  test.each(Object.keys(SYSTEMS))('%s', async (name) => {
    const { image, file, findings } = await translated(name, ['-a_srs', SYSTEMS[name]]);
    expect(findings).toEqual([]);
    const pixels = [
      [0, 0],
      [WIDTH, 0],
      [WIDTH / 2, HEIGHT / 2],
      [0, HEIGHT],
      [WIDTH, HEIGHT],
    ] as const;
    const own = image?.pixelToLonLat(pixels.flat()) ?? [];
    for (const [i, expected] of gdalLonLats(file, pixels).entries()) {
      expect(Math.abs(own[i] - expected)).toBeLessThan(LONLAT_TOLERANCE_DEG);
    }
  });

  test.each(['EPSG:26717', 'EPSG:4267', `${FLORIDA_EAST} +x_0=152400 +datum=NAD27 +units=us-ft`])(
    'NAD27 is refused: %s',
    async (srs) => {
      const { image, findings } = await translated('nad27', ['-a_srs', srs]);
      expect(image?.crs).toBeNull();
      expect(findings).toMatchObject([{ code: 'crs-datum-refused', severity: 'error' }]);
    },
  );

  test('a 10,000 × 10,000 image in State Plane feet lies within half a pixel of where GDAL puts it', async () => {
    const file = join(folder, 'large.tif');
    const corners = ['922000', '519900', '924500', '517400'];
    gdal('gdal_create', [
      ...['-outsize', '10000', '10000', '-bands', '3', '-ot', 'Byte', '-a_srs', 'EPSG:2236', '-a_ullr', ...corners],
      ...co('TILED=YES', 'SPARSE_OK=TRUE'),
      file,
    ]);
    const { image } = await openImagery(bytesPort(readFileSync(file)));
    const steps = [0.5, 2500, 5000, 7500, 9999.5];
    const pixels = steps.flatMap((column) => steps.map((row) => [column, row] as const));
    const back = image?.lonLatToPixel(gdalLonLats(file, pixels)) ?? [];
    expect(back.length).toBe(50);
    for (const [i, expected] of pixels.flat().entries()) expect(Math.abs(back[i] - expected)).toBeLessThan(0.5);
    // What is wanted is half a pixel; what is there is rounding: a hundredth.
    expect(Math.max(...pixels.flat().map((expected, i) => Math.abs(back[i] - expected)))).toBeLessThan(0.01);
  });
});
