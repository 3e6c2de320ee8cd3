import type { StepKind, Writer } from '../../store/project-store.ts';
import { orOutage, whenFree } from './connection.ts';
import type { Connection } from './sqlite-module.ts';

export interface StepWish extends Writer {
  readonly kind: StepKind;
  readonly reverts?: number;
  readonly requestId?: string;
  /** Write nothing to the journal: a whole layer comes in as one entry. */
  readonly silent?: boolean;
}

/** What the work of a transaction gives back: its result, and whether anything was written that makes it a step. */
export interface StepResult<T> {
  readonly value: T;
  readonly isStep: boolean;
  /** Kept with the step, for a request that comes again. */
  readonly answer?: unknown;
}

/**
 * One open file: a connection that writes, one transaction after the other, and one that reads beside it and sees only
 * what was committed.
 */
export class StoreFile {
  readonly path: string;
  readonly #writer: Connection | null;
  readonly #reader: Connection;
  readonly #waitMs: number;
  /** The last transaction begun; the next one waits for it. */
  #last: Promise<unknown> = Promise.resolve();
  #closed = false;

  constructor(
    path: string,
    connections: { readonly writer: Connection | null; readonly reader: Connection },
    waitMs: number,
  ) {
    this.path = path;
    this.#writer = connections.writer;
    this.#reader = connections.reader;
    this.#waitMs = waitMs;
  }

  get readOnly(): boolean {
    return this.#writer === null;
  }

  async read<T>(work: (db: Connection) => T): Promise<T> {
    this.#mustBeOpen();
    return orOutage('read', this.path, () => whenFree(this.#waitMs, () => work(this.#reader)));
  }

  /**
   * Runs the work in one transaction: it is on the disk when the promise is kept, and left no trace when it is broken.
   * The triggers learn from the session who writes. `work` must not call the store again.
   */
  async write<T>(
    wish: StepWish,
    work: (db: Connection, step: number) => StepResult<T> | Promise<StepResult<T>>,
  ): Promise<{ value: T; step: number | null }> {
    const db = this.#writable(wish);
    const turn = this.#last.then(() => orOutage('write', this.path, () => this.#transaction(db, wish, work)));
    this.#last = turn.catch(() => {});
    return turn;
  }

  async #transaction<T>(
    db: Connection,
    wish: StepWish,
    work: (db: Connection, step: number) => StepResult<T> | Promise<StepResult<T>>,
  ): Promise<{ value: T; step: number | null }> {
    await whenFree(this.#waitMs, () => db.exec('BEGIN IMMEDIATE'));
    try {
      const step = beginStep(db, wish);
      const result = await work(db, step);
      endStep(db, step, result);
      db.exec('COMMIT');
      return { value: result.value, step: result.isStep ? step : null };
    } catch (error) {
      if (db.inTransaction) db.exec('ROLLBACK');
      throw error;
    }
  }

  /** After the last transaction: the file lies alone on the disk again, without its write-ahead log, when nobody else has it open. */
  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    await this.#last;
    this.#reader.close();
    if (this.#writer === null) return;
    try {
      this.#writer.pragma('journal_mode = DELETE');
    } catch {
      // Others are reading or writing: the last of them to close does it.
    }
    this.#writer.close();
  }

  #writable({ author, at }: Writer): Connection {
    this.#mustBeOpen();
    if (this.#writer === null) throw new TypeError('expected a store opened for writing, got one opened for reading');
    if (typeof author !== 'string' || author.trim() === '')
      throw new TypeError('expected the name of an author, got none');
    if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(at)) {
      throw new RangeError(`expected an instant in UTC (2026-05-20T14:03:00Z), got ${at}`);
    }
    return this.#writer;
  }

  #mustBeOpen(): void {
    if (this.#closed) throw new TypeError('expected an open store, got one that was closed');
  }
}

function beginStep(db: Connection, { kind, author, at, reverts, requestId, silent }: StepWish): number {
  const { lastInsertRowid } = db
    .prepare('INSERT INTO crownfall_steps (kind, author, at, reverts, request) VALUES (?, ?, ?, ?, ?)')
    .run(kind, author, at, reverts ?? null, requestId ?? null);
  const step = Number(lastInsertRowid);
  const reverting = kind === 'undo' || kind === 'redo';
  db.prepare('INSERT INTO crownfall_session VALUES (?, ?, ?, ?, ?)').run(
    step,
    author,
    at,
    Number(silent === true),
    Number(reverting),
  );
  return step;
}

function endStep(db: Connection, step: number, { isStep, answer }: StepResult<unknown>): void {
  db.exec('DELETE FROM crownfall_session');
  if (answer !== undefined) {
    db.prepare('UPDATE crownfall_steps SET answer = ? WHERE step = ?').run(JSON.stringify(answer), step);
  }
  if (isStep) return;
  const kept =
    answer !== undefined || db.prepare('SELECT 1 FROM crownfall_changes WHERE step = ?').get(step) !== undefined;
  if (kept) db.prepare("UPDATE crownfall_steps SET kind = 'note' WHERE step = ?").run(step);
  else db.prepare('DELETE FROM crownfall_steps WHERE step = ?').run(step);
}
