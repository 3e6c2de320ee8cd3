import { createHash } from 'node:crypto';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readProject } from './read-project.ts';

let folder: string;
beforeEach(async () => {
  folder = join(await mkdtemp(join(tmpdir(), 'project-')), 'town');
  await mkdir(folder);
});
afterEach(() => rm(join(folder, '..'), { recursive: true }));

const put = (name: string, content: string | object) =>
  writeFile(join(folder, name), typeof content === 'string' ? content : JSON.stringify(content));
const point = (lon: number, lat: number, properties: object = {}) => ({
  type: 'Feature',
  properties,
  geometry: { type: 'Point', coordinates: [lon, lat] },
});
const square = (lon: number, lat: number) => ({
  type: 'Feature',
  properties: {},
  geometry: {
    type: 'Polygon',
    coordinates: [
      [
        [lon, lat],
        [lon + 0.001, lat],
        [lon + 0.001, lat + 0.001],
        [lon, lat],
      ],
    ],
  },
});
const collection = (...features: object[]) => ({ type: 'FeatureCollection', features });
const codes = (findings: readonly Finding[]) => findings.map(({ code, severity }) => `${severity} ${code}`);

async function putTown(more: object = {}, layers: object = {}) {
  await put('crowns.geojson', collection(point(13.4, 52.5, { tree_id: 'T-1', spread_m: 8 })));
  await put('pavement.geojson', collection(square(13.4, 52.5)));
  await put('project.json', {
    title: 'Town',
    season: 2026,
    units: 'us',
    layers: { crowns: 'crowns.geojson', pavement: 'pavement.geojson', ...layers },
    settings: { block_cell_m: 80 },
    ...more,
  });
}

describe('a project', () => {
  test('is read from its folder or its project.json, with the hash of every file', async () => {
    await putTown();
    const input = await readProject(folder);
    expect(input).toEqual(await readProject(join(folder, 'project.json')));
    expect(input).toMatchObject({
      title: 'Town',
      season: 2026,
      units: 'us',
      settings: { block_cell_m: 80 },
      findings: [],
    });
    expect(Object.keys(input.layers)).toEqual(['crowns', 'pavement']);
    const text = JSON.stringify(collection(square(13.4, 52.5)));
    const sha256 = createHash('sha256').update(text).digest('hex');
    expect(input.sources[1]).toEqual({ file: 'pavement.geojson', sha256, bytes: text.length });
  });

  test('maps foreign columns and units, and keeps the rest', async () => {
    await put('trees.csv', 'NR;X;Y;CRN_FT;STREET\n1;13,4;52,5;10;Elm\n');
    const fields = { tree_id: 'NR', lon: 'X', lat: 'Y', spread_m: 'CRN_FT' };
    await putTown({}, { crowns: { path: 'trees.csv', fields, units: { spread_m: 'ft' } } });
    const { layers, findings } = await readProject(folder);
    expect(findings.every(({ code }) => code === 'number-mended')).toBe(true);
    expect(layers.crowns?.features).toEqual([
      {
        row: 2,
        geometry: { kind: 'point', points: Float64Array.of(13.4, 52.5) },
        properties: { tree_id: '1', spread_m: 3.048, STREET: 'Elm' },
      },
    ]);
  });

  test('without title and season takes the folder and the newest rating', async () => {
    await put('ratings.csv', 'tree_id,rated_on\nT-1,2024-05-01\nT-1,3/5/2025\n');
    await putTown({ title: undefined, season: undefined }, { ratings: 'ratings.csv' });
    const { title, season, findings } = await readProject(folder);
    expect([title, season]).toEqual(['town', 2025]);
    expect(codes(findings)).toEqual(['note project-invalid']);
  });
});

describe('what is wrong is a finding, not an exception', () => {
  test('no project', async () => {
    expect(codes((await readProject(folder)).findings)).toEqual(['error file-missing']);
    expect(codes((await readProject(join(folder, 'none'))).findings)).toEqual(['error file-missing']);
  });

  test('a project.json that is not JSON, with line and column', async () => {
    await put('project.json', '{\n  "title": "x",\n  "season": 2026,\n}');
    const { findings } = await readProject(folder);
    expect(findings).toMatchObject([
      { code: 'not-json', facts: { line: 4, problem: expect.stringContaining('column 1') } },
    ]);
  });

  test('wrong values and unknown words, with the nearest valid one', async () => {
    await putTown({ units: 'imperial', seson: 1, season: '2026' }, { pavment: 'x', quadrats: 7, bloom: null });
    const { findings } = await readProject(folder);
    expect(codes(findings)).toEqual([
      'note project-invalid',
      'warning project-invalid',
      'warning project-invalid',
      'warning layer-unknown',
      'error project-invalid',
      'error project-invalid',
    ]);
    expect(findings[0].facts.problem).toContain('did you mean "season"');
    expect(findings[3].facts.nearest).toBe('pavement');
  });

  test('missing files: of a needed layer they stop, of another they do not', async () => {
    await putTown({}, { crowns: 'none.geojson', ratings: 'none.csv', imagery: ['none.tif'], blocks: '.' });
    expect(codes((await readProject(folder)).findings)).toEqual([
      'error file-missing',
      'warning file-missing',
      'warning file-missing',
      'warning file-missing',
    ]);
  });

  test('formats nobody reads here', async () => {
    await put('crowns.shp', 'shape');
    await put('crowns.csv', 'a\0b');
    await putTown({}, { crowns: 'crowns.shp', ratings: 'crowns.csv' });
    expect(codes((await readProject(folder)).findings)).toEqual(['error format-unknown', 'warning format-unknown']);
  });

  test('paths out of the folder are noted, or refused, links included', async () => {
    await writeFile(join(folder, '..', 'secret.csv'), 'tree_id\nT-1\n');
    await symlink(join(folder, '..', 'secret.csv'), join(folder, 'inside.csv'));
    await putTown({}, { ratings: '../secret.csv', bloom: 'inside.csv' });
    const open = await readProject(folder);
    expect(codes(open.findings)).toEqual(['note project-invalid', 'note project-invalid']);
    expect(open.layers.ratings?.features).toHaveLength(1);
    const shut = await readProject(folder, { outside: 'refuse' });
    expect(codes(shut.findings)).toEqual(['warning project-invalid', 'warning project-invalid']);
    expect([shut.layers.ratings, shut.layers.bloom]).toEqual([undefined, undefined]);
  });

  test('a layer that meets the others only with latitude and longitude changed over', async () => {
    await put('complaints.geojson', collection(point(52.5, 13.4)));
    await put('blocks.geojson', collection(square(13.4, 52.5)));
    await putTown({}, { complaints: 'complaints.geojson', blocks: 'blocks.geojson' });
    const { findings } = await readProject(folder);
    expect(findings).toMatchObject([{ code: 'lonlat-maybe-swapped', where: { layer: 'complaints' } }]);
  });
});
