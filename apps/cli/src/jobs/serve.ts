/** Starts the server, a program of its own, and ends as it ends. */
import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { EXIT } from '../terminal/failure.ts';

const SERVER = resolve(import.meta.dirname, '../../../server/bin/crownfall-server.js');

export interface ServeOptions {
  readonly port: number;
  readonly host: string;
  readonly people?: string;
  readonly as?: string;
  readonly photos?: string;
  readonly tlsCert?: string;
  readonly tlsKey?: string;
  readonly publicUrl?: string;
  readonly proxy?: string;
  readonly background?: string;
  readonly log?: true;
  readonly quiet?: true;
}

export function serve(project: string, { quiet, ...options }: ServeOptions): Promise<number> {
  // A database's address may hold a password.
  if (!quiet) process.stderr.write(`Reading and reckoning ${project.replace(/\/\/[^@/]*@/, '//')}\n`);
  return runServer([project, ...serverArguments(options)]);
}

/** `crownfall people …`: the server keeps the file of those who may use it. */
export const keepPeople = (words: readonly string[]): Promise<number> => runServer(['people', ...words]);

function serverArguments(options: Omit<ServeOptions, 'quiet'>): string[] {
  return Object.entries(options).flatMap(([name, value]) => {
    const flag = `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
    return value === true ? [flag] : [flag, String(value)];
  });
}

function runServer(words: readonly string[]): Promise<number> {
  const server = spawn(process.execPath, [SERVER, ...words], { stdio: 'inherit' });
  // In a terminal Ctrl-C reaches both; the server ends in its own time and this program follows it.
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => server.kill('SIGTERM'));
  return new Promise((done, fail) => {
    server.on('error', fail);
    server.on('exit', (code) => done(code ?? EXIT.outage));
  });
}
