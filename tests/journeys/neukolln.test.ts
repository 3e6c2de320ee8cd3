/**
 * The main job on a real neighbourhood: street trees, footways, streets and parking of Berlin-Neukölln from OpenStreetMap
 * (© OpenStreetMap contributors, ODbL; read from the shared data folder, never stored here).
 *
 * The map says nothing about damage. THE RATINGS ARE INVENTED BY THIS TEST; no tree there is known to stain anything.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { crownfall, type Ending, ROOT, temporaryFolder } from './crownfall-process.ts';

const DATA = join(resolve(ROOT, process.env.CROWNFALL_SHARED ?? '../shared'), 'data/city-osm');
const absent = !existsSync(join(DATA, 'neukolln.trees.geojson'));
if (absent) console.warn(`Skipped: the Neukölln journey needs the shared data in ${DATA}.`);
const noGdal = spawnSync('ogrinfo', ['--version']).status !== 0;

/** Figures in files are rounded to a tenth of a square millimetre or finer; a sum of some hundred keeps within this. */
const ROUNDING_M2 = 1e-4;
/** A circle's outline may miss its area by this share. */
const OUTLINE_ERROR = 0.001;

type Properties = Record<string, string | number | null>;
interface Feature {
  readonly properties: Properties;
  readonly geometry: unknown;
}

const read = (file: string): Feature[] => JSON.parse(readFileSync(file, 'utf8')).features;
const neukolln = (layer: string): Feature[] => read(join(DATA, `neukolln.${layer}.geojson`));
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Crowns that the map measured: `diameter_crown` in metres. */
const measured = (): Feature[] => neukolln('trees').filter((tree) => 'diameter_crown' in tree.properties);
const crownId = (tree: Feature): string => String(tree.properties.osm_id);

function writeProject(folder: string): void {
  mkdirSync(folder, { recursive: true });
  const json = (name: string, value: unknown): void => writeFileSync(join(folder, name), JSON.stringify(value));
  json('project.json', {
    title: 'Neukölln (ratings invented)',
    season: 2026,
    layers: {
      crowns: { path: 'trees.geojson', fields: { tree_id: 'osm_id', spread_m: 'diameter_crown', host: 'genus' } },
      pavement: { path: 'pavement.geojson', fields: { pavement_id: 'osm_id', width_m: 'width' } },
      streets: 'streets.geojson',
      ratings: 'ratings.csv',
    },
  });
  // All trees go in, most of them without a measured crown, as a city would hand them over.
  json('trees.geojson', { type: 'FeatureCollection', features: neukolln('trees') });
  json('streets.geojson', { type: 'FeatureCollection', features: neukolln('roads') });
  const sidewalks = neukolln('footways').filter((way) => way.properties.footway === 'sidewalk');
  const pavement = [
    ...ofKind('sidewalk', sidewalks),
    ...ofKind('parking', neukolln('parking_areas')),
    ...ofKind('carriageway', neukolln('pavement_areas')),
  ];
  json('pavement.geojson', { type: 'FeatureCollection', features: pavement });
  writeFileSync(join(folder, 'ratings.csv'), inventedRatings());
}

const ofKind = (kind: string, features: readonly Feature[]): Feature[] =>
  features.map((feature) => ({ ...feature, properties: { ...feature.properties, kind } }));

/** Every third crown clean, the others browned 20, 40 or 60 % with frass, one in seven not rated. */
function inventedRatings(): string {
  const rows = measured().flatMap((tree, i) => {
    if (i % 7 === 6) return [];
    const staining = i % 3 !== 0;
    const cause = staining ? 'heavy,frass' : 'none,none';
    return [`${crownId(tree)},2026-05-10,invented rater,${20 + 20 * (i % 3)},${cause}`];
  });
  return ['tree_id,rated_on,rater,browned_pct,gall_load,cause', ...rows, ''].join('\n');
}

