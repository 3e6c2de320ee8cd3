/** The order in which things were changed, and how far back the person has gone in it. */
import type { Edit, RecordEdit, Scenario, Weighing } from './edit.ts';

export interface Entry {
  readonly id: string;
  /** When, ISO. */
  readonly at: string;
  readonly edit: Edit;
}

export interface History {
  readonly entries: readonly Entry[];
  /** How many of the entries are in force; those beyond can be redone. */
  readonly done: number;
}

export const NO_HISTORY: History = { entries: [], done: 0 };

/** A new edit; what had been undone is gone for good. */
export function withEdit({ entries, done }: History, entry: Entry): History {
  return { entries: [...entries.slice(0, done), entry], done: done + 1 };
}

/** One step back; the same history when there is none. */
export const undone = (history: History): History =>
  history.done === 0 ? history : { ...history, done: history.done - 1 };

export const redone = (history: History): History =>
  history.done === history.entries.length ? history : { ...history, done: history.done + 1 };

const inForce = ({ entries, done }: History): readonly Edit[] => entries.slice(0, done).map(({ edit }) => edit);

/** Those that change the project's records, in order. */
export const recordEdits = (history: History): readonly RecordEdit[] =>
  inForce(history).filter((edit) => edit.kind === 'crown' || edit.kind === 'rating');

/** The steps that lead from one history to the next: entries undone, newest first, then entries made or made again. */
export function stepsBetween(before: History, after: History): readonly Step[] {
  const same = before.entries.findIndex(({ id }, i) => after.entries[i]?.id !== id);
  const shared = Math.min(before.done, after.done, same < 0 ? before.entries.length : same);
  const undone = before.entries.slice(shared, before.done).reverse();
  const done = after.entries.slice(shared, after.done);
  return [
    ...undone.map((entry) => ({ entry, way: 'undo' as const })),
    ...done.map((entry) => ({ entry, way: 'do' as const })),
  ];
}

export interface Step {
  readonly entry: Entry;
  readonly way: 'do' | 'undo';
}

/** The weighing in force; null: the project's own. */
export function weighingOf(history: History): Weighing | null {
  const last = inForce(history).findLast((edit) => edit.kind === 'weighing');
  return last?.kind === 'weighing' ? last.after : null;
}

/** Saved scenarios in the order of their first saving. */
export function scenariosOf(history: History): readonly Scenario[] {
  const scenarios = new Map<string, Scenario>();
  for (const edit of inForce(history)) {
    if (edit.kind !== 'scenario') continue;
    const id = edit.after?.id ?? edit.before?.id ?? '';
    if (edit.after) scenarios.set(id, edit.after);
    else scenarios.delete(id);
  }
  return [...scenarios.values()];
}
