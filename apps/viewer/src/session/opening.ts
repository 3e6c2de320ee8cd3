/** Opens the project: first what the server has reckoned, then the project's own files, so that it can be changed here. */
import { NO_HISTORY } from '../edits/history.ts';
import { NO_OUTBOX } from '../edits/outbox.ts';
import type { Project } from '../project/project.ts';
import { localProject, type ProjectPlace, type StoreLayer } from '../project/project-files.ts';
import { type ServedResults, servedResults } from '../project/served-results.ts';
import { newestChange, type StoreHead, servedImagery, storeHead } from '../project/store-api.ts';
import type { Opened } from '../reckoning/messages.ts';
import { editsInForce, weighing, wordsOf } from '../state/derived-state.ts';
import { changeSketch } from './drawing.ts';
import { applyRecords } from './editing.ts';
import type { Session } from './session.ts';
import { followStore, shareEdits } from './sharing.ts';

/** The invented sample town, which comes with the page. Whole, because workers stand elsewhere. */
const DEMO: ProjectPlace = { kind: 'http', base: new URL('demo/', document.baseURI).href };
const LAST_OPENED = 'last';

/** Opens what the address asks for: `?open=demo`, `?open=local`, else the served project. Failures become states, not throws. */
export async function openProject(session: Session): Promise<void> {
  const wish = new URLSearchParams(location.search).get('open');
  try {
    if (wish === 'demo') return await openPlace(session, DEMO, 'demo');
    if (wish === 'local') return await openLast(session);
    const [served, head] = await Promise.all([servedResults(), storeHead()]);
    if (!served) return await openPlace(session, DEMO, 'demo');
    const { shown } = served;
    const stored = head?.layers && head.writable && head.asker.role !== 'reader';
    if (stored) await takeUpShared(session, `store:${shown.project.title}`, head.asker);
    else await takeUp(session, `served:${shown.project.title}`);
    const pictures = head ? servedImagery(head) : {};
    session.store.change({ ...shown, ...pictures, status: 'ready', servedBackground: head?.background ?? null });
    if (head?.layers) await openStore(session, served, placeOf(shown.project, head.layers));
    else await makeEditable(session, shown.project);
  } catch (error) {
    fail(session, error);
  }
}

/** Keeps the chosen files in the browser and opens them; answers whether they hold a project. */
export async function openChosen(
  session: Session,
  chosen: readonly { readonly path: string; readonly file: Blob }[],
): Promise<boolean> {
  const place = localProject(chosen);
  if (!place) return false;
  await session.database.opened.put({ key: LAST_OPENED, place });
  location.assign('?open=local');
  return true;
}

async function openLast(session: Session): Promise<void> {
  const kept = await session.database.opened.get(LAST_OPENED);
  if (kept?.place.kind !== 'local') return openPlace(session, DEMO, 'demo');
  return openPlace(session, kept.place, `local:${kept.place.name}`);
}

/** Everything is reckoned here. */
async function openPlace(session: Session, place: ProjectPlace, key: string): Promise<void> {
  const { store } = session;
  await takeUp(session, key);
  const opened = await session.reckoner.ask('open', { place, edits: [] });
  if (opened.stopped) return store.change({ status: 'stopped', stopping: opened.findings });
  store.change({ ...opened.shown, status: 'ready' });
  await allowEditing(session, opened, place);
}

/**
 * Reads the server's store. Where its own figures lag behind the records, those reckoned here are shown; else both must be the
 * same, digit for digit.
 */
async function openStore(session: Session, { shown, journal }: ServedResults, place: ProjectPlace): Promise<void> {
  const { store } = session;
  const since = await newestChange();
  const opened = await openedAt(session, place);
  if (!opened) return;
  if (!sameFigures(opened.shown.project, shown.project)) {
    if (journal === since) return store.change({ editing: { can: 'no', why: 'other-figures', detail: '' } });
    store.change(opened.shown);
  } else store.change({ project: { ...shown.project, findings: opened.shown.project.findings } });
  await allowEditing(session, opened, place);
  if (store.get().sharing) followStore(session, since, () => reopenStore(session));
}

/** Reads all records anew: layers changed that figures follow only from the beginning. */
async function reopenStore(session: Session): Promise<void> {
  const { store, reckoner } = session;
  const [served, head] = await Promise.all([servedResults(), storeHead()]);
  if (!served || !head?.layers) return;
  const edits = editsInForce(store.get());
  const opened = await reckoner.ask('open', { place: placeOf(served.shown.project, head.layers), edits });
  if (opened.stopped) return store.change({ status: 'stopped', stopping: opened.findings });
  store.change(opened.shown);
  const weights = weighing(store.get());
  if (weights) await reckoner.ask('weigh', weights);
}

