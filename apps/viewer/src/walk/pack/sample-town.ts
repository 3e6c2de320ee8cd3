/** The invented sample town as a source of packs: for trying the walk where no server has a project. */
import { openFile, type ProjectPlace } from '../../project/project-files.ts';
import { startReckoner } from '../../reckoning/reckoner.ts';
import type { Fields, PackSource } from './block-pack.ts';
import { madeSheets } from './pack-sheets.ts';

const NOTHING: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Null when its files cannot be reached. */
export async function sampleTown(): Promise<PackSource | null> {
  const place: ProjectPlace = { kind: 'http', base: new URL('demo/', document.baseURI).href };
  const reckoner = startReckoner(() => {});
  const opened = await reckoner.ask('open', { place, edits: [] }).catch(() => null);
  if (!opened || opened.stopped) return null;
  const [ratings, bloom] = await Promise.all([table(place, 'ratings'), table(place, 'bloom')]);
  const water = await openFile(place, 'water.geojson').then((stream) => stream && new Response(stream).json());
  return {
    key: 'demo',
    project: opened.shown.project,
    layers: opened.shown.layers,
    records: { ratings, bloom, water: (water as GeoJSON.FeatureCollection | null) ?? NOTHING },
    imagery: opened.imagery.length === 0 ? null : { place, paths: opened.imagery },
    sheets: madeSheets(reckoner),
    takesVisits: false,
    asker: '',
  };
}

/** The sample's own tables hold no quotation marks. */
async function table(place: ProjectPlace, layer: 'ratings' | 'bloom'): Promise<readonly Fields[]> {
  const stream = await openFile(place, `${layer}.csv`);
  if (!stream) return [];
  const [head, ...rows] = (await new Response(stream).text())
    .trim()
    .split(/\r?\n/)
    .map((line) => line.split(','));
  return rows.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i]])));
}
