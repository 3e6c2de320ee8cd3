import { createHash } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding, LAYER_NAMES, type LayerName, type ProjectInput, type RawLayer, type Visit } from '@crownfall/survey';
import type { LayerEntry } from '../layer-reading.ts';
import { type ProjectFile, readProjectFile } from '../project/project-file.ts';
import { readLayer } from '../project/read-layer.ts';
import { seasonOf } from '../project/season-of.ts';
import {
  CALIBRATION_FILE,
  RATERS_FILE,
  type StoredFigures,
  withCalibration,
  withRaters,
} from '../project/stored-figures.ts';
import { swappedLayers } from '../project/swapped-layers.ts';
import { readVisitsFile } from '../project/visits-file.ts';
import { layerFile } from './layer-file.ts';
import { Outage, systemCode } from './outage.ts';
import { readStoreProject } from './store/read-store-project.ts';

export interface ReadProjectOptions {
  /**
   * Paths that lead outside the project's folder: `allow` reads them and notes it (the command line: the user's own
   * files), `refuse` leaves them out (a server: others' projects).
   */
  readonly outside?: 'allow' | 'refuse';
  /** Told before each layer is read. */
  readonly onLayer?: (layer: LayerName, file: string) => void;
}

/** The folder a project's paths are relative to, given the folder itself or its `project.json`. */
export async function projectFolder(path: string): Promise<string> {
  return (await kindOf(path)) === 'folder' ? resolve(path) : dirname(resolve(path));
}

/**
 * The name under which a project keeps a figure that was fitted to it: `calibration.json` beside `project.json`, but
 * `town.calibration.json` beside `town.gpkg`, since a folder may hold several such files.
 */
export function storedName(path: string, name: string): string {
  const stem = /^(.+)\.gpkg$/i.exec(basename(path))?.[1];
  return stem === undefined ? name : `${stem}.${name}`;
}

/**
 * Reads a project from its folder, its `project.json` or a GeoPackage file: all layers, mapped, in longitude and latitude, with the hash of
 * every file. What is wrong with the data is in `findings`; a missing project gives an empty one with an error. Throws
 * an `Outage` when the disk fails or forbids reading.
 */
export async function readProject(path: string, options: ReadProjectOptions = {}): Promise<ProjectInput> {
  const kind = await kindOf(path);
  const file = kind === 'folder' ? join(path, 'project.json') : path;
  const name = basename(file);
  if (kind === 'missing' || (await kindOf(file)) !== 'file') {
    return emptyInput([finding('file-missing', 'error/stops', { file: name }, {})]);
  }
  if (/\.gpkg$/i.test(file)) {
    return readGeoPackage(file, options);
  }
  const bytes = await readFile(file).catch((error) => {
    throw new Outage(`cannot read ${name}`, error);
  });
  const { project, findings } = readProjectFile(bytes, name);
  if (project === null) return emptyInput(findings);
  return readLayers(project, new ProjectFolder(dirname(resolve(file)), options, findings));
}

async function readGeoPackage(file: string, options: ReadProjectOptions): Promise<ProjectInput> {
  const input = await readStoreProject(file, options.onLayer);
  const folder = new ProjectFolder(dirname(resolve(file)), options, [...input.findings]);
  for (const path of input.imagery) await folder.find('imagery', path, 'warning/left_out');
  folder.findings.push(...swappedLayers(input.layers));
  return withStoredFigures({ ...input, findings: folder.findings }, folder, file);
}

async function readLayers(project: ProjectFile, folder: ProjectFolder): Promise<ProjectInput> {
  const layers: Partial<Record<LayerName, RawLayer>> = {};
  // One after the other: reading is bound by the processor, and memory holds one file's text at a time.
  for (const name of LAYER_NAMES) {
    const entry = project.layers[name];
    const layer = entry && (await folder.layer(name, entry));
    if (layer) layers[name] = layer;
  }
  for (const path of project.imagery) await folder.find('imagery', path, 'warning/left_out');
  const visits = project.visits === undefined ? [] : await folder.visits(project.visits);
  const { findings } = folder;
  findings.push(...swappedLayers(layers));
  const season = project.season ?? seasonOf(layers.ratings);
  if (project.season === undefined) findings.push(seasonFinding(season));
  const input: ProjectInput = {
    title: project.title ?? basename(folder.path),
    season: season ?? 0,
    units: project.units,
    layers,
    imagery: project.imagery,
    settings: project.settings,
    sources: folder.sources,
    findings,
    ...(visits.length === 0 ? {} : { visits }),
  };
  return withStoredFigures(input, folder, 'project.json');
}

/** Raters first: a calibration knows by which readings it was made. */
async function withStoredFigures(input: ProjectInput, folder: ProjectFolder, file: string): Promise<ProjectInput> {
  const withReaders = await withStored(input, folder, storedName(file, RATERS_FILE), withRaters);
  return withStored(withReaders, folder, storedName(file, CALIBRATION_FILE), withCalibration);
}

