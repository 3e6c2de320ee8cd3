/** Taking back steps: the records of the step become what they were, as a step of its own. */
import type { LonLatGeometry } from '@crownfall/geometry';
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import type {
  ChangeInFull,
  Properties,
  RecordKey,
  StoredRecord,
  UndoOutcome,
  Writer,
} from '../../store/project-store.ts';
import { type StepChange, stepChanges } from './journal.ts';
import { projectFacts, putProject } from './project-facts.ts';
import {
  deleteRecord,
  findRecord,
  geometryOfHex,
  hexOf,
  insertRecord,
  type JournalState,
  replaceRecord,
} from './record-sql.ts';
import type { Query, Row, SqlSession } from './sql-session.ts';

/** Imports and results replace whole tables; the journal holds no states of single records for them. */
const LAST_STEP = `SELECT step FROM crownfall.steps WHERE author = $1 AND kind IN ('edit', 'redo') AND reverted_by IS NULL
  AND step < $2 ORDER BY step DESC LIMIT 1`;
const GIVEN_STEP = `SELECT step FROM crownfall.steps WHERE step = $1 AND kind IN ('edit', 'redo') AND reverted_by IS NULL`;
const LAST_UNDO = `SELECT step FROM crownfall.steps AS s WHERE author = $1 AND kind = 'undo' AND reverted_by IS NULL AND step < $2
  AND NOT EXISTS (SELECT 1 FROM crownfall.steps AS later WHERE later.author = $1 AND later.kind = 'edit'
    AND later.step > s.step AND later.step < $2) ORDER BY step DESC LIMIT 1`;

export async function undo(session: SqlSession, writer: Writer, step?: number): Promise<UndoOutcome> {
  return revert(session, writer, 'undo', (query, own) =>
    step === undefined ? query(LAST_STEP, [writer.author, own]) : query(GIVEN_STEP, [step]),
  );
}

export async function redo(session: SqlSession, writer: Writer): Promise<UndoOutcome> {
  return revert(session, writer, 'redo', (query, own) => query(LAST_UNDO, [writer.author, own]));
}

async function revert(
  session: SqlSession,
  writer: Writer,
  kind: 'undo' | 'redo',
  target: (query: Query, own: number) => Promise<readonly Row[]>,
): Promise<UndoOutcome> {
  const { value } = await session.write<UndoOutcome>({ ...writer, kind }, async (query, own) => {
    const [found] = await target(query, own);
    if (found === undefined) return { value: { outcome: 'nothing' }, isStep: false };
    const step = found.step as number;
    const changes = (await stepChanges(query, step)).filter(({ layer }) => layer === 'project' || isLayer(layer));
    const written = await writtenSince(query, changes);
    if (written.length > 0) return { value: { outcome: 'blocked', step, records: written }, isStep: false };
    for (const change of changes) await restore(query, change);
    await query('UPDATE crownfall.steps SET reverted_by = $2 WHERE step = $1', [step, own]);
    await query('UPDATE crownfall.steps SET reverts = $2 WHERE step = $1', [own, step]);
    return { value: { outcome: 'done', step: own, reverted: step, records: keysOf(changes) }, isStep: true };
  });
  return value;
}

const isLayer = (layer: string): layer is LayerName => LAYER_NAMES.includes(layer as LayerName);

/** Records of which a field no longer holds what the step left there; one that was added must be as it was left in all. */
async function writtenSince(query: Query, newestFirst: readonly ChangeInFull[]): Promise<RecordKey[]> {
  const left = new Map<string, { newest: ChangeInFull; fields: Map<string, unknown> }>();
  for (const change of newestFirst) {
    const key = `${change.layer} ${change.recordId}`;
    const known = left.get(key) ?? { newest: change, fields: new Map<string, unknown>() };
    for (const [field, { after }] of Object.entries(change.fields)) {
      if (!known.fields.has(field)) known.fields.set(field, after);
    }
    left.set(key, known);
  }
  const written: ChangeInFull[] = [];
  for (const { newest, fields } of left.values()) {
    if (!(await stillHolds(query, newest, fields))) written.push(newest);
  }
  return keysOf(written);
}

async function stillHolds(query: Query, change: ChangeInFull, left: ReadonlyMap<string, unknown>): Promise<boolean> {
  const current = await fieldsNow(query, change);
  if (current === null || change.action === 'delete') return current === null && change.action === 'delete';
  const checked = change.action === 'insert' ? new Set([...Object.keys(current), ...left.keys()]) : left.keys();
  return [...checked].every((field) => sameValue(current[field], left.get(field)));
}

/** All fields of a record as it stands, its geometry among them; null when it is not there. */
async function fieldsNow(query: Query, { layer, recordId }: RecordKey): Promise<Properties | null> {
  if (!isLayer(layer)) return (await projectFacts(query)) as unknown as Properties;
  const record = await findRecord(query, layer, recordId);
  if (record === null) return null;
  return record.geometry.kind === 'none' ? record.properties : { ...record.properties, geometry: record.geometry };
}

const sameValue = (a: unknown, b: unknown): boolean => comparable(a) === comparable(b);

/** Geometries bit for bit, other values as JSON. */
function comparable(value: unknown): string {
  return JSON.stringify(isGeometry(value) ? hexOf(value) : (value ?? null));
}

function isGeometry(value: unknown): value is LonLatGeometry {
  return (
    typeof value === 'object' && value !== null && ['point', 'line', 'area'].includes((value as LonLatGeometry).kind)
  );
}

function keysOf(changes: readonly RecordKey[]): RecordKey[] {
  const keys = new Map(changes.map(({ layer, recordId }) => [`${layer} ${recordId}`, { layer, recordId }]));
  return [...keys.values()];
}

async function restore(query: Query, { layer, recordId, action, fields, was }: StepChange): Promise<void> {
  if (!isLayer(layer)) {
    return putProject(query, Object.fromEntries(Object.entries(fields).map(([name, { before }]) => [name, before])));
  }
  if (action === 'insert' || was === null) return deleteRecord(query, layer, recordId);
  const current = action === 'delete' ? null : await findRecord(query, layer, recordId);
  if (current === null) {
    await insertRecord(query, layer, { geometry: geometryOfHex(was.geometry), properties: was.properties }, recordId);
    return;
  }
  const geometry = 'geometry' in fields ? geometryOfHex(was.geometry) : current.geometry;
  await replaceRecord(query, { layer, recordId, geometry, properties: withBefore(current, fields, was) });
}

/** The record's values, those of the changed fields as they were: an empty field becomes empty again, an absent one absent. */
function withBefore({ properties }: StoredRecord, fields: ChangeInFull['fields'], was: JournalState): Properties {
  const values = new Map(Object.entries(properties));
  for (const name of Object.keys(fields)) {
    if (Object.hasOwn(was.properties, name)) values.set(name, was.properties[name]);
    else values.delete(name);
  }
  return Object.fromEntries(values);
}
