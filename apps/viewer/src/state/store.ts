/** A small store: one plain value, replaced whole; listeners hear of every change. */
import { useSyncExternalStore } from 'react';

export interface Store<State> {
  readonly get: () => State;
  readonly change: (part: Partial<State> | ((state: State) => Partial<State>)) => void;
  readonly listen: (listener: () => void) => () => void;
}

export function createStore<State extends object>(first: State): Store<State> {
  let state = first;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    change: (part) => {
      const fresh = typeof part === 'function' ? part(state) : part;
      const keys = Object.keys(fresh) as (keyof State)[];
      if (keys.every((key) => Object.is(fresh[key], state[key]))) return;
      state = { ...state, ...fresh };
      for (const listener of [...listeners]) listener();
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** What `select` gives, and a new rendering whenever it gives something else. It must give the same object for the same state. */
export function useSelected<State extends object, Part>(store: Store<State>, select: (state: State) => Part): Part {
  const now = (): Part => select(store.get());
  // The same on a server, where tests draw parts of the page.
  return useSyncExternalStore(store.listen, now, now);
}

/** A derived value that is reckoned anew only when one of its parts is another object. */
export function derived<State, Parts extends readonly unknown[], Value>(
  partsOf: (state: State) => readonly [...Parts],
  reckon: (...parts: Parts) => Value,
): (state: State) => Value {
  let last: { readonly parts: readonly [...Parts]; readonly value: Value } | null = null;
  return (state) => {
    const parts = partsOf(state);
    if (last?.parts.every((part, i) => Object.is(part, parts[i]))) return last.value;
    last = { parts, value: reckon(...(parts as Parts)) };
    return last.value;
  };
}
