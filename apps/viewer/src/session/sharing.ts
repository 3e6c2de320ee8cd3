/** The project is shared: edits go to the server's store, edits of others come from it and are shown at once. */
import type { Step } from '../edits/history.ts';
import { newId } from '../edits/new-id.ts';
import {
  accepted,
  marked,
  nextSending,
  type Outbox,
  type Sending,
  storeEdit,
  without,
  withStep,
} from '../edits/outbox.ts';
import {
  type Conflict,
  decideConflict,
  followNews,
  type News,
  type Outcome,
  openConflicts,
  RefusedError,
  recordNow,
  type StoreHead,
  sendEdit,
} from '../project/store-api.ts';
import type { FollowedRecord } from '../reckoning/project-reckoner.ts';
import { rawRecord, type StoreFeature } from '../reckoning/read-store.ts';
import type { Sharing } from '../state/app-state.ts';
import { editsInForce, wordsOf } from '../state/derived-state.ts';
import type { Session } from './session.ts';
import { showChange, showTreeAgain } from './shown-change.ts';

/** From now on edits are sent; those that waited since an earlier visit are in `outbox`. */
export function shareEdits({ store }: Session, asker: StoreHead['asker'], outbox: Outbox): void {
  store.change({ sharing: { outbox, asker, reached: true, conflicts: [] } });
}

/** Follows the store after change number `since`, and sends what waits. */
export function followStore(session: Session, since: number, readAnew: () => Promise<void>): void {
  let fresh = new Map<string, News>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  followNews(
    since,
    (news) => {
      fresh.set(`${news.layer}:${news.recordId}`, news);
      clearTimeout(timer);
      timer = setTimeout(() => {
        const told = [...fresh.values()];
        fresh = new Map();
        inTurn(session, () => takeNews(session, told, readAnew));
      }, PAUSE_MS);
    },
    (reached) => {
      changeSharing(session, { reached });
      if (reached) sendWaiting(session);
    },
  );
  inTurn(session, () => refreshConflicts(session));
  sendWaiting(session);
}

/** Steps that are to be sent; to be followed by `sendWaiting` once their figures are shown. */
export function putInOutbox(session: Session, steps: readonly Step[]): void {
  const { sharing } = session.store.get();
  if (!sharing || steps.length === 0) return;
  changeOutbox(
    session,
    steps.reduce((outbox, step) => withStep(outbox, step, newId()), sharing.outbox),
  );
}

export function sendWaiting(session: Session): void {
  const { sharing, editing } = session.store.get();
  if (sharing && editing.can === 'yes' && nextSending(sharing.outbox)) inTurn(session, () => sendAll(session));
}

/** Takes what was given, or leaves the record as it stands; the store's news then bring the outcome. */
export async function decide(session: Session, conflict: Conflict, decision: 'take' | 'drop'): Promise<void> {
  try {
    await decideConflict(conflict.conflictId, decision);
  } catch (error) {
    session.store.change({ notice: messageOf(error) });
  }
  inTurn(session, () => refreshConflicts(session));
}

/** News come in bursts. */
const PAUSE_MS = 80;
const RETRY_MS = 4000;

function inTurn(session: Session, work: () => Promise<void>): void {
  session.turn = session.turn.then(work).catch((error: unknown) => {
    session.store.change({ notice: messageOf(error) });
  });
}

async function sendAll(session: Session): Promise<void> {
  for (;;) {
    const { sharing } = session.store.get();
    const sending = sharing && nextSending(sharing.outbox);
    if (!sending) return;
    const edit = storeEdit(sharing.outbox, sending);
    if (!edit) {
      changeOutbox(session, without(sharing.outbox, sending.id));
      continue;
    }
    // Known to have been tried before it is, so that a crash in between does not take it for unsent.
    await changeOutbox(session, marked(sharing.outbox, sending.id, { tried: true }));
    try {
      await settle(session, sending, await sendEdit(sending.id, edit));
      changeSharing(session, { reached: true });
    } catch (error) {
      if (!(error instanceof RefusedError)) {
        changeSharing(session, { reached: false });
        setTimeout(() => sendWaiting(session), RETRY_MS);
        return;
      }
      refuse(session, sending, error.message);
    }
  }
}

