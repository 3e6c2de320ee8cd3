/**
 * Shares of pixels inside regions against outside judges: GEOS (geos-wasm 3.1.1, GEOS 3.13.0), which intersects each pixel with
 * the polygon; the exact judge, for rings that cross; and, where Python has it, exactextract, an exact zonal method
 * (`python3 -c "import exactextract"`).
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pixelCoverage, type Region } from '@crownfall/geometry';
import { bandStatistics, writeGeoTiff } from '@crownfall/imagery';
import { RandomStream } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { areasByCover } from './exact-area.ts';
import { geosAreas } from './geos-wasm-areas.ts';
import { randomPolygon } from './random-regions.ts';

const GRID = { width: 24, height: 24 };
/** Of a pixel: rounding of coordinates of some ten, times a few edges. */
const SHARE_TOLERANCE = 1e-12;
/** GEOS moves vertices a little where its first attempt at an intersection fails. */
const GEOS_TOLERANCE = 1e-10;
const AREA_TOLERANCE = 1e-9;

const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, value) => total + value, 0);

function square(pixel: number): Region {
  const [x, y] = [pixel % GRID.width, Math.floor(pixel / GRID.width)];
  return [Float64Array.of(x, y, x + 1, y, x + 1, y + 1, x, y + 1)];
}

function randomRegion(number: number): Region {
  const random = new RandomStream(5, 501, number);
  return randomPolygon(random, 9 + 6 * random.uniform(), 9 + 6 * random.uniform(), 1 + 7 * random.uniform());
}

test('each pixel of random polygons with holes as GEOS intersects it, and GEOS’s area in all', () => {
  const pixels = Array.from({ length: GRID.width * GRID.height }, (_, i) => square(i));
  for (let number = 0; number < 60; number++) {
    const region = randomRegion(number);
    const areas = geosAreas({ pavement: region, crowns: pixels });
    if (Number.isNaN(areas[0])) continue;
    const cover = pixelCoverage(region, GRID);
    const own = new Float64Array(pixels.length);
    for (const [i, pixel] of cover.pixels.entries()) own[pixel] = cover.weights[i];
    const farthest = own.reduce(
      (far, share, i) => (Math.abs(share - areas[i]) > Math.abs(own[far] - areas[far]) ? i : far),
      0,
    );
    expect(Math.abs(own[farthest] - areas[farthest])).toBeLessThan(GEOS_TOLERANCE);
    const exact = areasByCover([region, square(farthest)]).get('0,1') ?? 0;
    expect(Math.abs(own[farthest] - exact)).toBeLessThan(SHARE_TOLERANCE);
    const area = areas[areas.length - 1];
    expect(Math.abs(sum(cover.weights) - area)).toBeLessThan(AREA_TOLERANCE * area);
  }
});

test('rings that cross themselves and each other, by the non-zero rule, as the exact judge has them', () => {
  for (let number = 0; number < 200; number++) {
    const random = new RandomStream(5, 502, number);
    const ring = () => Float64Array.from({ length: 2 * (3 + random.wholeBelow(8)) }, () => 2 + 20 * random.uniform());
    const region = Array.from({ length: 1 + random.wholeBelow(3) }, ring);
    const exact = sum([...areasByCover([region]).values()]);
    const own = sum(pixelCoverage(region, GRID).weights);
    expect(Math.abs(own - exact)).toBeLessThan(AREA_TOLERANCE * exact);
  }
});

const PYTHON = process.env.CROWNFALL_PYTHON ?? '/usr/bin/python3';

function hasExactExtract(): boolean {
  try {
    execFileSync(PYTHON, ['-c', 'import exactextract, osgeo'], { stdio: 'ignore' });
    return true;
  } catch {
    console.warn('skipped: needs exactextract and GDAL for Python (pip install exactextract; python3-gdal)');
    return false;
  }
}

const SCRIPT = `
import json, sys
from exactextract import exact_extract
from osgeo import ogr
data = ogr.Open(sys.argv[2])
found = exact_extract(sys.argv[1], data, ['mean', 'stdev', 'count'], include_cols=['n'])
print(json.dumps([[f['properties'][k] for k in ('n', 'mean', 'stdev', 'count')] for f in found]))
`;

import { temporaryFolder } from '../temporary-folder.ts';

describe.skipIf(!hasExactExtract())('zonal statistics', () => {
  test('mean, sd and weight of random polygons as exactextract has them', () => {
    const folder = temporaryFolder('zonal');
    const band = Float32Array.from({ length: GRID.width * GRID.height }, (_, i) => 50 + 40 * Math.sin(i * 1.7));
    const transform = { originX: 1000, columnX: 1, rowX: 0, originY: 2000, columnY: 0, rowY: -1 };
    const image = { ...GRID, bands: [band] };
    writeFileSync(
      join(folder, 'image.tif'),
      writeGeoTiff(image, { transform, crs: { epsg: 32617, kind: 'projected' } }),
    );
    const regions = Array.from({ length: 100 }, (_, number) => randomRegion(number));
    writeFileSync(join(folder, 'regions.geojson'), JSON.stringify(asGeoJson(regions)));
    const printed = execFileSync(PYTHON, ['-c', SCRIPT, join(folder, 'image.tif'), join(folder, 'regions.geojson')], {
      encoding: 'utf8',
    });
    const found: readonly [number, number, number, number][] = JSON.parse(printed);
    expect(found.length).toBe(regions.length);
    for (const [n, mean, sd, weight] of found) {
      const { pixels, weights } = pixelCoverage(regions[n], GRID);
      const own = bandStatistics(band, pixels, weights);
      // exactextract keeps shares as 32-bit floats.
      expect(Math.abs(own.weight - weight)).toBeLessThan(1e-5 * weight);
      expect(Math.abs(own.mean - mean)).toBeLessThan(1e-4);
      expect(Math.abs(own.sd - sd)).toBeLessThan(1e-3);
    }
  });
});

function asGeoJson(regions: readonly Region[]): object {
  const ring = (r: Float64Array) => {
    const points = Array.from({ length: r.length / 2 }, (_, i) => [1000 + r[2 * i], 2000 - r[2 * i + 1]]);
    return [...points, points[0]];
  };
  const features = regions.map((region, n) => ({
    type: 'Feature',
    properties: { n },
    geometry: { type: 'Polygon', coordinates: region.map(ring) },
  }));
  return { type: 'FeatureCollection', crs: { type: 'name', properties: { name: 'EPSG:32617' } }, features };
}
