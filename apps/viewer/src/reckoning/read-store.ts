/** Reads a project's records out of the server's store, page by page. */
import { geometryFromJson } from '@crownfall/exchange';
import type { LayerName, RawFeature, RawLayer, Visit } from '@crownfall/survey';
import type { ProjectPlace, StoreLayer } from '../project/project-files.ts';
import { type ReadInput, versionKey } from './record-versions.ts';

/** The most the server gives at once. */
const PAGE = 10_000;

/** A record as the server's API tells it. */
export type StoreFeature = GeoJSON.Feature<GeoJSON.Geometry | null> & { readonly id: number; readonly version: number };

interface Page {
  readonly next: number | null;
  readonly features: readonly StoreFeature[];
}

/** What was wrong with a geometry was found when it came into the store. */
const NOTED_BEFORE = { unclosed: () => {}, collectionMixed: () => {} };

export async function readStore(
  { facts, layers }: Extract<ProjectPlace, { kind: 'store' }>,
  told: (layer: LayerName) => void,
): Promise<ReadInput> {
  const versions = new Map<string, number>();
  const read: Partial<Record<LayerName, RawLayer>> = {};
  for (const summary of layers) {
    if (!summary.given) continue;
    told(summary.layer);
    read[summary.layer] = await readLayer(summary, versions);
  }
  const visits = await readVisits();
  return { input: { ...facts, layers: read, imagery: [], sources: [], findings: [], visits }, versions };
}

/** All visits, in the order they came in. */
async function readVisits(): Promise<readonly Visit[]> {
  const response = await fetch('/api/visits');
  if (!response.ok) throw new Error(`The server answered ${response.status} for the visits.`);
  return ((await response.json()) as { visits: readonly Visit[] }).visits;
}

async function readLayer({ layer, shape = 'features' }: StoreLayer, versions: Map<string, number>): Promise<RawLayer> {
  const features: RawFeature[] = [];
  let after: number | null = 0;
  while (after !== null) {
    const response: Response = await fetch(`/api/records/${layer}?limit=${PAGE}&after=${after}`);
    if (!response.ok) throw new Error(`The server answered ${response.status} for the records of ${layer}.`);
    const page = (await response.json()) as Page;
    for (const feature of page.features) {
      features.push(rawRecord(feature));
      versions.set(versionKey(layer, feature.id), feature.version);
    }
    after = page.next;
  }
  return { file: layer, shape, crs: 'OGC:CRS84', features };
}

/** Its row is the record's number. */
export function rawRecord({ id, geometry, properties }: StoreFeature): RawFeature {
  return { row: id, geometry: geometryFromJson(geometry, NOTED_BEFORE), properties: properties ?? {} };
}
