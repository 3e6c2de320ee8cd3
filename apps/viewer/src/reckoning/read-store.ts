/** Reads a project's records out of the server's store, page by page. */
import { geometryFromJson } from '@crownfall/exchange';
import type { LayerName, ProjectInput, RawFeature, RawLayer } from '@crownfall/survey';
import type { ProjectPlace, StoreLayer } from '../project/project-files.ts';

/** The most the server gives at once. */
const PAGE = 10_000;

interface Page {
  readonly next: number | null;
  readonly features: readonly (GeoJSON.Feature<GeoJSON.Geometry | null> & { readonly id?: number | string })[];
}

/** What was wrong with a geometry was found when it came into the store. */
const NOTED_BEFORE = { unclosed: () => {}, collectionMixed: () => {} };

export async function readStore(
  { facts, layers }: Extract<ProjectPlace, { kind: 'store' }>,
  told: (layer: LayerName) => void,
): Promise<ProjectInput> {
  const read: Partial<Record<LayerName, RawLayer>> = {};
  for (const summary of layers) {
    if (!summary.given) continue;
    told(summary.layer);
    read[summary.layer] = await readLayer(summary);
  }
  return { ...facts, layers: read, imagery: [], sources: [], findings: [] };
}

async function readLayer({ layer, shape = 'features' }: StoreLayer): Promise<RawLayer> {
  const features: RawFeature[] = [];
  let after: number | null = 0;
  while (after !== null) {
    const response: Response = await fetch(`/api/records/${layer}?limit=${PAGE}&after=${after}`);
    if (!response.ok) throw new Error(`The server answered ${response.status} for the records of ${layer}.`);
    const page = (await response.json()) as Page;
    for (const { id, geometry, properties } of page.features) {
      const found = geometryFromJson(geometry, NOTED_BEFORE);
      const row = Number(id ?? features.length + 1);
      features.push({ row, geometry: found, properties: properties ?? {} });
    }
    after = page.next;
  }
  return { file: layer, shape, crs: 'OGC:CRS84', features };
}
