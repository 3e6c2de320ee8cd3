/** `crownfall serve`: the viewer over a project. The server is a program of its own; this starts it and passes its ending on. */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { type Finish, projectCommand, readPort } from './common-options.ts';

const SERVER = resolve(import.meta.dirname, '../../../server/bin/crownfall-server.js');

const ABOUT = `Reckons a project and shows it as a map in the browser, until stopped with Ctrl-C.

Listens on this machine only, unless --host names another address. It has no log-in: open it to a network
only where everyone on that network may see the data.`;

interface ServeOptions {
  readonly port: number;
  readonly host: string;
}

export function serveCommand(finish: Finish): Command {
  return projectCommand('serve', ABOUT, 'crownfall serve sample-geo --port 8137')
    .option('--port <N>', 'port to listen on; 0 takes any free one', readPort, 8137)
    .option('--host <ADDRESS>', 'address to listen on', '127.0.0.1')
    .option('--debug', 'on a failure, print where in the program it happened')
    .action((project: string, options: ServeOptions) => serve(project, options).then(finish));
}

function serve(project: string, { port, host }: ServeOptions): Promise<number> {
  const server = spawn(process.execPath, [SERVER, project, '--port', String(port), '--host', host], {
    stdio: 'inherit',
  });
  // In a terminal Ctrl-C reaches both; the server ends in its own time and this program follows it.
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => server.kill('SIGTERM'));
  return new Promise((done, fail) => {
    server.on('error', fail);
    server.on('exit', (code) => done(code ?? 3));
  });
}
