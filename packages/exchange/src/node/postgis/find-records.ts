/** Finding records by place, number, field and day. */
import type { LayerName } from '@crownfall/survey';
import { columnValue, contractFields } from '../../store/layer-fields.ts';
import type { LonLatBox, RecordPage, RecordQuery } from '../../store/project-store.ts';
import { checkedBox, pageLimit } from '../../store/record-limits.ts';
import { RECORD_COLUMNS, recordOf, tableOf } from './record-sql.ts';
import { quoted } from './schema-sql.ts';
import type { Query } from './sql-session.ts';

export async function findRecords(query: Query, layer: LayerName, wish: RecordQuery): Promise<RecordPage> {
  const limit = pageLimit(wish.limit);
  const { where, values } = condition(layer, wish);
  const rows = await query(
    `SELECT ${RECORD_COLUMNS} FROM ${tableOf(layer)} WHERE ${where} ORDER BY record_id LIMIT ${limit + 1}`,
    values,
  );
  const records = rows.slice(0, limit).map((row) => recordOf(layer, row));
  return { records, next: rows.length > limit ? (records[limit - 1].recordId as number) : null };
}

export async function countRecords(
  query: Query,
  layer: LayerName,
  wish: Omit<RecordQuery, 'after' | 'limit'>,
): Promise<number> {
  const { where, values } = condition(layer, wish);
  const [row] = await query(`SELECT count(*) AS count FROM ${tableOf(layer)} WHERE ${where}`, values);
  return row.count as number;
}

/** A condition on `geom`; west greater than east crosses the 180th meridian. Values are appended. */
export function boxCondition(bbox: LonLatBox, values: unknown[]): string {
  const [west, south, east, north] = checkedBox(bbox);
  const halves =
    west <= east
      ? [[west, east]]
      : [
          [west, 180],
          [-180, east],
        ];
  const meets = halves.map(([from, to]) => {
    values.push(from, south, to, north);
    const [w, so, e, n] = [3, 2, 1, 0].map((back) => `$${values.length - back}::float8`);
    // A box without width is a line or a point: as a polygon it would meet nothing.
    const box = `ST_SetSRID(ST_Envelope(ST_MakeLine(ST_MakePoint(${w}, ${so}), ST_MakePoint(${e}, ${n}))), 4326)`;
    return `(geom && ${box} AND ST_Intersects(geom, ${box}))`;
  });
  return `(${meets.join(' OR ')})`;
}

function condition(layer: LayerName, wish: RecordQuery): { where: string; values: unknown[] } {
  const values: unknown[] = [];
  const parts = ['true'];
  if (wish.bbox !== undefined) {
    const meets = boxCondition(wish.bbox, values);
    parts.push(wish.placeless === true ? `(${meets} OR (geom IS NULL AND unfit IS NULL))` : meets);
  }
  if (wish.ids !== undefined) {
    values.push(wish.ids);
    parts.push(`record_id = ANY($${values.length}::bigint[])`);
  }
  if (wish.after !== undefined) {
    values.push(wish.after);
    parts.push(`record_id > $${values.length}`);
  }
  for (const [field, value] of Object.entries(wish.where ?? {})) parts.push(holds(layer, field, value, values));
  if (wish.days !== undefined) parts.push(dayCondition(layer, wish.days, values));
  return { where: parts.join(' AND '), values };
}

/** By its column where the layer has one that can hold the value; else in the properties, as the same JSON. */
function holds(layer: LayerName, field: string, value: string | number, values: unknown[]): string {
  const column = contractFields(layer).find(({ name }) => name === field);
  const stored = column && columnValue(value, column.type);
  if (column !== undefined && stored !== undefined) {
    values.push(stored);
    return `${quoted(field)} = $${values.length}`;
  }
  values.push(field, JSON.stringify(value));
  return `(properties -> $${values.length - 1})::text = $${values.length}`;
}

function dayCondition(
  layer: LayerName,
  { field, from, to }: NonNullable<RecordQuery['days']>,
  values: unknown[],
): string {
  const isColumn = contractFields(layer).some(({ name, type }) => name === field && type === 'day');
  if (!isColumn) values.push(field);
  const day = isColumn ? `${quoted(field)}::text` : `(properties ->> $${values.length})`;
  const ends = [
    ...(from === undefined ? [] : [[`${day} >= `, from]]),
    ...(to === undefined ? [] : [[`left(${day}, 10) <= `, to]]),
  ].map(([text, end]) => {
    values.push(end);
    return `${text}$${values.length}`;
  });
  return ends.length === 0 ? 'true' : `(${day} IS NULL OR (${ends.join(' AND ')}))`;
}
