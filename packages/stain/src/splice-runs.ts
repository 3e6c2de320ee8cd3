/** Runs of some pieces put in the place of older ones, and runs under other numbers. */
import type { StainRuns } from './stain-runs.ts';

/** The runs `from` … `to − 1` of some runs. */
interface Stretch {
  readonly runs: StainRuns;
  readonly from: number;
  readonly to: number;
}

/** `runs` with those of some pieces (ascending) replaced by `fresh`, which holds the runs of these pieces alone. */
export function withRunsOf(pieces: Int32Array, fresh: StainRuns, runs: StainRuns): StainRuns {
  const stretches: Stretch[] = [];
  let from = 0;
  let next = 0;
  for (const piece of pieces) {
    const at = firstFrom(runs.piece, piece, from);
    const end = firstFrom(fresh.piece, piece + 1, next);
    stretches.push({ runs, from, to: at }, { runs: fresh, from: next, to: end });
    from = firstFrom(runs.piece, piece + 1, at);
    next = end;
  }
  stretches.push({ runs, from, to: runs.piece.length });
  return joined(stretches);
}

/** The same runs with blocks and zones under other numbers that keep their order; −1 stays outside every block. */
export function renumbered(runs: StainRuns, blocks: Int32Array | null, zones: Int32Array | null): StainRuns {
  return {
    ...runs,
    block: blocks ? runs.block.map((block) => (block < 0 ? -1 : blocks[block])) : runs.block,
    zone: zones ? runs.zone.map((zone) => zones[zone]) : runs.zone,
  };
}

function joined(stretches: readonly Stretch[]): StainRuns {
  let [runCount, entryCount] = [0, 0];
  for (const { runs, from, to } of stretches) {
    runCount += to - from;
    entryCount += runs.crownStart[to] - runs.crownStart[from];
  }
  const byRun = <T extends Int32Array | Float64Array>(into: T, column: (runs: StainRuns) => T): T => {
    let at = 0;
    for (const { runs, from, to } of stretches) {
      into.set(column(runs).subarray(from, to), at);
      at += to - from;
    }
    return into;
  };
  const byEntry = <T extends Int32Array | Float64Array>(into: T, column: (runs: StainRuns) => T): T => {
    let at = 0;
    for (const { runs, from, to } of stretches) {
      into.set(column(runs).subarray(runs.crownStart[from], runs.crownStart[to]), at);
      at += runs.crownStart[to] - runs.crownStart[from];
    }
    return into;
  };
  const areas = (column: keyof StainRuns['areas']) => byRun(new Float64Array(runCount), (runs) => runs.areas[column]);
  const crowns = (column: keyof StainRuns['crowns']) =>
    byEntry(new Float64Array(entryCount), (runs) => runs.crowns[column]);
  return {
    piece: byRun(new Int32Array(runCount), (runs) => runs.piece),
    block: byRun(new Int32Array(runCount), (runs) => runs.block),
    areas: {
      pavementM2: areas('pavementM2'),
      driplineM2: areas('driplineM2'),
      falloutM2: areas('falloutM2'),
      stainedM2: areas('stainedM2'),
    },
    crownStart: startsOf(stretches, runCount),
    zone: byEntry(new Int32Array(entryCount), (runs) => runs.zone),
    crowns: {
      driplineM2: crowns('driplineM2'),
      falloutM2: crowns('falloutM2'),
      stainedM2: crowns('stainedM2'),
    },
  };
}

function startsOf(stretches: readonly Stretch[], runCount: number): Int32Array {
  const start = new Int32Array(runCount + 1);
  let run = 0;
  for (const { runs, from, to } of stretches)
    for (let i = from; i < to; i++) {
      start[run + 1] = start[run] + runs.crownStart[i + 1] - runs.crownStart[i];
      run++;
    }
  return start;
}

/** Position of the first value that is at least `least`, from `from` on, of ascending ones. */
function firstFrom(ascending: Int32Array, least: number, from: number): number {
  let [low, high] = [from, ascending.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ascending[middle] < least) low = middle + 1;
    else high = middle;
  }
  return low;
}
