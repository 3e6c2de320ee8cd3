/** What the server has reckoned: figures and map layers, ready to show before anything is reckoned here. */
import { LAYERS, type Layers, type Project, type Shown } from './project.ts';

export interface ServedResults {
  readonly shown: Shown;
  /** The change of the store that the figures hold for. */
  readonly journal: number;
}

/** Fetches figures and layers together; null when no server with a project answers (the page was opened from plain files). */
export async function servedResults(): Promise<ServedResults | null> {
  const first = await fetch('/api/assessment').catch(() => null);
  if (!first?.ok || !isJson(first)) return null;
  const [project, ...collections] = await Promise.all([
    first.json() as Promise<Project>,
    ...LAYERS.map((name) => fetchJson<GeoJSON.FeatureCollection>(`/api/layers/${name}.geojson`)),
  ]);
  const layers = Object.fromEntries(LAYERS.map((name, i) => [name, collections[i]])) as Layers;
  return { shown: { project, layers }, journal: Number(first.headers.get('crownfall-journal') ?? 0) };
}

async function fetchJson<Body>(path: string): Promise<Body> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`The server answered ${response.status} for ${path}.`);
  return (await response.json()) as Body;
}

const isJson = (response: Response): boolean => /json/.test(response.headers.get('content-type') ?? '');
