/**
 * The walk's queue against a real server process, over a line that cuts, loses, doubles and delays, with the app killed at any
 * write and the server killed in the middle of requests: no visit lost, none doubled, whatever the order of events.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { join } from 'node:path';
import type { Visit } from '@crownfall/exchange';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newStop } from '../../apps/viewer/src/walk/stop/stop.ts';
import { visitOfStop } from '../../apps/viewer/src/walk/stop/visit-of-stop.ts';
import { sendWaiting } from '../../apps/viewer/src/walk/sync/send-waiting.ts';
import { visitServer } from '../../apps/viewer/src/walk/sync/visit-server.ts';
import { packedProject } from '../cases/server-running.ts';
import { ROOT, temporaryFolder } from './crownfall-process.ts';
import { writeTinyTown } from './tiny-town.ts';
import { faultyLine, KeptQueue, Killed, seeded } from './walk-faulty-line.ts';

const SEEDS = 200;
/** In so many of them the server is killed (SIGKILL) while a request is under way, and started again. */
const KILLED_EVERY = 70;
const VISITS_MOST = 6;
const PATIENCE_MS = 240_000;
/** The server's own process, not the command that starts it: a kill must reach what listens. */
const SERVER = join(ROOT, 'apps/server/bin/crownfall-server.js');

let project: string;
let server: Server;

beforeAll(async () => {
  project = await packedProject(writeTinyTown(join(temporaryFolder(), 'town')));
  server = await startServer(await quietPort());
}, PATIENCE_MS);

afterAll(async () => server?.kill());

describe('visits sent over a line that fails', () => {
  test(
    `${SEEDS} seeded orders of events: every visit is in the store once, as it was sealed`,
    async () => {
      const sealed = new Map<string, Visit>();
      const met = new Set<string>();
      let kills = 0;
      for (let seed = 1; seed <= SEEDS; seed++) {
        const { visits, faults, appKills } = await oneWalk(seed);
        for (const visit of visits) sealed.set(visit.visitId, visit);
        for (const fault of faults) met.add(fault);
        kills += appKills;
      }
      const stored = await visitServer(server.url).visits({ from: '2000-01-01' });
      expect(stored.length).toBe(sealed.size);
      expect(new Map(stored.map((visit) => [visit.visitId, visit]))).toEqual(sealed);
      // The seeds did what they are for.
      expect([...met].sort()).toEqual([
        'answer-cut',
        'answer-lost',
        'busy',
        'cut-before',
        'late-again',
        'none',
        'not-the-server',
        'twice',
      ]);
      expect(kills).toBeGreaterThan(SEEDS / 4);
      expect(server.starts).toBe(1 + Math.floor(SEEDS / KILLED_EVERY));
    },
    PATIENCE_MS,
  );

  test('a visit changed under an id that is known is not overwritten: both versions are told', async () => {
    const first = visitNumber(9001, 1);
    const queue = new KeptQueue();
    const real = visitServer(server.url);
    await real.sendVisits([first]);
    const other: Visit = { ...first, note: 'another story' };
    queue.visits.set(first.visitId, queued(other));
    expect(await sendWaiting(queue, real)).toEqual({ end: 'done' });
    expect(queue.visits.get(first.visitId)).toMatchObject({ state: 'differs', theirs: first });
    const [stored] = (await real.visits({ treeId: String(first.treeId) })).filter(
      ({ visitId }) => visitId === first.visitId,
    );
    expect(stored).toEqual(first);
  });

  test('a visit that the server cannot take holds up no other', async () => {
    const queue = new KeptQueue();
    const good = [visitNumber(9002, 1), visitNumber(9002, 2)];
    const bad: Visit = { ...visitNumber(9002, 3), visitedOn: 'yesterday' };
    for (const visit of [good[0], bad, good[1]]) queue.visits.set(visit.visitId, queued(visit));
    expect(await sendWaiting(queue, visitServer(server.url))).toEqual({ end: 'done' });
    expect([...queue.visits.values()].map(({ state }) => state)).toEqual(['sent', 'refused', 'sent']);
    expect(queue.visits.get(bad.visitId)?.why).toContain('visitedOn');
  });
});

