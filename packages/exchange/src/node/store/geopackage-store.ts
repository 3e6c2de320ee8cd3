import type { Finding } from '@crownfall/geometry';
import type { LayerName } from '@crownfall/survey';
import type {
  Blame,
  Change,
  ChangeInFull,
  Conflict,
  Edit,
  EditAnswer,
  EditOutcome,
  EditRequest,
  LayerImport,
  LayerSummary,
  ProjectFacts,
  ProjectStore,
  RecordPage,
  RecordQuery,
  ResultPage,
  ResultTable,
  StoredRecord,
  UndoOutcome,
  Visit,
  VisitOutcome,
  Writer,
} from '../../store/project-store.ts';
import { applyEdit } from './apply-edit.ts';
import { decide, readConflict, readConflicts } from './conflicts.ts';
import { earlierAnswer, shortAnswer } from './edit-answers.ts';
import { importLayer } from './import-layer.ts';
import { blameOf, changesSince, historyOf, lastChange, noteChange, treeHistoryOf } from './journal.ts';
import { touchContents } from './layer-table.ts';
import { readFacts, writeFacts } from './project-facts.ts';
import { layerSummaries, RecordReader } from './read-records.ts';
import { resultNames, resultTableName, writeResultTables } from './results.ts';
import type { Connection } from './sqlite-module.ts';
import type { StoreFile } from './store-file.ts';
import { isUndoable, lastStepOf, lastUndoingOf, revertStep } from './undo.ts';
import { addVisits, readVisits } from './visits.ts';
import { wholeTable } from './whole-table.ts';

const USUAL_CHANGES = 1000;

/** A project in one GeoPackage file. */
export class GeoPackageStore implements ProjectStore {
  readonly findings: readonly Finding[];
  readonly #file: StoreFile;
  /** One per connection: the writing one sees what its transaction has not committed yet. */
  readonly #readers = new WeakMap<Connection, RecordReader>();

  constructor(file: StoreFile, findings: readonly Finding[]) {
    this.#file = file;
    this.findings = findings;
  }

  get readOnly(): boolean {
    return this.#file.readOnly;
  }

  project(): Promise<ProjectFacts> {
    return this.#file.read(readFacts);
  }