async function settle(session: Session, sending: Sending, outcome: Outcome): Promise<void> {
  const { store } = session;
  const { sharing } = store.get();
  if (!sharing) return;
  const layer = sending.edit.kind === 'crown' ? 'crowns' : 'ratings';
  if (outcome.outcome === 'unknown') return refuse(session, sending, wordsOf(store.get()).sharing.gone);
  if (outcome.outcome === 'applied') {
    const { recordId, version, record } = outcome;
    changeOutbox(session, accepted(sharing.outbox, sending, { recordId, version }));
    return follow(session, [followed(layer, recordId, version, record)]);
  }
  const { conflict } = outcome;
  changeOutbox(session, without(sharing.outbox, sending.id));
  changeSharing(session, { conflicts: [...sharing.conflicts, conflict] });
  store.change({ notice: wordsOf(store.get()).sharing.conflictNow(sending.edit.treeId) });
  const now = conflict.current ?? (await recordNow(layer, conflict.recordId));
  if (now) return follow(session, [followed(layer, now.id, now.version, now)]);
  await follow(session, []);
}

function refuse(session: Session, { id, edit }: Sending, why: string): void {
  const { sharing } = session.store.get();
  if (!sharing) return;
  changeOutbox(session, marked(sharing.outbox, id, { refused: why }));
  session.store.change({ notice: wordsOf(session.store.get()).sharing.refused(edit.treeId, why) });
}

async function takeNews(session: Session, news: readonly News[], readAnew: () => Promise<void>): Promise<void> {
  const { store } = session;
  if (news.some(({ layer }) => layer === 'conflicts')) await refreshConflicts(session);
  const records = news.filter(({ layer, recordId }) => recordId > 0 && (layer === 'crowns' || layer === 'ratings'));
  const others = news.filter((each) => !records.includes(each) && !NOT_RECKONED.includes(each.layer));
  if (others.length > 0 || records.length > RECORDS_MOST) return readAnew();
  const now = await Promise.all(
    records.map(async ({ layer, recordId, version, action }) => {
      const record = action === 'delete' ? null : await recordNow(layer, recordId);
      return followed(layer as FollowedRecord['layer'], recordId, record?.version ?? version, record);
    }),
  );
  const { sketch } = store.get();
  const seen = sketch?.before?.stored;
  if (seen && now.some(({ stored }) => stored.recordId === seen.recordId && stored.version > seen.version))
    store.change({ notice: wordsOf(store.get()).sharing.changedMeanwhile(sketch.treeId) });
  if (now.length > 0) await follow(session, now);
}

/** With more at once everything is read anew. */
const RECORDS_MOST = 200;
/** What the journal notes beside the records that figures are made of. */
const NOT_RECKONED: readonly string[] = ['results', 'conflicts'];

async function follow(session: Session, records: readonly FollowedRecord[]): Promise<void> {
  const edits = editsInForce(session.store.get());
  showChange(session, await session.reckoner.ask('follow', { records, edits }));
  await showTreeAgain(session);
}

function followed(
  layer: FollowedRecord['layer'],
  recordId: number,
  version: number,
  record: StoreFeature | null,
): FollowedRecord {
  return { layer, stored: { recordId, version }, feature: record && rawRecord(record) };
}

async function refreshConflicts(session: Session): Promise<void> {
  changeSharing(session, { conflicts: await openConflicts() });
}

function changeSharing({ store }: Session, part: Partial<Sharing>): void {
  store.change(({ sharing }) => ({ sharing: sharing && { ...sharing, ...part } }));
}

async function changeOutbox(session: Session, outbox: Outbox): Promise<void> {
  changeSharing(session, { outbox });
  await session.outboxes?.save(outbox).catch(() => undefined);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
