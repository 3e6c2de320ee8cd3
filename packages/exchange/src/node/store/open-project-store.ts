import { constants } from 'node:fs';
import { access, open, rm, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding, LAYER_NAMES } from '@crownfall/survey';
import type { ProjectStore, StoreOpening } from '../../store/project-store.ts';
import { Outage, systemCode } from '../outage.ts';
import { connect, orOutage, whenFree } from './connection.ts';
import { GeoPackageStore } from './geopackage-store.ts';
import { APPLICATION_ID, GEOPACKAGE_VERSION } from './geopackage-tables.ts';
import { readLayerTable } from './layer-table.ts';
import { setTriggers } from './layer-triggers.ts';
import { migrate, STORE_VERSION, storeVersion } from './migrations.ts';
import { setOwnTriggers } from './own-triggers.ts';
import type { Connection } from './sqlite-module.ts';
import { isDamage } from './sqlite-outage.ts';
import { StoreFile } from './store-file.ts';

export interface OpenStoreOptions {
  /** For reading only: the file is not touched, not even brought up to date. */
  readonly readOnly?: boolean;
  /** How long to wait for a lock that another program holds; 5000 unless given. */
  readonly waitMs?: number;
  /** The file may grow to so many bytes; beyond it writing is an outage as on a full disk. */
  readonly limitBytes?: number;
}

export interface CreateStoreOptions extends Omit<OpenStoreOptions, 'readOnly'> {
  /** When it is made: an instant in UTC, else the system's. The same project made at the same time gives the same file. */
  readonly at?: string;
  /** The file is being filled by one pass and moved into place when complete: no write-ahead log, no flushing in between. */
  readonly bulk?: boolean;
}

const WAIT_MS = 5000;

/**
 * Opens the project in a GeoPackage file. A file of an earlier version is brought up to date, after a copy of it was put
 * beside it; a file that is none of ours, damaged, cut off, or of a newer version gives no store and a finding, and is
 * left as it is. Throws an `Outage` when the file is locked, may not be written, or SQLite is not installed.
 */
export async function openProjectStore(path: string, options: OpenStoreOptions = {}): Promise<StoreOpening> {
  const refused = await refusalOf(path);
  if (refused !== null) return { store: null, findings: [refused] };
  if (options.readOnly !== true) await mustBeWritable(path);
  try {
    return await orOutage('open', path, () => openFile(path, options));
  } catch (error) {
    if (!(error instanceof Outage) || !causedByDamage(error)) throw error;
    return { store: null, findings: [damaged(path, 'its pages do not fit together')] };
  }
}

/**
 * Makes an empty project in a new GeoPackage file and opens it. Throws an `Outage` when there is a file already, or it
 * cannot be made.
 */
export async function createProjectStore(path: string, options: CreateStoreOptions = {}): Promise<ProjectStore> {
  const existing = await stat(path).catch(() => null);
  if (existing !== null) {
    throw new Outage(
      `cannot make ${basename(path)}`,
      Object.assign(new Error('there is a file already'), { code: 'EEXIST' }),
    );
  }
  const db = await connect(path, { ...options, readOnly: false, create: true });
  try {
    await orOutage('make', path, () => createTables(db, options.at));
  } catch (error) {
    db.close();
    await rm(path, { force: true });
    throw error;
  }
  db.close();
  const { store } = await openFile(path, options);
  if (store === null) throw new Error(`the file just made cannot be opened: ${basename(path)}`);
  return store;
}

function createTables(db: Connection, at: string | undefined): void {
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.pragma(`user_version = ${GEOPACKAGE_VERSION}`);
  db.transaction(() => {
    migrate(db, 0);
    setAllTriggers(db);
    if (at !== undefined) db.prepare('UPDATE gpkg_contents SET last_change = ?').run(new Date(at).toISOString());
  })();
}

/** Sets what triggers are missing or out of date; gives the layers where other programs had added columns. */
function setAllTriggers(db: Connection): string[] {
  setOwnTriggers(db);
  return LAYER_NAMES.filter((layer) => {
    const table = readLayerTable(db, layer);
    return table !== null && setTriggers(db, table);
  });
}

async function openFile(path: string, options: OpenStoreOptions & { readonly bulk?: boolean }): Promise<StoreOpening> {
  const { readOnly = false, waitMs = WAIT_MS } = options;
  const limit = options.limitBytes === undefined ? {} : { limitBytes: options.limitBytes };
  const first = await connect(path, { readOnly, ...limit });
  try {
    const version = await whenFree(waitMs, () => storeVersion(first));
    const refused = versionRefusal(path, version);
    if (refused !== null || version === null) {
      first.close();
      return { store: null, findings: refused === null ? [] : [refused] };
    }
    const findings = readOnly
      ? missingLayers(first, path)
      : await madeReady(first, { path, version, waitMs, bulk: options.bulk === true });
    if (findings.some(({ severity }) => severity === 'error')) {
      first.close();
      return { store: null, findings };
    }
    const reader = readOnly ? first : await connect(path, { readOnly: true });
    const file = new StoreFile(path, { writer: readOnly ? null : first, reader }, waitMs);
    return { store: new GeoPackageStore(file, findings), findings };
  } catch (error) {
    first.close();
    throw error;
  }
}

