/**
 * How the whole ledger (drift rings of 0.5 and 1 m made on the way) grows with the town, on invented streets:
 *
 *   npx tsx tests/benchmarks/overlay-growth.ts [--crowns 100000,1000000] [--repeats 5]
 *
 * Each size streams through strips in a process of its own, as a source larger than memory would; the first size is also
 * reckoned at once by one thread and by two, and some of its crowns are dragged. A sample of the last size is judged by GEOS
 * (Debian: apt-get install gcc libc6-dev libgeos-dev), pair by pair and union by union, and left out with a word where that
 * fails. Two threads need two idle cores. Prints a table as markdown.
 */
import { execFileSync } from 'node:child_process';
import { cpus } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import {
  type CrownScene,
  falloutZone,
  LiveOverlay,
  type NumberedRegion,
  type OverlayLedger,
  reckonOverlay,
  reckonStream,
  sceneInput,
} from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';
import { overlayLedger } from '../../apps/cli/src/jobs/overlay/overlay-ledger.ts';
import { compiledWithGeos, doublesFrom } from '../oracles/geos-program.ts';
import { geosInput } from '../oracles/overlay-case.ts';
import { asRegion, streetScene, streetStream } from './street-scene.ts';

const RECIPE = {
  driftRings: [
    { to_m: 0.5, share: 0.5 },
    { to_m: 1, share: 0.25 },
  ],
  chordToleranceM: 1.2e-3,
  wind: { towards_deg: 0, distance_m: 0 },
};
const DRAGS = 200;
const STEPS = 20;
/** Every so-manieth piece of the largest town goes to GEOS, as it streams by. */
const SAMPLED = 500;

interface Figures {
  readonly wallS: number;
  readonly cpuS: number;
  readonly peakMb: number;
  readonly note: string;
}

type Way = 'streamed' | 'at once' | 'two threads' | 'edits' | 'sample';

const { values } = parseArgs({
  options: {
    crowns: { type: 'string', default: '100000,1000000' },
    repeats: { type: 'string', default: '5' },
    way: { type: 'string' },
  },
});
const sizes = values.crowns.split(',').map(Number);
if (values.way) console.log(JSON.stringify(await figuresOf(values.way as Way, sizes[0])));
else printTable();

function printTable(): void {
  const row = (cells: (string | number)[]) => console.log(`| ${cells.join(' | ')} |`);
  console.log(`${cpus()[0].model}, Node ${process.versions.node}, ${new Date().toISOString().slice(0, 10)}\n`);
  row(['crowns', 'way', 'runs', 'wall, s', 'CPU, s', 'peak memory, MB', '']);
  row(['---:', '---', '---:', '---:', '---:', '---:', '---']);
  const show = (crowns: number, way: Way, runs: number): Figures => {
    const all = Array.from({ length: runs }, () => fromProcess(way, crowns)).sort((a, b) => a.wallS - b.wallS);
    const best = all[0];
    const middle = all[all.length >> 1];
    row([
      crowns.toLocaleString('en'),
      way,
      runs,
      `${best.wallS.toFixed(2)} / ${middle.wallS.toFixed(2)}`,
      best.cpuS.toFixed(2),
      Math.max(...all.map(({ peakMb }) => peakMb)).toFixed(0),
      best.note,
    ]);
    return best;
  };
  const repeats = Number(values.repeats);
  const streamed = sizes.map((crowns) => show(crowns, 'streamed', crowns > 200_000 ? 1 : repeats));
  const one = show(sizes[0], 'at once', repeats);
  const two = show(sizes[0], 'two threads', repeats);
  show(sizes[0], 'edits', 1);
  show(sizes.at(-1) as number, 'sample', 1);
  console.log(
    `\nGrowth from ${sizes[0]} to ${sizes.at(-1)} crowns: ${ratio(streamed.at(-1), streamed[0], 'cpuS')}× CPU.`,
  );
  console.log(`Two threads: ${ratio(one, two, 'wallS')}× one, wall time.`);
}

