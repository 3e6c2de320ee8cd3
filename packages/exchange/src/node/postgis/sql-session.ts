/** Connections to the database: reads beside each other, writes one after the other, both inside transactions. */
import pg from 'pg';
import type { StepKind, Writer } from '../../store/project-store.ts';
import { Outage } from '../outage.ts';
import { WRITE_LOCK } from './schema-sql.ts';

export type Row = Readonly<Record<string, unknown>>;

/** One statement in a transaction. */
export type Query = (text: string, values?: readonly unknown[]) => Promise<readonly Row[]>;

export interface StepWish extends Writer {
  readonly kind: StepKind;
  /** The step that this one takes back. */
  readonly reverts?: number;
  /** Journal nothing by trigger: a whole layer comes in as one entry. */
  readonly silent?: boolean;
}

/** What the work of a transaction gives back: its result, and whether anything was written that makes it a step. */
export interface StepResult<T> {
  readonly value: T;
  readonly isStep: boolean;
}

/** Days and whole numbers of 64 bits as the rest of the program knows them. */
const TYPES = {
  getTypeParser: (oid: number, format?: 'text' | 'binary') => {
    if (oid === pg.types.builtins.INT8) return Number;
    if (oid === pg.types.builtins.DATE) return (text: string) => text;
    return pg.types.getTypeParser(oid, format);
  },
} as pg.CustomTypesConfig;

export class SqlSession {
  readonly readOnly: boolean;
  readonly #pool: pg.Pool;
  #closed = false;

  constructor(url: string, readOnly: boolean) {
    this.readOnly = readOnly;
    const options = `-c statement_timeout=60000 -c lock_timeout=20000${readOnly ? ' -c default_transaction_read_only=on' : ''}`;
    this.#pool = new pg.Pool({
      connectionString: url,
      max: 10,
      types: TYPES,
      options,
      connectionTimeoutMillis: 15_000,
    });
    // A connection that breaks while it is idle is replaced; the next query says so if the database is gone.
    this.#pool.on('error', () => {});
  }

  /** Everything the work reads is of one moment. */
  async read<T>(work: (query: Query) => Promise<T>): Promise<T> {
    return this.#transaction('read', 'BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', work);
  }

  /**
   * Runs the work as one step. The triggers learn who writes from settings that end with the transaction. Writers queue at
   * one lock, so that journal numbers are in the order in which writes become visible.
   */
  async write<T>(
    wish: StepWish,
    work: (query: Query, step: number) => Promise<StepResult<T>>,
  ): Promise<{ value: T; step: number | null }> {
    this.#mustWrite(wish);
    return this.#transaction('write', 'BEGIN', async (query) => {
      await query('SELECT pg_advisory_xact_lock($1)', [WRITE_LOCK]);
      const step = await beginStep(query, wish);
      const { value, isStep } = await work(query, step);
      if (!isStep) await query('DELETE FROM crownfall.steps WHERE step = $1', [step]);
      return { value, step: isStep ? step : null };
    });
  }

  /** Statements that make or change the tables themselves. */
  async define<T>(work: (query: Query) => Promise<T>): Promise<T> {
    return this.#transaction('open', 'BEGIN', async (query) => {
      await query('SELECT pg_advisory_xact_lock($1)', [WRITE_LOCK]);
      return work(query);
    });
  }

  /** Portions of a statement's rows, all of one moment; memory holds one portion. */
  async *portions(text: string, size: number): AsyncGenerator<readonly Row[]> {
    const client = await this.#client('read');
    let broken: Error | undefined;
    try {
      await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
      await client.query(`DECLARE portions NO SCROLL CURSOR FOR ${text}`);
      for (;;) {
        const { rows } = await client.query(`FETCH ${size} FROM portions`);
        if (rows.length === 0) break;
        yield rows as Row[];
      }
    } catch (error) {
      broken = error instanceof Error ? error : new Error(String(error));
      throw outage('read', error);
    } finally {
      await client.query('ROLLBACK').catch(() => {});
      client.release(broken);
    }
  }

  async close(): Promise<void> {
    if (this.#closed) return;
    this.#closed = true;
    await this.#pool.end();
  }

  async #transaction<T>(doing: string, begin: string, work: (query: Query) => Promise<T>): Promise<T> {
    const client = await this.#client(doing);
    const query: Query = async (text, values = []) => (await client.query(text, [...values])).rows as Row[];
    let broken: Error | undefined;
    try {
      await client.query(begin);
      const value = await work(query);
      await client.query('COMMIT');
      return value;
    } catch (error) {
      await client.query('ROLLBACK').catch((failure: Error) => {
        broken = failure;
      });
      throw outage(doing, error);
    } finally {
      client.release(broken);
    }
  }

  async #client(doing: string): Promise<pg.PoolClient> {
    if (this.#closed) throw new TypeError('expected an open store, got one that was closed');
    try {
      return await this.#pool.connect();
    } catch (error) {
      throw outage(doing, error);
    }
  }

  #mustWrite({ author, at }: Writer): void {
    if (this.readOnly) throw new TypeError('expected a store opened for writing, got one opened for reading');
    if (typeof author !== 'string' || author.trim() === '')
      throw new TypeError('expected the name of an author, got none');
    if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/.test(at)) {
      throw new RangeError(`expected an instant in UTC (2026-05-20T14:03:00Z), got ${at}`);
    }
  }
}

async function beginStep(query: Query, { kind, author, at, reverts, silent }: StepWish): Promise<number> {
  const [{ step }] = await query(
    `INSERT INTO crownfall.steps (step, kind, author, at, reverts)
     VALUES ((SELECT coalesce(max(step), 0) + 1 FROM crownfall.steps), $1, $2, $3, $4) RETURNING step`,
    [kind, author, at, reverts ?? null],
  );
  const session = { author, at, kind, step: String(step), silent: silent === true ? 'yes' : '' };
  const settings = Object.keys(session).map((name, i) => `set_config('crownfall.${name}', $${i + 1}, true)`);
  await query(`SELECT ${settings.join(', ')}`, Object.values(session));
  return step as number;
}

/** Errors of the database become outages; what is wrong in this program stays what it is. */
function outage(doing: string, error: unknown): unknown {
  const { code } = (error ?? {}) as { code?: unknown };
  const ofDatabase =
    error instanceof pg.DatabaseError || (error instanceof Error && /timeout|terminated/i.test(error.message));
  return typeof code === 'string' || ofDatabase ? new Outage(`the database could not ${doing}`, error) : error;
}
