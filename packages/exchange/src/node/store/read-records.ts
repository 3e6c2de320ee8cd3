import type { LonLatGeometry } from '@crownfall/geometry';
import { LAYER_NAMES } from '@crownfall/survey';
import { geometryMeetsBox } from '../../store/geopackage/geometry-meets-box.ts';
import type {
  LayerSummary,
  LonLatBox,
  RecordPage,
  RecordQuery,
  ResultPage,
  StoredRecord,
} from '../../store/project-store.ts';
import { checkedBox, pageLimit } from '../../store/record-limits.ts';
import { type LayerTable, readLayerTable, rtreeName } from './layer-table.ts';
import { geometryOf, type RecordRow, recordColumns, recordOf, type Shape } from './record-rows.ts';
import { rtreeExtent } from './rtree-extent.ts';
import { literal, quoted } from './sql-names.ts';
import type { Connection } from './sqlite-module.ts';

/** Told of a geometry that another program wrote and that cannot be read: the record counts as without one. */
export type OnUnreadable = (recordId: number, problem: string) => void;

/** Reads records of one file: knows its tables and shapes, and looks at them again when they have changed. */
export class RecordReader {
  readonly #db: Connection;
  readonly #onUnreadable: OnUnreadable;
  readonly #tables = new Map<string, LayerTable>();
  readonly #shapes = new Map<number, Shape>();
  readonly #usual = new Map<string, Shape | null>();
  #schema = -1;
  #data = -1;

  constructor(db: Connection, onUnreadable: OnUnreadable = () => {}) {
    this.#db = db;
    this.#onUnreadable = onUnreadable;
  }

  table(name: string): LayerTable {
    this.#refresh();
    const known = this.#tables.get(name);
    if (known) return known;
    const table = readLayerTable(this.#db, name);
    if (table === null) throw new RangeError(`expected one of the tables ${LAYER_NAMES.join(', ')}, got ${name}`);
    this.#tables.set(name, table);
    return table;
  }

  page(layer: string, query: RecordQuery): RecordPage {
    const limit = pageLimit(query.limit);
    const records: StoredRecord[] = [];
    for (const record of this.#matching(layer, query)) {
      if (records.length === limit) return { records, next: records[limit - 1].recordId };
      records.push(record);
    }
    return { records, next: null };
  }

  resultPage(name: string, query: RecordQuery): ResultPage {
    const { records, next } = this.page(name, query);
    const rows = records.map(({ recordId, geometry, properties }) => ({ resultId: recordId, geometry, properties }));
    return { rows, next };
  }

  count(layer: string, query: RecordQuery): number {
    const table = this.table(layer);
    if (query.bbox === undefined) {
      const { where, values } = conditions(table, query, this.#db);
      return this.#db
        .prepare(`SELECT count(*) FROM ${quoted(table.name)} t WHERE ${where}`)
        .pluck()
        .get(...values) as number;
    }
    let count = 0;
    for (const _ of this.#matching(layer, query)) count++;
    return count;
  }

  record(layer: string, recordId: number): StoredRecord | null {
    return this.page(layer, { ids: [recordId], limit: 1 }).records[0] ?? null;
  }

  *#matching(layer: string, query: RecordQuery): Generator<StoredRecord> {
    const table = this.table(layer);
    const { bbox } = query;
    for (const row of this.#rows(table, query)) {
      if (bbox !== undefined && !meetsBox(row, query, bbox)) continue;
      yield this.#recordOf(table, row);
    }
  }

  #rows(table: LayerTable, query: RecordQuery): Iterable<RecordRow> {
    const { where, values } = conditions(table, query, this.#db);
    const sql =
      `SELECT ${recordColumns(table)} FROM ${quoted(table.name)} t ` +
      `LEFT JOIN crownfall_records r ON r.layer = ${literal(table.name)} AND r.fid = t.fid WHERE ${where} ORDER BY t.fid`;
    return this.#db
      .prepare(sql)
      .raw()
      .iterate(...values) as Iterable<RecordRow>;
  }

  #recordOf(table: LayerTable, row: RecordRow): StoredRecord {
    const tools = {
      shapeOf: (shape: number | null) => this.#shapeOf(table.name, shape),
      onUnreadable: this.#onUnreadable,
    };
    return recordOf(table, row, tools);
  }

  #shapeOf(layer: string, shape: number | null): Shape | null {
    if (shape === null) return this.#usualShape(layer);
    const known = this.#shapes.get(shape);
    if (known) return known;
    const text = this.#db.prepare('SELECT fields FROM crownfall_shapes WHERE shape = ?').pluck().get(shape);
    if (typeof text !== 'string') return null;
    const read = JSON.parse(text) as Shape;
    this.#shapes.set(shape, read);
    return read;
  }

  #usualShape(layer: string): Shape | null {
    const known = this.#usual.get(layer);
    if (known !== undefined) return known;
    const shape = this.#db.prepare('SELECT shape FROM crownfall_layers WHERE layer = ?').pluck().get(layer);
    const usual = typeof shape === 'number' ? this.#shapeOf(layer, shape) : null;
    this.#usual.set(layer, usual);
    return usual;
  }

  /** To be called after this connection itself has changed tables or shapes. */
  forget(): void {
    this.#tables.clear();
    this.#usual.clear();
  }

  /** Another program may have added a column, another process imported a layer. */
  #refresh(): void {
    const schema = this.#db.pragma('schema_version', { simple: true }) as number;
    const data = this.#db.pragma('data_version', { simple: true }) as number;
    if (schema !== this.#schema) this.#tables.clear();
    if (data !== this.#data || schema !== this.#schema) this.#usual.clear();
    this.#schema = schema;
    this.#data = data;
  }
}

