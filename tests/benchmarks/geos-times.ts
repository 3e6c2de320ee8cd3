/** Times of GEOS from C on the scene. */
import { execFileSync, spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fromTimes, type Measured } from './peer-times.ts';
import type { StreetScene } from './street-scene.ts';

/** The whole ledger is timed on a town of at most this many crowns. */
export const GEOS_LEDGER_CROWNS = 2_400;

export interface GeosTimes {
  readonly name: string;
  readonly pairs: Measured;
  readonly unions: Measured;
  readonly offsets: Measured;
  readonly ledger: Measured;
  readonly ledgerNote: string;
  readonly pairSumM2: number;
  readonly unionSumM2: number;
}

/** Nothing where GEOS or a C compiler is missing, with a word about it. */
export function geosTimes(scene: StreetScene, smaller: StreetScene, repeats: number): GeosTimes | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'crownfall-geos-'));
  try {
    const program = join(folder, 'geos-overlay');
    const source = new URL('geos-overlay.c', import.meta.url).pathname;
    const made = spawnSync('cc', ['-O2', source, '-lgeos_c', '-o', program], { encoding: 'utf8' });
    if (made.error || made.status !== 0) {
      console.error('GEOS from C is left out: needs gcc and GEOS (Debian: apt-get install gcc libc6-dev libgeos-dev)');
      return undefined;
    }
    console.error('GEOS from C …');
    const lines = run(program, folder, scene, [repeats, 0]);
    const ledger = run(program, folder, smaller, [repeats, 1]);
    const scale = scene.crowns.length / smaller.crowns.length;
    const of = (task: string) => fromTimes(lines.filter(([name]) => name === task).map(([, s]) => 1e3 * Number(s)));
    const sum = (task: string) => Number(lines.find(([name]) => name === task)?.[2]);
    return {
      name: execFileSync('geos-config', ['--version'], { encoding: 'utf8' }).replace(/^/, 'GEOS ').trim(),
      pairs: of('pairs'),
      unions: of('unions'),
      offsets: of('offsets'),
      ledger: fromTimes(
        ledger.map(([, s]) => 1e3 * Number(s)),
        scale,
      ),
      ledgerNote: scale === 1 ? 'all' : `on ${smaller.crowns.length.toLocaleString('en')} crowns, scaled`,
      pairSumM2: sum('pairs'),
      unionSumM2: sum('unions'),
    };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(program: string, folder: string, scene: StreetScene, args: readonly number[]): string[][] {
  const path = join(folder, 'scene');
  const out = openSync(path, 'w');
  for (const rings of [scene.crowns, scene.pieces]) {
    writeSync(out, Int32Array.of(rings.length));
    for (const ring of rings) {
      writeSync(out, Int32Array.of(ring.length / 2));
      writeSync(out, ring);
    }
  }
  closeSync(out);
  const input = openSync(path, 'r');
  const text = execFileSync(program, args.map(String), { stdio: [input, 'pipe', 'ignore'], encoding: 'utf8' });
  closeSync(input);
  return text
    .trim()
    .split('\n')
    .map((line) => line.split(' '));
}
