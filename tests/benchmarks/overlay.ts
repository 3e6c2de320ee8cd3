/**
 * The overlay and its peers on an invented town, in one run on one thread:
 *
 *   npx tsx tests/benchmarks/overlay.ts [--crowns 10000] [--repeats 5]
 *
 * Prints a table as markdown. Peers from npm are installed into this folder first; GEOS is compiled from C (Debian: apt-get
 * install gcc libc6-dev libgeos-dev) and left out with a word where that fails. Peers get their candidate pairs ready made;
 * ours and GEOS from C find theirs on the clock. Times are CPU time; ours includes the collector's threads.
 */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import {
  type Box,
  falloutZone,
  type OverlayInput,
  type OverlayLedger,
  pairAreas,
  type Ring,
  reckonOverlay,
} from '@crownfall/geometry';
import { GEOS_LEDGER_CROWNS, geosTimes } from './geos-times.ts';
import { type Measured, measure, millis, type PeerResult, runPeer } from './peer-times.ts';
import { asRegion, type StreetScene, streetScene } from './street-scene.ts';

/** The outermost drift ring, and how far an arc may reach beyond it: as far as 16 chords to a quarter turn fall short. */
const RINGS = [
  { to_m: 0.5, share: 0.5 },
  { to_m: 1, share: 0.25 },
];
const CHORD_TOLERANCE_M = 1.2e-3;

const { values } = parseArgs({
  options: { crowns: { type: 'string', default: '10000' }, repeats: { type: 'string', default: '5' } },
});
const crownCount = Number(values.crowns);
const repeats = Math.max(5, Number(values.repeats));

installPeers();
const scene = streetScene(crownCount);
const ours = ourTimes(scene);
const geos = geosTimes(scene, streetScene(Math.min(crownCount, GEOS_LEDGER_CROWNS)), repeats);
const candidates = candidatesOf(scene);
const { peers } = await import(new URL('peers.mjs', import.meta.url).href);
const results: PeerResult[] = [];
for (const peer of await peers()) {
  console.error(`${peer.name} …`);
  results.push(runPeer(peer, scene, candidates, repeats));
}
printTable();

function installPeers(): void {
  const folder = new URL('.', import.meta.url).pathname;
  if (existsSync(`${folder}node_modules/clipper2-wasm`)) return;
  execFileSync('npm', ['install', '--no-audit', '--no-fund', '--no-package-lock', '--workspaces=false'], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
}

interface OurTimes {
  readonly pairs: Measured;
  readonly overlay: Measured;
  readonly offsets: Measured;
  readonly ledger: Measured;
  readonly pairSumM2: number;
  readonly unionSumM2: number;
}

function ourTimes({ crowns, pieces }: StreetScene): OurTimes {
  const plain: OverlayInput = {
    zones: crowns.map((ring) => ({ layers: [asRegion(ring)] })),
    pieces: pieces.map(asRegion),
    blocks: [],
  };
  const boxes = crowns.map((ring) => boxAround(ring, 1 + CHORD_TOLERANCE_M));
  const zoneOf = (i: number) => falloutZone(asRegion(crowns[i]), RINGS, CHORD_TOLERANCE_M).layers;
  const withRings: OverlayInput = {
    ...plain,
    zones: { count: crowns.length, box: (i) => boxes[i], layers: zoneOf },
  };
  let sums = { pairs: 0, union: 0 };
  console.error('ours …');
  const regions = { pieces: pieces.map(asRegion), crowns: crowns.map(asRegion) };
  const pairs = measure(repeats, () => pairAreas(regions.pieces, regions.crowns).areaM2.length);
  const overlay = measure(repeats, () => {
    sums = sumsOf(reckonOverlay(plain));
  });
  const offsets = measure(repeats, () => crowns.reduce((n, _, i) => n + zoneOf(i).length, 0));
  const ledger = measure(repeats, () => sumsOf(reckonOverlay(withRings)).union);
  return { pairs, overlay, offsets, ledger, pairSumM2: sums.pairs, unionSumM2: sums.union };
}

/** All pair areas and all union areas are sums over the same cells. */
function sumsOf(ledger: OverlayLedger): { pairs: number; union: number } {
  let pairs = 0;
  let union = 0;
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const covers = ledger.coverStart[cell + 1] - ledger.coverStart[cell];
    pairs += covers * ledger.areaM2[cell];
    union += covers > 0 ? ledger.areaM2[cell] : 0;
  }
  return { pairs, union };
}

