import { basename, dirname, relative, resolve } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { LAYER_NAMES, type LayerName, type ProjectInput } from '@crownfall/survey';
import type { FilePieces } from '../formats/write-layer.ts';
import type { LayerEntry } from '../layer-reading.ts';
import type { WrittenFormat } from '../project/layer-format.ts';
import { layerText } from '../project/layer-text.ts';
import { VISITS_FILE, visitsText } from '../project/visits-file.ts';
import type { Writer } from '../store/project-store.ts';
import { historyOf, withHash } from './convert-history.ts';
import { projectFolder, readProject } from './read-project.ts';
import { HISTORY_FILE, type History, historyPieces } from './store/history-file.ts';
import { mustBeNew } from './store/whole-file.ts';
import { writeStoreProject } from './store/write-store-project.ts';
import { type TextFile, writeFiles } from './write-files.ts';

export interface ConvertReport {
  /** Files written, relative to the new project; empty when an error stopped it. */
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

export interface ConvertProjectOptions {
  /** Format of the layers in a folder; `geojson` unless given. */
  readonly format?: WrittenFormat;
  /** In whose name, and when, records come into a GeoPackage file; needed for one. */
  readonly writer?: Writer;
}

/**
 * Copies a project into another folder with its layers in another format, or into a new GeoPackage file (`to` ends in
 * `.gpkg`): our field names, metric units, longitude and latitude, every extra kept. Imagery is not copied; its paths are
 * set anew. Journal, versions and visits of a GeoPackage file go along, into a folder as `history.jsonl`. A layer that
 * stays as it is for a reason is in the findings. When the project has errors nothing is written. Throws a `RangeError` when `to` is neither another folder nor a new GeoPackage file, an `Outage` when the disk fails.
 */
export async function convertProject(
  from: string,
  to: string,
  { format = 'geojson', writer }: ConvertProjectOptions = {},
): Promise<ConvertReport> {
  const folder = await projectFolder(from);
  const intoFile = /\.gpkg$/i.test(to);
  if (!intoFile && (resolve(to) === folder || /\.\w{1,8}$/.test(to))) {
    throw new RangeError(`expected another folder or a new .gpkg file to convert into, got ${to}`);
  }
  if (intoFile) await mustBeNew(to);
  const input = await readProject(from);
  if (input.findings.some(({ severity }) => severity === 'error')) return { files: [], findings: input.findings };
  const { history, findings: ofHistory } = await historyOf(from, folder, input);
  const source = { folder, to, history, input: { ...input, findings: [...input.findings, ...ofHistory] } };
  return intoFile ? intoGeoPackage(source, writer) : intoFolder(source, format);
}

interface Conversion {
  readonly input: ProjectInput;
  /** The folder its paths are relative to. */
  readonly folder: string;
  readonly to: string;
  readonly history: History | null;
}

async function intoFolder({ input, folder, to, history }: Conversion, format: WrittenFormat): Promise<ConvertReport> {
  const written = LAYER_NAMES.flatMap((name) => {
    const layer = input.layers[name];
    return layer ? [{ name, ...layerText(name, layer, format) }] : [];
  });
  const entries = Object.fromEntries(written.map(({ name, entry }) => [name, shortest(entry)]));
  const imagery = imageryFrom(input, folder, resolve(to));
  const hashes = new Map<LayerName, string>();
  const hashed = (name: LayerName, text: FilePieces) => withHash(text, (sha256) => hashes.set(name, sha256));
  const files: TextFile[] = written.map(({ name, entry, text }) => ({ name: entry.path, text: hashed(name, text) }));
  files.push({ name: 'project.json', text: [projectText(input, entries, imagery)] });
  if (input.visits) files.push({ name: VISITS_FILE, text: [visitsText(input.visits)] });
  // Written last, when the hashes of the layers are known.
  if (history) files.push({ name: HISTORY_FILE, text: historyPieces(history, (name) => hashes.get(name)) });
  await writeFiles(to, files);
  const findings = [...input.findings, ...written.flatMap((layer) => layer.findings)];
  return { files: files.map(({ name }) => name), findings };
}

function shortest(entry: LayerEntry): LayerEntry | string {
  return Object.keys(entry).length === 1 ? entry.path : entry;
}

async function intoGeoPackage(
  { input, folder, to, history }: Conversion,
  writer: Writer | undefined,
): Promise<ConvertReport> {
  if (writer === undefined) throw new TypeError('expected a writer, in whose name the records come in, got none');
  const imagery = imageryFrom(input, folder, dirname(resolve(to)));
  await writeStoreProject(to, { ...input, imagery }, writer, history);
  return { files: [basename(to)], findings: input.findings };
}

/** Paths of the imagery from the folder the new project is in. */
function imageryFrom({ imagery }: ProjectInput, folder: string, newFolder: string): string[] {
  return imagery.map((path) => relative(newFolder, resolve(folder, path)).replaceAll('\\', '/'));
}

function projectText(
  { title, season, units, settings, visits }: ProjectInput,
  layers: object,
  imagery: readonly string[],
): string {
  const all = imagery.length === 0 ? layers : { ...layers, imagery };
  const ofVisits = visits ? { visits: VISITS_FILE } : {};
  return `${JSON.stringify({ title, season, units, layers: all, ...ofVisits, settings }, null, 2)}\n`;
}
