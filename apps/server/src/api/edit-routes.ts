/** Many edits at once, conflicts and their decision, undo, and what happened to a record. */
import type { ChangeInFull, Conflict, UndoOutcome } from '@crownfall/exchange';
import { LAYER_NAMES, type LayerName } from '@crownfall/survey';
import { askerOf } from '../http/access.ts';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import { mayAct } from '../people/gate.ts';
import { type LiveProject, writerOf } from '../project/live-project.ts';
import { conflictJson, EDIT_SCHEMA, editGiven, type GivenEdit, geometryJson, outcomeJson } from './edit-json.ts';
import { mayWrite } from './may-write.ts';

const ID = { type: 'integer', minimum: 1, maximum: Number.MAX_SAFE_INTEGER } as const;
const OF_RECORD = { layer: { type: 'string', enum: LAYER_NAMES }, recordId: ID } as const;
const STATES = ['open', 'taken', 'dropped'] as const;

export function editRoutes(book: ApiBook, live: LiveProject): void {
  book.add<{ Body: { requestId?: string; edits: GivenEdit[] } }>({
    method: 'POST',
    path: '/api/edits',
    needs: 'rater',
    summary: 'Many edits as one step: those that can be applied are, each of the others says why not.',
    body: {
      type: 'object',
      required: ['edits'],
      additionalProperties: false,
      properties: {
        requestId: { type: 'string', minLength: 8, maxLength: 100, pattern: '^[A-Za-z0-9._:-]+$' },
        edits: { type: 'array', minItems: 1, maxItems: 1000, items: EDIT_SCHEMA },
      },
    },
    bodyLimit: 16 << 20,
    answers: { 200: 'One outcome per edit, in order; `repeated` when this requestId had been answered before.' },
    handler: async (request) => {
      const asker = askerOf(request);
      const { edits, requestId } = request.body;
      const given = edits.map(editGiven);
      for (const edit of given) mayWrite(asker, edit);
      const named = requestId === undefined ? {} : { requestId };
      const answer = await live.writing().applyEdits(given, { ...writerOf(asker), ...named });
      live.look();
      return { ...answer, outcomes: answer.outcomes.map(outcomeJson) };
    },
  });

  book.add<{ Querystring: { state?: Conflict['state'] } }>({
    method: 'GET',
    path: '/api/conflicts',
    needs: 'reader',
    summary: 'Conflicts, open ones first: what was given, and the record as it stands.',
    query: { state: { type: 'string', enum: STATES } },
    answers: { 200: 'The conflicts.' },
    handler: async ({ query }) => ({ conflicts: (await live.reading().conflicts(query.state)).map(conflictJson) }),
  });

  book.add<{ Params: { conflictId: number }; Body: { decision: 'take' | 'drop' } }>({
    method: 'POST',
    path: '/api/conflicts/{conflictId}',
    needs: 'editor',
    summary: 'Decides a conflict: take what was given, or drop it and leave the record.',
    params: { conflictId: ID },
    body: {
      type: 'object',
      required: ['decision'],
      additionalProperties: false,
      properties: { decision: { type: 'string', enum: ['take', 'drop'] } },
    },
    answers: { 200: 'What came of it.' },
    handler: async (request) => {
      const { conflictId } = request.params;
      const store = live.writing();
      const conflict = (await store.conflicts()).find((each) => each.conflictId === conflictId);
      if (conflict === undefined) throw new Refusal(404, 'no-such-conflict', 'There is no conflict with this number.');
      if (conflict.state !== 'open') {
        throw new Refusal(409, 'decided', 'This conflict has been decided.', { conflict: conflictJson(conflict) });
      }
      const { decision } = request.body;
      const outcome = await store.decideConflict(conflictId, decision, writerOf(askerOf(request)));
      live.look();
      return { decision, outcome: outcome && outcomeJson(outcome) };
    },
  });

  for (const way of ['undo', 'redo'] as const) addUndo(book, live, way);
  addHistories(book, live);
}

function addUndo(book: ApiBook, live: LiveProject, way: 'undo' | 'redo'): void {
  const step = way === 'undo' ? { step: ID } : {};
  book.add<{ Body: { step?: number } }>({
    method: 'POST',
    path: `/api/${way}`,
    needs: 'rater',
    summary:
      way === 'undo'
        ? 'Takes back the asker’s last step, or (editors) the step given.'
        : 'Takes back the asker’s last undoing.',
    body: { type: 'object', additionalProperties: false, properties: step },
    answers: { 200: 'What was taken back.', 409: 'Somebody has written since what this would destroy.' },
    handler: async (request) => {
      const asker = askerOf(request);
      const given = request.body.step;
      if (given !== undefined && !mayAct(asker.role, 'editor')) {
        throw new Refusal(403, 'role', 'Taking back the steps of others needs the role editor.');
      }
      const store = live.writing();
      const outcome: UndoOutcome =
        way === 'redo' ? await store.redo(writerOf(asker)) : await store.undo(writerOf(asker), given);
      live.look();
      if (outcome.outcome === 'blocked') {
        throw new Refusal(409, 'blocked', 'Somebody has written since what this would destroy.', { ...outcome });
      }
      return outcome;
    },
  });
}

function addHistories(book: ApiBook, live: LiveProject): void {
  book.add<{ Params: { layer: LayerName; recordId: number } }>({
    method: 'GET',
    path: '/api/records/{layer}/{recordId}/history',
    needs: 'reader',
    summary: 'All that happened to a record, oldest first, field by field.',
    params: OF_RECORD,
    answers: { 200: 'The changes.' },
    handler: async ({ params }) => ({ changes: shown(await live.reading().history(params.layer, params.recordId)) }),
  });
  book.add<{ Params: { layer: LayerName; recordId: number } }>({
    method: 'GET',
    path: '/api/records/{layer}/{recordId}/blame',
    needs: 'reader',
    summary: 'Who last wrote each field of a record, and when.',
    params: OF_RECORD,
    answers: { 200: 'By field.' },
    handler: async ({ params }) => {
      const { layer, recordId } = params;
      const fields = Object.entries(await live.reading().blame(layer, recordId));
      return Object.fromEntries(fields.map(([field, blame]) => [field, { ...blame, value: shownValue(blame.value) }]));
    },
  });
  book.add<{ Params: { treeId: string } }>({
    method: 'GET',
    path: '/api/trees/{treeId}/history',
    needs: 'reader',
    summary: 'All that happened to a tree: its crown, ratings and bloom, oldest first.',
    params: { treeId: { type: 'string', minLength: 1, maxLength: 200 } },
    answers: { 200: 'The changes.' },
    handler: async ({ params }) => ({ changes: shown(await live.reading().treeHistory(params.treeId)) }),
  });
}

const shown = (changes: readonly ChangeInFull[]): object[] =>
  changes.map((change) => {
    const fields = Object.entries(change.fields).map(([field, { before, after }]) => [
      field,
      { before: shownValue(before), after: shownValue(after) },
    ]);
    return { ...change, fields: Object.fromEntries(fields) };
  });

/** Geometries as GeoJSON, other values as they are. */
function shownValue(value: unknown): unknown {
  const kind = typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined;
  const isGeometry = kind === 'none' || kind === 'point' || kind === 'line' || kind === 'area';
  return isGeometry ? geometryJson(value as Parameters<typeof geometryJson>[0]) : value;
}