interface Readying {
  readonly path: string;
  readonly version: number;
  readonly waitMs: number;
  readonly bulk: boolean;
}

/** Write-ahead mode, tables of this version, triggers that fit the columns. */
async function madeReady(db: Connection, { path, version, waitMs, bulk }: Readying): Promise<Finding[]> {
  const missing = missingLayers(db, path);
  if (missing.length > 0) return missing;
  const findings = version < STORE_VERSION ? [await migrated(db, { path, version, waitMs })] : [];
  if (bulk) db.pragma('synchronous = OFF');
  else await whenFree(waitMs, () => db.pragma('journal_mode = WAL'));
  const changed = await whenFree(waitMs, () => db.transaction(() => setAllTriggers(db)).immediate());
  if (version === STORE_VERSION && changed.length > 0) {
    findings.push(
      finding('store-columns-adopted', 'note/kept', { file: basename(path) }, { layers: changed.join(', ') }),
    );
  }
  return findings;
}

async function migrated(db: Connection, { path, version, waitMs }: Omit<Readying, 'bulk'>): Promise<Finding> {
  const copy = await freeName(`${path.replace(/\.gpkg$/i, '')}-version-${version}.gpkg`);
  await db.backup(copy);
  const run = db.transaction(() => {
    const now = storeVersion(db) ?? version;
    migrate(db, now);
    setAllTriggers(db);
  });
  await whenFree(waitMs, () => run.immediate());
  const facts = { from: version, to: STORE_VERSION, copy: basename(copy) };
  return finding('store-migrated', 'note/kept', { file: basename(path) }, facts);
}

async function freeName(path: string): Promise<string> {
  for (let number = 1; ; number++) {
    const name = number === 1 ? path : path.replace(/\.gpkg$/, `-${number}.gpkg`);
    if ((await stat(name).catch(() => null)) === null) return name;
  }
}

function versionRefusal(path: string, version: number | null): Finding | null {
  const where = { file: basename(path) };
  if (version === null) {
    const problem = 'it is a GeoPackage, but holds no project';
    return finding('project-invalid', 'error/stops', where, {
      problem,
      expected: 'a file that crownfall convert made',
      got: 'other tables',
    });
  }
  if (version <= STORE_VERSION) return null;
  return finding('store-newer', 'error/stops', where, { got: version, known: STORE_VERSION });
}

function missingLayers(db: Connection, path: string): Finding[] {
  return LAYER_NAMES.filter((layer) => readLayerTable(db, layer)?.extra !== true).map((layer) => {
    const problem = `the table ${layer} was removed or replaced by another program`;
    return finding('file-damaged', 'error/stops', { file: basename(path), layer }, { format: 'GeoPackage', problem });
  });
}

function damaged(path: string, problem: string): Finding {
  return finding('file-damaged', 'error/stops', { file: basename(path) }, { format: 'GeoPackage', problem });
}

function causedByDamage({ cause }: Outage): boolean {
  return cause instanceof Error && isDamage(cause.cause);
}

async function mustBeWritable(path: string): Promise<void> {
  await access(path, constants.W_OK).catch((error) => {
    throw new Outage(`cannot write ${basename(path)}`, error);
  });
}

const HEADER_BYTES = 100;

/** What the first 100 bytes (SQLite's database header) already rule out. */
async function refusalOf(path: string): Promise<Finding | null> {
  const where = { file: basename(path) };
  const header = await headerOf(path);
  if (header === null) return finding('file-missing', 'error/stops', where, {});
  const { bytes, size } = header;
  if (size < HEADER_BYTES) return finding('file-truncated', 'error/stops', where, { bytes: size });
  if (new TextDecoder('latin1').decode(bytes.subarray(0, 16)) !== 'SQLite format 3\0') {
    return finding('format-unknown', 'error/stops', where, { got: 'no SQLite file', valid: 'GeoPackage' });
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, HEADER_BYTES);
  if (view.getUint32(68) !== APPLICATION_ID) {
    return finding('format-unknown', 'error/stops', where, {
      got: 'an SQLite file of another kind',
      valid: 'GeoPackage',
    });
  }
  const log = await stat(`${path}-wal`).catch(() => null);
  const whole = wholeSize(view);
  // With a write-ahead log beside it the file may rightly be shorter: its last pages are in the log.
  if (whole !== null && size < whole && (log === null || log.size === 0)) {
    return finding('file-truncated', 'error/stops', where, { bytes: size, problem: `${whole} bytes are expected` });
  }
  return null;
}

/** Bytes the file should have by its header; null when the header does not vouch for its count of pages. */
function wholeSize(view: DataView): number | null {
  const pageSize = view.getUint16(16) === 1 ? 65536 : view.getUint16(16);
  return view.getUint32(24) === view.getUint32(92) ? pageSize * view.getUint32(28) : null;
}

async function headerOf(path: string): Promise<{ bytes: Uint8Array; size: number } | null> {
  try {
    const file = await open(path, 'r');
    try {
      const bytes = new Uint8Array(HEADER_BYTES);
      await file.read(bytes, 0, HEADER_BYTES, 0);
      return { bytes, size: (await file.stat()).size };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (systemCode(error) === 'ENOENT' || systemCode(error) === 'ENOTDIR') return null;
    throw new Outage(`cannot read ${basename(path)}`, error);
  }
}
