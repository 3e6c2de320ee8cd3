/**
 * What waits to be sent to the server's store: one sending for each step done or undone, in order. Values and pure functions;
 * `session/sharing.ts` sends.
 */
import type { CrownRecord, Edit, RecordEdit, StoredAs } from './edit.ts';
import type { Step } from './history.ts';

export interface Outbox {
  readonly sendings: readonly Sending[];
  /** By entry: the record that its edit made or changed, and what that record was before. */
  readonly sent: Readonly<Record<string, Sent>>;
  /** Undoing gives a record a new version with the content of an older one: old → new. */
  readonly sameAs: Readonly<Record<string, StoredAs>>;
}

export interface Sending {
  /** Repeated under the same name, a request changes nothing twice. */
  readonly id: string;
  readonly entryId: string;
  readonly way: Step['way'];
  readonly edit: Extract<Edit, { readonly kind: 'crown' | 'rating' }>;
  /** It may have reached the server: undoing needs a sending of its own. */
  readonly tried: boolean;
  /** Why the server does not take it. It stays in force here. */
  readonly refused: string | null;
}

interface Sent {
  readonly treeId: string;
  readonly now: StoredAs;
  readonly before: StoredAs | null;
}

/** A change as the server's API takes it. */
export type StoreEdit =
  | {
      readonly action: 'insert';
      readonly layer: StoreEditLayer;
      readonly geometry: object | null;
      readonly properties: object;
    }
  | ({
      readonly action: 'update';
      readonly layer: StoreEditLayer;
      readonly geometry: object;
      readonly properties: object;
    } & Seen)
  | ({ readonly action: 'delete'; readonly layer: StoreEditLayer } & Seen);
type StoreEditLayer = 'crowns' | 'ratings';
interface Seen {
  readonly recordId: number;
  readonly expectedVersion: number;
}

export const NO_OUTBOX: Outbox = { sendings: [], sent: {}, sameAs: {} };

/** With a step to be sent. One that takes back another which never left takes that one out instead. */
export function withStep(outbox: Outbox, { entry, way }: Step, id: string): Outbox {
  const { edit } = entry;
  if (edit.kind !== 'crown' && edit.kind !== 'rating') return outbox;
  const waiting = outbox.sendings.findLast((sending) => sending.entryId === entry.id);
  if (waiting && waiting.way !== way && (!waiting.tried || waiting.refused !== null))
    return without(outbox, waiting.id);
  // What was never taken needs no taking back.
  if (way === 'undo' && !waiting && !outbox.sent[entry.id]) return outbox;
  const sending: Sending = { id, entryId: entry.id, way, edit, tried: false, refused: null };
  return { ...outbox, sendings: [...outbox.sendings, sending] };
}

export const without = (outbox: Outbox, id: string): Outbox => ({
  ...outbox,
  sendings: outbox.sendings.filter((sending) => sending.id !== id),
});

export const marked = (outbox: Outbox, id: string, mark: Partial<Pick<Sending, 'tried' | 'refused'>>): Outbox => ({
  ...outbox,
  sendings: outbox.sendings.map((sending) => (sending.id === id ? { ...sending, ...mark } : sending)),
});

/** The next to be sent; those that were refused are passed over. */
export const nextSending = ({ sendings }: Outbox): Sending | undefined =>
  sendings.find(({ refused }) => refused === null);

/** What the store does not hold yet, on top of what it holds. */
export function pendingEdits({ sendings, sent }: Outbox): readonly RecordEdit[] {
  return sendings.flatMap(({ way, edit, entryId }): readonly RecordEdit[] => {
    if (way === 'do') return [edit];
    if (edit.kind === 'crown') return [{ ...edit, before: edit.after, after: edit.before }];
    const gone = sent[entryId]?.now.recordId;
    return gone === undefined ? [] : [{ kind: 'rating-gone', recordId: gone }];
  });
}

/** The change of a sending; null when the store has nothing to change. */
export function storeEdit(outbox: Outbox, sending: Sending): StoreEdit | null {
  const { edit, way } = sending;
  const seen = seenBefore(outbox, sending);
  if (edit.kind === 'rating') {
    if (way === 'do') return { action: 'insert', layer: 'ratings', geometry: null, properties: edit.after };
    return seen && { action: 'delete', layer: 'ratings', ...seenAs(seen) };
  }
  const [from, to] = way === 'do' ? [edit.before, edit.after] : [edit.after, edit.before];
  if (!to) return seen && { action: 'delete', layer: 'crowns', ...seenAs(seen) };
  const { geometry, properties } = to;
  if (!from || !seen) return { action: 'insert', layer: 'crowns', geometry, properties };
  return {
    action: 'update',
    layer: 'crowns',
    geometry,
    properties: { ...emptied(from, to), ...properties },
    ...seenAs(seen),
  };
}

/** The server took it; `now` is the record as it is in the store since. */
export function accepted(outbox: Outbox, sending: Sending, now: StoredAs): Outbox {
  const left = without(outbox, sending.id);
  const { entryId, edit, way } = sending;
  if (way === 'do') {
    const sent: Sent = { treeId: edit.treeId, now, before: seenBefore(outbox, sending) };
    // Sent again, an entry comes last.
    const { [entryId]: _, ...others } = left.sent;
    return { ...left, sent: { ...others, [entryId]: sent } };
  }
  const { [entryId]: was, ...sent } = left.sent;
  if (!was?.before) return { ...left, sent };
  return { ...left, sent, sameAs: { ...left.sameAs, [nameOf(was.before)]: now } };
}

/** The record that a sending changes, at the version whose content its person saw; null: there is none in the store. */
function seenBefore(outbox: Outbox, { edit, way, entryId }: Sending): StoredAs | null {
  const seen =
    way === 'undo'
      ? outbox.sent[entryId]?.now
      : edit.kind === 'crown' && edit.before
        ? ownBefore(outbox, edit.before, edit.treeId)
        : null;
  return seen ? newest(outbox, seen) : null;
}

function ownBefore({ sent }: Outbox, before: CrownRecord, treeId: string): StoredAs | undefined {
  return before.stored ?? Object.values(sent).findLast((each) => each.treeId === treeId)?.now;
}

function newest({ sameAs }: Outbox, stored: StoredAs): StoredAs {
  let now = stored;
  for (let next = sameAs[nameOf(now)]; next; next = sameAs[nameOf(now)]) now = next;
  return now;
}

const nameOf = ({ recordId, version }: StoredAs): string => `${recordId}:${version}`;
const seenAs = ({ recordId, version }: StoredAs): Seen => ({ recordId, expectedVersion: version });

/** Fields are left alone unless they are named: those that went are named with null. */
function emptied(from: CrownRecord, to: CrownRecord): Record<string, null> {
  const gone = Object.keys(from.properties).filter((field) => !(field in to.properties));
  return Object.fromEntries(gone.map((field) => [field, null]));
}
