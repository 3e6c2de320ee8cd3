/** A store's records as the input of the job, all of one moment of its journal. */
import type { ProjectStore } from '@crownfall/exchange';
import type { LayerName, ProjectInput, RawFeature, RawLayer } from '@crownfall/survey';

/** Layers that come as tables: their rows are counted with the header. */
const TABLES: readonly LayerName[] = ['ratings', 'bloom'];
/** How often reading starts again because somebody wrote meanwhile. */
const ATTEMPTS = 5;

/**
 * What `read` gives, with the number of the last edit in it. The journal's last number is the same before and after: then
 * nothing was written while layer after layer was read. When the store is written to without a pause, the last attempt
 * counts, with the number from before it, so that a later reckoning follows.
 */
export async function inputOfStore(
  store: ProjectStore,
  read: () => Promise<ProjectInput>,
): Promise<{ input: ProjectInput; journal: number }> {
  for (let attempt = 1; ; attempt++) {
    const journal = await store.lastChange();
    const input = await read();
    if (attempt === ATTEMPTS || (await store.lastChange()) === journal) return { input, journal };
  }
}

/** Facts, all layers that were given, and visits. */
export async function readRecords(store: ProjectStore): Promise<ProjectInput> {
  const facts = await store.project();
  const layers: Partial<Record<LayerName, RawLayer>> = {};
  for (const { layer, given } of await store.layers()) {
    if (given) layers[layer] = await readLayer(store, layer);
  }
  const visits = await store.visits();
  return { ...facts, layers, sources: [], findings: store.findings, ...(visits.length === 0 ? {} : { visits }) };
}

async function readLayer(store: ProjectStore, layer: LayerName): Promise<RawLayer> {
  const shape = TABLES.includes(layer) ? 'table' : 'features';
  const features: RawFeature[] = [];
  for await (const records of store.wholeLayer(layer)) {
    for (const { recordId, geometry, properties } of records) features.push({ row: recordId, geometry, properties });
  }
  return { file: layer, shape, crs: 'OGC:CRS84', features };
}