function ratio(a: Figures | undefined, b: Figures, what: 'wallS' | 'cpuS'): string {
  return a ? (a[what] / b[what]).toFixed(2) : '–';
}

function fromProcess(way: Way, crowns: number): Figures {
  const self = fileURLToPath(import.meta.url);
  const args = ['--import', 'tsx', self, '--way', way, '--crowns', String(crowns)];
  const text = execFileSync(process.execPath, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] });
  return JSON.parse(text.trim().split('\n').at(-1) as string);
}

async function figuresOf(way: Way, crowns: number): Promise<Figures> {
  switch (way) {
    case 'streamed': {
      const source = await timed(() => `${drained(crowns)} regions`);
      const whole = await timed(() => streamedCells(crowns));
      const note = `${whole.note}; making the town (${source.cpuS.toFixed(1)} s CPU) taken off`;
      return { ...whole, wallS: whole.wallS - source.wallS, cpuS: whole.cpuS - source.cpuS, note };
    }
    case 'at once': {
      const scene = sceneOf(crowns);
      reckonOverlay(sceneInput(sceneOf(2000)));
      return timed(() => `${reckonOverlay(sceneInput(scene)).cellCount} cells`);
    }
    case 'two threads': {
      const scene = sceneOf(crowns);
      return timed(async () => `${(await overlayLedger(scene, 2)).cellCount} cells`);
    }
    case 'edits':
      return edits(crowns);
    case 'sample':
      return timed(() => judgedSample(crowns));
  }
}

async function timed(work: () => string | Promise<string>): Promise<Figures> {
  const [wall, cpu] = [performance.now(), process.cpuUsage()];
  const note = await work();
  const { user, system } = process.cpuUsage(cpu);
  return { wallS: (performance.now() - wall) / 1e3, cpuS: (user + system) / 1e6, peakMb: peakMb(), note };
}

function peakMb(): number {
  return process.resourceUsage().maxRSS / 1024;
}

function sceneOf(crowns: number): CrownScene {
  const scene = streetScene(crowns);
  return { crowns: scene.crowns.map(asRegion), pieces: scene.pieces.map(asRegion), blocks: [], recipe: RECIPE };
}

function drained(crowns: number): number {
  const { crowns: trees, pieces } = streetStream(crowns);
  let count = 0;
  for (const source of [trees, pieces]) for (const _ of source) count++;
  return count;
}

/** What a strip's ledger would be written as is left to the caller; here its cells are counted and let go. */
function streamedCells(crowns: number): string {
  let cells = 0;
  for (const ledger of reckonStream({ ...streetStream(crowns), recipe: RECIPE, blocks: [] })) cells += ledger.cellCount;
  return `${cells} cells`;
}

/** Drags crowns about, by up to half a metre a step, drift rings and all. The first step of a drag makes its neighbours' rings. */
function edits(crowns: number): Figures {
  const scene = sceneOf(crowns);
  const live = new LiveOverlay(sceneInput(scene));
  const random = new RandomStream(11, crowns);
  const cpu = process.cpuUsage();
  const first: number[] = [];
  const further: number[] = [];
  for (let drag = 0; drag < DRAGS; drag++) {
    const tree = random.wholeBelow(crowns);
    for (let step = 0; step < STEPS; step++) {
      const [dx, dy] = [random.between(-0.5, 0.5), random.between(-0.5, 0.5)];
      const moved = scene.crowns[tree].map((ring) => ring.map((value, i) => value + (i % 2 === 0 ? dx : dy)));
      const start = performance.now();
      live.setZone(tree, falloutZone(moved, RECIPE.driftRings, RECIPE.chordToleranceM));
      (step === 0 ? first : further).push(performance.now() - start);
    }
  }
  const { user, system } = process.cpuUsage(cpu);
  const at = (share: number, times: number[]) =>
    times.sort((a, b) => a - b)[Math.floor(share * (times.length - 1))].toFixed(2);
  const note =
    `${DRAGS} crowns dragged by ${STEPS} steps: median step ${at(0.5, further)} ms, 95 % below ${at(0.95, further)} ms; ` +
    `median first step ${at(0.5, first)} ms`;
  const wallS = [...first, ...further].reduce((s, t) => s + t, 0) / 1e3;
  return { wallS, cpuS: (user + system) / 1e6, peakMb: peakMb(), note };
}