  async changeProject(facts: Partial<ProjectFacts>, writer: Writer): Promise<{ readonly step: number | null }> {
    const { step } = await this.#file.write({ ...writer, kind: 'edit' }, (db) => ({
      value: null,
      isStep: writeFacts(db, facts),
    }));
    return { step };
  }

  layers(): Promise<readonly LayerSummary[]> {
    return this.#file.read((db) => layerSummaries(db, this.#reader(db)));
  }

  records(layer: LayerName, query: RecordQuery = {}): Promise<RecordPage> {
    return this.#file.read((db) => this.#reader(db).page(layer, query));
  }

  count(layer: LayerName, query: Omit<RecordQuery, 'after' | 'limit'> = {}): Promise<number> {
    return this.#file.read((db) => this.#reader(db).count(layer, query));
  }

  record(layer: LayerName, recordId: number): Promise<StoredRecord | null> {
    return this.#file.read((db) => this.#reader(db).record(layer, recordId));
  }

  wholeLayer(layer: LayerName): AsyncIterable<readonly StoredRecord[]> {
    return wholeTable(this.#file.path, layer);
  }

  async applyEdits(edits: readonly Edit[], request: EditRequest): Promise<EditAnswer> {
    const { author, at, requestId } = request;
    const wish = { author, at, kind: 'edit' as const, ...(requestId === undefined ? {} : { requestId }) };
    const earlier = () => this.#file.read((db) => earlierAnswer(db, this.#reader(db), requestId));
    const known = requestId === undefined ? null : await earlier();
    if (known) return known;
    const { value, step } = await this.#file.write(wish, (db) => {
      const reader = this.#reader(db);
      const outcomes = edits.map((edit) => applyEdit(db, reader, edit, { author, at }));
      touchContents(db, new Set(edits.map(({ layer }) => layer)), at);
      const isStep = outcomes.some(({ outcome }) => outcome === 'applied');
      return { value: outcomes, isStep, ...(requestId === undefined ? {} : { answer: shortAnswer(edits, outcomes) }) };
    });
    return { step, outcomes: value, repeated: false };
  }

  conflicts(state?: Conflict['state']): Promise<readonly Conflict[]> {
    return this.#file.read((db) => readConflicts(db, this.#reader(db), state));
  }

  async decideConflict(conflictId: number, decision: 'take' | 'drop', writer: Writer): Promise<EditOutcome | null> {
    const { value } = await this.#file.write<EditOutcome | null>({ ...writer, kind: 'edit' }, (db) => {
      const reader = this.#reader(db);
      const conflict = readConflict(db, reader, conflictId);
      const outcome = conflict && decide(db, reader, conflict, decision, writer);
      return { value: outcome, isStep: outcome?.outcome === 'applied' };
    });
    return value;
  }

  undo(writer: Writer, step?: number): Promise<UndoOutcome> {
    return this.#revert({ ...writer, kind: 'undo' }, (db) =>
      step === undefined ? lastStepOf(db, writer.author) : undoable(db, step),
    );
  }

  redo(writer: Writer): Promise<UndoOutcome> {
    return this.#revert({ ...writer, kind: 'redo' }, (db) => lastUndoingOf(db, writer.author));
  }

  async #revert(
    wish: Writer & { readonly kind: 'undo' | 'redo' },
    stepOf: (db: Connection) => number | null,
  ): Promise<UndoOutcome> {
    const { value } = await this.#file.write<UndoOutcome>(wish, (db, newStep) => {
      const step = stepOf(db);
      if (step === null) return { value: { outcome: 'nothing' }, isStep: false };
      db.prepare('UPDATE crownfall_steps SET reverts = ? WHERE step = ?').run(step, newStep);
      return revertStep(db, step, newStep);
    });
    return value;
  }

  changes(since: number, limit: number = USUAL_CHANGES): Promise<readonly Change[]> {
    return this.#file.read((db) => changesSince(db, since, limit));
  }

  lastChange(): Promise<number> {
    return this.#file.read(lastChange);
  }

  history(layer: LayerName, recordId: number): Promise<readonly ChangeInFull[]> {
    return this.#file.read((db) => historyOf(db, this.#reader(db), layer, recordId));
  }

  treeHistory(treeId: string): Promise<readonly ChangeInFull[]> {
    return this.#file.read((db) => treeHistoryOf(db, this.#reader(db), treeId));
  }

  blame(layer: LayerName, recordId: number): Promise<Readonly<Record<string, Blame>>> {
    return this.#file.read((db) => blameOf(db, this.#reader(db), layer, recordId));
  }

  async addVisits(visits: readonly Visit[], writer: Writer): Promise<readonly VisitOutcome[]> {
    const { value } = await this.#file.write({ ...writer, kind: 'note' }, (db) => ({
      value: addVisits(db, visits),
      isStep: false,
    }));
    return value;
  }

  visits(
    query: { readonly treeId?: string; readonly blockId?: string; readonly from?: string } = {},
  ): Promise<readonly Visit[]> {
    return this.#file.read((db) => readVisits(db, query));
  }

  async saveResults(tables: readonly ResultTable[], writer: Writer): Promise<void> {
    await this.#file.write({ ...writer, kind: 'note' }, (db) => {
      writeResultTables(db, tables);
      noteChange(db, { layer: 'results', recordId: 0, action: 'replace', version: 1 });
      return { value: null, isStep: false };
    });
  }

  resultTables(): Promise<readonly { readonly name: string; readonly count: number }[]> {
    return this.#file.read((db) => {
      const reader = this.#reader(db);
      return resultNames(db).map((name) => ({ name, count: reader.count(resultTableName(name), {}) }));
    });
  }

  results(name: string, query: Pick<RecordQuery, 'bbox' | 'ids' | 'after' | 'limit'> = {}): Promise<ResultPage> {
    return this.#file.read((db) => this.#reader(db).resultPage(resultTableName(name), query));
  }

  async importLayer(source: LayerImport, writer: Writer): Promise<number> {
    const { value } = await this.#file.write({ ...writer, kind: 'import', silent: true }, async (db) => {
      const count = await importLayer(db, source);
      this.#reader(db).forget();
      noteChange(db, { layer: source.layer, recordId: 0, action: 'import', version: 1 });
      touchContents(db, new Set([source.layer]), writer.at);
      return { value: count, isStep: true };
    });
    return value;
  }

  close(): Promise<void> {
    return this.#file.close();
  }

  #reader(db: Connection): RecordReader {
    const known = this.#readers.get(db) ?? new RecordReader(db);
    this.#readers.set(db, known);
    return known;
  }
}

function undoable(db: Connection, step: number): number | null {
  return isUndoable(db, step) ? step : null;
}
