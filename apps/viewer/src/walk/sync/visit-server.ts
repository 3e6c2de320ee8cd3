/** The server's end of the queue: visits and photos over HTTP. */
import type { Visit, VisitOutcome } from '@crownfall/exchange';

export interface VisitServer {
  sendVisits(visits: readonly Visit[]): Promise<readonly VisitOutcome[]>;
  sendPhoto(photo: Blob): Promise<void>;
  /** Visits that the server holds: of a tree, or of all from a day on. */
  visits(of: { readonly treeId: string } | { readonly from: string }): Promise<readonly Visit[]>;
}

/** The server does not take it, whoever asks again. Every other error passes: it is tried again. */
export class NotTakenError extends Error {}

/** Answers come whole within this time, or count as none: a phone at the edge of the net must not wait for ever. */
const MOST_WAIT_MS = 30_000;

/** `base` is the server's address without a slash at its end; empty for the page's own. */
export function visitServer(base: string, send: typeof fetch = fetch): VisitServer {
  const ask = async (path: string, more: RequestInit): Promise<unknown> => {
    const response = await send(base + path, { cache: 'no-store', signal: AbortSignal.timeout(MOST_WAIT_MS), ...more });
    if (response.ok) return response.json();
    const { description } = (await response.json().catch(() => ({}))) as { readonly description?: string };
    const words = description ?? `The server answered ${response.status}.`;
    // 401 and 403: a session that ended or another person's; 408, 421, 429 and 5xx pass.
    const passes = response.status >= 500 || [401, 403, 408, 421, 429].includes(response.status);
    throw passes ? new Error(words) : new NotTakenError(words);
  };
  return {
    sendVisits: async (visits) => {
      const body = JSON.stringify({ visits });
      const answer = await ask('/api/visits', { method: 'POST', headers: { ...FRESH, ...JSON_BODY }, body });
      const { outcomes } = answer as { readonly outcomes?: readonly VisitOutcome[] };
      if (!Array.isArray(outcomes)) throw new Error('The answer is not that of this server.');
      return outcomes;
    },
    sendPhoto: async (photo) => {
      await ask('/api/photos', { method: 'POST', headers: { ...FRESH, 'content-type': 'image/jpeg' }, body: photo });
    },
    visits: async (of) => {
      const wanted = new URLSearchParams({ ...of });
      const { visits } = (await ask(`/api/visits?${wanted}`, { headers: FRESH })) as { readonly visits: Visit[] };
      return visits;
    },
  };
}

/** Tells the service worker that a kept answer will not do. */
const FRESH = { 'crownfall-fresh': '1' } as const;
const JSON_BODY = { 'content-type': 'application/json' } as const;
