/** Opens a project, reckons it, serves it until told to stop. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { ProjectStore } from '@crownfall/exchange';
import type { Finding } from '@crownfall/geometry';
import { describeFinding } from '@crownfall/survey';
import { type App, buildApp } from './app.ts';
import { EXIT, say } from './exit.ts';
import { openFigures } from './figures/open-figures.ts';
import { jsonLines, type LogLine } from './http/log.ts';
import { LOOPBACK } from './http/security.ts';
import { stopGently } from './http/stop-gently.ts';
import { Gate } from './people/gate.ts';
import { PeopleWatch } from './people/people-watch.ts';
import { PhotoShelf } from './photos/photo-shelf.ts';
import { LiveProject } from './project/live-project.ts';
import { openStore } from './project/open-store.ts';
import { folderOf } from './project/project-place.ts';
import { FollowingFigures } from './reckoning/following-figures.ts';
import { Reckoner } from './reckoning/reckoner.ts';
import type { Wish } from './wish.ts';

const VIEWER_DIR = resolve(import.meta.dirname, '../../viewer/dist');

export async function serve(wish: Wish): Promise<number> {
  if (!existsSync(join(VIEWER_DIR, 'index.html'))) {
    return say('The viewer is not built yet. Run: npm run build -w apps/viewer', EXIT.outage);
  }
  const stop = stopSignal();
  const watch = wish.people === null ? null : await PeopleWatch.open(wish.people);
  const store = await storeOf(wish);
  if (store !== null && 'stopped' in store) return say(whyStopped(store.stopped), EXIT.dataStops);
  const reckoner = new Reckoner(wish.place);
  const reckoning = await reckoner.reckon();
  if ('stopped' in reckoning) {
    await Promise.all([reckoner.close(), store?.close()]);
    return say(whyStopped(reckoning.stopped), EXIT.dataStops);
  }
  let app: App | null = null;
  const figures = new FollowingFigures(openFigures(reckoning.figures), reckoner, () => app?.streams.figures());
  const live = new LiveProject(figures, store);
  app = await buildApp(await appOptions(wish, live, watch));
  try {
    await live.follow();
    const address = await app.server.listen({ port: wish.port, host: wish.host });
    process.stdout.write(`Serving ${live.figures.now.title} at ${wish.publicUrl ?? address}\n`);
    warnOfPlainText(wish);
    await stop;
  } finally {
    app.streams.end();
    await stopGently(app.server);
    await live.close();
    watch?.close();
  }
  return EXIT.done;
}

async function appOptions(
  wish: Wish,
  live: LiveProject,
  watch: PeopleWatch | null,
): Promise<Parameters<typeof buildApp>[0]> {
  const lines: LogLine = jsonLines(
    (text) => process.stderr.write(text),
    () => new Date(),
  );
  return {
    live,
    folder: await folderOf(wish.place),
    viewerDir: VIEWER_DIR,
    host: wish.host,
    gate: watch && new Gate(() => watch.people),
    localName: wish.localName,
    photos: wish.photos === null ? null : new PhotoShelf(wish.photos),
    tls: wish.tls && { cert: await readFile(wish.tls.cert), key: await readFile(wish.tls.key) },
    publicUrl: wish.publicUrl,
    background: wish.background,
    proxies: wish.proxies,
    log: wish.log ? lines : null,
    faults: lines,
  };
}

async function storeOf({ place }: Wish): Promise<ProjectStore | { readonly stopped: readonly Finding[] } | null> {
  if (place.kind === 'folder') return null;
  const { store, findings } = await openStore(place, { readOnly: false });
  return store ?? { stopped: findings };
}

/** The reason in words, with the remedy where there is one. */
export function whyFailed(error: unknown, { port }: Wish): string {
  if (!(error instanceof Error)) return String(error);
  const inUse = (error as NodeJS.ErrnoException).code === 'EADDRINUSE';
  return inUse ? `port ${port} is in use. Choose another with --port, or --port 0 for any free one.` : error.message;
}

function whyStopped(findings: readonly Finding[]): string {
  const lines = findings
    .filter((finding) => finding.effect === 'stops')
    .map((finding) => describeFinding(finding, 'en'))
    .map(({ where, what, remedy }) => `${where}: ${what}. ${remedy}`);
  return ['The data has errors that stop the job:', ...lines].join('\n');
}

function warnOfPlainText({ host, tls, publicUrl }: Wish): void {
  if (LOOPBACK.includes(host) || tls !== null || publicUrl?.startsWith('https:')) return;
  say(
    'Tokens travel in the clear: give --tls-cert and --tls-key, or put a TLS proxy before this and name it with --public-url.',
    0,
  );
}

/** Heard from the start on: a service that is stopped while it still reckons ends as well. */
function stopSignal(): Promise<void> {
  return new Promise((stop) => {
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
  });
}
