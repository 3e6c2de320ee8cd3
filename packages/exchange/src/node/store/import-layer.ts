import type { LayerName, RawFeature } from '@crownfall/survey';
import { extentOf, geometryBlob } from '../../store/geopackage/geometry-blob.ts';
import { contractFields, fittingType } from '../../store/layer-fields.ts';
import type { LayerImport, Properties } from '../../store/project-store.ts';
import {
  addColumn,
  canBeColumn,
  EXTRA_COLUMN,
  GEOMETRY_COLUMN,
  type LayerTable,
  MOST_FURTHER_COLUMNS,
  makePlaced,
  readLayerTable,
  rtreeName,
  setExtent,
} from './layer-table.ts';
import { dropTriggers, setTriggers } from './layer-triggers.ts';
import { columnValues, followsShape, ownShape, type Shape, usualShape } from './record-rows.ts';
import { quoted } from './sql-names.ts';
import type { Connection, Statement } from './sqlite-module.ts';

/** So many features decide which further fields become columns, of which type, and the usual order of fields. */
const SAMPLE = 5000;

/**
 * Puts features into a layer's table in place of what is there, inside the caller's transaction, and gives their count.
 * Numbers of records follow the rows of the file as far as they rise. Memory holds a sample and one portion.
 */
export async function importLayer(db: Connection, source: LayerImport): Promise<number> {
  const { sample, rest } = await sampled(source.features);
  const layer = emptied(db, source.layer);
  const table = withColumns(db, layer, sample);
  const shape = usualShape(sample.map(({ properties }) => properties));
  const writer = new LayerWriter(db, table, shape);
  for (const feature of sample) writer.add(feature);
  for await (const portion of rest) for (const feature of portion) writer.add(feature);
  writer.finish();
  setTriggers(db, table);
  db.prepare('UPDATE crownfall_layers SET given = 1, kind = ?, shape = ? WHERE layer = ?').run(
    source.shape,
    internedShape(db, shape),
    source.layer,
  );
  return writer.count;
}

type Portions = AsyncIterable<readonly RawFeature[]>;

async function sampled(features: LayerImport['features']): Promise<{ sample: readonly RawFeature[]; rest: Portions }> {
  const portions = portionsOf(features);
  const sample: RawFeature[] = [];
  while (sample.length < SAMPLE) {
    const next = await portions.next();
    if (next.done) break;
    sample.push(...next.value);
  }
  return { sample, rest: portions };
}

async function* portionsOf(features: LayerImport['features']): AsyncGenerator<readonly RawFeature[]> {
  yield* features;
}

function emptied(db: Connection, name: string): LayerTable {
  const table = readLayerTable(db, name);
  if (table === null) throw new RangeError(`expected a layer, got ${name}`);
  dropTriggers(db, table);
  db.exec(`DELETE FROM ${quoted(name)}`);
  if (table.geometry !== null) db.exec(`DELETE FROM ${quoted(rtreeName(name))}`);
  return table;
}

/** The table with a column for every further field of the sample whose values are all of one type. */
function withColumns(db: Connection, table: LayerTable, sample: readonly RawFeature[]): LayerTable {
  if (table.geometry === null && sample.some(({ geometry }) => geometry.kind !== 'none')) makePlaced(db, table.name);
  const taken = new Set(table.fields.map(({ name }) => name.toLowerCase()));
  const names = new Set(sample.flatMap(({ properties }) => Object.keys(properties)));
  let room = MOST_FURTHER_COLUMNS - (table.fields.length - contractFields(table.name as LayerName).length);
  for (const name of names) {
    if (room <= 0 || !canBeColumn(name, taken)) continue;
    const type = fittingType(sample.map(({ properties }) => properties[name]));
    if (type === null) continue;
    addColumn(db, table.name, { name, type });
    taken.add(name.toLowerCase());
    room--;
  }
  return readLayerTable(db, table.name) ?? table;
}

/** Writes features to a table without triggers, and to its R-tree. */
class LayerWriter {
  count = 0;
  readonly #db: Connection;
  readonly #table: LayerTable;
  readonly #shape: Shape;
  readonly #insert: Statement<unknown[]>;
  readonly #index: Statement<unknown[]> | null;
  readonly #shapes = new Map<string, number>();
  readonly #extent: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  #last: number;

  constructor(db: Connection, table: LayerTable, shape: Shape) {
    this.#db = db;
    this.#table = table;
    this.#shape = shape;
    const names = [
      'fid',
      ...(table.geometry === null ? [] : [GEOMETRY_COLUMN]),
      ...table.fields.map(({ name }) => name),
      EXTRA_COLUMN,
    ];
    const places = names.map(() => '?').join(', ');
    this.#insert = db.prepare(`INSERT INTO ${quoted(table.name)} (${names.map(quoted).join(', ')}) VALUES (${places})`);
    this.#index =
      table.geometry === null
        ? null
        : db.prepare(`INSERT INTO ${quoted(rtreeName(table.name))} VALUES (?, ?, ?, ?, ?)`);
    this.#last =
      (db.prepare('SELECT seq FROM sqlite_sequence WHERE name = ?').pluck().get(table.name) as number | undefined) ?? 0;
  }

  add({ row, geometry, properties }: RawFeature): void {
    const fid = Number.isSafeInteger(row) && row > this.#last ? row : this.#last + 1;
    this.#last = fid;
    this.count++;
    const { columns, extra } = columnValues(this.#table, properties);
    const blob = this.#index === null ? [] : [geometryBlob(geometry)];
    this.#insert.run([fid, ...blob, ...columns, extra]);
    const box = this.#index === null ? null : extentOf(geometry);
    if (box !== null) {
      this.#index?.run(fid, ...box);
      this.#widen(box);
    }
    if (!followsShape(properties, this.#shape)) this.#setShape(fid, properties);
  }

  finish(): void {
    if (this.#extent[0] <= this.#extent[2]) setExtent(this.#db, this.#table.name, this.#extent);
  }

  #widen([minX, maxX, minY, maxY]: readonly [number, number, number, number]): void {
    const extent = this.#extent;
    extent[0] = Math.min(extent[0], minX);
    extent[1] = Math.min(extent[1], minY);
    extent[2] = Math.max(extent[2], maxX);
    extent[3] = Math.max(extent[3], maxY);
  }

  #setShape(fid: number, properties: Properties): void {
    const shape = ownShape(properties);
    const key = JSON.stringify(shape);
    const known = this.#shapes.get(key) ?? internedShape(this.#db, shape);
    this.#shapes.set(key, known);
    this.#db.prepare('INSERT INTO crownfall_records VALUES (?, ?, 1, ?)').run(this.#table.name, fid, known);
  }
}

function internedShape(db: Connection, shape: Shape): number {
  const text = JSON.stringify(shape);
  db.prepare('INSERT OR IGNORE INTO crownfall_shapes (fields) VALUES (?)').run(text);
  return db.prepare('SELECT shape FROM crownfall_shapes WHERE fields = ?').pluck().get(text) as number;
}
