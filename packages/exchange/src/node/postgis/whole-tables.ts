/** Whole layers and results in one pass: portions of rows as JSON, one statement each. */
import type { LonLatGeometry } from '@crownfall/geometry';
import type { LayerName } from '@crownfall/survey';
import { contractFields } from '../../store/layer-fields.ts';
import type { LayerImport, Properties, RecordQuery, ResultPage, ResultTable } from '../../store/project-store.ts';
import { pageLimit } from '../../store/record-limits.ts';
import { boxCondition } from './find-records.ts';
import { columnsOf, geometryOfWkb, tableOf } from './record-sql.ts';
import { quoted } from './schema-sql.ts';
import type { Query } from './sql-session.ts';

const PORTION = 1000;

/** Replaces a layer; record numbers go on from those used before. */
export async function importLayer(query: Query, { layer, features }: LayerImport): Promise<number> {
  await query(`DELETE FROM ${tableOf(layer)}`);
  await query('INSERT INTO crownfall.given_layers VALUES ($1) ON CONFLICT DO NOTHING', [layer]);
  let count = 0;
  for await (const portion of features) {
    for (let from = 0; from < portion.length; from += PORTION) {
      const rows = portion
        .slice(from, from + PORTION)
        .map((feature) => layerRow(layer, feature.geometry, feature.properties));
      await insertLayerRows(query, layer, rows);
      count += rows.length;
    }
  }
  await query("SELECT crownfall.note($1, 0, 'import', 0, NULL, NULL, NULL)", [layer]);
  return count;
}

function layerRow(layer: LayerName, geometry: LonLatGeometry, properties: Properties): object {
  const { names, values } = columnsOf(layer, geometry, properties);
  const given = names.slice(3).map((name, i) => [name, values[i + 3]]);
  return { ...geometryFields(values), crownfall_properties: properties, ...Object.fromEntries(given) };
}

const geometryFields = ([geom, unfit]: readonly unknown[]): object => ({
  crownfall_geom: (geom as Buffer | null)?.toString('hex') ?? null,
  crownfall_unfit: (unfit as Buffer | null)?.toString('hex') ?? null,
});

async function insertLayerRows(query: Query, layer: LayerName, rows: readonly object[]): Promise<void> {
  const names = contractFields(layer).map(({ name }) => quoted(name));
  const typed = contractFields(layer).map(({ name, type }) => `${quoted(name)} ${JSON_TYPES[type] ?? 'text'}`);
  await query(
    `INSERT INTO ${tableOf(layer)} (geom, unfit, properties${names.map((name) => `, ${name}`).join('')})
     SELECT ST_GeomFromWKB(decode(crownfall_geom, 'hex'), 4326), decode(crownfall_unfit, 'hex'), crownfall_properties
     ${names.map((name) => `, ${name}`).join('')}
     FROM json_to_recordset($1::json)
     AS row(crownfall_geom text, crownfall_unfit text, crownfall_properties json${typed.map((each) => `, ${each}`).join('')})`,
    [JSON.stringify(rows)],
  );
}

const JSON_TYPES: Readonly<Record<string, string>> = {
  number: 'double precision',
  integer: 'bigint',
  boolean: 'boolean',
  day: 'date',
};

export async function saveResults(query: Query, tables: readonly ResultTable[]): Promise<void> {
  await query('DELETE FROM crownfall.results');
  await query('DELETE FROM crownfall.result_tables');
  for (const { name, rows } of tables) {
    if (!/^[a-z0-9_]+$/.test(name))
      throw new RangeError(`result table: expected lower-case letters, digits, underscores, got ${name}`);
    await query('INSERT INTO crownfall.result_tables VALUES ($1)', [name]);
    let id = 0;
    let portion: object[] = [];
    for (const { geometry, properties } of rows) {
      const { values } = columnsOf('streets', geometry, {});
      portion.push({ ...geometryFields(values), id: ++id, properties });
      if (portion.length === PORTION) {
        await insertResults(query, name, portion);
        portion = [];
      }
    }
    await insertResults(query, name, portion);
  }
  await query("SELECT crownfall.note('results', 0, 'replace', 0, NULL, NULL, NULL)");
}

async function insertResults(query: Query, name: string, rows: readonly object[]): Promise<void> {
  await query(
    `INSERT INTO crownfall.results SELECT $1, id, ST_GeomFromWKB(decode(crownfall_geom, 'hex'), 4326), decode(crownfall_unfit, 'hex'), properties
     FROM json_to_recordset($2::json) AS row(crownfall_geom text, crownfall_unfit text, id bigint, properties json)`,
    [name, JSON.stringify(rows)],
  );
}

export async function findResults(
  query: Query,
  name: string,
  wish: Pick<RecordQuery, 'bbox' | 'ids' | 'after' | 'limit'>,
): Promise<ResultPage> {
  const limit = pageLimit(wish.limit);
  const values: unknown[] = [name, wish.after ?? 0];
  const parts = ['name = $1', 'result_id > $2'];
  if (wish.ids !== undefined) {
    values.push(wish.ids);
    parts.push(`result_id = ANY($${values.length}::bigint[])`);
  }
  if (wish.bbox !== undefined) parts.push(boxCondition(wish.bbox, values));
  const found = await query(
    `SELECT result_id, coalesce(unfit, ST_AsBinary(geom, 'NDR')) AS wkb, properties FROM crownfall.results
     WHERE ${parts.join(' AND ')} ORDER BY result_id LIMIT ${limit + 1}`,
    values,
  );
  const rows = found.slice(0, limit).map((row) => ({
    resultId: row.result_id as number,
    geometry: geometryOfWkb(row.wkb as Uint8Array | null),
    properties: row.properties as Properties,
  }));
  return { rows, next: found.length > limit ? rows[limit - 1].resultId : null };
}