function boxAround(ring: Ring, marginM: number): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (let i = 0; i < ring.length; i += 2) {
    box.minX = Math.min(box.minX, ring[i] - marginM);
    box.maxX = Math.max(box.maxX, ring[i] + marginM);
    box.minY = Math.min(box.minY, ring[i + 1] - marginM);
    box.maxY = Math.max(box.maxY, ring[i + 1] + marginM);
  }
  return box;
}

/** For each piece the crowns whose boxes meet its box; crowns of a street come one after another, so a coarse grid finds them. */
function candidatesOf({ crowns, pieces }: StreetScene): number[][] {
  const CELL_M = 16;
  const cells = new Map<string, number[]>();
  const boxes = crowns.map((ring) => boxAround(ring, 0));
  const eachCell = ({ minX, minY, maxX, maxY }: Box, visit: (key: string) => void) => {
    for (let x = Math.floor(minX / CELL_M); x <= maxX / CELL_M; x++) {
      for (let y = Math.floor(minY / CELL_M); y <= maxY / CELL_M; y++) visit(`${x},${y}`);
    }
  };
  boxes.forEach((box, crown) => {
    eachCell(box, (key) => cells.set(key, [...(cells.get(key) ?? []), crown]));
  });
  return pieces.map((piece) => {
    const box = boxAround(piece, 0);
    const near = new Set<number>();
    eachCell(box, (key) => {
      for (const crown of cells.get(key) ?? []) near.add(crown);
    });
    return [...near].filter((crown) => {
      const { minX, minY, maxX, maxY } = boxes[crown];
      return minX <= box.maxX && maxX >= box.minX && minY <= box.maxY && maxY >= box.minY;
    });
  });
}

function printTable(): void {
  const pairCount = candidates.reduce((sum, near) => sum + near.length, 0);
  const row = (cells: (string | number)[]) => console.log(`| ${cells.join(' | ')} |`);
  const both = (m?: Measured, ratioTo?: Measured) =>
    m ? `${millis(m.min)} / ${millis(m.median)}${ratioTo ? ` (${(m.min / ratioTo.min).toFixed(1)}×)` : ''}` : '–';
  console.log(`### ${crownCount.toLocaleString('en')} crowns, ${scene.pieces.length.toLocaleString('en')} pieces\n`);
  console.log(`${pairCount.toLocaleString('en')} candidate pairs; ${cpus()[0].model}, Node ${process.versions.node},`);
  console.log(
    `${new Date().toISOString().slice(0, 10)}; ${repeats} repeats, CPU milliseconds: minimum / median (ratio of minima to ours).\n`,
  );
  row(['way', 'pair areas', 'µs per pair', 'unions', 'pairs and unions', 'two offsets', 'sample', 'off by, m²']);
  row(Array(8).fill('---'));
  const oursBoth = ours.overlay;
  row([
    'Crownfall (unions and pairs in one pass)',
    both(ours.pairs),
    perPair(ours.pairs, pairCount),
    'the same pass',
    both(oursBoth),
    both(ours.offsets),
    'all',
    '',
  ]);
  if (geos) {
    const total = { min: geos.pairs.min + geos.unions.min, median: geos.pairs.median + geos.unions.median };
    const off = Math.max(Math.abs(geos.pairSumM2 - ours.pairSumM2), Math.abs(geos.unionSumM2 - ours.unionSumM2));
    row([
      `${geos.name} from C`,
      both(geos.pairs, ours.pairs),
      perPair(geos.pairs, pairCount),
      both(geos.unions, oursBoth),
      both(total, oursBoth),
      both(geos.offsets, ours.offsets),
      'all',
      off.toExponential(0),
    ]);
  }
  for (const { name, pairs, unions, offsets, sample, offM2 } of results) {
    const total = { min: pairs.min + unions.min, median: pairs.median + unions.median };
    row([
      name,
      both(pairs, ours.pairs),
      perPair(pairs, pairCount),
      both(unions, oursBoth),
      both(total, oursBoth),
      both(offsets, ours.offsets),
      sample,
      offM2.toExponential(0),
    ]);
  }
  console.log(`\nWhole ledger, drift rings of 0.5 and 1 m made on the way: ours ${both(ours.ledger)} ms.`);
  if (geos)
    console.log(
      `GEOS from C, offsets, pairs and unions of the three layers (${geos.ledgerNote}): ${both(geos.ledger, ours.ledger)} ms.`,
    );
}

function perPair(m: Measured, pairCount: number): string {
  return ((m.min / pairCount) * 1e3).toPrecision(3);
}
