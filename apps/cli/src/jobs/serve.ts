/** Starts the server, a program of its own, and ends as it ends. */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { EXIT } from '../terminal/failure.ts';

const SERVER = resolve(import.meta.dirname, '../../../server/bin/crownfall-server.js');

export interface ServeOptions {
  readonly port: number;
  readonly host: string;
  readonly quiet?: true;
}

export function serve(project: string, { port, host, quiet }: ServeOptions): Promise<number> {
  if (!quiet) process.stderr.write(`Reading and reckoning ${project}\n`);
  const server = spawn(process.execPath, [SERVER, project, '--port', String(port), '--host', host], {
    stdio: 'inherit',
  });
  // In a terminal Ctrl-C reaches both; the server ends in its own time and this program follows it.
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => server.kill('SIGTERM'));
  return new Promise((done, fail) => {
    server.on('error', fail);
    server.on('exit', (code) => done(code ?? EXIT.outage));
  });
}
