import { constants } from 'node:fs';
import { access, rm, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import { finding, LAYER_NAMES } from '@crownfall/survey';
import { APPLICATION_ID, GEOPACKAGE_VERSION } from '../../formats/geopackage/geopackage-facts.ts';
import type { ProjectStore, StoreOpening } from '../../store/project-store.ts';
import { Outage } from '../outage.ts';
import { connect, orOutage, whenFree } from './connection.ts';
import { headerRefusal } from './file-header.ts';
import { GeoPackageStore } from './geopackage-store.ts';
import { readLayerTable } from './layer-table.ts';
import { setTriggers } from './layer-triggers.ts';
import { migrate, STORE_VERSION, storeVersion } from './migrations.ts';
import { setOwnTriggers } from './own-triggers.ts';
import type { Connection } from './sqlite-module.ts';
import { StoreFile } from './store-file.ts';
import { damageFinding, isDamageOutage, missingLayers, versionRefusal } from './store-refusals.ts';

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
  const refused = await headerRefusal(path);
  if (refused !== null) return { store: null, findings: [refused] };
  if (options.readOnly !== true) await mustBeWritable(path);
  try {
    return await orOutage('open', path, () => openFile(path, options));
  } catch (error) {
    if (!isDamageOutage(error)) throw error;
    return { store: null, findings: [damageFinding(path)] };
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
  await stat(dirname(path)).catch((error) => {
    throw new Outage(`cannot make ${basename(path)}`, error);
  });
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
    // Writing to a file with broken pages would spread the damage; reading one would give half of it as the whole.
    const sound = await whenFree(waitMs, () => first.pragma('quick_check(1)', { simple: true }) === 'ok');
    const version = sound ? await whenFree(waitMs, () => storeVersion(first)) : null;
    const refused = sound ? versionRefusal(path, version) : damageFinding(path);
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

async function mustBeWritable(path: string): Promise<void> {
  await access(path, constants.W_OK).catch((error) => {
    throw new Outage(`cannot write ${basename(path)}`, error);
  });
}
