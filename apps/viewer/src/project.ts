/** What the server tells of a reckoned project, and how the viewer asks for it. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import type { Finding } from '@crownfall/geometry';

/** A block's figures without its outline; outlines arrive with the map layers. */
export type BlockSummary = Omit<BlockResult, 'geometry' | 'extra'>;

/** Findings of one kind, in the words that the command line prints too. */
export interface SpokenGroup extends Pick<Finding, 'code' | 'severity'> {
  /** How many there are; `examples` holds the first ones. */
  readonly findings: number;
  /** What the totals did with them. */
  readonly effect: string;
  readonly examples: readonly { readonly where: string; readonly what: string; readonly remedy: string }[];
}

export interface Project extends Pick<Assessment, 'title' | 'season' | 'units' | 'total' | 'run'> {
  readonly blocks: readonly BlockSummary[];
  readonly findings: readonly SpokenGroup[];
  readonly trees: number;
  readonly treesRated: number;
  /** West, south, east, north in degrees; null when nothing has a place. */
  readonly bounds: readonly [number, number, number, number] | null;
}

const LAYERS = ['blocks', 'pavement', 'trees', 'drift'] as const;
type LayerName = (typeof LAYERS)[number];
export type Layers = Readonly<Record<LayerName, GeoJSON.FeatureCollection>>;

/** Fetches figures and layers together; throws an Error whose message can be shown. */
export async function fetchProject(): Promise<{ project: Project; layers: Layers }> {
  const [project, ...collections] = await Promise.all([
    fetchJson<Project>('/api/assessment'),
    ...LAYERS.map((name) => fetchJson<GeoJSON.FeatureCollection>(`/api/layers/${name}.geojson`)),
  ]);
  const layers = Object.fromEntries(LAYERS.map((name, i) => [name, collections[i]])) as Layers;
  return { project, layers };
}

async function fetchJson<Body>(path: string): Promise<Body> {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`The server answered ${response.status} for ${path}.`);
  return (await response.json()) as Body;
}
