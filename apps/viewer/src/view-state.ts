/** What the person has chosen: the units and the selected block. Listeners hear of every change. */
import type { Units } from './quantities.ts';

export interface Choice {
  readonly units: Units;
  readonly blockId: string | null;
}

export interface ViewState {
  readonly now: () => Choice;
  readonly change: (part: Partial<Choice>) => void;
  readonly listen: (listener: (choice: Choice, before: Choice) => void) => void;
}

export function viewState(first: Choice): ViewState {
  const listeners: ((choice: Choice, before: Choice) => void)[] = [];
  let choice = first;
  return {
    now: () => choice,
    change: (part) => {
      const before = choice;
      choice = { ...before, ...part };
      for (const listener of listeners) listener(choice, before);
    },
    listen: (listener) => void listeners.push(listener),
  };
}
