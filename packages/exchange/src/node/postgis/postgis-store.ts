/** A project in a PostGIS database, with the same promises as one in a file. */
import type { Finding } from '@crownfall/geometry';
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import { contractFields } from '../../store/layer-fields.ts';
import type * as Store from '../../store/project-store.ts';
import { applyEdits, decideConflict } from './apply-edits.ts';
import { conflictsOf } from './conflicts.ts';
import { countRecords, findRecords } from './find-records.ts';
import { blame, changesSince, history, lastChange, treeHistory } from './journal.ts';
import { changeProject, projectFacts } from './project-facts.ts';
import { findRecord, RECORD_COLUMNS, recordOf, tableOf } from './record-sql.ts';
import type { Query, SqlSession } from './sql-session.ts';
import { redo, undo } from './undo.ts';
import { addVisits, findVisits } from './visits.ts';
import { findResults, importLayer, saveResults } from './whole-tables.ts';

const PORTION = 1000;

export class PostgisStore implements Store.ProjectStore {
  readonly findings: readonly Finding[] = [];
  readonly #session: SqlSession;

  constructor(session: SqlSession) {
    this.#session = session;
  }

  get readOnly(): boolean {
    return this.#session.readOnly;
  }

  project(): Promise<Store.ProjectFacts> {
    return this.#session.read(projectFacts);
  }

  async changeProject(
    facts: Partial<Store.ProjectFacts>,
    writer: Store.Writer,
  ): Promise<{ readonly step: number | null }> {
    const { step } = await this.#session.write({ ...writer, kind: 'edit' }, async (query) => {
      const changed = await changeProject(query, facts);
      return { value: changed, isStep: changed };
    });
    return { step };
  }

  layers(): Promise<readonly Store.LayerSummary[]> {
    return this.#session.read(async (query) => {
      const summaries: Store.LayerSummary[] = [];
      for (const layer of LAYER_NAMES) summaries.push(await summaryOf(query, layer));
      return summaries;
    });
  }

  records(layer: LayerName, query: Store.RecordQuery = {}): Promise<Store.RecordPage> {
    return this.#session.read((run) => findRecords(run, layer, query));
  }

  count(layer: LayerName, query: Omit<Store.RecordQuery, 'after' | 'limit'> = {}): Promise<number> {
    return this.#session.read((run) => countRecords(run, layer, query));
  }

  record(layer: LayerName, recordId: number): Promise<Store.StoredRecord | null> {
    return this.#session.read((run) => findRecord(run, layer, recordId));
  }

  async *wholeLayer(layer: LayerName): AsyncGenerator<readonly Store.StoredRecord[]> {
    const text = `SELECT ${RECORD_COLUMNS} FROM ${tableOf(layer)} ORDER BY record_id`;
    for await (const rows of this.#session.portions(text, PORTION)) yield rows.map((row) => recordOf(layer, row));
  }

  applyEdits(edits: readonly Store.Edit[], request: Store.EditRequest): Promise<Store.EditAnswer> {
    return applyEdits(this.#session, edits, request);
  }

  conflicts(state?: Store.Conflict['state']): Promise<readonly Store.Conflict[]> {
    return this.#session.read((query) => conflictsOf(query, state));
  }

  decideConflict(
    conflictId: number,
    decision: 'take' | 'drop',
    writer: Store.Writer,
  ): Promise<Store.EditOutcome | null> {
    return decideConflict(this.#session, conflictId, decision, writer);
  }

  undo(writer: Store.Writer, step?: number): Promise<Store.UndoOutcome> {
    return undo(this.#session, writer, step);
  }

  redo(writer: Store.Writer): Promise<Store.UndoOutcome> {
    return redo(this.#session, writer);
  }

  changes(since: number, limit?: number): Promise<readonly Store.Change[]> {
    return this.#session.read((query) => changesSince(query, since, limit));
  }

  lastChange(): Promise<number> {
    return this.#session.read(lastChange);
  }

  history(layer: LayerName, recordId: number): Promise<readonly Store.ChangeInFull[]> {
    return this.#session.read((query) => history(query, layer, recordId));
  }

  treeHistory(treeId: string): Promise<readonly Store.ChangeInFull[]> {
    return this.#session.read((query) => treeHistory(query, treeId));
  }

  blame(layer: LayerName, recordId: number): Promise<Readonly<Record<string, Store.Blame>>> {
    return this.#session.read((query) => blame(query, layer, recordId));
  }

  async addVisits(visits: readonly Store.Visit[], writer: Store.Writer): Promise<readonly Store.VisitOutcome[]> {
    const { value } = await this.#session.write({ ...writer, kind: 'note' }, async (query) => ({
      value: await addVisits(query, visits, writer),
      // Visits stand alone: there is nothing in them to take back.
      isStep: false,
    }));
    return value;
  }

  visits(query: { treeId?: string; blockId?: string; from?: string } = {}): Promise<readonly Store.Visit[]> {
    return this.#session.read((run) => findVisits(run, query));
  }

  async saveResults(tables: readonly Store.ResultTable[], writer: Store.Writer): Promise<void> {
    await this.#session.write({ ...writer, kind: 'note' }, async (query) => {
      await saveResults(query, tables);
      return { value: null, isStep: false };
    });
  }

  resultTables(): Promise<readonly { readonly name: string; readonly count: number }[]> {
    return this.#session.read(async (query) => {
      const rows =
        await query(`SELECT t.name, count(r.name) AS count FROM crownfall.result_tables t LEFT JOIN crownfall.results r USING (name)
         GROUP BY t.name ORDER BY t.name`);
      return rows.map(({ name, count }) => ({ name: name as string, count: count as number }));
    });
  }

  results(
    name: string,
    query: Pick<Store.RecordQuery, 'bbox' | 'ids' | 'after' | 'limit'> = {},
  ): Promise<Store.ResultPage> {
    return this.#session.read((run) => findResults(run, name, query));
  }

  async importLayer(source: Store.LayerImport, writer: Store.Writer): Promise<number> {
    const { value } = await this.#session.write({ ...writer, kind: 'import', silent: true }, async (query) => ({
      value: await importLayer(query, source),
      isStep: true,
    }));
    return value;
  }

  close(): Promise<void> {
    return this.#session.close();
  }
}

async function summaryOf(query: Query, layer: LayerName): Promise<Store.LayerSummary> {
  const [row] = await query(
    `SELECT count(*) AS count, ST_XMin(ST_Extent(geom)) AS west, ST_YMin(ST_Extent(geom)) AS south,
     ST_XMax(ST_Extent(geom)) AS east, ST_YMax(ST_Extent(geom)) AS north,
     EXISTS (SELECT 1 FROM crownfall.given_layers WHERE layer = $1) AS given FROM ${tableOf(layer)}`,
    [layer],
  );
  const count = row.count as number;
  const extent = [row.west, row.south, row.east, row.north] as unknown as Store.LonLatBox;
  return {
    layer,
    given: row.given === true || count > 0,
    count,
    extent: row.west === null ? null : extent,
    fields: contractFields(layer).map(({ name, type }) => ({ name, type })),
  };
}
