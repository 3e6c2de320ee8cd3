import type { LonLatGeometry } from '@crownfall/geometry';
import { finding, isMissing, type RawFeature, readNumber } from '@crownfall/survey';
import { gather } from '../byte-stream.ts';
import { decodeText } from '../decode-text.ts';
import { fieldMapping } from '../field-mapping.ts';
import { type FindingSink, findingSink } from '../finding-sink.ts';
import { checkGeometry } from '../geojson/geojson-gate.ts';
import { geometryFromJson } from '../geojson/geometry-from-json.ts';
import { bringToLonLat } from '../layer-in-lonlat.ts';
import { type LayerReading, type LayerSource, placeOf } from '../layer-reading.ts';
import { type CsvTable, csvTable } from './csv-table.ts';
import { geometryColumn, type PositionColumns, positionColumns } from './position-columns.ts';

/** A table is held whole while its columns are judged, in several times its size. */
const LARGEST_TABLE_BYTES = 128 * 1024 * 1024;

/**
 * Reads delimited text into a layer: comma, semicolon, tab or bar; quoted cells; UTF-8 with or without a byte order mark,
 * UTF-16, else windows-1252 (told); decimal commas decided for each column as a whole (told). Positions come from a pair
 * of columns (`lon` and `lat`, or `x` and `y` with a stated CRS) or from a `geometry` column with GeoJSON text; a table
 * with neither has no geometry. Empty cells are no values; row counts as a spreadsheet does, the header being row 1.
 *
 * Never throws for what the file holds. An empty file gives an empty table.
 */
export async function readCsv(source: LayerSource, largestBytes = LARGEST_TABLE_BYTES): Promise<LayerReading> {
  const findings = findingSink();
  const place = placeOf(source);
  const { head, complete, all } = await gather(source.bytes, largestBytes);
  if (!complete) {
    for await (const _ of all); // to its end, for whoever counts and hashes the bytes
    const limit = Math.floor(largestBytes / 1024 / 1024);
    findings.add(finding('file-too-large', 'error/stops', place, { limit_megabytes: limit }));
    return { layer: null, findings: findings.all() };
  }
  const { text, encoding, guessed } = decodeText(head);
  if (guessed) findings.add(finding('encoding-guessed', 'note/assumed', place, { encoding }));
  const mapping = fieldMapping(source.entry, place, findings);
  const table = csvTable(text, { place, findings, mapping, types: source.entry.types ?? {} });
  const layer = layerOf(table, source, findings);
  mapping.finish();
  return { layer, findings: findings.all() };
}

function layerOf(table: CsvTable, source: LayerSource, findings: FindingSink): LayerReading['layer'] {
  const { entry } = source;
  const place = placeOf(source);
  const pair = positionColumns(table.names);
  const drawn = pair === null ? geometryColumn(table.names, table.firstCell) : null;
  const features: RawFeature[] = table.records.map(({ row, values }) => {
    const where = { ...place, row };
    if (pair)
      return {
        row,
        ...withPoint(values, pair, (field, got) =>
          findings.add(finding('field-not-a-number', 'warning/left_out', { ...where, field }, { got })),
        ),
      };
    if (drawn)
      return {
        row,
        ...withGeometry(values, drawn, (problem) =>
          findings.add(finding('geojson-invalid', 'warning/left_out', { ...where, field: drawn }, { problem })),
        ),
      };
    return { row, geometry: { kind: 'none' }, properties: values };
  });
  const layer = { file: entry.path, shape: 'table' as const, features };
  if (!pair && !drawn) return { ...layer, crs: 'OGC:CRS84' };
  const stated = {
    byProject: entry.crs,
    byFile: undefined,
    byFormat: drawn || pair?.sayLonLat ? 'OGC:CRS84' : undefined,
  };
  const crs = bringToLonLat(features, stated, place, findings);
  return crs === null ? null : { ...layer, crs };
}

type Taken = Pick<RawFeature, 'geometry' | 'properties'>;

function withPoint(
  values: RawFeature['properties'],
  pair: PositionColumns,
  bad: (field: string, got: string) => void,
): Taken {
  const { [pair.x]: x, [pair.y]: y, ...properties } = values;
  const [readX, readY] = [readNumber(x), readNumber(y)];
  if (typeof readX === 'object' && typeof readY === 'object') {
    return { geometry: { kind: 'point', points: Float64Array.of(readX.value, readY.value) }, properties };
  }
  if (typeof readX !== 'object' && !isMissing(x)) bad(pair.x, String(x));
  if (typeof readY !== 'object' && !isMissing(y)) bad(pair.y, String(y));
  return { geometry: { kind: 'none' }, properties };
}

function withGeometry(values: RawFeature['properties'], column: string, bad: (problem: string) => void): Taken {
  const { [column]: cell, ...properties } = values;
  if (cell === undefined) return { geometry: { kind: 'none' }, properties };
  let geometry: LonLatGeometry = { kind: 'none' };
  try {
    const value: unknown = typeof cell === 'string' ? JSON.parse(cell) : cell;
    for (const problem of checkGeometry(value).structural) bad(problem);
    geometry = geometryFromJson(value, {
      unclosed: () => bad('a ring does not end where it starts'),
      collectionMixed: (kept) => bad(`a GeometryCollection of several kinds: only ${kept} kept`),
    });
  } catch {
    bad('the cell is not JSON');
  }
  return { geometry, properties };
}
