import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { RawLayer } from '@crownfall/survey';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { convertProject } from './convert-project.ts';
import { readProject } from './read-project.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'convert-'));
  const extras = [
    {
      tree_id: '007',
      spread_m: 8,
      text: '12',
      flag: true,
      list: [1, 'a'],
      note: '=danger',
      zip: '02134',
      empty: '',
      nil: null,
    },
    { tree_id: "'=x", spread_m: 7.25, mixed: 5, text: '1,5', deep: { a: [null] }, note: ' spaced "x"\n', big: 1e21 },
    { tree_id: 3, mixed: 'five', height_m: 4 },
  ];
  const crowns = extras.map((properties, i) => ({
    type: 'Feature',
    properties,
    geometry: { type: 'Point', coordinates: [13.4 + i / 70000, 52.123456789012] },
  }));
  crowns.push({ type: 'Feature', properties: { tree_id: 'no place' } as never, geometry: null as never });
  const ring = [
    [13.4, 52.12],
    [13.401, 52.12],
    [13.401, 52.124],
    [13.4, 52.12],
  ];
  const pavement = [
    { type: 'Feature', properties: { kind: 'plaza' }, geometry: { type: 'Polygon', coordinates: [ring] } },
  ];
  await writeFile(join(folder, 'crowns.geojson'), JSON.stringify({ type: 'FeatureCollection', features: crowns }));
  await writeFile(join(folder, 'pavement.geojson'), JSON.stringify({ type: 'FeatureCollection', features: pavement }));
  await writeFile(join(folder, 'ratings.csv'), 'tree_id;rated_on;browned_pct;who\n007;2026-05-01;12,5;Ü\n');
  await writeFile(join(folder, 'imagery.tif'), 'x');
  const layers = {
    crowns: 'crowns.geojson',
    pavement: 'pavement.geojson',
    ratings: 'ratings.csv',
    imagery: ['imagery.tif'],
  };
  await writeFile(
    join(folder, 'project.json'),
    JSON.stringify({ title: 'T', season: 2026, units: 'us', layers, settings: { top: { n: 1 } } }),
  );
});
afterEach(() => rm(folder, { recursive: true }));

const content = (layer: RawLayer | undefined) =>
  layer?.features.map(({ geometry, properties }) => ({ geometry, properties }));

test('through every format and back, a project is what it was, extras and every digit included', async () => {
  const before = await readProject(folder);
  let from = folder;
  for (const format of ['csv', 'geojsonl', 'csv', 'geojson'] as const) {
    const to = join(folder, `as-${format}-${from.length}`);
    const report = await convertProject(from, to, { format });
    const after = await readProject(to);
    for (const name of ['crowns', 'pavement', 'ratings'] as const) {
      expect(content(after.layers[name])).toEqual(content(before.layers[name]));
    }
    const { title, season, units, settings } = before;
    expect(after).toMatchObject({ title, season, units, settings });
    expect(after.imagery).toEqual([from === folder ? '../imagery.tif' : '../imagery.tif']);
    expect(report.files).toContain(format === 'csv' ? 'crowns.csv' : `crowns.${format}`);
    // Delimited text holds no polygons: that layer stays GeoJSON, and it is told.
    const told = report.findings.filter(({ code }) => code === 'geometry-unexpected');
    expect(told).toHaveLength(format === 'csv' ? 1 : 0);
    from = to;
  }
});

test('the same project gives the same bytes', async () => {
  await convertProject(folder, join(folder, 'one'), { format: 'csv' });
  await convertProject(folder, join(folder, 'two'), { format: 'csv' });
  for (const name of ['crowns.csv', 'pavement.geojson', 'ratings.csv', 'project.json']) {
    expect(await readFile(join(folder, 'one', name))).toEqual(await readFile(join(folder, 'two', name)));
  }
});

test('onto itself, or into a file, it is refused', async () => {
  await expect(convertProject(folder, folder)).rejects.toThrow(RangeError);
  await expect(convertProject(folder, join(folder, 'x.shp'))).rejects.toThrow(RangeError);
});