/** The server's figures are shown already. A project of files is not handed out; the sample town has a copy in the page. */
async function makeEditable(session: Session, served: Project): Promise<void> {
  const { store } = session;
  const opened = await openedAt(session, DEMO);
  if (!opened) return;
  if (!sameFigures(opened.shown.project, served))
    return store.change({ editing: { can: 'no', why: 'no-files', detail: '' } });
  // The server's findings come in one language; these can be said in any and lead to their place.
  store.change({ project: { ...served, findings: opened.shown.project.findings } });
  await allowEditing(session, opened, DEMO);
}

/** Null, and the reason on the screen, when the place gives nothing to reckon with. */
async function openedAt(
  { store, reckoner }: Session,
  place: ProjectPlace,
): Promise<(Opened & { stopped: false }) | null> {
  const opened = await reckoner.ask('open', { place, edits: [] }).catch((error: Error) => ({ failed: error.message }));
  if ('failed' in opened) store.change({ editing: { can: 'no', why: 'failed', detail: opened.failed } });
  else if (opened.stopped)
    store.change({ editing: { can: 'no', why: place === DEMO ? 'no-files' : 'other-figures', detail: '' } });
  else return opened;
  return null;
}

async function allowEditing(session: Session, opened: Opened & { stopped: false }, place: ProjectPlace): Promise<void> {
  const { store } = session;
  // A server hands out its project's own pictures.
  if (store.get().imagery.length === 0) store.change({ imagery: opened.imagery, imageryPlace: place });
  if (editsInForce(store.get()).length > 0) await applyRecords(session);
  const weights = weighing(store.get());
  if (weights) await session.reckoner.ask('weigh', weights);
  store.change({ editing: { can: 'yes' } });
  // A sketch that outlived a crash gets its figures.
  const { sketch } = store.get();
  if (!sketch) return;
  // Nobody answers any more what the page asked before.
  const asked = sketch.picture?.state === 'asked';
  changeSketch(session, asked ? { ...sketch, picture: { state: 'wanted' } } : sketch);
}

/** Edits and drafts of a project from the browser's database. */
async function takeUp(session: Session, projectKey: string): Promise<void> {
  const log = session.database.editLog(projectKey);
  const drafts = session.database.draftStore(projectKey);
  const alone = await holdAlone(projectKey);
  // A second tab must not write between the lines of the first.
  session.log = alone ? log : null;
  session.drafts = alone ? drafts : null;
  const [history, draft] = await Promise.all([log.load(), alone ? drafts.load() : null]);
  if (!alone) session.store.change({ notice: wordsOf(session.store.get()).edits.otherTab });
  session.store.change({ projectKey, history, ...(draft as object | null) });
}

/** The same of a project in the server's store: a second tab starts a history of its own, for both send their edits. */
async function takeUpShared(session: Session, projectKey: string, asker: StoreHead['asker']): Promise<void> {
  const { database, store } = session;
  if (!(await holdAlone(projectKey))) {
    shareEdits(session, asker, NO_OUTBOX);
    return store.change({ projectKey, history: NO_HISTORY });
  }
  session.log = database.editLog(projectKey);
  session.drafts = database.draftStore(projectKey);
  session.outboxes = database.outboxStore(projectKey);
  const [history, draft, outbox] = await Promise.all([
    session.log.load(),
    session.drafts.load(),
    session.outboxes.load(),
  ]);
  shareEdits(session, asker, outbox);
  store.change({ projectKey, history, ...(draft as object | null) });
}

/** True when no other tab has this project open; held until the page goes. */
function holdAlone(projectKey: string): Promise<boolean> {
  // Not offered over plain HTTP from another machine.
  if (!('locks' in navigator)) return Promise.resolve(true);
  return new Promise((tell) => {
    void navigator.locks.request(`crownfall:${projectKey}`, { ifAvailable: true }, (lock) => {
      tell(lock !== null);
      return lock === null ? undefined : new Promise(() => {});
    });
  });
}

function placeOf(served: Project, layers: readonly StoreLayer[]): ProjectPlace {
  const { title, season, units, run } = served;
  return { kind: 'store', facts: { title, season, units, settings: { ...run.settings } }, layers };
}

/** Engines of different age round sines and powers differently in the last place; what is seen and exported is far coarser. */
const SAME = 1e-9;

function sameFigures(here: Project, served: Project): boolean {
  const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a));
  return (
    here.title === served.title &&
    here.blocks.length === served.blocks.length &&
    here.blocks.every(({ blockId, score, stainedM2 }, i) => {
      const other = served.blocks[i];
      return blockId === other.blockId && near(score, other.score) && near(stainedM2.value, other.stainedM2.value);
    })
  );
}

function fail({ store }: Session, error: unknown): void {
  store.change({ status: 'failed', failure: error instanceof Error ? error.message : String(error) });
}
