/** Runs the real crownfall command as its own process, as a person or a script would. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { join, resolve } from 'node:path';

export const ROOT = resolve(import.meta.dirname, '../..');
export const SAMPLE = join(ROOT, 'sample-geo');
const COMMAND = join(ROOT, 'apps/cli/bin/crownfall.js');

export interface Ending {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export function crownfall(args: readonly string[], environment: Readonly<Record<string, string>> = {}): Ending {
  const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...args], {
    cwd: ROOT,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    env: { ...process.env, ...environment },
  });
  return { code: status, stdout, stderr };
}

export { temporaryFolder } from '../temporary-folder.ts';

export interface Served {
  readonly url: string;
  /** Asks the server to stop as a service manager does, and waits for its exit code. */
  readonly stop: () => Promise<number | null>;
}

/** Serves a project on a free port and waits until it says where. */
export async function serve(project: string, ...further: readonly string[]): Promise<Served> {
  const server = spawn(process.execPath, [COMMAND, 'serve', project, '--port', '0', ...further], { cwd: ROOT });
  const url = await addressOf(server);
  const stop = async (): Promise<number | null> => {
    server.kill('SIGTERM');
    if (server.exitCode === null) await once(server, 'exit');
    return server.exitCode;
  };
  return { url, stop };
}

function addressOf(server: ChildProcess): Promise<string> {
  let said = '';
  return new Promise((found, fail) => {
    const listen = (piece: Buffer): void => {
      said += piece.toString();
      const address = /http:\/\/\S+/.exec(said)?.[0];
      if (address !== undefined) found(address);
    };
    server.stdout?.on('data', listen);
    server.stderr?.on('data', listen);
    server.on('exit', (code) => fail(new Error(`the server ended with ${code} before it said where it is:\n${said}`)));
  });
}
