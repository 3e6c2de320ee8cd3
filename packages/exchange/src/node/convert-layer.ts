import { basename, dirname, extname, resolve } from 'node:path';
import type { LayerName, RawFeature } from '@crownfall/survey';
import { type LayerProfile, layerProfiler } from '../formats/layer-profile.ts';
import { type LayerStream, type LayerStreamEnd, streamLayer } from '../formats/stream-layer.ts';
import { NEEDS_PROFILE, writeLayer } from '../formats/write-layer.ts';
import type { RoundCoordinate } from '../geojson/geometry-to-json.ts';
import { isLonLat } from '../layer-in-lonlat.ts';
import type { LayerEntry } from '../layer-reading.ts';
import { writtenFormat } from '../project/layer-format.ts';
import { degree } from '../round.ts';
import type { ConvertReport } from './convert-project.ts';
import { layerFile } from './layer-file.ts';
import { mustBeNew, wholeFile } from './store/whole-file.ts';
import { writeGeoPackageLayer } from './store/write-geopackage-layer.ts';
import { writeFiles } from './write-files.ts';

export interface ConvertLayerOptions extends Pick<LayerEntry, 'crs' | 'fields' | 'units' | 'types' | 'table'> {
  /** Which layer of a project it is, so that findings name its features. */
  readonly layer?: LayerName;
  /** Told after each batch how many features have passed. */
  readonly onCount?: (count: number) => void;
}

/**
 * Copies one layer's file into another format, by the new file's name (.geojson, .geojsonl, .csv, .fgb, .parquet, .gpkg), without
 * ever holding it: formats with typed columns read the file twice. Longitude and latitude, our field names where `fields`
 * maps them, every further field kept. Nothing is written when the data has errors. Throws a `RangeError` for a name of
 * no format that is written and for a GeoPackage that exists, an `Outage` when the disk fails.
 */
export async function convertLayer(
  from: string,
  to: string,
  options: ConvertLayerOptions = {},
): Promise<ConvertReport & { readonly count: number }> {
  const format = isGeoPackage(to) ? 'geopackage' : writtenFormat(to);
  if (format === null)
    throw new RangeError(`expected a name ending in .geojson, .geojsonl, .csv, .fgb, .parquet, .gpkg: ${to}`);
  if (resolve(from) === resolve(to)) throw new RangeError(`expected another file to convert into, got ${to}`);
  if (format === 'geopackage') await mustBeNew(to);
  const profiler = layerProfiler();
  if (format === 'geopackage' || NEEDS_PROFILE.has(format)) {
    const end = await lookedOver(from, options, profiler);
    if (isStopping(end)) return { files: [], count: 0, findings: end.findings };
  }
  const passage = new Passage(from, options);
  const name = basename(to);
  const profile = profiler.profile();
  const layerName = basename(to, extname(to));
  try {
    if (format === 'geopackage') await wholeFile(to, (stage) => intoGeoPackage(stage, passage, profile, layerName));
    else {
      const text = passage.pieces((batches, round) => writeLayer(format, batches, { profile, name: layerName, round }));
      await writeFiles(dirname(resolve(to)), [{ name, text }]);
    }
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
  }
  const { findings, count } = passage.end();
  const stopped = isStopping(passage.end());
  return { files: stopped ? [] : [name], count: stopped ? 0 : count, findings };
}

const isGeoPackage = (path: string): boolean => /\.gpkg$/i.test(path);

async function intoGeoPackage(stage: string, passage: Passage, profile: LayerProfile, name: string): Promise<void> {
  async function* write(batches: LayerStream['batches']): AsyncGenerator<string> {
    yield '';
    await writeGeoPackageLayer(stage, batches, { profile, name });
  }
  for await (const _ of passage.pieces(write));
}

/** Thrown amid writing to leave the old file in place; what was wrong is in the findings. */
class Stopped extends Error {}

/** One reading of a layer from its first feature to its last. */
class Passage {
  readonly #from: string;
  readonly #options: ConvertLayerOptions;
  #end: LayerStreamEnd | null = null;

  constructor(from: string, options: ConvertLayerOptions) {
    this.#from = from;
    this.#options = options;
  }

  async *pieces(
    write: (batches: LayerStream['batches'], round: RoundCoordinate) => AsyncIterable<string | Uint8Array>,
  ) {
    const { crs, fields, units, types, table, layer, onCount } = this.#options;
    const entry: LayerEntry = { path: basename(this.#from), ...present({ crs, fields, units, types, table }) };
    const file = await layerFile(this.#from, entry);
    try {
      const stream = streamLayer({ ...file.source, ...present({ layer }) });
      // Positions that came in longitude and latitude keep every digit; which ones did is known with the first of them.
      const round: RoundCoordinate = (value) => (isLonLat(stream.crs() ?? '') ? exact(value) : degree(value));
      yield* write(counted(stream.batches, onCount), round);
      this.#end = stream.end();
    } finally {
      await file.close();
    }
    if (isStopping(this.#end)) throw new Stopped();
  }

  end(): LayerStreamEnd {
    if (this.#end === null) throw new RangeError('expected the layer to have been read');
    return this.#end;
  }
}

/** Reads a layer once only to learn its columns and its extent. */
async function lookedOver(
  from: string,
  options: ConvertLayerOptions,
  profiler: ReturnType<typeof layerProfiler>,
): Promise<LayerStreamEnd> {
  const passage = new Passage(from, { ...options, onCount: () => {} });
  async function* look(batches: LayerStream['batches']): AsyncGenerator<string> {
    for await (const batch of batches) profiler.add(batch);
    yield '';
  }
  try {
    for await (const _ of passage.pieces(look));
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
  }
  return passage.end();
}

async function* counted(
  batches: LayerStream['batches'],
  onCount: ((count: number) => void) | undefined,
): LayerStream['batches'] & AsyncGenerator<readonly RawFeature[]> {
  let count = 0;
  for await (const batch of batches) {
    yield batch;
    count += batch.length;
    onCount?.(count);
  }
}

function isStopping({ crs, findings }: LayerStreamEnd): boolean {
  return crs === null || findings.some(({ severity }) => severity === 'error');
}

const exact = (value: number): number | null => (Number.isFinite(value) ? value : null);

function present<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const given = Object.entries(values).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as { [K in keyof T]?: Exclude<T[K], undefined> };
}
