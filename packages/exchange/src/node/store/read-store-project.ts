import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding, type LayerName, type ProjectInput, type RawFeature, type RawLayer } from '@crownfall/survey';
import type { LayerSummary } from '../../store/project-store.ts';
import { hashedFile } from '../hashed-file.ts';
import { openProjectStore } from './open-project-store.ts';
import { damageFinding, isDamageOutage } from './store-refusals.ts';
import { wholeTable } from './whole-table.ts';

/**
 * Reads the project in a GeoPackage file: all given layers, rows numbered as its records are, positions as they stand.
 * What is wrong with the file is in the findings; nothing in it is changed. Throws an `Outage` when the disk fails, or
 * SQLite is not installed.
 */
export async function readStoreProject(
  path: string,
  onLayer: (layer: LayerName, file: string) => void = () => {},
): Promise<ProjectInput> {
  try {
    return await readOpened(path, onLayer);
  } catch (error) {
    if (!isDamageOutage(error)) throw error;
    return { ...EMPTY, findings: [damageFinding(path)] };
  }
}

async function readOpened(path: string, onLayer: (layer: LayerName, file: string) => void): Promise<ProjectInput> {
  const { store, findings } = await openProjectStore(path, { readOnly: true });
  if (store === null) return { ...EMPTY, findings };
  try {
    const layers: Partial<Record<LayerName, RawLayer>> = {};
    const found = [...findings];
    for (const summary of await store.layers()) {
      if (!summary.given) continue;
      onLayer(summary.layer, basename(path));
      layers[summary.layer] = await readWholeLayer(path, summary, found);
    }
    const sources = await sourcesOf(path);
    const visits = await store.visits();
    const known = visits.length === 0 ? {} : { visits };
    return { ...(await store.project()), layers, sources, findings: found, ...known };
  } finally {
    await store.close();
  }
}

const EMPTY: Omit<ProjectInput, 'findings'> = {
  title: '',
  season: 0,
  units: 'metric',
  layers: {},
  imagery: [],
  settings: {},
  sources: [],
};

async function readWholeLayer(path: string, { layer, shape }: LayerSummary, findings: Finding[]): Promise<RawLayer> {
  const file = `${basename(path)}/${layer}`;
  const features: RawFeature[] = [];
  const unreadable = (row: number, problem: string): void => {
    const facts = { got: problem, expected: 'points, lines or areas with straight edges' };
    findings.push(finding('geometry-unexpected', 'warning/left_out', { layer, file, row }, facts));
  };
  for await (const records of wholeTable(path, layer, unreadable)) {
    for (const { recordId, geometry, properties } of records) features.push({ row: recordId, geometry, properties });
  }
  return { file, shape: shape ?? 'features', crs: 'OGC:CRS84', features };
}

/** The file, and its write-ahead log when somebody has it open. */
async function sourcesOf(path: string): Promise<ProjectInput['sources']> {
  const log = `${path}-wal`;
  const logged = (await stat(log).catch(() => null))?.size ?? 0;
  const files = logged > 0 ? [path, log] : [path];
  return Promise.all(files.map(hashOf));
}

async function hashOf(path: string): Promise<ProjectInput['sources'][number]> {
  const { bytes, source } = hashedFile(path, basename(path));
  for await (const _ of bytes);
  return source();
}
