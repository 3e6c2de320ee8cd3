import { relative, resolve } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { LAYER_NAMES, type ProjectInput } from '@crownfall/survey';
import type { LayerEntry } from '../layer-reading.ts';
import type { WrittenFormat } from '../project/layer-format.ts';
import { layerText } from '../project/layer-text.ts';
import { projectFolder, readProject } from './read-project.ts';
import { type TextFile, writeFiles } from './write-files.ts';

export interface ConvertReport {
  /** Files written, relative to the new project; empty when an error stopped it. */
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * Copies a project into another folder with its layers in another format: our field names, metric units, longitude and
 * latitude, every extra kept. Imagery is not copied; its paths are set anew. A layer that stays as it is for a reason is
 * in the findings. When the project has errors nothing is written. Throws a `RangeError` when `to` is no other folder, an
 * `Outage` when the disk fails.
 */
export async function convertProject(
  from: string,
  to: string,
  format: WrittenFormat = 'geojson',
): Promise<ConvertReport> {
  const folder = await projectFolder(from);
  if (resolve(to) === folder || /\.\w{1,8}$/.test(to)) {
    throw new RangeError(`expected another folder to convert into, got ${to}`);
  }
  const input = await readProject(from);
  if (input.findings.some(({ severity }) => severity === 'error')) return { files: [], findings: input.findings };
  const written = LAYER_NAMES.flatMap((name) => {
    const layer = input.layers[name];
    return layer ? [{ name, ...layerText(name, layer, format) }] : [];
  });
  const entries = Object.fromEntries(written.map(({ name, entry }) => [name, shortest(entry)]));
  const imagery = imageryFrom(input, folder, to);
  const files: TextFile[] = written.map(({ entry, text }) => ({ name: entry.path, text }));
  files.push({ name: 'project.json', text: [projectText(input, entries, imagery)] });
  await writeFiles(to, files);
  const findings = [...input.findings, ...written.flatMap((layer) => layer.findings)];
  return { files: files.map(({ name }) => name), findings };
}

function shortest(entry: LayerEntry): LayerEntry | string {
  return Object.keys(entry).length === 1 ? entry.path : entry;
}

function imageryFrom({ imagery }: ProjectInput, folder: string, to: string): string[] {
  return imagery.map((path) => relative(resolve(to), resolve(folder, path)).replaceAll('\\', '/'));
}

function projectText(
  { title, season, units, settings }: ProjectInput,
  layers: object,
  imagery: readonly string[],
): string {
  const all = imagery.length === 0 ? layers : { ...layers, imagery };
  return `${JSON.stringify({ title, season, units, layers: all, settings }, null, 2)}\n`;
}