/** Pair areas and unions under the drip lines of some pieces against GEOS, each at the piece's own origin. */
async function judgedSample(crowns: number): Promise<string> {
  const { pieces, crowns: crownStream } = streetStream(crowns);
  const seen = { crowns: new Map<number, NumberedRegion>(), pieces: new Map<number, NumberedRegion>() };
  const remembered = function* (stream: Iterable<NumberedRegion>, into: Map<number, NumberedRegion>) {
    for (const one of stream) {
      into.set(one.number, one);
      // A strip and its halo hold far fewer than these.
      if (into.size > 60_000) into.delete(into.keys().next().value as number);
      yield one;
    }
  };
  const cases: { pavement: NumberedRegion; crowns: NumberedRegion[]; areas: Float64Array }[] = [];
  const stream = { crowns: remembered(crownStream, seen.crowns), pieces: remembered(pieces, seen.pieces) };
  for (const ledger of reckonStream({ ...stream, recipe: RECIPE, blocks: [] })) {
    for (const [piece, covered] of dripLinesOf(ledger)) {
      if (piece % SAMPLED !== 0) continue;
      const pavement = seen.pieces.get(piece) as NumberedRegion;
      const near = [...covered.byCrown.keys()].map((crown) => seen.crowns.get(crown) as NumberedRegion);
      cases.push({ pavement, crowns: near, areas: Float64Array.of(...covered.byCrown.values(), covered.unionM2) });
    }
  }
  let program: string;
  try {
    program = compiledWithGeos(fileURLToPath(new URL('../oracles/geos-areas.c', import.meta.url)));
  } catch (error) {
    return `not judged: ${(error as Error).message}`;
  }
  const atPiece = cases.map(({ pavement, crowns: near }) => {
    const [x, y] = pavement.region[0];
    const shifted = ({ region }: NumberedRegion) => region.map((r) => r.map((v, i) => v - (i % 2 === 0 ? x : y)));
    return { pavement: shifted(pavement), crowns: near.map(shifted) };
  });
  const theirs = await doublesFrom(program, Float64Array.from(atPiece.flatMap(geosInput)));
  const ours = cases.flatMap(({ areas }) => [...areas]);
  if (theirs.length !== ours.length) throw new Error(`GEOS answered ${theirs.length} areas to ${ours.length}`);
  const off = ours.map((area, i) => Math.abs(area - theirs[i]) / Math.max(1, theirs[i]));
  return `${ours.length} areas of ${cases.length} pieces: at most ${Math.max(...off).toExponential(1)} from GEOS`;
}

interface DripLines {
  readonly byCrown: Map<number, number>;
  unionM2: number;
}

/** Per piece: each crown's own area on it and that of all together, drip lines alone. */
function dripLinesOf(ledger: OverlayLedger): Map<number, DripLines> {
  const byPiece = new Map<number, DripLines>();
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const covered = byPiece.get(ledger.piece[cell]) ?? { byCrown: new Map<number, number>(), unionM2: 0 };
    byPiece.set(ledger.piece[cell], covered);
    let isUnder = false;
    for (let j = ledger.coverStart[cell]; j < ledger.coverStart[cell + 1]; j++) {
      if (ledger.layer[j] !== 0) continue;
      isUnder = true;
      const crown = ledger.zone[j];
      covered.byCrown.set(crown, (covered.byCrown.get(crown) ?? 0) + ledger.areaM2[cell]);
    }
    if (isUnder) covered.unionM2 += ledger.areaM2[cell];
  }
  return byPiece;
}
