import { describe, expect, test } from 'vitest';
import type { CrownRecord, Edit } from './edit.ts';
import { accepted, marked, NO_OUTBOX, nextSending, type Outbox, pendingEdits, storeEdit, withStep } from './outbox.ts';

const crown = (spread: number, version?: number): CrownRecord => ({
  geometry: { type: 'Point', coordinates: [-80, 28] },
  properties: { tree_id: 'T1', spread_m: spread },
  ...(version !== undefined && { stored: { recordId: 7, version } }),
});
const change = (id: string, before: CrownRecord | null, after: CrownRecord | null) => ({
  id,
  at: '2026-05-20T08:00:00Z',
  edit: { kind: 'crown', treeId: 'T1', before, after } satisfies Edit,
});
const rating = {
  id: 'r',
  at: '2026-05-20T08:00:00Z',
  edit: { kind: 'rating', treeId: 'T1', after: { tree_id: 'T1', browned_pct: 40 } } satisfies Edit,
};

/** A store of one record for the tests: takes an edit when it names the present version, as the real one does. */
class OneRecord {
  version = 3;
  spread: unknown = 5;
  conflicts = 0;

  foreign(spread: number): void {
    this.version++;
    this.spread = spread;
  }

  take(outbox: Outbox): Outbox {
    const sending = nextSending(outbox);
    const edit = sending && storeEdit(outbox, sending);
    if (!sending || edit?.action !== 'update') throw new Error('an update was expected');
    if (edit.expectedVersion !== this.version) {
      this.conflicts++;
      return { ...outbox, sendings: outbox.sendings.slice(1) };
    }
    this.foreign((edit.properties as { spread_m: number }).spread_m);
    return accepted(outbox, sending, { recordId: 7, version: this.version });
  }
}

describe('the outbox', () => {
  test('a step undone before it left leaves nothing to send', () => {
    const entry = change('a', crown(5, 3), crown(6));
    const outbox = withStep(withStep(NO_OUTBOX, { entry, way: 'do' }, 's1'), { entry, way: 'undo' }, 's2');
    expect(outbox.sendings).toEqual([]);
  });

  test('one that may have left is taken back by a sending of its own', () => {
    const entry = change('a', crown(5, 3), crown(6));
    const tried = marked(withStep(NO_OUTBOX, { entry, way: 'do' }, 's1'), 's1', { tried: true });
    expect(withStep(tried, { entry, way: 'undo' }, 's2').sendings.map(({ way }) => way)).toEqual(['do', 'undo']);
  });

  test('two changes, both undone and both made again, never meet a version they have not seen', () => {
    const store = new OneRecord();
    const first = change('a', crown(5, 3), crown(6));
    // Made at once, before the first came back: its record bears no version yet.
    const second = change('b', crown(6), crown(7));
    let outbox = NO_OUTBOX;
    const spreads: unknown[] = [];
    const steps = [
      [first, 'do'],
      [second, 'do'],
      [second, 'undo'],
      [first, 'undo'],
      [first, 'do'],
      [second, 'do'],
      [second, 'undo'],
      [first, 'undo'],
    ] as const;
    for (const [entry, way] of steps) {
      outbox = store.take(withStep(outbox, { entry, way }, `s${spreads.length}`));
      spreads.push(store.spread);
    }
    expect(store.conflicts).toBe(0);
    expect(spreads).toEqual([6, 7, 6, 5, 6, 7, 6, 5]);
  });

  test('undoing past what somebody else wrote is a conflict, not an overwriting', () => {
    const store = new OneRecord();
    const first = change('a', crown(5, 3), crown(6));
    let outbox = store.take(withStep(NO_OUTBOX, { entry: first, way: 'do' }, 's1'));
    store.foreign(9);
    const seen = change('b', crown(9, store.version), crown(8));
    outbox = store.take(withStep(outbox, { entry: seen, way: 'do' }, 's2'));
    outbox = store.take(withStep(outbox, { entry: seen, way: 'undo' }, 's3'));
    expect([store.spread, store.conflicts]).toEqual([9, 0]);
    store.take(withStep(outbox, { entry: first, way: 'undo' }, 's4'));
    expect([store.spread, store.conflicts]).toEqual([9, 1]);
  });

  test('a drawing begun before somebody else’s change is a conflict', () => {
    const store = new OneRecord();
    store.foreign(9);
    store.take(withStep(NO_OUTBOX, { entry: change('a', crown(5, 3), crown(6)), way: 'do' }, 's1'));
    expect([store.spread, store.conflicts]).toEqual([9, 1]);
  });

  test('fields that a change takes off are named with null', () => {
    const outline: CrownRecord = { ...crown(5), properties: { tree_id: 'T1' } };
    const outbox = withStep(NO_OUTBOX, { entry: change('a', crown(5, 3), outline), way: 'do' }, 's1');
    const [sending] = outbox.sendings;
    expect(storeEdit(outbox, sending)).toMatchObject({
      action: 'update',
      properties: { spread_m: null, tree_id: 'T1' },
    });
  });

  test('a rating that the store holds is taken away by its record; until then it is left out here', () => {
    const queued = withStep(NO_OUTBOX, { entry: rating, way: 'do' }, 's1');
    const sent = accepted(queued, queued.sendings[0], { recordId: 41, version: 1 });
    expect(pendingEdits(sent)).toEqual([]);
    const back = withStep(sent, { entry: rating, way: 'undo' }, 's2');
    expect(pendingEdits(back)).toEqual([{ kind: 'rating-gone', recordId: 41 }]);
    expect(storeEdit(back, back.sendings[0])).toEqual({
      action: 'delete',
      layer: 'ratings',
      recordId: 41,
      expectedVersion: 1,
    });
  });
});
