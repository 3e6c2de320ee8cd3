/** Two real, messy inventories (not part of this repository) through the whole path, figures counted by other means. */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { adoptInventory, guessInventory, readProject } from '@crownfall/exchange/node';
import { readSurvey } from '@crownfall/survey';
import Papa from 'papaparse';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const SHARED = resolve(process.env.CROWNFALL_SHARED ?? join(import.meta.dirname, '../../../shared'));
const INVENTORY = join(SHARED, 'data/inventory');
const absent = !existsSync(INVENTORY);
if (absent) console.warn(`skipped: no inventories in ${INVENTORY} (set CROWNFALL_SHARED)`);

let folder: string;
beforeAll(() => {
  folder = temporaryFolder('inventory-real');
});

/** The plainest other reading: papaparse alone, every cell as text. */
function plainRows(name: string): Record<string, string>[] {
  const text = readFileSync(join(INVENTORY, name), 'utf8').replace(/^\ufeff/, '');
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

describe.skipIf(absent)('an inventory with trunks and no spreads', () => {
  const FILE = 'toronto_street_trees_ey.csv';

  test('6,115 rows: all with a usable trunk become crowns, marked as estimated, with their error', async () => {
    const { mapping, rows, guesses, mends } = await guessInventory(join(INVENTORY, FILE));
    expect(rows).toBe(6115);
    expect(mapping).toMatchObject({
      fields: { tree_id: 'STRUCTID', host: 'BOTANICAL_NAME', trunk_cm: 'DBH_TRUNK' },
      units: { trunk_cm: 'cm' },
    });
    // The file does not state the unit: the guess may not be sure of it.
    expect(guesses.find(({ field }) => field === 'trunk_cm')?.confidence).toBe('medium');
    expect(mends).toContainEqual({ from: 'Allianthus altissima', to: 'Ailanthus altissima', rows: 24 });
    expect(mends).toContainEqual({ from: 'Abies balsamaea', to: 'Abies balsamea', rows: 25 });

    const town = join(folder, 'trunks');
    const { summary } = await adoptInventory(join(INVENTORY, FILE), town, mapping, { season: 2026 });
    const plain = plainRows(FILE);
    const usable = plain.filter(({ DBH_TRUNK }) => Number(DBH_TRUNK) > 0 && Number(DBH_TRUNK) <= 400);
    expect(summary.spreads).toEqual({ measured: 0, estimated: usable.length, outlined: 0 });
    expect(summary.refused).toBe(plain.length - usable.length);

    const { survey, findings } = readSurvey(await readProject(town));
    expect(survey.trees).toHaveLength(usable.length);
    expect(findings.filter(({ where, severity }) => where.layer === 'crowns' && severity !== 'note')).toEqual([]);
    for (const { outlineSdM, extra, crown } of survey.trees) {
      expect(extra.spread_from).toBe('estimated');
      const spread = crown.from === 'spread' ? crown.spreadM : Number.NaN;
      expect(spread).toBeGreaterThan(1);
      expect(spread).toBeLessThan(25);
      // The range of one tree is never narrower than the relation's own scatter (about 15 %) nor wider than half of it.
      expect((2 * (outlineSdM ?? 0)) / spread).toBeGreaterThan(0.15);
      expect((2 * (outlineSdM ?? 0)) / spread).toBeLessThan(0.5);
    }
    // Thicker trunks of one species never get smaller crowns.
    const maples = survey.trees.filter(({ host }) => host === 'Acer platanoides');
    expect(maples.length).toBeGreaterThan(1500);
    const sized = maples
      .map(({ extra, crown }) => [Number(extra.trunk_cm), crown.from === 'spread' ? crown.spreadM : 0])
      .sort((a, b) => a[0] - b[0]);
    for (let i = 1; i < sized.length; i++) expect(sized[i][1]).toBeGreaterThanOrEqual(sized[i - 1][1]);
  });
});

describe.skipIf(absent)('an inventory with neither trunks nor spreads, and no system stated', () => {
  test('16,681 rows: the system is guessed and said to be a guess; every row is told why it is not taken', async () => {
    const path = join(INVENTORY, 'perth_trees.csv');
    const { mapping, rows, crsGuessed, example, unknownNames } = await guessInventory(path);
    expect(rows).toBe(16681);
    expect(crsGuessed).toBe(true);
    expect(mapping.crs).toBe('EPSG:3857');
    expect(Math.hypot((example?.lon ?? 0) - 115.87, (example?.lat ?? 0) + 31.95)).toBeLessThan(0.2);
    expect(mapping.fields).toMatchObject({ tree_id: 'TREE_ID', host: 'BOTANICAL_NAME', height_m: 'TREE_HEIGHT' });
    expect(unknownNames.map(({ name }) => name)).toContain('Eucalyptus rudis & Eucalyptus sideroxylon');
    const town = join(folder, 'nothing');
    const { summary, files } = await adoptInventory(path, town, mapping, { season: 2026 });
    expect(summary.refusals).toEqual({ 'no spread and no trunk to estimate it from': 16681 });
    expect(files).toEqual(['inventory-perth_trees-rows.csv', 'inventory-perth_trees-mapping.json']);
    const lines = readFileSync(join(town, files[0]), 'utf8').trim().split('\r\n');
    expect(new Set(lines.slice(1).map((line) => line.split(',')[0])).size).toBe(16681);
  });
});
