/** A PostgreSQL server with PostGIS for tests, from Debian's packages: a throw-away cluster on 127.0.0.1. */
import { spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const BIN = '/usr/lib/postgresql/15/bin';
const POSTGIS = '/usr/share/postgresql/15/extension/postgis.control';

/** Why there can be no such server on this machine; null when there can. */
export function postgresMissing(): string | null {
  if (!existsSync(join(BIN, 'initdb')) || !existsSync(POSTGIS)) {
    return 'PostgreSQL 15 with PostGIS 3 is not installed (apt-get install postgresql-15-postgis-3)';
  }
  return owner() === null ? 'PostgreSQL refuses to run as root, and there is no user postgres' : null;
}

export interface TestPostgres {
  /** Address of a new, empty database; PostGIS is switched on already unless it is to be `bare`. */
  database(name: string, kind?: 'bare'): string;
  stop(): void;
}

/** Statements of another program, psql; gives the rows, fields apart by `|`. */
export function sql(url: string, text: string): string {
  const { status, stdout, stderr } = spawnSync('psql', ['-qAt', '-v', 'ON_ERROR_STOP=1', '-d', url, '-c', text], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  return stdout.trim();
}

export async function startPostgres(): Promise<TestPostgres> {
  const folder = mkdtempSync(join(tmpdir(), 'crownfall-postgres-'));
  const data = join(folder, 'data');
  const port = await freePort();
  const user = owner();
  if (user?.uid !== undefined) chownSync(folder, user.uid, user.gid ?? user.uid);
  run('initdb', ['-D', data, '-U', 'crownfall', '-A', 'trust', '-E', 'UTF8', '--no-locale', '-N']);
  // Nothing in it outlives the test, so nothing needs to reach the disk.
  const settings = `-c listen_addresses=127.0.0.1 -c port=${port} -c unix_socket_directories=${folder} -c fsync=off -c shared_buffers=64MB`;
  run('pg_ctl', ['-D', data, '-w', '-t', '60', '-l', join(folder, 'log'), '-o', settings, 'start']);
  const address = (name: string): string => `postgres://crownfall@127.0.0.1:${port}/${name}`;
  // Once for all databases instead of a second for each.
  sql(address('template1'), 'CREATE EXTENSION postgis');
  return {
    database(name, kind) {
      const template = kind === 'bare' ? 'template0' : 'template1';
      run('createdb', ['-h', '127.0.0.1', '-p', String(port), '-U', 'crownfall', '-T', template, name]);
      return address(name);
    },
    stop() {
      run('pg_ctl', ['-D', data, '-w', '-m', 'immediate', 'stop']);
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function run(program: string, args: readonly string[]): void {
  const { status, stdout, stderr } = spawnSync(join(BIN, program), args, {
    ...owner(),
    cwd: tmpdir(),
    encoding: 'utf8',
    // A server that goes on running must not hold our pipes open.
    stdio: program === 'pg_ctl' ? 'ignore' : 'pipe',
  });
  if (status !== 0) throw new Error(`${program} ended with ${status}: ${stdout ?? ''}${stderr ?? ''}`);
}

/** As whom to run it: ourselves, or the user postgres when we are root; null when there is none. */
function owner(): { uid?: number; gid?: number } | null {
  if (process.getuid?.() !== 0) return {};
  const id = (flag: string): string => spawnSync('id', [flag, 'postgres'], { encoding: 'utf8' }).stdout.trim();
  return id('-u') === '' ? null : { uid: Number(id('-u')), gid: Number(id('-g')) };
}

function freePort(): Promise<number> {
  return new Promise((found) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as { port: number };
      probe.close(() => found(port));
    });
  });
}
