/** One open walk: its state, its database, and the way between screens. */
import { createContext, useContext } from 'react';
import { EN_WALK, type WalkWords } from '../../language/en-walk.ts';
import { ES_WALK } from '../../language/es-walk.ts';
import type { Units } from '../../language/quantities.ts';
import { createStore, derived, type Store, useSelected } from '../../state/store.ts';
import { WalkDatabase } from '../sync/walk-database.ts';
import { firstState, packOf, type Screen, treesOf, type WalkState } from './walk-state.ts';

export interface Walk {
  readonly store: Store<WalkState>;
  readonly database: WalkDatabase;
  /** The middle of the map, once there is a map: where a cross stands. */
  mapMiddle: (() => readonly [number, number]) | null;
  mapCentre: ((at: readonly [number, number]) => void) | null;
}

export function startWalk(): Walk {
  const store = createStore<WalkState>(firstState());
  // The phone's own way back leads back through the screens.
  history.replaceState({ screen: 'blocks' }, '');
  addEventListener('popstate', ({ state }) => {
    const { screen } = (state ?? { screen: 'blocks' }) as { readonly screen: Screen };
    store.change({ screen, notice: '' });
  });
  return { store, database: new WalkDatabase(), mapMiddle: null, mapCentre: null };
}

export function goTo({ store }: Walk, screen: Screen): void {
  if (store.get().screen === screen) return;
  history.pushState({ screen }, '');
  store.change({ screen });
}

/** Like `goTo`, but the way back skips the screen that is left. */
export function goOnTo({ store }: Walk, screen: Screen): void {
  history.replaceState({ screen }, '');
  store.change({ screen });
}

export const goBack = (): void => history.back();

export const WalkContext = createContext<Walk | null>(null);

export function useWalk(): Walk {
  const walk = useContext(WalkContext);
  if (!walk) throw new Error('useWalk: used outside the walk');
  return walk;
}

export const useShown = <Part>(select: (state: WalkState) => Part): Part => useSelected(useWalk().store, select);

const WORDS: Readonly<Record<'en' | 'es', WalkWords>> = { en: EN_WALK, es: ES_WALK };
export const wordsOf = ({ preferences }: WalkState): WalkWords => WORDS[preferences.language];
export const unitsOf = (state: WalkState): Units =>
  state.preferences.units ?? (packOf(state) ?? state.packs[0] ?? sourceOf(state))?.units ?? 'metric';
const sourceOf = ({ source }: WalkState) => (source === 'none' ? undefined : source?.project);

export const useWords = (): WalkWords => useShown(wordsOf);
export const useUnits = (): Units => useShown(unitsOf);

/** The chosen block's trees in walking order. */
export const blockTrees = derived(
  (state: WalkState) => [packOf(state), state.begun, state.visits] as const,
  (pack, begun, visits) => (pack ? treesOf({ begun, visits }, pack) : []),
);