function meetsBox(row: RecordRow, { placeless }: RecordQuery, bbox: LonLatBox): boolean {
  const geometry = geometryOf(row[3]);
  return isPlaceless(geometry) ? placeless === true : geometryMeetsBox(geometry, bbox);
}

function isPlaceless(geometry: LonLatGeometry): boolean {
  return geometry.kind === 'none';
}

interface Conditions {
  readonly where: string;
  readonly values: readonly (string | number)[];
}

/** The query as SQL over the table as `t`; a box only as far as the R-tree can tell. */
function conditions(table: LayerTable, query: RecordQuery, db: Connection): Conditions {
  const parts = [
    afterNumber(query),
    ofNumbers(query),
    ofValues(table, query),
    ofDays(table, query),
    nearBox(table, query, db),
  ];
  const given = parts.filter((part) => part !== null);
  return {
    where: given.map(({ where }) => where).join(' AND ') || 'true',
    values: given.flatMap(({ values }) => values),
  };
}

function afterNumber({ after }: RecordQuery): Conditions | null {
  return after === undefined || after <= 0 ? null : { where: 't.fid > ?', values: [after] };
}

function ofNumbers({ ids }: RecordQuery): Conditions | null {
  if (ids === undefined) return null;
  return { where: 't.fid IN (SELECT value FROM json_each(?))', values: [JSON.stringify(ids)] };
}

function ofValues(table: LayerTable, { where }: RecordQuery): Conditions | null {
  const wanted = Object.entries(where ?? {});
  if (wanted.length === 0) return null;
  const parts = wanted.map(([name]) =>
    hasField(table, name) ? `t.${quoted(name)} = ?` : 'json_extract(t.extra, ?) = ?',
  );
  const values = wanted.flatMap(([name, value]) =>
    hasField(table, name) ? [value] : [`$.${JSON.stringify(name)}`, value],
  );
  return { where: parts.join(' AND '), values };
}

function hasField({ fields }: LayerTable, name: string): boolean {
  return fields.some((field) => field.name === name);
}

function ofDays(table: LayerTable, { days }: RecordQuery): Conditions | null {
  if (days === undefined || !hasField(table, days.field)) return null;
  const column = `t.${quoted(days.field)}`;
  const from = days.from === undefined ? [] : [{ where: `${column} >= ?`, value: days.from }];
  // Every text of that day, an instant on it included, comes before this.
  const to = days.to === undefined ? [] : [{ where: `${column} < ?`, value: `${days.to}~` }];
  const both = [...from, ...to];
  if (both.length === 0) return null;
  return {
    where: `(${column} IS NULL OR (${both.map(({ where }) => where).join(' AND ')}))`,
    values: both.map(({ value }) => value),
  };
}

function nearBox(table: LayerTable, { bbox, placeless }: RecordQuery, db: Connection): Conditions | null {
  if (bbox === undefined) return null;
  const [west, south, east, north] = checkedBox(bbox);
  if (table.geometry === null) return { where: placeless ? 'true' : 'false', values: [] };
  // A box around everything is answered in order of number, without gathering all of the index first.
  const extent = rtreeExtent(db, rtreeName(table.name));
  const all = extent && west <= extent[0] && south <= extent[1] && east >= extent[2] && north >= extent[3];
  if (all) return { where: placeless ? 'true' : `t.${quoted(table.geometry)} IS NOT NULL`, values: [] };
  const boxes =
    west <= east
      ? [[west, east]]
      : [
          [west, 180],
          [-180, east],
        ];
  const inBox = 'maxx >= ? AND minx <= ? AND maxy >= ? AND miny <= ?';
  const near = boxes.map(() => `SELECT id FROM ${quoted(rtreeName(table.name))} WHERE ${inBox}`).join(' UNION ');
  const alone = placeless ? ` OR t.${quoted(table.geometry)} IS NULL` : '';
  return { where: `(t.fid IN (${near})${alone})`, values: boxes.flatMap(([from, to]) => [from, to, south, north]) };
}

interface LayerRow {
  readonly layer: string;
  readonly given: number;
  readonly kind: 'features' | 'table';
}

/** All layers as they stand. */
export function layerSummaries(db: Connection, reader: RecordReader): LayerSummary[] {
  const rows = db.prepare('SELECT layer, given, kind FROM crownfall_layers').all() as LayerRow[];
  const known = new Map(rows.map((row) => [row.layer, row]));
  return LAYER_NAMES.map((layer) => {
    const { geometry, fields } = reader.table(layer);
    const count = reader.count(layer, {});
    return {
      layer,
      shape: known.get(layer)?.kind ?? 'features',
      given: known.get(layer)?.given === 1 || count > 0,
      count,
      extent: geometry === null ? null : rtreeExtent(db, rtreeName(layer)),
      fields: fields.map(({ name, type }) => ({ name, type })),
    };
  });
}
