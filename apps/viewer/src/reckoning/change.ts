/** What a change of records changes on the screen. */
import type { Assessment } from '@crownfall/assessment';
import { type Bounds, FEATURE_ID, type LayerName, type Project } from '../project/project.ts';
import { boundsAfter } from './bounds.ts';
import { driftFeatures, projectOf, resultFeatures } from './shown-features.ts';

/** Features replace those of the same id; new ones are added. */
export interface Change {
  readonly project: Project;
  readonly features: Readonly<Record<LayerName, readonly GeoJSON.Feature[]>>;
  readonly gone: Readonly<Record<LayerName, readonly string[]>>;
}

/**
 * From one assessment to the next of the same live one, which gives the same objects for what did not change. `bounds`: where the
 * project lay before.
 */
export function changeBetween(before: Assessment, after: Assessment, bounds: Bounds | null): Change {
  const trees = fresh(before.trees, after.trees);
  const changed = resultFeatures({
    trees,
    pavement: fresh(before.pavement, after.pavement),
    blocks: fresh(before.blocks, after.blocks),
  });
  const drift = driftFeatures(after, trees);
  const drifting = new Set(drift.map((feature) => feature.properties?.[FEATURE_ID.drift]));
  const still = new Set(trees.map(({ treeId }) => treeId));
  const gone = fresh(after.trees, before.trees);
  const goneTrees = gone.map(({ treeId }) => treeId).filter((treeId) => !still.has(treeId));
  const noDrift = trees.map(({ treeId }) => treeId).filter((treeId) => !drifting.has(treeId));
  return {
    project: projectOf(after, boundsAfter(bounds, { gone, come: trees }, after)),
    features: { ...changed, drift },
    gone: { blocks: [], pavement: [], trees: goneTrees, drift: [...goneTrees, ...noDrift] },
  };
}

/** Those of `after` that are not in `before`. */
function fresh<T>(before: readonly T[], after: readonly T[]): T[] {
  let known: ReadonlySet<T> | null = null;
  return after.filter((each, i) => {
    if (each === before[i]) return false;
    known ??= new Set(before);
    return !known.has(each);
  });
}
