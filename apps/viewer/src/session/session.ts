/** One open page: its state, its reckoner and its database. What a person does goes through the functions beside this file. */
import { createContext, useContext } from 'react';
import { BrowserDatabase } from '../edits/browser-database.ts';
import type { DraftStore, EditLog, OutboxStore } from '../edits/edit-log.ts';
import type { Units } from '../language/quantities.ts';
import type { Words } from '../language/words.ts';
import type { Picture } from '../map/imagery-tiles.ts';
import { type Reckoner, startReckoner } from '../reckoning/reckoner.ts';
import { addressOf, readAddress } from '../state/address.ts';
import { type AppState, FIRST_STATE } from '../state/app-state.ts';
import { unitsOf, wordsOf } from '../state/derived-state.ts';
import { loadPreferences, savePreferences } from '../state/preferences.ts';
import { createStore, type Store, useSelected } from '../state/store.ts';
import type { MapDoor } from './map-door.ts';
import { keepLoaded } from './offline.ts';

export interface Session {
  readonly store: Store<AppState>;
  readonly database: BrowserDatabase;
  readonly reckoner: Reckoner;
  /** The map once it stands: for what is done to it, not shown by it. */
  map: MapDoor | null;
  /** The map of the season before, while it is shown. */
  beside: MapDoor | null;
  /** The project's picture once somebody wanted it. */
  picture: Promise<Picture> | null;
  /** Null until a project is open. */
  log: EditLog | null;
  drafts: DraftStore | null;
  outboxes: OutboxStore | null;
  /** What was begun last between this page and the store: one thing at a time, in order. */
  turn: Promise<void>;
}

export function startSession(): Session {
  const store = createStore<AppState>({
    ...FIRST_STATE,
    ...readAddress(location.hash),
    preferences: loadPreferences(),
  });
  const reckoner = startReckoner(
    (stage, share) =>
      store.change(({ editing }) => (editing.can === 'soon' ? { editing: { can: 'soon', stage, share } } : {})),
    keepLoaded,
  );
  let saved = store.get().preferences;
  store.listen(() => {
    const address = addressOf(store.get());
    if (address !== location.hash) history.replaceState(null, '', address || location.pathname + location.search);
    if (store.get().preferences !== saved) {
      saved = store.get().preferences;
      savePreferences(saved);
    }
  });
  const database = new BrowserDatabase();
  const turn = Promise.resolve();
  const closed = { map: null, beside: null, picture: null, log: null, drafts: null, outboxes: null };
  return { store, database, reckoner, ...closed, turn };
}

export const SessionContext = createContext<Session | null>(null);

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error('useSession: used outside the page');
  return session;
}

export const useApp = <Part>(select: (state: AppState) => Part): Part => useSelected(useSession().store, select);
export const useWords = (): Words => useApp(wordsOf);
export const useUnits = (): Units => useApp(unitsOf);
