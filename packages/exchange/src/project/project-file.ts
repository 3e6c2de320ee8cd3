import type { Finding, Place } from '@crownfall/geometry';
import { finding, LAYER_NAMES, type LayerName, nearestWord } from '@crownfall/survey';
import { inWords, type JsonBreak } from '../json/json-stream.ts';
import { parseJson } from '../json/parse-json.ts';
import type { LayerEntry } from '../layer-reading.ts';

/** `project.json` as read: what is missing or unusable is absent, and a finding says so. */
export interface ProjectFile {
  readonly title?: string;
  readonly season?: number;
  readonly units: 'metric' | 'us';
  readonly layers: Partial<Readonly<Record<LayerName, LayerEntry>>>;
  readonly imagery: readonly string[];
  /** Path of the visits. */
  readonly visits?: string;
  readonly settings: Readonly<Record<string, unknown>>;
}

const KEYS = ['title', 'season', 'units', 'layers', 'settings', 'visits'];
const ENTRY_KEYS = ['path', 'crs', 'table', 'fields', 'units', 'types'];

/**
 * Reads a `project.json` (see the outside contract). Keys it does not know are told with the nearest known one and left
 * out. A file that is not JSON, or no object, gives no project and an error with line and column.
 */
export function readProjectFile(bytes: Uint8Array, file: string): { project: ProjectFile | null; findings: Finding[] } {
  const { value, broken } = parseJson(bytes);
  if (broken) return { project: null, findings: [brokenFinding(broken, file)] };
  const reader = new ProjectReader(file);
  return { project: reader.project(value), findings: reader.findings };
}

function brokenFinding(broken: JsonBreak, file: string): Finding {
  const problem = inWords(broken);
  return broken.kind === 'truncated'
    ? finding(
        'file-truncated',
        'error/stops',
        { file },
        { problem: `line ${broken.line}, ${problem}`, bytes: broken.offset },
      )
    : finding('not-json', 'error/stops', { file }, { problem, line: broken.line });
}

class ProjectReader {
  readonly findings: Finding[] = [];
  readonly #file: string;

  constructor(file: string) {
    this.#file = file;
  }

  project(value: unknown): ProjectFile | null {
    if (!isObject(value)) {
      this.#wrong({ file: this.#file }, 'object', value, 'error/stops');
      return null;
    }
    this.#unknownKeys(value, KEYS, undefined);
    const title = this.#typed(value, 'title', 'text', (v): v is string => typeof v === 'string');
    const season = this.#typed(value, 'season', 'a year', (v): v is number => Number.isInteger(v));
    const units = this.#typed(value, 'units', 'metric, us', (v): v is 'metric' | 'us' => v === 'metric' || v === 'us');
    const settings = this.#typed(value, 'settings', 'object', isObject);
    const layers = this.#typed(value, 'layers', 'object', isObject) ?? {};
    const visits = this.#typed(value, 'visits', 'a path', (v): v is string => typeof v === 'string');
    return {
      ...(title === undefined ? {} : { title }),
      ...(season === undefined ? {} : { season }),
      units: units ?? 'metric',
      settings: settings ?? {},
      layers: this.#layers(layers),
      imagery: this.#imagery(layers.imagery),
      ...(visits === undefined ? {} : { visits }),
    };
  }

  #layers(given: Record<string, unknown>): ProjectFile['layers'] {
    const valid: readonly string[] = [...LAYER_NAMES, 'imagery'];
    const layers: Partial<Record<LayerName, LayerEntry>> = {};
    for (const [name, value] of Object.entries(given)) {
      if (!valid.includes(name)) {
        const facts = { got: name, valid: valid.join(', '), nearest: nearestWord(name, valid) };
        this.findings.push(finding('layer-unknown', 'warning/left_out', this.#place(name), facts));
      } else if (name !== 'imagery' && value !== null) {
        const entry = this.#entry(name as LayerName, value);
        if (entry) layers[name as LayerName] = entry;
      }
    }
    return layers;
  }

  #entry(layer: LayerName, value: unknown): LayerEntry | undefined {
    if (typeof value === 'string') return { path: value };
    if (!isObject(value) || typeof value.path !== 'string') {
      this.#wrong(
        { ...this.#place(`layers.${layer}`), layer },
        'a path, or an object with "path"',
        value,
        'error/stops',
      );
      return undefined;
    }
    this.#unknownKeys(value, ENTRY_KEYS, layer);
    const isText = (v: unknown): v is string => typeof v === 'string';
    const crs = this.#typed(value, 'crs', 'text', isText, layer);
    const table = this.#typed(value, 'table', 'text', isText, layer);
    return {
      path: value.path,
      ...(crs === undefined ? {} : { crs }),
      ...(table === undefined ? {} : { table }),
      ...this.#texts(value, 'fields', layer),
      ...this.#texts(value, 'units', layer),
      ...this.#texts(value, 'types', layer),
    };
  }

  #texts(value: Record<string, unknown>, key: 'fields' | 'units' | 'types', layer: LayerName): object {
    const given = this.#typed(value, key, 'object', isObject, layer);
    if (given === undefined) return {};
    const texts = Object.entries(given).filter(([name, text]) => {
      if (typeof text === 'string') return true;
      this.#wrong({ ...this.#place(`${key}.${name}`), layer }, 'text', text);
      return false;
    });
    return { [key]: Object.fromEntries(texts) };
  }

  #imagery(value: unknown): readonly string[] {
    if (value === undefined || value === null) return [];
    const list = typeof value === 'string' ? [value] : value;
    if (Array.isArray(list) && list.every((path) => typeof path === 'string')) return list;
    this.#wrong(this.#place('layers.imagery'), 'a list of paths', value);
    return [];
  }

  #typed<T>(
    from: Record<string, unknown>,
    key: string,
    expected: string,
    is: (v: unknown) => v is T,
    layer?: LayerName,
  ): T | undefined {
    const value = from[key];
    if (value === undefined || value === null) return undefined;
    if (is(value)) return value;
    this.#wrong({ ...this.#place(key), ...(layer ? { layer } : {}) }, expected, value);
    return undefined;
  }

  #unknownKeys(value: Record<string, unknown>, valid: readonly string[], layer: LayerName | undefined): void {
    for (const key of Object.keys(value)) {
      if (valid.includes(key)) continue;
      const nearest = nearestWord(key, valid);
      const problem = `unknown key "${key}"${nearest ? `; did you mean "${nearest}"?` : ''}`;
      const where = { ...this.#place(key), ...(layer ? { layer } : {}) };
      this.findings.push(
        finding('project-invalid', 'note/left_out', where, { problem, expected: valid.join(', '), got: key }),
      );
    }
  }

  #wrong(
    where: Place,
    expected: string,
    got: unknown,
    grade: 'warning/left_out' | 'error/stops' = 'warning/left_out',
  ): void {
    const shown = (JSON.stringify(got) ?? 'nothing').slice(0, 60);
    const problem = `${where.field ?? 'the file'} is not usable`;
    this.findings.push(finding('project-invalid', grade, where, { problem, expected, got: shown }));
  }

  #place(field: string): Place {
    return { file: this.#file, field };
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
