/**
 * The project store at size: `npx tsx tests/benchmarks/store.ts [crowns …]` (default 10000 1000000). Each size is imported
 * in one pass; then boxes that hold about 1,000 crowns are asked for in turn of each file, 5 rounds to warm up and 25
 * that count. Printed: import time, peak memory, and the time of a box against that of the first size. Data invented.
 */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ProjectStore } from '@crownfall/exchange';
import { createProjectStore, openProjectStore } from '@crownfall/exchange/node';
import type { RawFeature } from '@crownfall/survey';

const ANA = { author: 'Ana', at: '2026-05-20T10:00:00.000Z' };
/** Degrees between neighbours: the same density at every size. */
const STEP = 1e-4;
const BOX = 31.6 * STEP;
const WARM_UP = 5;
const ROUNDS = 25;

interface Trial {
  readonly crowns: number;
  readonly file: string;
  readonly importS: number;
  readonly peakMb: number;
}

const given = process.argv.slice(2).map(Number);
const folder = mkdtempSync(join(tmpdir(), 'store-size-'));
try {
  const trials: Trial[] = [];
  for (const crowns of given.length > 0 ? given : [10_000, 1_000_000]) trials.push(await imported(crowns));
  print(trials, await boxTimes(trials));
} finally {
  rmSync(folder, { recursive: true });
}

function* portions(crowns: number, seen: () => void): Generator<readonly RawFeature[]> {
  const side = Math.ceil(Math.sqrt(crowns));
  for (let from = 0; from < crowns; from += 1000) {
    seen();
    const count = Math.min(1000, crowns - from);
    yield Array.from({ length: count }, (_, i) => crown(from + i, side));
  }
}

function crown(i: number, side: number): RawFeature {
  const [x, y] = [-80 + (i % side) * STEP, 26 + Math.floor(i / side) * STEP];
  const ring = new Float64Array(32);
  for (let k = 0; k < 16; k++) {
    ring[2 * k] = x + 4e-5 * Math.cos((k * Math.PI) / 8);
    ring[2 * k + 1] = y + 4e-5 * Math.sin((k * Math.PI) / 8);
  }
  const properties = { tree_id: `T${i}`, host: 'Terminalia buceras', height_m: 7 + (i % 50) / 10, zone: i % 7 };
  return { row: i + 1, geometry: { kind: 'area', polygons: [[ring]] }, properties };
}

async function imported(crowns: number): Promise<Trial> {
  const file = join(folder, `${crowns}.gpkg`);
  let peak = 0;
  const seen = (): void => {
    peak = Math.max(peak, process.memoryUsage.rss());
  };
  const begun = performance.now();
  const store = await createProjectStore(file, { at: ANA.at, bulk: true });
  await store.importLayer({ layer: 'crowns', shape: 'features', features: portions(crowns, seen) }, ANA);
  await store.close();
  return { crowns, file, importS: (performance.now() - begun) / 1000, peakMb: peak / 1e6 };
}

/** In turn, so that whatever else the machine does falls on all sizes alike. */
async function boxTimes(trials: readonly Trial[]): Promise<readonly number[][]> {
  const stores: ProjectStore[] = [];
  for (const { file } of trials) {
    const { store } = await openProjectStore(file, { readOnly: true });
    if (store) stores.push(store);
  }
  const times: number[][] = trials.map(() => []);
  for (let round = 0; round < WARM_UP + ROUNDS; round++) {
    for (const [i, store] of stores.entries()) {
      const room = Math.sqrt(trials[i].crowns) * STEP - BOX;
      const [west, south] = [-80 + room * ((round * 0.37) % 1), 26 + room * ((round * 0.61) % 1)];
      const begun = performance.now();
      const { records } = await store.records('crowns', {
        bbox: [west, south, west + BOX, south + BOX],
        limit: 10_000,
      });
      if (records.length < 900) throw new Error(`too few crowns in the box: ${records.length}`);
      if (round >= WARM_UP) times[i].push(performance.now() - begun);
    }
  }
  for (const store of stores) await store.close();
  return times.map((each) => each.sort((a, b) => a - b));
}

function print(trials: readonly Trial[], times: readonly number[][]): void {
  console.log(
    '| crowns | import, s | peak memory, MB | file, MB | box of 1,000: minimum, ms | median, ms | ratio of minima |',
  );
  console.log('| ---: | ---: | ---: | ---: | ---: | ---: | ---: |');
  for (const [i, { crowns, file, importS, peakMb }] of trials.entries()) {
    const [least, middle] = [times[i][0], times[i][Math.floor(ROUNDS / 2)]];
    const cells = [
      importS.toFixed(1),
      peakMb.toFixed(0),
      (statSync(file).size / 1e6).toFixed(0),
      least.toFixed(1),
      middle.toFixed(1),
    ];
    console.log(`| ${crowns} | ${cells.join(' | ')} | ${(least / times[0][0]).toFixed(2)} |`);
  }
}