/** Figures that a command stored beside the project, laid under its settings; none when there is no such file. */
async function withStored(
  input: ProjectInput,
  folder: ProjectFolder,
  name: string,
  lay: (bytes: Uint8Array, input: ProjectInput) => StoredFigures,
): Promise<ProjectInput> {
  const path = join(folder.path, name);
  if ((await kindOf(path)) !== 'file') return input;
  const bytes = await readFile(path).catch((error) => {
    throw new Outage(`cannot read ${name}`, error);
  });
  const { settings, findings } = lay(bytes, input);
  const source = { file: name, sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.length };
  return { ...input, settings, sources: [...input.sources, source], findings: [...input.findings, ...findings] };
}

function seasonFinding(season: number | undefined): Finding {
  const where = { file: 'project.json', field: 'season' };
  return season === undefined
    ? finding('project-invalid', 'error/stops', where, {
        problem: 'season is missing, and no rating is dated',
        expected: 'a year',
        got: 'nothing',
      })
    : finding('project-invalid', 'note/assumed', where, {
        problem: `season is missing; ${season}, the year of the newest rating, is taken`,
        expected: 'a year',
        got: 'nothing',
      });
}

function emptyInput(findings: readonly Finding[]): ProjectInput {
  return { title: '', season: 0, units: 'metric', layers: {}, imagery: [], settings: {}, sources: [], findings };
}

class ProjectFolder {
  readonly path: string;
  readonly findings: Finding[];
  readonly sources: { file: string; sha256: string; bytes: number }[] = [];
  readonly #options: ReadProjectOptions;

  constructor(path: string, options: ReadProjectOptions, findings: Finding[]) {
    this.path = path;
    this.findings = findings;
    this.#options = options;
  }

  async layer(layer: LayerName, entry: LayerEntry): Promise<RawLayer | null> {
    const needed = layer === 'crowns' || layer === 'pavement';
    const path = await this.find(layer, entry.path, needed ? 'error/stops' : 'warning/left_out');
    if (path === null) return null;
    this.#options.onLayer?.(layer, entry.path);
    const allowed = async (full: string) => this.#options.outside !== 'refuse' || this.#inside(full);
    const file = await layerFile(path, entry, allowed);
    const reading = await readLayer({ ...file.source, layer }).finally(file.close);
    this.sources.push(...file.sources());
    this.findings.push(...(needed ? reading.findings : reading.findings.map(notStopping)));
    return reading.layer;
  }

  async visits(file: string): Promise<readonly Visit[]> {
    const path = await this.find('visits', file, 'warning/left_out');
    if (path === null) return [];
    const bytes = await readFile(path).catch((error) => {
      throw new Outage(`cannot read ${file}`, error);
    });
    this.sources.push({ file, sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.length });
    const { visits, findings } = readVisitsFile(bytes, file);
    this.findings.push(...findings);
    return visits;
  }

  /** The path on disk, or `null` with a finding when there is no such file or it may not be read. */
  async find(layer: string, path: string, grade: 'error/stops' | 'warning/left_out'): Promise<string | null> {
    const full = resolve(this.path, path);
    const where = { layer, file: path };
    const kind = await kindOf(full);
    if (kind !== 'file') {
      this.findings.push(finding('file-missing', grade, where, kind === 'folder' ? { problem: 'is a folder' } : {}));
      return null;
    }
    if (!(await this.#inside(full))) {
      const refused = this.#options.outside === 'refuse';
      const problem = 'the path leads outside the project folder';
      const facts = { problem, expected: 'a path inside it', got: path };
      this.findings.push(finding('project-invalid', refused ? grade : 'note/kept', where, facts));
      if (refused) return null;
    }
    return full;
  }

  /** Links are followed: a link inside the folder may lead outside it. */
  async #inside(full: string): Promise<boolean> {
    const [folder, file] = await Promise.all([realpath(this.path), realpath(full)]);
    const way = relative(folder, file);
    return way !== '..' && !way.startsWith(`..${sep}`) && resolve(folder, way) === file && !/^[a-z]:/i.test(way);
  }
}

/** A layer the job can do without is left out instead of stopping it; a wrong unit in it still stops. */
function notStopping(found: Finding): Finding {
  if (found.severity !== 'error' || found.code === 'unit-unknown') return found;
  return { ...found, severity: 'warning', effect: 'left_out' };
}

async function kindOf(path: string): Promise<'file' | 'folder' | 'missing'> {
  try {
    const found = await stat(path);
    return found.isDirectory() ? 'folder' : 'file';
  } catch (error) {
    const code = systemCode(error);
    if (code === 'ENOENT' || code === 'ENOTDIR') return 'missing';
    throw new Outage(`cannot read ${basename(path)}`, error);
  }
}
