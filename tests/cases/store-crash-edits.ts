/** Edits of every kind, large and small, drawn from a seed. */
import type { Edit, EditAnswer, StoredRecord } from '@crownfall/exchange';

/** Multiplicative congruential generator of Park and Miller (1988): enough to vary edits, the same on every machine. */
function drawn(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Requests of one to five edits, without end; each is made of the records that are there. */
export function* crashEdits(seed: number): Generator<(records: readonly StoredRecord[]) => Edit[]> {
  const random = drawn(seed);
  for (;;) {
    yield (records) => {
      const left = [...records];
      return Array.from({ length: 1 + Math.floor(random() * 5) }, () => anEdit(random, left));
    };
  }
}

function anEdit(random: () => number, left: StoredRecord[]): Edit {
  const kind = random();
  if (left.length < 5 || kind < 0.3)
    return { action: 'insert', layer: 'crowns', geometry: outline(random), properties: { spread_m: random() * 9 } };
  const [{ recordId, version }] = left.splice(Math.floor(random() * left.length), 1);
  const key = { layer: 'crowns', recordId, expectedVersion: version } as const;
  if (kind < 0.45) return { action: 'delete', ...key };
  const note = 'n'.repeat(Math.floor(random() * 5000));
  return { action: 'update', ...key, geometry: outline(random), properties: { spread_m: random() * 9, note } };
}

function outline(random: () => number): StoredRecord['geometry'] {
  const count = 3 + Math.floor(random() * 200);
  const ring = new Float64Array(2 * count);
  for (let i = 0; i < count; i++) {
    const turn = (2 * Math.PI * i) / count;
    ring[2 * i] = 13.4 + random() * 1e-5 + 1e-4 * Math.cos(turn);
    ring[2 * i + 1] = 52.1 + random() * 1e-5 + 1e-4 * Math.sin(turn);
  }
  return { kind: 'area', polygons: [[ring]] };
}

/** What the store has promised, in one line: per edit the record, its version, and whether it is there. */
export function acknowledged({ step, outcomes }: EditAnswer): string {
  const applied = outcomes.flatMap((outcome) =>
    outcome.outcome === 'applied'
      ? [[outcome.recordId, outcome.version, outcome.record?.properties.spread_m ?? null]]
      : [],
  );
  return JSON.stringify({ step, applied });
}
