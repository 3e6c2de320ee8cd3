/** Where packs come from: the server that serves this page, or the invented sample town that lies beside it. */
import type { LayerName } from '@crownfall/survey';
import { servedResults } from '../../project/served-results.ts';
import { type StoreHead, servedImagery, storeHead } from '../../project/store-api.ts';
import type { StoreFeature } from '../../reckoning/read-store.ts';
import type { Fields, PackRecords, PackSource } from './block-pack.ts';
import { servedSheets } from './pack-sheets.ts';

/** Null when neither a server nor the sample town can be reached. */
export async function packSource(wish: string | null): Promise<PackSource | null> {
  const [served, head] = wish === 'demo' ? [null, null] : await Promise.all([servedResults(), storeHead()]);
  // Reckoned in this browser, with readers that the field needs for nothing else.
  if (!served) return (await import('./sample-town.ts')).sampleTown();
  const { project, layers } = served.shown;
  const takesVisits = head?.layers != null && head.writable && head.asker.role !== 'reader';
  return {
    key: `served:${project.title}`,
    project,
    layers,
    records: await servedRecords(head),
    imagery: head && picturesOf(head),
    sheets: servedSheets(),
    takesVisits,
    asker: head?.asker.name ?? '',
  };
}

function picturesOf(head: StoreHead): PackSource['imagery'] {
  const { imagery: paths, imageryPlace: place } = servedImagery(head);
  return paths.length === 0 ? null : { place, paths };
}

async function servedRecords(head: StoreHead | null): Promise<PackRecords> {
  const given = new Set((head?.layers ?? []).filter((each) => each.given).map(({ layer }) => layer));
  const read = async (layer: LayerName): Promise<readonly StoreFeature[]> => {
    if (!given.has(layer)) return [];
    const features: StoreFeature[] = [];
    for (let after: number | null = 0; after !== null; ) {
      const response: Response = await fetch(`/api/records/${layer}?limit=10000&after=${after}`);
      if (!response.ok) throw new Error(`The server answered ${response.status} for the records of ${layer}.`);
      const page = (await response.json()) as { readonly next: number | null; readonly features: StoreFeature[] };
      features.push(...page.features);
      after = page.next;
    }
    return features;
  };
  const [ratings, bloom, water] = await Promise.all([read('ratings'), read('bloom'), read('water')]);
  return {
    ratings: ratings.map(({ properties }) => properties as Fields),
    bloom: bloom.map(({ properties }) => properties as Fields),
    water: { type: 'FeatureCollection', features: water.filter(({ geometry }) => geometry) as GeoJSON.Feature[] },
  };
}
