/** Edits: made, kept on disk, undone, redone. Records go to the reckoner, whose answer changes figures and map. */
import type { Edit, Scenario, Weighing } from '../edits/edit.ts';
import { type History, recordEdits, scenariosOf, stepsBetween, weighingOf, withEdit } from '../edits/history.ts';
import { newId } from '../edits/new-id.ts';
import { editsInForce, isSameWeighing, ownWeighing, weighing, wordsOf } from '../state/derived-state.ts';
import type { Session } from './session.ts';
import { putInOutbox, sendWaiting } from './sharing.ts';
import { showChange, showTreeAgain } from './shown-change.ts';

export async function makeEdit(session: Session, edit: Edit): Promise<void> {
  const { store } = session;
  const before = store.get().history;
  const entry = { id: newId(), at: new Date().toISOString(), edit };
  store.change({ history: withEdit(before, entry) });
  const { sharing } = store.get();
  if (!session.log && !sharing) store.change({ notice: wordsOf(store.get()).edits.otherTab });
  await kept(session, session.log?.append(before.done, entry));
  await follow(session, before);
}

/** Weights while they are moved; `settle` makes them an edit. */
export function moveWeights({ store }: Session, draft: Weighing): void {
  store.change({ weighingDraft: draft });
}

export async function settleWeights(session: Session, after: Weighing | null): Promise<void> {
  const { store } = session;
  const before = weighingOf(store.get().history);
  const own = ownWeighing(store.get());
  const changed = !isSameWeighing(after ?? own, before ?? own);
  if (changed) {
    const isOwn = isSameWeighing(after ?? own, own);
    await makeEdit(session, { kind: 'weighing', before, after: isOwn ? null : after });
  }
  store.change({ weighingDraft: null });
}

export async function saveScenario(session: Session, name: string): Promise<void> {
  const state = session.store.get();
  const now = weighing(state);
  if (!now) return;
  const id = newId();
  await makeEdit(session, { kind: 'scenario', before: null, after: { id, name, weighing: now } });
}

export async function deleteScenario(session: Session, id: string): Promise<void> {
  const before = scenariosOf(session.store.get().history).find((scenario) => scenario.id === id);
  if (before) await makeEdit(session, { kind: 'scenario', before, after: null });
}

export const takeScenario = (session: Session, scenario: Scenario): Promise<void> =>
  settleWeights(session, scenario.weighing);

/** Reckons with the records as the history has them. */
export async function applyRecords(session: Session): Promise<void> {
  const { store } = session;
  showChange(session, await session.reckoner.ask('setEdits', editsInForce(store.get())));
}

/** After the history changed: whatever of it matters to the reckoner is told. */
async function follow(session: Session, before: History): Promise<void> {
  const { store, reckoner } = session;
  const after = store.get().history;
  putInOutbox(session, stepsBetween(before, after));
  if (store.get().editing.can !== 'yes') return;
  if (JSON.stringify(recordEdits(before)) !== JSON.stringify(recordEdits(after))) {
    await applyRecords(session);
    await showTreeAgain(session);
  }
  const weights = weighing(store.get());
  if (weights && !isSameWeighing(weighingOf(before), weighingOf(after))) await reckoner.ask('weigh', weights);
  sendWaiting(session);
}

/** Goes back or forth in the history. */
export async function moveTo(session: Session, history: History): Promise<void> {
  const before = session.store.get().history;
  if (history === before) return;
  session.store.change({ history, weighingDraft: null });
  await kept(session, session.log?.moveTo(history.done));
  await follow(session, before);
}

/** A full or forbidden disk must not pass unseen: the edit stands on the screen, and a notice says it is not kept. */
async function kept({ store }: Session, writing: Promise<unknown> | undefined): Promise<void> {
  try {
    await writing;
  } catch {
    store.change({ notice: wordsOf(store.get()).edits.notKept });
  }
}
