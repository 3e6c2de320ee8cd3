import { describe, expect, test } from 'vitest';
import type { Edit } from './edit.ts';
import { NO_HISTORY, redone, scenariosOf, undone, weighingOf, withEdit } from './history.ts';

let made = 0;
const entry = (edit: Edit) => ({ id: String(made++), at: '2026-05-20T08:00:00Z', edit });
const weighing = (stained: number) =>
  entry({ kind: 'weighing', before: null, after: { weights: { stained } as never, levels: {} as never } });
const scenario = (id: string, name: string) => ({ id, name, weighing: {} as never });

describe('the history of edits', () => {
  test('undo and redo are each other’s inverse, and stop at the ends', () => {
    const history = withEdit(withEdit(NO_HISTORY, weighing(1)), weighing(2));
    expect(weighingOf(history)?.weights.stained).toBe(2);
    expect(weighingOf(undone(history))?.weights.stained).toBe(1);
    expect(weighingOf(undone(undone(undone(history))))).toBeNull();
    expect(redone(undone(history))).toEqual(history);
    expect(redone(history)).toBe(history);
  });

  test('a new edit after an undo takes the place of what was undone', () => {
    const history = withEdit(undone(withEdit(withEdit(NO_HISTORY, weighing(1)), weighing(2))), weighing(3));
    expect(history.entries).toHaveLength(2);
    expect(weighingOf(history)?.weights.stained).toBe(3);
  });

  test('scenarios are saved, renamed and deleted by edits, so each of these can be undone', () => {
    const a = scenario('a', 'Schools first');
    const saved = withEdit(NO_HISTORY, entry({ kind: 'scenario', before: null, after: a }));
    const renamed = withEdit(saved, entry({ kind: 'scenario', before: a, after: { ...a, name: 'Schools' } }));
    const gone = withEdit(renamed, entry({ kind: 'scenario', before: a, after: null }));
    expect(scenariosOf(renamed).map(({ name }) => name)).toEqual(['Schools']);
    expect(scenariosOf(gone)).toEqual([]);
    expect(scenariosOf(undone(undone(gone))).map(({ name }) => name)).toEqual(['Schools first']);
  });
});
