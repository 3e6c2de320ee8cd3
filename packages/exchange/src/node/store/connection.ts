import { basename } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { blobEnvelope } from '../../store/geopackage/geometry-blob.ts';
import { Outage, systemCode } from '../outage.ts';
import { type Connection, sqliteModule } from './sqlite-module.ts';
import { isBusy, sqliteOutage } from './sqlite-outage.ts';

export interface ConnectionOptions {
  readonly readOnly: boolean;
  /** The file must not exist yet. */
  readonly create?: boolean;
  /** The file may grow to so many bytes; beyond it writing is an outage as on a full disk. */
  readonly limitBytes?: number;
}

/** Between two tries to get a lock another program holds. */
const TRY_AGAIN_MS = 25;

/**
 * A connection to one file, with the functions that the triggers of R-tree indexes call. A file on a disk that forbids
 * writing is read as it lies there. Throws an `Outage` when it cannot be opened.
 */
export async function connect(path: string, options: ConnectionOptions): Promise<Connection> {
  const Sqlite = await sqliteModule();
  const { readOnly, create } = options;
  const open = (name: string) => new Sqlite(name, { readonly: readOnly, fileMustExist: create !== true, timeout: 0 });
  try {
    const db = readOnly ? readable(open, path) : open(path);
    registerSpatialFunctions(db);
    setUp(db, options);
    return db;
  } catch (error) {
    throw sqliteOutage('open', basename(path), error);
  }
}

/**
 * A file in write-ahead mode needs a neighbour for its index, which a read-only folder refuses; such a file cannot change
 * while it is read, and SQLite may take it for immutable.
 */
function readable(open: (name: string) => Connection, path: string): Connection {
  const db = open(path);
  try {
    db.prepare('SELECT count(*) FROM sqlite_master').get();
    return db;
  } catch (error) {
    db.close();
    if (!/^SQLITE_(CANTOPEN|READONLY)/.test(systemCode(error) ?? '')) throw error;
    return open(`${pathToFileURL(path).href}?immutable=1`);
  }
}

function setUp(db: Connection, { readOnly, limitBytes }: ConnectionOptions): void {
  db.pragma('foreign_keys = ON');
  db.pragma('cache_size = -32000');
  db.pragma('temp_store = MEMORY');
  if (readOnly) return;
  // An edit that was acknowledged must outlive a power cut, so every commit is flushed.
  db.pragma('synchronous = FULL');
  if (limitBytes === undefined) return;
  const pageSize = db.pragma('page_size', { simple: true }) as number;
  db.pragma(`max_page_count = ${Math.max(1, Math.floor(limitBytes / pageSize))}`);
}

/** The functions of GeoPackage's R-tree extension (OGC 12-128r18, annex F.3); null where there is no extent. */
function registerSpatialFunctions(db: Connection): void {
  const bound = (name: string, index: 0 | 1 | 2 | 3) =>
    db.function(name, { deterministic: true }, (blob: unknown) =>
      blob instanceof Uint8Array ? (blobEnvelope(blob)?.[index] ?? null) : null,
    );
  bound('ST_MinX', 0);
  bound('ST_MaxX', 1);
  bound('ST_MinY', 2);
  bound('ST_MaxY', 3);
  db.function('ST_IsEmpty', { deterministic: true }, (blob: unknown) =>
    blob instanceof Uint8Array ? Number(blobEnvelope(blob) === null) : null,
  );
}

/** Calls again, without holding up the program, while another connection holds the lock; for at most `waitMs`. */
export async function whenFree<T>(waitMs: number, call: () => T): Promise<T> {
  for (let waited = 0; ; waited += TRY_AGAIN_MS) {
    try {
      return call();
    } catch (error) {
      if (!isBusy(error) || waited >= waitMs) throw error;
    }
    await sleep(TRY_AGAIN_MS);
  }
}

/** The same for anything that reads or writes an open file: SQLite's errors come out as outages. */
export async function orOutage<T>(doing: string, path: string, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof Outage ? error : sqliteOutage(doing, basename(path), error);
  }
}
