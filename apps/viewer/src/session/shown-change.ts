/** Lets the screen follow what the reckoner says has changed. */
import { FEATURE_ID, LAYERS, type LayerName, type Layers } from '../project/project.ts';
import type { Change } from '../reckoning/change.ts';
import type { Session } from './session.ts';

export function showChange({ store }: Session, change: Change): void {
  store.change(({ layers }) => ({ project: change.project, ...(layers && { layers: layersWith(layers, change) }) }));
}

/** The chosen tree's record as it is now. Undone or taken away, a tree is no longer there to be shown. */
export async function showTreeAgain({ store, reckoner }: Session): Promise<void> {
  const { treeId } = store.get();
  const tree = treeId === null ? null : await reckoner.ask('tree', treeId);
  if (store.get().treeId === treeId) store.change(tree ? { tree } : { tree: null, treeId: null, ratingDraft: null });
}

function layersWith(layers: Layers, { features, gone }: Change): Layers {
  const entries = LAYERS.map((name): [LayerName, GeoJSON.FeatureCollection] => {
    const id = FEATURE_ID[name];
    const fresh = new Map(features[name].map((feature) => [feature.properties?.[id], feature]));
    const left = new Set<unknown>(gone[name]);
    if (fresh.size === 0 && left.size === 0) return [name, layers[name]];
    const kept = layers[name].features.flatMap((feature) => {
      const key = feature.properties?.[id];
      const replaced = fresh.get(key);
      fresh.delete(key);
      if (replaced) return [replaced];
      return left.has(key) ? [] : [feature];
    });
    return [name, { type: 'FeatureCollection', features: [...kept, ...fresh.values()] }];
  });
  return Object.fromEntries(entries) as Layers;
}
