/**
 * An image in State Plane feet as the viewer's map shows it: markers burnt into single pixels by GDAL must appear on the
 * Web Mercator tiles within half an image pixel of where gdaltransform puts them. Skipped without GDAL.
 */
import { openAsBlob, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { blobPort } from '@crownfall/imagery';
import { beforeAll, describe, expect, test } from 'vitest';
import { ImageryTiler } from '../../apps/viewer/src/map/imagery-tiler.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { gdal, gdalLonLats, hasGdal } from './gdal-programs.ts';

const SIDE = 10_000;
/** Half a foot, in US survey feet, EPSG:2236. */
const PIXEL_FT = 0.5;
const [WEST, NORTH] = [900_000, 600_000];
/** So close that an image pixel is some five of the tile's. */
const ZOOM = 22;
const TILE = 256;
const HALF_A_PIXEL = 0.5;

/** Just what the tiler asks of the browser's ImageData. */
class Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
  constructor(width: number, height: number) {
    [this.width, this.height, this.data] = [width, height, new Uint8ClampedArray(width * height * 4)];
  }
}

/** Place on the whole map at the zoom, in tile pixels (spherical Web Mercator, EPSG:3857). */
function mapPixel(lon: number, lat: number): [number, number] {
  const world = TILE * 2 ** ZOOM;
  const mercator = Math.asinh(Math.tan((lat * Math.PI) / 180));
  return [((lon + 180) / 360) * world, (0.5 - mercator / (2 * Math.PI)) * world];
}

describe.skipIf(!hasGdal())('an image under the map', () => {
  const markers = Array.from({ length: 25 }, (_, k): [number, number] => [
    Math.min(SIDE - 1, Math.floor((k % 5) * 2499.9) + (k % 3)),
    Math.min(SIDE - 1, Math.floor(Math.floor(k / 5) * 2499.9) + (k % 2)),
  ]);
  let file: string;

  beforeAll(() => {
    Object.assign(globalThis, { ImageData: Pixels });
    const folder = temporaryFolder();
    file = join(folder, 'feet.tif');
    const corners = [WEST, NORTH, WEST + SIDE * PIXEL_FT, NORTH - SIDE * PIXEL_FT].map(String);
    const layout = ['TILED=YES', 'COMPRESS=DEFLATE', 'SPARSE_OK=TRUE'].flatMap((option) => ['-co', option]);
    const size = ['-outsize', String(SIDE), String(SIDE), '-bands', '3', '-ot', 'Byte'];
    gdal('gdal_create', ['-of', 'GTiff', ...size, '-a_srs', 'EPSG:2236', '-a_ullr', ...corners, ...layout, file]);
    const points = markers.map(([c, r]) => `1,"POINT(${WEST + (c + 0.5) * PIXEL_FT} ${NORTH - (r + 0.5) * PIXEL_FT})"`);
    const table = join(folder, 'markers.csv');
    writeFileSync(table, `id,WKT\n${points.join('\n')}\n`);
    gdal('gdal_rasterize', [
      '-burn',
      '255',
      '-burn',
      '255',
      '-burn',
      '255',
      '-b',
      '1',
      '-b',
      '2',
      '-b',
      '3',
      table,
      file,
    ]);
  });

  test('25 markers lie within half a pixel of GDAL, at every corner and edge', async () => {
    const tiler = await ImageryTiler.open(blobPort(await openAsBlob(file)), 'feet.tif');
    if (!(tiler instanceof ImageryTiler)) throw new Error(JSON.stringify(tiler));
    const middles = markers.map(([c, r]): [number, number] => [c + 0.5, r + 0.5]);
    const lonLats = gdalLonLats(file, [...middles, ...middles.map(([c, r]): [number, number] => [c + 1, r])]);
    for (const [k] of markers.entries()) {
      const [x, y] = mapPixel(lonLats[2 * k], lonLats[2 * k + 1]);
      const next = 2 * (k + markers.length);
      const [nx, ny] = mapPixel(lonLats[next], lonLats[next + 1]);
      const imagePixel = Math.hypot(nx - x, ny - y);
      const [shownX, shownY] = await middleOfWhite(tiler, x, y);
      expect(imagePixel).toBeGreaterThan(3);
      expect(Math.hypot(shownX - x, shownY - y) / imagePixel, `marker ${markers[k]}`).toBeLessThan(HALF_A_PIXEL);
    }
  }, 120_000);

  test('an image without overviews is told to be slow, with what to do; a prepared one is not', async () => {
    const notes = async (name: string): Promise<string[]> => {
      const tiler = await ImageryTiler.open(blobPort(await openAsBlob(name)), 'feet.tif');
      return tiler instanceof ImageryTiler ? tiler.notes.map(({ code }) => code) : ['refused'];
    };
    expect(await notes(file)).toEqual(['imagery-slow-to-stream']);
    const small = file.replace('feet', 'small');
    gdal('gdal_translate', ['-srcwin', '0', '0', '2000', '2000', '-co', 'TILED=YES', file, small]);
    gdal('gdaladdo', ['-q', small, '2', '4', '8']);
    expect(await notes(small)).toEqual([]);
  }, 120_000);
});

/** Middle of the white pixels on the tiles around a place. */
async function middleOfWhite(tiler: ImageryTiler, x: number, y: number): Promise<[number, number]> {
  const [column, row] = [Math.floor(x / TILE - 0.5), Math.floor(y / TILE - 0.5)];
  let [sumX, sumY, count] = [0, 0, 0];
  for (let k = 0; k < 4; k++) {
    const [tx, ty] = [column + (k % 2), row + (k >> 1)];
    const { data } = await tiler.tile({ z: ZOOM, x: tx, y: ty });
    for (let p = 0; p < TILE * TILE; p++) {
      if (data[4 * p] < 128) continue;
      sumX += tx * TILE + (p % TILE) + 0.5;
      sumY += ty * TILE + Math.floor(p / TILE) + 0.5;
      count++;
    }
  }
  return [sumX / count, sumY / count];
}
