/** Two real, messy inventories (not part of this repository) are read with findings that make sense, and in full. */
import { existsSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { readProject } from '@crownfall/exchange/node';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const SHARED = resolve(process.env.CROWNFALL_SHARED ?? join(import.meta.dirname, '../../../shared'));
const INVENTORY = join(SHARED, 'data/inventory');
const absent = !existsSync(INVENTORY);
if (absent) console.warn(`skipped: no inventories in ${INVENTORY} (set CROWNFALL_SHARED)`);

describe.skipIf(absent)('real inventories', () => {
  let folder: string;
  beforeAll(async () => {
    folder = temporaryFolder('inventory');
  });

  async function read(entry: object) {
    await writeFile(
      join(folder, 'project.json'),
      JSON.stringify({ title: 'x', season: 2026, units: 'metric', layers: { crowns: entry } }),
    );
    const { layers, findings } = await readProject(folder);
    return {
      layer: layers.crowns,
      findings: findings.filter(({ facts }) => !String(facts.problem).includes('outside the project')),
    };
  }

  // 6,115 rows: the data's own README. Two positions lie far from all others: they stand so in the file.
  test('positions as GeoJSON text in a column', async () => {
    const path = join(INVENTORY, 'toronto_street_trees_ey.csv');
    const { layer, findings } = await read({ path, fields: { tree_id: 'STRUCTID', host: 'BOTANICAL_NAME' } });
    expect(findings).toEqual([]);
    expect(layer?.features).toHaveLength(6115);
    // The plainest other reading there is: the text of the file, searched for pairs of coordinates.
    const written = readFileSync(path, 'utf8').matchAll(/""coordinates"": \[(\S+), (\S+)\]/g);
    const positions = [...written].map(([, lon, lat]) => ({
      kind: 'point',
      points: Float64Array.of(Number(lon), Number(lat)),
    }));
    expect(layer?.features.map(({ geometry }) => geometry)).toEqual(positions);
    for (const { properties } of layer?.features ?? []) expect(properties.tree_id).toMatch(/^EY/);
  });

  // 16,681 rows, byte order mark, X and Y in Web Mercator that the file does not name; the city lies near 32° S, 115.9° E.
  test('X and Y without a system are refused, and read once the project names it', async () => {
    const path = join(INVENTORY, 'perth_trees.csv');
    const refused = await read({ path });
    expect(refused.layer).toBeUndefined();
    expect(refused.findings).toMatchObject([{ code: 'crs-missing', severity: 'error' }]);
    const { layer, findings } = await read({
      path,
      crs: 'EPSG:3857',
      fields: { tree_id: 'TREE_ID', height_m: 'TREE_HEIGHT' },
    });
    expect(findings).toEqual([]);
    expect(layer?.features).toHaveLength(16681);
    for (const { geometry } of layer?.features ?? []) {
      const [lon, lat] = geometry.kind === 'point' ? geometry.points : [];
      expect(Math.hypot(lon - 115.87, lat + 31.95)).toBeLessThan(0.2);
    }
  });
});
