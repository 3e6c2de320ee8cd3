/**
 * A layer passes through `convert` without being held: peak memory does not follow the size of the file. By default the
 * file has 32 MB; `CROWNFALL_LARGE_MB=1100 npx vitest run tests/cases/formats-streaming.test.ts` measures a large one.
 */
import { spawnSync } from 'node:child_process';
import { closeSync, openSync, statSync, writeSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const MEGABYTES = Number(process.env.CROWNFALL_LARGE_MB ?? 32);
/** The program itself and its young garbage take about 200 MB, two row groups unpacked another 100 MB. */
const MOST_PEAK_MB = 420;

let folder: string;
let count = 0;
const source = () => join(folder, 'crowns.geojsonl');

beforeAll(() => {
  folder = temporaryFolder('streaming');
  count = writeCrowns(source(), MEGABYTES * 2 ** 20);
}, 3_600_000);

/** Crowns of 32 corners on a grid of 15 m until the file is so large; answers how many. */
function writeCrowns(path: string, bytes: number): number {
  const file = openSync(path, 'w');
  let written = 0;
  let n = 0;
  for (; written < bytes; ) {
    let text = '';
    for (let i = 0; i < 1000; i++, n++) text += `${crownLine(n)}\n`;
    written += writeSync(file, text);
  }
  closeSync(file);
  return n;
}

function crownLine(n: number): string {
  const [x, y] = [-80.3 + (n % 3000) * 1.5e-4, 25.6 + Math.floor(n / 3000) * 1.4e-4];
  const ring = Array.from({ length: 33 }, (_, i) => {
    const angle = (2 * Math.PI * (i % 32)) / 32;
    return [Number((x + 4e-5 * Math.cos(angle)).toFixed(9)), Number((y + 3.6e-5 * Math.sin(angle)).toFixed(9))];
  });
  const properties = { tree_id: `T-${n}`, host: 'Bucida buceras', height_m: 6 + (n % 80) / 10, street: n % 900 };
  return JSON.stringify({ type: 'Feature', properties, geometry: { type: 'Polygon', coordinates: [ring] } });
}

function convert(from: string, to: string) {
  const script = resolve(import.meta.dirname, 'formats-streaming-process.ts');
  const { stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', script, from, to], { encoding: 'utf8' });
  if (stdout === '') throw new Error(stderr);
  const took = JSON.parse(stdout) as { count: number; findings: number; seconds: number; peakMb: number };
  const [inMb, outMb] = [from, to].map((path) => Math.round(statSync(path).size / 1e6));
  const names = [from, to].map((path) => path.split('.').pop()).join(' → ');
  console.info(
    `${names}: ${inMb} → ${outMb} MB, ${took.count} features, ${took.seconds.toFixed(1)} s, peak ${took.peakMb.toFixed(0)} MB`,
  );
  return took;
}

describe(`${MEGABYTES} MB of crowns`, () => {
  test.each([
    ['geojsonl', 'parquet'],
    ['parquet', 'fgb'],
    ['parquet', 'geojsonl2'],
  ])('%s → %s in bounded memory, nothing lost', { timeout: 3_600_000 }, (from, to) => {
    const name = to === 'geojsonl2' ? 'again.geojsonl' : `crowns.${to}`;
    const took = convert(join(folder, `crowns.${from}`), join(folder, name));
    expect(took).toMatchObject({ count, findings: 0 });
    expect(took.peakMb).toBeLessThan(MOST_PEAK_MB);
  });

  test('after GeoParquet and back every byte is as it was', () => {
    expect(spawnSync('cmp', [source(), join(folder, 'again.geojsonl')]).status).toBe(0);
  });
});
