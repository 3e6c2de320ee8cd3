/** Sends what waits when there is reason to think it can be: never by the clock. */
import type { Visit } from '@crownfall/exchange';
import { sendWaiting } from '../sync/send-waiting.ts';
import { type VisitServer, visitServer } from '../sync/visit-server.ts';
import { readQueue } from './reading-queue.ts';
import type { Walk } from './walk-session.ts';

/** A saved visit can be taken back for as long. */
export const TAKE_BACK_MS = 8000;

/** Sends on return of the network, and when the page is looked at again. */
export function sendOnReturn(walk: Walk): void {
  addEventListener('online', () => sendSoon(walk, 0));
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') sendSoon(walk, 0);
  });
}

let timer: ReturnType<typeof setTimeout> | undefined;

/** Once, after a while; asked again it waits anew. */
export function sendSoon(walk: Walk, afterMs: number): void {
  clearTimeout(timer);
  timer = setTimeout(() => void send(walk), afterMs);
}

/** One sending at a time, over all tabs of this browser. */
export async function send(walk: Walk): Promise<void> {
  const { store, database } = walk;
  const { project } = store.get();
  if (project === '' || !(await database.fact<boolean>(`takes-visits:${project}`))) return;
  await alone(async () => {
    store.change({ sending: true, saved: null });
    const server = visitServer('');
    const ended = await sendWaiting(database.queue(project), server);
    await readQueue(walk);
    if (ended.end === 'done') await lookAtOthers(walk, server).catch(() => undefined);
    store.change({ sending: false, notSent: ended.end === 'done' ? '' : ended.why });
  });
}

/** Whoever visited the same trees since the blocks were packed: both are kept, and both are shown. */
async function lookAtOthers({ store, database }: Walk, server: VisitServer): Promise<void> {
  const { project, packs, visits } = store.get();
  const sent = visits.filter(({ state }) => state === 'sent');
  if (sent.length === 0 || packs.length === 0) return;
  const [packedAt] = packs.map((pack) => pack.packedAt).sort();
  const own = new Set(visits.map(({ visitId }) => visitId));
  const trees = new Set(sent.map(({ visit }) => visit.treeId));
  const there = await server.visits({ from: packedAt.slice(0, 10) });
  const others = there.filter((visit) => isOther(visit, own, trees) && visit.visitedOn >= packedAt.slice(0, 10));
  await database.note(`others:${project}`, others);
  store.change({ others });
}

const isOther = (
  { visitId, treeId }: Visit,
  own: ReadonlySet<string>,
  trees: ReadonlySet<string | undefined>,
): boolean => treeId !== undefined && trees.has(treeId) && !own.has(visitId);

/** Not offered over plain HTTP from another machine; then the ids alone keep visits from being doubled. */
async function alone(work: () => Promise<void>): Promise<void> {
  if (!('locks' in navigator)) return work();
  await navigator.locks.request('crownfall-walk-sending', { ifAvailable: true }, (lock) => (lock ? work() : undefined));
}

/** All visits that are not known to be sent, for carrying them home another way. */
export function visitsAsFile({ store }: Walk): File {
  const unsent = store.get().visits.filter(({ state }) => state !== 'sent');
  const text = JSON.stringify({ visits: unsent.map(({ visit }) => visit) }, null, 1);
  return new File([text], 'visits.json', { type: 'application/json' });
}
