/** Visits from the field: added once, never changed. A queue that is sent twice adds nothing the second time. */
import type { Visit } from '@crownfall/exchange';
import { isIsoDay } from '@crownfall/survey';
import { askerOf } from '../http/access.ts';
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import { type LiveProject, writerOf } from '../project/live-project.ts';
import { propertiesGiven } from './record-json.ts';

const text = (maxLength: number) => ({ type: 'string', minLength: 1, maxLength }) as const;
/** No control characters but line breaks and tabs. */
const note = {
  type: 'string',
  maxLength: 10_000,
  pattern: '^[^\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f]*$',
} as const;
const word = { ...text(200), pattern: '^[^\\u0000-\\u001f]+$' } as const;

const VISIT = {
  type: 'object',
  required: ['visitId', 'visitedOn', 'visitor', 'did'],
  additionalProperties: false,
  properties: {
    visitId: { type: 'string', format: 'uuid' },
    treeId: word,
    blockId: word,
    visitedOn: { type: 'string', maxLength: 40, description: 'A day, or an instant in UTC.' },
    visitor: word,
    did: word,
    note,
    details: { type: 'object', maxProperties: 200 },
  },
  anyOf: [{ required: ['treeId'] }, { required: ['blockId'] }],
} as const;

export function visitRoutes(book: ApiBook, live: LiveProject): void {
  book.add<{ Body: { visits: Visit[] } }>({
    method: 'POST',
    path: '/api/visits',
    needs: 'rater',
    summary: 'Adds visits with ids that the client made. Known ids change nothing.',
    body: {
      type: 'object',
      required: ['visits'],
      additionalProperties: false,
      properties: { visits: { type: 'array', minItems: 1, maxItems: 1000, items: VISIT } },
    },
    bodyLimit: 16 << 20,
    answers: { 200: 'One outcome per visit, in order: added, known, or differs (the first stands).' },
    handler: async (request) => {
      const { visits } = request.body;
      visits.forEach(checkVisit);
      const outcomes = await live.writing().addVisits(visits, writerOf(askerOf(request)));
      live.look();
      return { outcomes };
    },
  });
  book.add<{ Querystring: { treeId?: string; blockId?: string; from?: string } }>({
    method: 'GET',
    path: '/api/visits',
    needs: 'reader',
    summary: 'Visits of a tree or block, or all, from a day on.',
    query: { treeId: word, blockId: word, from: { type: 'string', format: 'date' } },
    answers: { 200: 'The visits.' },
    handler: async ({ query }) => ({ visits: await live.reading().visits(query) }),
  });
}

const INSTANT = /^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?Z$/;

function checkVisit({ visitedOn, details }: Visit, index: number): void {
  const instant = INSTANT.test(visitedOn) && isIsoDay(visitedOn.slice(0, 10));
  if (!instant && !isIsoDay(visitedOn)) {
    throw new Refusal(400, 'invalid-visit', `visits/${index}/visitedOn: expected a day or an instant in UTC.`);
  }
  // No layer has such a field: only the form of names and values is checked.
  if (details !== undefined) propertiesGiven('streets', { details });
}
