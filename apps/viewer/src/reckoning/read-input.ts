/** Reads a project's files in the browser: the same readers, the same findings as the command line. */
import { readLayer, readProjectFile, readVisitsFile } from '@crownfall/exchange';
import type { Finding } from '@crownfall/geometry';
import { finding, LAYER_NAMES, type LayerName, type ProjectInput, type RawLayer, type Visit } from '@crownfall/survey';
import { openFile, type ProjectPlace } from '../project/project-files.ts';
import { readStore } from './read-store.ts';
import type { ReadInput } from './record-versions.ts';

export async function readInput(place: ProjectPlace, told: (layer: LayerName) => void): Promise<ReadInput> {
  if (place.kind === 'store') return readStore(place, told);
  return { input: await readFiles(place, told), versions: new Map() };
}

/** The project's layers, raw. A missing `project.json` or crowns or pavement gives a finding that stops the job. */
async function readFiles(place: ProjectPlace, told: (layer: LayerName) => void): Promise<ProjectInput> {
  const head = await openFile(place, 'project.json');
  if (!head) return empty([finding('file-missing', 'error/stops', { file: 'project.json' }, {})]);
  const bytes = new Uint8Array(await new Response(head).arrayBuffer());
  const { project, findings } = readProjectFile(bytes, 'project.json');
  if (!project) return empty(findings);
  const layers: Partial<Record<LayerName, RawLayer>> = {};
  for (const name of LAYER_NAMES) {
    const entry = project.layers[name];
    if (!entry) continue;
    told(name);
    const needed = name === 'crowns' || name === 'pavement';
    const file = await openFile(place, entry.path);
    if (!file) {
      const where = { layer: name, file: entry.path };
      findings.push(finding('file-missing', needed ? 'error/stops' : 'warning/left_out', where, {}));
      continue;
    }
    const reading = await readLayer({ bytes: chunks(file), entry, layer: name });
    findings.push(...(needed ? reading.findings : reading.findings.map(notStopping)));
    if (reading.layer) layers[name] = reading.layer;
  }
  const visits = project.visits === undefined ? [] : await readVisits(place, project.visits, findings);
  return {
    title: project.title ?? (place.kind === 'local' ? place.name : ''),
    season: project.season ?? newestYear(layers.ratings),
    units: project.units,
    layers,
    imagery: project.imagery,
    settings: project.settings,
    sources: [],
    findings,
    visits,
  };
}

async function readVisits(place: ProjectPlace, path: string, findings: Finding[]): Promise<readonly Visit[]> {
  const file = await openFile(place, path);
  if (!file) {
    findings.push(finding('file-missing', 'warning/left_out', { layer: 'visits', file: path }, {}));
    return [];
  }
  const reading = readVisitsFile(new Uint8Array(await new Response(file).arrayBuffer()), path);
  findings.push(...reading.findings);
  return reading.visits;
}

function empty(findings: readonly Finding[]): ProjectInput {
  return { title: '', season: 0, units: 'metric', layers: {}, imagery: [], settings: {}, sources: [], findings };
}

/** As on the command line: without a layer that is not needed the job goes on. */
const notStopping = (found: Finding): Finding =>
  found.effect === 'stops' ? { ...found, severity: 'warning', effect: 'left_out' } : found;

function newestYear(ratings: RawLayer | undefined): number {
  const years = (ratings?.features ?? []).map(({ properties }) => Number(String(properties.rated_on).slice(0, 4)));
  return years.filter(Number.isFinite).reduce((newest, year) => Math.max(newest, year), 0);
}

async function* chunks(stream: ReadableStream<Uint8Array>): AsyncIterable<Uint8Array> {
  const reader = stream.getReader();
  for (let next = await reader.read(); !next.done; next = await reader.read()) yield next.value;
}
