/** A line from the phone to the server that fails in every way a line can, as a seed says; and a device that is killed. */
import type { QueuedPhoto, QueuedVisit, VisitQueue } from '../../apps/viewer/src/walk/sync/queue.ts';

/** Numbers 0–1 from a seed: mulberry32, public domain. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const FAULTS = [
  'none',
  'cut-before',
  'answer-lost',
  'answer-cut',
  'twice',
  'late-again',
  'not-the-server',
  'busy',
] as const;
type Fault = (typeof FAULTS)[number];

interface Line {
  readonly send: typeof fetch;
  /** Resolves when requests that went their own way have arrived. */
  readonly settled: () => Promise<void>;
  readonly faults: Map<Fault, number>;
}

/** Half of all requests meet a fault. Tells before each request what will befall it. */
export function faultyLine(chance: () => number, before: (fault: Fault) => void = () => {}): Line {
  const stray: Promise<unknown>[] = [];
  const faults = new Map<Fault, number>();
  const send = async (input: RequestInfo | URL, init?: RequestInit): Promise<Response> => {
    const fault = chance() < 0.5 ? 'none' : FAULTS[Math.floor(chance() * FAULTS.length)];
    faults.set(fault, (faults.get(fault) ?? 0) + 1);
    before(fault);
    const go = (): Promise<Response> => fetch(input, init);
    if (fault === 'cut-before') throw new TypeError('the line is cut');
    if (fault === 'busy') return new Response('{"code":"busy"}', { status: 503 });
    // A hotel's log-in page, say.
    if (fault === 'not-the-server') return new Response('<html>Welcome</html>', { status: 200 });
    if (fault === 'late-again') stray.push(new Promise((later) => setTimeout(later, 5)).then(go).catch(() => null));
    if (fault === 'twice') stray.push(go().catch(() => null));
    const answer = await go();
    if (fault === 'answer-lost') throw new TypeError('the answer is lost');
    if (fault === 'answer-cut') return new Response((await answer.text()).slice(0, 20), { status: answer.status });
    return answer;
  };
  return { send: send as typeof fetch, settled: async () => void (await Promise.all(stray)), faults };
}

/** Thrown in the middle of whatever the device does. */
export class Killed extends Error {}

/** What a device keeps: it outlives a killed app. `mayDie` throws where the app is killed, before or after a write. */
export class KeptQueue implements VisitQueue {
  readonly visits = new Map<string, QueuedVisit>();
  mayDie: () => void = () => {};

  async claimVisits(most: number): Promise<readonly QueuedVisit[]> {
    this.mayDie();
    const waiting = [...this.visits.values()].filter(({ state }) => state === 'waiting').slice(0, most);
    for (const visit of waiting) this.visits.set(visit.visitId, { ...visit, tried: true });
    this.mayDie();
    return waiting;
  }

  async markVisits(marks: Parameters<VisitQueue['markVisits']>[0]): Promise<void> {
    this.mayDie();
    for (const [visitId, mark] of marks) {
      const visit = this.visits.get(visitId);
      if (visit) this.visits.set(visitId, { ...visit, ...mark });
    }
    this.mayDie();
  }

  async waitingPhotos(): Promise<readonly QueuedPhoto[]> {
    return [];
  }

  async markPhoto(): Promise<void> {}
}
