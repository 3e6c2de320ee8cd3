/** GDAL's OGC API – Features driver (GDAL 3.6, `OAPIF:`) as a client from outside, over sample-geo. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Running, runServer } from '../cases/server-running.ts';
import { crownfall, SAMPLE, temporaryFolder } from '../journeys/crownfall-process.ts';

const gdal = spawnSync('ogrinfo', ['--formats'], { encoding: 'utf8' });
const missing = !String(gdal.stdout).includes('OAPIF');
if (missing) console.warn('GDAL with its OAPIF driver is not installed (apt-get install gdal-bin): not tested here');

interface Feature {
  readonly properties: Readonly<Record<string, unknown>>;
  readonly geometry: { readonly coordinates: unknown };
}

describe.skipIf(missing)('GDAL as a client', () => {
  let running: Running;
  const written: Record<string, Feature[]> = {};

  beforeAll(async () => {
    const out = join(temporaryFolder(), 'out');
    expect(crownfall(['reckon', SAMPLE, '--out', out, '--quiet']).code).toBe(0);
    for (const [name, file] of Object.entries({ crowns: 'trees', pavement: 'pavement', blocks: 'blocks' })) {
      written[name] = JSON.parse(readFileSync(join(out, `${file}.geojson`), 'utf8')).features;
    }
    running = await runServer(SAMPLE);
  }, 300_000);
  afterAll(() => running?.close());

  /** The server is in this process, so GDAL must not block it. */
  async function ogr(program: string, ...args: string[]): Promise<{ stdout: string; stderr: string }> {
    const { execFile } = await import('node:child_process');
    return new Promise((done, fail) => {
      execFile(program, args, { maxBuffer: 1 << 28 }, (error, stdout, stderr) => {
        if (error) fail(new Error(`${error.message}\n${stderr}`));
        else done({ stdout, stderr });
      });
    });
  }

  const source = (): string => `OAPIF:${running.url}/ogc`;

  async function features(name: string, ...args: string[]): Promise<Feature[]> {
    const { stdout, stderr } = await ogr('ogr2ogr', '-f', 'GeoJSON', '/vsistdout/', source(), name, ...args);
    expect(stderr).toBe('');
    return JSON.parse(stdout).features;
  }

  test('lists the collections', async () => {
    const { stdout, stderr } = await ogr('ogrinfo', source());
    expect(stderr).toBe('');
    for (const name of ['crowns', 'pavement', 'blocks']) expect(stdout).toContain(name);
  });

  test('reads the project’s picture in parts, to the digit', async () => {
    const told = async (path: string): Promise<{ size: unknown; bands: unknown }> => {
      const { size, bands } = JSON.parse((await ogr('gdalinfo', '-json', '-checksum', path)).stdout);
      return { size, bands };
    };
    expect(await told(`/vsicurl/${running.url}/api/imagery/aerial.tif`)).toEqual(
      await told(join(SAMPLE, 'aerial.tif')),
    );
  });

  test.each(['crowns', 'pavement', 'blocks'])('counts, places and types of %s', async (name) => {
    const { stdout, stderr } = await ogr('ogrinfo', '-so', source(), name);
    expect(stderr).toBe('');
    expect(stdout).toContain(`Feature Count: ${written[name].length}`);
    expect(stdout).toContain('WGS 84');
    expect(stdout).toMatch(/stained_m2: Real/);
  });

  test('reads every crown over many pages, with the figures that reckon writes', async () => {
    const read = await features('crowns', '-oo', 'PAGE_SIZE=7');
    const key = ({ properties }: Feature): unknown[] => [
      properties.tree_id,
      properties.stained_m2,
      properties.crown_m2,
    ];
    expect(read.map(key)).toEqual(written.crowns.map(key));
  });

  test('filters by a box as GDAL itself does on the written file', async () => {
    const positions = written.crowns.map(
      ({ geometry }) => (geometry.coordinates as number[][][][]).flat(9) as number[],
    );
    const lons = positions.flatMap((flat) => flat.filter((_, i) => i % 2 === 0));
    const lats = positions.flatMap((flat) => flat.filter((_, i) => i % 2 === 1));
    const middle = (values: number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
    const box = [Math.min(...lons), Math.min(...lats), middle(lons), middle(lats)].map(String);
    const here = await features('crowns', '-spat', ...box);
    const response = await fetch(`${running.url}/ogc/collections/crowns/items?limit=10000&bbox=${box.join(',')}`);
    const served = (await response.json()) as { features: Feature[] };
    expect(here.length).toBeGreaterThan(0);
    expect(here.length).toBeLessThan(written.crowns.length);
    expect(served.features.map(({ properties }) => properties.tree_id)).toEqual(
      here.map(({ properties }) => properties.tree_id),
    );
  });
});