describe.skipIf(absent)('Neukölln from the map to ranked blocks', () => {
  const project = join(temporaryFolder(), 'neukolln');
  const out = join(temporaryFolder(), 'out');
  let ending: Ending;
  let trees: Properties[];
  let blocks: Properties[];
  let pavement: Properties[];
  let total: Record<string, number>;

  beforeAll(() => {
    writeProject(project);
    ending = crownfall(['reckon', project, '--out', out, '--quiet']);
    if (ending.code !== 0) throw new Error(ending.stderr);
    const properties = (layer: string): Properties[] =>
      read(join(out, `${layer}.geojson`)).map((each) => each.properties);
    [trees, blocks, pavement] = [properties('trees'), properties('blocks'), properties('pavement')];
    total = JSON.parse(readFileSync(join(out, 'run.json'), 'utf8')).total;
  });

  const of = (rows: readonly Properties[], field: string): number[] => rows.map((row) => Number(row[field] ?? 0));

  test('the crowns that were measured have the area of their circles, π d² / 4', () => {
    const circles = sum(measured().map((tree) => (Math.PI / 4) * Number(tree.properties.diameter_crown) ** 2));
    const ids = new Set(measured().map(crownId));
    const crowns = sum(
      of(
        trees.filter((tree) => ids.has(String(tree.tree_id))),
        'crown_m2',
      ),
    );
    expect(Math.abs(crowns / circles - 1)).toBeLessThan(OUTLINE_ERROR);
  });

  test('blocks come from the streets, and what lies in none is said', () => {
    expect(blocks.length).toBeGreaterThan(0);
    expect(of(blocks, 'rank')).toEqual(blocks.map((_, i) => i + 1));
    const homeless = trees.filter((tree) => tree.block_id === null).length;
    const inBlocks = sum(of(blocks, 'stained_m2'));
    if (homeless > 0 || inBlocks < total.stained_m2) {
      expect(ending.stdout).toContain(`Not ranked: ${(total.stained_m2 - inBlocks).toFixed(0)} m²`);
      expect(ending.stdout).toContain(`${homeless} trees stand in none`);
    }
  });

  test('every tree whose crown nobody measured is told of and left out', () => {
    const { findings } = JSON.parse(readFileSync(join(out, 'findings.json'), 'utf8'));
    const unmeasured = findings.filter((finding: { code: string }) => finding.code === 'crown-without-size');
    expect(unmeasured.length).toBe(neukolln('trees').length - measured().length);
    expect(trees.length).toBe(measured().length);
  });

  test('what is attributed to trees, found on pavement and gathered in the ledger is one sum', () => {
    const ledger = readFileSync(join(out, 'ledger.csv'), 'utf8')
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split(','));
    const column = (name: string): number[] => ledger.slice(1).map((row) => Number(row[ledger[0].indexOf(name)]));
    expect(total.stained_m2).toBeGreaterThan(1);
    for (const stained of [of(trees, 'stained_m2'), of(pavement, 'stained_m2'), column('stained_m2')]) {
      expect(Math.abs(sum(stained) - total.stained_m2)).toBeLessThan(ROUNDING_M2);
    }
    expect(Math.abs(sum(column('pavement_m2')) - total.pavement_m2)).toBeLessThan(ROUNDING_M2);
    expect(Math.abs(sum(column('fallout_m2')) - total.fallout_m2)).toBeLessThan(ROUNDING_M2);
  });

  test('nothing is stained beyond the fallout, nor fallen beyond the pavement', () => {
    for (const row of [...blocks, ...pavement]) {
      const paved = Number(row.pavement_m2 ?? row.area_m2);
      const [stained, fallout] = [Number(row.stained_m2), Number(row.fallout_m2)];
      expect(stained).toBeLessThanOrEqual(fallout + ROUNDING_M2);
      expect(fallout).toBeLessThanOrEqual(paved + ROUNDING_M2);
    }
  });

  test('crowns that the invented ratings call clean stain nothing', () => {
    const clean = trees.filter((tree) => tree.cause === 'none');
    expect(clean.length).toBeGreaterThan(5);
    expect(sum(of(clean, 'stained_m2'))).toBe(0);
  });

  test.skipIf(noGdal).each(['blocks', 'trees', 'pavement'])('GDAL opens %s.geojson without a warning', (layer) => {
    const file = join(out, `${layer}.geojson`);
    const { status, stdout, stderr } = spawnSync('ogrinfo', ['-ro', '-al', '-so', file], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stderr).toBe('');
    expect(stdout).toContain(`Feature Count: ${read(file).length}`);
  });
});
