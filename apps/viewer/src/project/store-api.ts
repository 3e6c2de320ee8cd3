/** The server's store over HTTP: who asks, edits with the version seen, conflicts, and news as it happens. */
import type { StoreEdit } from '../edits/outbox.ts';
import type { StoreFeature } from '../reckoning/read-store.ts';
import type { ProjectPlace, StoreLayer } from './project-files.ts';

export interface StoreHead {
  /** Null when the server serves a project of files, which takes no edits. */
  readonly layers: readonly StoreLayer[] | null;
  readonly writable: boolean;
  /** Names of the project's pictures. */
  readonly imagery: readonly string[];
  /** Address of background tiles that the server allows; null: none. */
  readonly background: string | null;
  readonly asker: { readonly name: string; readonly role: string };
}

export type Outcome =
  | {
      readonly outcome: 'applied';
      readonly recordId: number;
      readonly version: number;
      readonly record: StoreFeature | null;
    }
  | { readonly outcome: 'conflict'; readonly conflict: Conflict }
  | { readonly outcome: 'unknown' };

/** Two changes of one record, both kept until a person decides. */
export interface Conflict {
  readonly conflictId: number;
  readonly layer: string;
  readonly recordId: number;
  readonly given: {
    readonly action: 'insert' | 'update' | 'delete';
    readonly geometry?: GeoJSON.Geometry | null;
    readonly properties?: Readonly<Record<string, unknown>>;
  };
  readonly givenBy: { readonly author: string; readonly at: string };
  /** Null when it was deleted meanwhile. */
  readonly current: StoreFeature | null;
}

export interface News {
  readonly layer: string;
  readonly recordId: number;
  readonly version: number;
  readonly action: string;
}

/** The server does not take it, whoever asks again. */
export class RefusedError extends Error {}

/** Null when no server answers. */
export async function storeHead(): Promise<StoreHead | null> {
  const response = await fetch('/api/project').catch(() => null);
  return response?.ok ? ((await response.json()) as StoreHead) : null;
}

/** Where the pictures of a served project are read, part by part. Whole, because workers stand elsewhere. */
export function servedImagery({ imagery = [] }: StoreHead): {
  readonly imagery: readonly string[];
  readonly imageryPlace: ProjectPlace;
} {
  return { imagery, imageryPlace: { kind: 'http', base: new URL('/api/imagery/', document.baseURI).href } };
}

/** Number of the newest change of the store. */
export async function newestChange(): Promise<number> {
  const { last } = await asked<{ readonly last: number }>('/api/journal?limit=1');
  return last;
}

/** One change as a step of its own. Asked again under the same name, it changes nothing twice. */
export async function sendEdit(requestId: string, edit: StoreEdit): Promise<Outcome> {
  const { outcomes } = await asked<{ readonly outcomes: readonly Outcome[] }>('/api/edits', {
    requestId,
    edits: [edit],
  });
  return outcomes[0];
}

export const openConflicts = async (): Promise<readonly Conflict[]> =>
  (await asked<{ readonly conflicts: readonly Conflict[] }>('/api/conflicts?state=open')).conflicts;

export async function decideConflict(conflictId: number, decision: 'take' | 'drop'): Promise<void> {
  await asked(`/api/conflicts/${conflictId}`, { decision });
}

/** Null when it was deleted. */
export async function recordNow(layer: string, recordId: number): Promise<StoreFeature | null> {
  const response = await fetch(`/api/records/${layer}/${recordId}`, { cache: 'no-store' });
  if (response.status === 404) return null;
  return answered<StoreFeature>(response);
}

/** Tells every change after number `since`, and whether the server can be reached. Answers how to stop. */
export function followNews(since: number, told: (news: News) => void, reached: (is: boolean) => void): () => void {
  const stream = new EventSource(`/api/changes?since=${since}`);
  stream.addEventListener('change', ({ data }) => told(JSON.parse(data) as News));
  stream.addEventListener('open', () => reached(true));
  stream.addEventListener('error', () => reached(false));
  return () => stream.close();
}

async function asked<Body>(path: string, body?: object): Promise<Body> {
  const sent = body && { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
  return answered<Body>(await fetch(path, { cache: 'no-store', ...sent }));
}

async function answered<Body>(response: Response): Promise<Body> {
  if (response.ok) return (await response.json()) as Body;
  const { description } = (await response.json().catch(() => ({}))) as { readonly description?: string };
  const words = description ?? `The server answered ${response.status}.`;
  // 401: a session that ended; 408, 429 and 5xx pass.
  const isFinal = response.status >= 400 && response.status < 500 && ![401, 408, 429].includes(response.status);
  throw isFinal ? new RefusedError(words) : new Error(words);
}
