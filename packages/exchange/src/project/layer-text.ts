import type { Finding, LonLatGeometry } from '@crownfall/geometry';
import { finding, type LayerName, type RawFeature, type RawLayer } from '@crownfall/survey';
import { cellValue, columnReading } from '../csv/column-values.ts';
import { geometryColumn, positionColumns } from '../csv/position-columns.ts';
import { writeCsv } from '../csv/write-csv.ts';
import { layerProfiler } from '../formats/layer-profile.ts';
import { type FilePieces, writeLayer } from '../formats/write-layer.ts';
import { writeGeoJson } from '../geojson/write-geojson.ts';
import { isLonLat } from '../layer-in-lonlat.ts';
import { featureName, type LayerEntry } from '../layer-reading.ts';
import { coordinateArrays } from '../positions.ts';
import { degree } from '../round.ts';
import { WRITTEN_EXTENSIONS, type WrittenFormat } from './layer-format.ts';

/** A layer written: its entry for project.json, its text, and what could not be carried over. */
export interface LayerText {
  readonly entry: LayerEntry;
  readonly text: FilePieces;
  readonly findings: readonly Finding[];
}

/**
 * A layer as a file of the wanted format, so that reading it gives the layer again, extras and all. Coordinates that were
 * longitude and latitude keep every digit, others get 9 decimals; rings are wound by RFC 7946. A table without positions
 * is always delimited text; a layer that delimited text cannot hold stays GeoJSON, and a finding says so.
 */
export function layerText(name: LayerName, layer: RawLayer, wanted: WrittenFormat): LayerText {
  const round = isLonLat(layer.crs) ? exact : degree;
  const lost = unwritable(name, layer);
  const bare = layer.features.every(({ geometry }) => geometry.kind === 'none');
  const table = bare && layer.shape === 'table' ? 'csv' : wanted;
  if (table === 'csv') {
    const obstacle = csvObstacle(layer);
    if (obstacle === null) return { ...csvText(name, layer.features, bare, round), findings: lost };
    const where = { layer: name, file: layer.file };
    const facts = { got: obstacle, expected: 'single points, for delimited text; written as GeoJSON' };
    lost.push(finding('geometry-unexpected', 'note/kept', where, facts));
  }
  if (table === 'flatgeobuf' || table === 'geoparquet') {
    return { ...typedFile(name, layer.features, table, round), findings: lost };
  }
  const as = table === 'geojsonl' ? 'sequence' : 'collection';
  const path = `${name}.${table === 'geojsonl' ? 'geojsonl' : 'geojson'}`;
  return { entry: { path }, text: writeGeoJson(layer.features, { as, round }), findings: lost };
}

function typedFile(
  name: LayerName,
  features: readonly RawFeature[],
  format: 'flatgeobuf' | 'geoparquet',
  round: (value: number) => number | null,
): Pick<LayerText, 'entry' | 'text'> {
  const profiler = layerProfiler();
  profiler.add(features);
  async function* once(): AsyncGenerator<readonly RawFeature[]> {
    yield features;
  }
  const text = writeLayer(format, once(), { profile: profiler.profile(), name, round });
  return { entry: { path: `${name}.${WRITTEN_EXTENSIONS[format]}` }, text };
}

const exact = (value: number): number | null => (Number.isFinite(value) ? value : null);

function csvObstacle({ features }: RawLayer): string | null {
  const odd = features.find(({ geometry }) => geometry.kind !== 'none' && !isSinglePoint(geometry));
  if (odd) return odd.geometry.kind === 'point' ? 'several points' : odd.geometry.kind;
  const names = columnNames(features);
  const misread = positionColumns(names) !== null || geometryColumn(names, () => '{"') !== null;
  return misread || names.includes('lon') || names.includes('lat') ? 'fields named like positions' : null;
}

function isSinglePoint(geometry: LonLatGeometry): boolean {
  return geometry.kind === 'point' && geometry.points.length === 2;
}

function csvText(
  name: LayerName,
  features: readonly RawFeature[],
  bare: boolean,
  round: (value: number) => number | null,
): Pick<LayerText, 'entry' | 'text'> {
  const types: Record<string, 'text' | 'json'> = {};
  const columns = columnNames(features);
  for (const column of columns) {
    const type = typeNeeded(
      column,
      features.map(({ properties }) => properties[column]),
    );
    if (type) types[column] = type;
  }
  function* records(): Generator<Record<string, unknown>> {
    for (const { geometry, properties } of features) {
      const [lon, lat] = geometry.kind === 'point' ? [...geometry.points].map(round) : [];
      const cells = columns.map((column) => [column, cellOf(properties[column], types[column])]);
      yield { ...(bare ? {} : { lon, lat }), ...Object.fromEntries(cells) };
    }
  }
  const path = `${name}.csv`;
  return {
    entry: Object.keys(types).length === 0 ? { path } : { path, types },
    text: writeCsv(bare ? columns : ['lon', 'lat', ...columns], records()),
  };
}

function columnNames(features: readonly RawFeature[]): string[] {
  const names = new Set<string>();
  for (const { properties } of features) for (const name of Object.keys(properties)) names.add(name);
  return [...names];
}

function cellOf(value: unknown, type: 'text' | 'json' | undefined): unknown {
  return type === 'json' && value !== undefined ? JSON.stringify(value) : value;
}

/** The type a column must be read as to give its values again; `undefined` when it does so by itself. */
function typeNeeded(column: string, values: readonly unknown[]): 'text' | 'json' | undefined {
  for (const type of [undefined, 'text'] as const) {
    const cells = values.map((value) => (value === undefined || value === null ? '' : String(value)));
    const reading = columnReading(column, cells, type);
    if (values.every((value, i) => cellValue(cells[i], reading) === value)) return type;
  }
  return 'json';
}

/** Features whose geometry no valid file can hold. */
function unwritable(name: LayerName, layer: RawLayer): Finding[] {
  return layer.features.flatMap(({ geometry, properties, row }) => {
    if (coordinateArrays(geometry).every((flat) => flat.every(Number.isFinite))) return [];
    const where = { layer: name, file: layer.file, feature: featureName(name, properties, row) };
    return [finding('coordinates-not-finite', 'warning/left_out', where, {})];
  });
}
