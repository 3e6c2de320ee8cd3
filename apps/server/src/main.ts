/** Opens a project, reckons it, serves it until told to stop. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { assess, isStopped } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import type { Finding } from '@crownfall/geometry';
import { describeFinding } from '@crownfall/survey';
import { buildApp } from './app.ts';
import { servedProject } from './served-project.ts';

const EXIT = { done: 0, dataStops: 1, misuse: 2, outage: 3 } as const;
const VIEWER_DIR = resolve(import.meta.dirname, '../../viewer/dist');

interface Wish {
  readonly project: string;
  readonly port: number;
  readonly host: string;
}

/** `PROJECT [--port N] [--host ADDRESS]`. Prints one line with the address when ready; answers the exit code. */
export async function main(argv: string[]): Promise<number> {
  const wish = readWish(argv);
  if (typeof wish === 'string') return say(wish, EXIT.misuse);
  if (!existsSync(join(VIEWER_DIR, 'index.html'))) {
    return say('The viewer is not built yet. Run: npm run build -w apps/viewer', EXIT.outage);
  }
  try {
    return await serve(wish);
  } catch (error) {
    return say(`crownfall serve stopped: ${whyFailed(error, wish)}`, EXIT.outage);
  }
}

function whyFailed(error: unknown, { port }: Wish): string {
  if (!(error instanceof Error)) return String(error);
  const inUse = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
  return inUse ? `port ${port} is in use. Choose another with --port, or --port 0 for any free one.` : error.message;
}

async function serve({ project, port, host }: Wish): Promise<number> {
  const assessment = assess(await readProject(project));
  if (isStopped(assessment)) return say(whyStopped(assessment.findings), EXIT.dataStops);
  const app = await buildApp({ project: servedProject(assessment), viewerDir: VIEWER_DIR, host });
  const address = await app.listen({ port, host });
  process.stdout.write(`Serving ${assessment.title} at ${address}\n`);
  await stopSignal();
  await app.close();
  return EXIT.done;
}

function readWish(argv: string[]): Wish | string {
  try {
    const { values, positionals } = parseArgs({
      args: argv,
      allowPositionals: true,
      options: { port: { type: 'string', default: '8137' }, host: { type: 'string', default: '127.0.0.1' } },
    });
    const port = Number(values.port);
    if (positionals.length !== 1) return 'crownfall-server: expected one PROJECT, and optionally --port and --host.';
    if (!Number.isInteger(port) || port < 0 || port > 65535)
      return `crownfall-server: --port ${values.port} is no port.`;
    return { project: positionals[0], port, host: values.host };
  } catch (error) {
    return `crownfall-server: ${error instanceof Error ? error.message : String(error)}`;
  }
}

function whyStopped(findings: readonly Finding[]): string {
  const lines = findings
    .filter((finding) => finding.effect === 'stops')
    .map((finding) => describeFinding(finding, 'en'))
    .map(({ where, what, remedy }) => `${where}: ${what}. ${remedy}`);
  return ['The data has errors that stop the job:', ...lines].join('\n');
}

function stopSignal(): Promise<void> {
  return new Promise((stop) => {
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
  });
}

function say(words: string, code: number): number {
  process.stderr.write(`${words}\n`);
  return code;
}
