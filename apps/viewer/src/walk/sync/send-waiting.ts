/**
 * Sends what waits. Visits bear ids made on the device and never change once sealed, so a request may be repeated after any
 * interruption: the server adds each once. A visit leaves the queue only on the server's word for it.
 */
import type { VisitOutcome } from '@crownfall/exchange';
import type { QueuedVisit, VisitMark, VisitQueue } from './queue.ts';
import { NotTakenError, type VisitServer } from './visit-server.ts';

/** Small enough for a poor line, large enough for a morning. */
const BATCH = 20;

/** `unreachable`: something is left that another try may send. */
export type SendEnd = { readonly end: 'done' } | { readonly end: 'unreachable'; readonly why: string };

/** Sends all that waits, oldest first, visits before photos. Never throws for the network; what was not confirmed still waits. */
export async function sendWaiting(queue: VisitQueue, server: VisitServer): Promise<SendEnd> {
  try {
    for (;;) {
      const batch = await queue.claimVisits(BATCH);
      if (batch.length === 0) break;
      await sendBatch(queue, server, batch);
    }
    for (const { photoId, photo } of await queue.waitingPhotos()) await sendPhoto(queue, server, photoId, photo);
    return { end: 'done' };
  } catch (error) {
    return { end: 'unreachable', why: error instanceof Error ? error.message : String(error) };
  }
}

async function sendBatch(queue: VisitQueue, server: VisitServer, batch: readonly QueuedVisit[]): Promise<void> {
  const outcomes = await outcomesOf(queue, server, batch);
  if (outcomes === null) return;
  const told = new Map(outcomes.map(({ visitId, outcome }) => [visitId, outcome]));
  const marks = new Map<string, VisitMark>();
  for (const { visitId, visit } of batch) {
    const outcome = told.get(visitId);
    if (outcome === 'added' || outcome === 'known') marks.set(visitId, { state: 'sent' });
    if (outcome !== 'differs') continue;
    const theirs = visit.treeId === undefined ? [] : await server.visits({ treeId: visit.treeId });
    marks.set(visitId, { state: 'differs', theirs: theirs.find((each) => each.visitId === visitId) ?? null });
  }
  if (marks.size < batch.length) throw new Error('The server left out visits from its answer.');
  await queue.markVisits(marks);
}

/** Null when a batch was refused as a whole: then each was sent alone, so that one bad visit holds up no other. */
async function outcomesOf(
  queue: VisitQueue,
  server: VisitServer,
  batch: readonly QueuedVisit[],
): Promise<readonly VisitOutcome[] | null> {
  try {
    return await server.sendVisits(batch.map(({ visit }) => visit));
  } catch (error) {
    if (!(error instanceof NotTakenError)) throw error;
    if (batch.length === 1) {
      await queue.markVisits(new Map([[batch[0].visitId, { state: 'refused' as const, why: error.message }]]));
    } else for (const each of batch) await sendBatch(queue, server, [each]);
    return null;
  }
}

async function sendPhoto(queue: VisitQueue, server: VisitServer, photoId: string, photo: Blob): Promise<void> {
  try {
    await server.sendPhoto(photo);
    await queue.markPhoto(photoId, { state: 'sent', why: '' });
  } catch (error) {
    if (!(error instanceof NotTakenError)) throw error;
    await queue.markPhoto(photoId, { state: 'refused', why: error.message });
  }
}
