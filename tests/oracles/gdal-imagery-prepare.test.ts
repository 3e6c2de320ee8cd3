/** Files that `crownfall imagery prepare` makes, under GDAL's eyes. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeGeoTiff } from '@crownfall/imagery';
import { beforeAll, describe, expect, test } from 'vitest';
import { crownfall } from '../journeys/crownfall-process.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { gdal, gdalInfo, hasGdal } from './gdal-programs.ts';

const folder = temporaryFolder('prepare');
const at = (name: string) => join(folder, name);
const [WIDTH, HEIGHT] = [1300, 900];
const co = (...options: string[]) => options.flatMap((option) => ['-co', option]);

function writeSource(): void {
  const bands = [0, 1, 2, 3].map((b) =>
    Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => 20 + ((i * (b + 3)) % 201) * ((i >> 9) % 2)),
  );
  const transform = { originX: 922_000, columnX: 0.5, rowX: 0, originY: 519_900, columnY: 0, rowY: -0.5 };
  writeFileSync(
    at('source.tif'),
    writeGeoTiff({ width: WIDTH, height: HEIGHT, bands }, { transform, crs: { epsg: 2236, kind: 'projected' } }),
  );
}

function raw(file: string, ...args: string[]): Buffer {
  gdal('gdal_translate', ['-q', '-of', 'ENVI', '-co', 'INTERLEAVE=BSQ', ...args, file, at('read.raw')]);
  return readFileSync(at('read.raw'));
}

/** GDAL's own check of the cloud-optimised layout, by Debian's python3-gdal; null when it is not there. */
function layoutVerdict(file: string): string | null {
  const check = ['-m', 'osgeo_utils.samples.validate_cloud_optimized_geotiff', '-q', file];
  try {
    execFileSync('/usr/bin/python3', ['-c', 'import osgeo_utils.samples.validate_cloud_optimized_geotiff']);
  } catch {
    console.warn('layout not checked: needs python3-gdal (Debian: apt-get install python3-gdal)');
    return null;
  }
  const run = (): string => execFileSync('/usr/bin/python3', check, { encoding: 'utf8', stdio: 'pipe' });
  try {
    return run();
  } catch (error) {
    return String((error as { stdout?: string }).stdout);
  }
}

const SOURCES: Readonly<Record<string, readonly string[]>> = {
  'strips of one row': co('BLOCKYSIZE=1'),
  'JPEG strips': ['-b', '1', '-b', '2', '-b', '3', ...co('COMPRESS=JPEG', 'PHOTOMETRIC=YCBCR')],
  '16 bits, bands apart, no-data': ['-ot', 'UInt16', '-a_nodata', '20', ...co('INTERLEAVE=BAND', 'COMPRESS=LZW')],
  'a grey float band': ['-b', '1', '-ot', 'Float32', ...co('COMPRESS=DEFLATE', 'PREDICTOR=3')],
  'pixel-is-point': ['-mo', 'AREA_OR_POINT=Point'],
  'feet by parts': [
    '-a_srs',
    '+proj=tmerc +lat_0=24.3333333333333 +lon_0=-81 +k=0.999941177 +x_0=200000.0001016 +y_0=0 +ellps=GRS80 +units=us-ft',
  ],
};

describe.skipIf(!hasGdal())('what imagery prepare makes', () => {
  beforeAll(writeSource);

  test.each(Object.keys(SOURCES))('of %s: same samples, place and system, cloud-optimised', (name) => {
    const [input, out] = [at(`${name.replaceAll(/\W/g, '-')}.tif`), at(`${name.replaceAll(/\W/g, '-')}-prepared.tif`)];
    gdal('gdal_translate', ['-q', ...SOURCES[name], at('source.tif'), input]);
    const { code, stderr } = crownfall(['imagery', 'prepare', input, '--out', out, '--tile', '256', '--quiet']);
    expect([code, stderr]).toEqual([0, '']);
    expect(raw(out).equals(raw(input))).toBe(true);
    const [before, after] = [gdalInfo(input), gdalInfo(out)];
    expect(after.geoTransform).toEqual(before.geoTransform);
    const system = (file: string) => gdal('gdalsrsinfo', ['-o', 'proj4', file]);
    expect(system(out)).toBe(system(input));
    expect(after.metadata.IMAGE_STRUCTURE.LAYOUT).toBe('COG');
    expect(after.bands[0].overviews?.map(({ size }) => size)).toEqual([
      [650, 450],
      [325, 225],
      [163, 113],
    ]);
    expect(layoutVerdict(out)?.trim() ?? '').toBe('');
  });

  test('a mask becomes a band of transparency that GDAL takes for a mask', () => {
    gdal('gdal_translate', [
      ...['-q', '-b', '1', '-b', '2', '-b', '3', '-mask', '4', '--config', 'GDAL_TIFF_INTERNAL_MASK', 'YES'],
      ...[at('source.tif'), at('masked.tif')],
    ]);
    const { code } = crownfall(['imagery', 'prepare', at('masked.tif'), '--out', at('alpha.tif'), '--quiet']);
    expect(code).toBe(0);
    expect(gdalInfo(at('alpha.tif')).bands[3].colorInterpretation).toBe('Alpha');
    expect(raw(at('alpha.tif'), '-b', 'mask').equals(raw(at('masked.tif'), '-b', 'mask'))).toBe(true);
  });

  test('an image with a world file alone needs its system stated; nothing is left beside what is written', () => {
    gdal('gdal_translate', ['-q', ...co('PROFILE=BASELINE', 'TFW=YES'), at('source.tif'), at('nowhere.tif')]);
    const { code, stdout } = crownfall(['imagery', 'prepare', at('nowhere.tif'), '--out', at('never.tif')]);
    expect(code).toBe(1);
    expect(stdout).toContain('crs-missing');
    expect(existsSync(at('never.tif'))).toBe(false);
    const stated = ['imagery', 'prepare', at('nowhere.tif'), '--out', at('stated.tif'), '--crs', 'EPSG:2236', '--json'];
    expect(JSON.parse(crownfall(stated).stdout)).toMatchObject({ written: at('stated.tif'), levels: 3 });
    expect(gdal('gdalsrsinfo', ['-e', '-o', 'epsg', at('stated.tif')])).toContain('EPSG:2236');
    expect(readdirSync(folder).filter((name) => /\.(parts|partial)$/.test(name))).toEqual([]);
  });
});
