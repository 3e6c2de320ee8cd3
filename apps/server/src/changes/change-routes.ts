/** The journal as a stream of events, and in pages. */
import type { ApiBook } from '../http/api-book.ts';
import { Refusal } from '../http/refusal.ts';
import { securityHeaders } from '../http/security.ts';
import type { LiveProject } from '../project/live-project.ts';
import { EventStream } from './event-stream.ts';

/** Listeners at once; each holds a connection. */
const MOST_STREAMS = 500;
const NUMBER = { type: 'integer', minimum: 0, maximum: Number.MAX_SAFE_INTEGER } as const;

export interface Streams {
  /** Tells all listeners which journal number the figures hold for. */
  readonly figures: () => void;
  /** Ends all streams; none is opened afterwards. */
  readonly end: () => void;
}

export function changeRoutes(book: ApiBook, live: LiveProject): Streams {
  const open = new Set<EventStream>();
  let ended = false;
  book.add<{ Querystring: { since?: number }; Headers: { 'last-event-id'?: number } }>({
    method: 'GET',
    path: '/api/changes',
    needs: 'reader',
    summary: 'Every change as it happens, as server-sent events; resumes after Last-Event-ID, or after `since`.',
    query: { since: NUMBER },
    headers: { 'last-event-id': NUMBER },
    answers: {
      200: 'Events `change` (one entry of the journal) and `figures` (the number that the figures hold for).',
    },
    answerType: 'text/event-stream',
    handler: async (request, reply) => {
      live.reading();
      if (live.feed === null || ended || open.size >= MOST_STREAMS) {
        throw new Refusal(429, 'too-many-listeners', 'Too many listen at once.', { retryAfter: 10 });
      }
      const since = request.headers['last-event-id'] ?? request.query.since ?? live.feed.last;
      reply.hijack();
      const stream = new EventStream(reply.raw, securityHeaders(null));
      open.add(stream);
      stream.event('figures', live.figures.state);
      let stop: (() => void) | null = null;
      let gone = false;
      reply.raw.on('close', () => {
        gone = true;
        open.delete(stream);
        stop?.();
      });
      stop = await live.feed.listen(since, (changes) => stream.changes(changes)).catch(() => null);
      if (stop === null) stream.end();
      else if (gone) stop();
    },
  });
  book.add<{ Querystring: { since?: number; limit?: number } }>({
    method: 'GET',
    path: '/api/journal',
    needs: 'reader',
    summary: 'Entries of the journal after number `since`, oldest first.',
    query: { since: NUMBER, limit: { type: 'integer', minimum: 1, maximum: 10_000 } },
    answers: { 200: 'The entries, and the number of the newest one.' },
    handler: async ({ query }) => {
      const store = live.reading();
      const changes = await store.changes(query.since ?? 0, query.limit);
      return { changes, last: await store.lastChange() };
    },
  });
  return {
    figures: () => {
      for (const stream of open) stream.event('figures', live.figures.state);
    },
    end: () => {
      ended = true;
      for (const stream of open) stream.end();
    },
  };
}