/** One walk: visits are sealed, sending is tried, the app dies and is opened again, until all is sent. */
async function oneWalk(seed: number) {
  const chance = seeded(seed);
  const queue = new KeptQueue();
  const dies = seed % KILLED_EVERY === 0;
  let killing: Promise<void> | null = null;
  const line = faultyLine(chance, () => {
    // The request is under way when the server dies.
    if (dies && killing === null) killing = Promise.resolve().then(() => server.restart());
  });
  let appKills = 0;
  let storm = true;
  queue.mayDie = () => {
    if (storm && chance() < 0.1) {
      appKills++;
      throw new Killed('the app was killed');
    }
  };
  const visits = Array.from({ length: 1 + Math.floor(chance() * VISITS_MOST) }, (_, i) => visitNumber(seed, i));
  const left = [...visits];
  for (let step = 0; step < 60; step++) {
    const next = chance() < 0.5 ? left.shift() : undefined;
    if (next) queue.visits.set(next.visitId, queued(next));
    if (chance() < 0.7) await sendWaiting(queue, visitServer(server.url, line.send));
    // Two tabs, or an app opened again while the one before was still sending.
    if (chance() < 0.2) await Promise.all([1, 2].map(() => sendWaiting(queue, visitServer(server.url, line.send))));
    if (left.length === 0 && chance() < 0.3) break;
  }
  for (const visit of left) queue.visits.set(visit.visitId, queued(visit));
  if (killing) await killing;
  storm = false;
  await line.settled();
  // The network is back.
  expect(await sendWaiting(queue, visitServer(server.url))).toEqual({ end: 'done' });
  expect([...queue.visits.values()].every(({ state }) => state === 'sent')).toBe(true);
  return { visits, faults: line.faults.keys(), appKills };
}

/** A visit such as the phone seals, different for every number. */
function visitNumber(seed: number, i: number): Visit {
  const hex = (value: number, length: number): string => value.toString(16).padStart(length, '0');
  const stopId = `${hex(seed, 8)}-${hex(i, 4)}-4000-8000-${hex(seed * 1000 + i, 12)}`;
  const stop = newStop({
    stopId,
    project: 'tiny',
    blockId: 'GALLED',
    treeId: 'T-GALLED',
    startedAt: `2026-05-20T1${i % 10}:00:00.000Z`,
    day: '2026-05-20',
  });
  const seen = { ...stop, brownedPct: (seed * 7 + i) % 101, cause: 'none' as const, bees: 'no' as const };
  return visitOfStop(seen, `R${seed}`);
}

const queued = (visit: Visit) =>
  ({
    visitId: visit.visitId,
    project: 'tiny',
    visit,
    sealedAt: visit.visitedOn,
    state: 'waiting',
    tried: false,
    why: '',
    theirs: null,
  }) as const;

interface Server {
  readonly url: string;
  readonly starts: number;
  readonly kill: () => Promise<void>;
  /** Killed without warning, and started again on the same port. */
  readonly restart: () => Promise<void>;
}

/**
 * A free port below those that systems give to callers (RFC 6056: above 32,768 on Linux): while the server is down, a caller
 * could else be given the server's own port.
 */
async function quietPort(): Promise<number> {
  for (let port = 20_000 + (process.pid % 10_000); ; port++) {
    const probe = createServer().listen(port, '127.0.0.1');
    const isFree = await once(probe, 'listening').then(
      () => true,
      () => false,
    );
    probe.close();
    if (isFree) return port;
  }
}

async function startServer(port: number): Promise<Server> {
  let starts = 0;
  const start = async (at: number) => {
    starts++;
    const child = spawn(process.execPath, [SERVER, project, '--port', String(at), '--host', '127.0.0.1'], {
      cwd: ROOT,
    });
    const url = await new Promise<string>((found, fail) => {
      let said = '';
      const listen = (piece: Buffer): void => {
        said += piece.toString();
        const address = /http:\/\/[^\s/]+/.exec(said)?.[0];
        if (address !== undefined) found(address);
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      child.on('exit', (code) => fail(new Error(`the server ended with ${code}:\n${said}`)));
    });
    return { child, url };
  };
  let now = await start(port);
  const kill = async (): Promise<void> => {
    if (now.child.exitCode !== null || now.child.signalCode !== null) return;
    const gone = once(now.child, 'exit');
    now.child.kill('SIGKILL');
    await gone;
  };
  const { url } = now;
  return {
    url,
    get starts() {
      return starts;
    },
    kill,
    restart: async () => {
      await kill();
      now = await start(Number(new URL(url).port));
    },
  };
}
