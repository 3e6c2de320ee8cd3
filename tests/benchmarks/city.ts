/**
 * The main job at city size, through the real command: `npx tsx tests/benchmarks/city.ts [crowns …]` (default 10000 100000).
 * For each size a seeded city is written (six pieces of pavement to ten crowns, a rating to each), reckoned in a process of its
 * own, and wall time, CPU time and peak memory are printed, with the growth against the first size. Data invented.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { LineFile } from './line-file.ts';

const COMMAND = fileURLToPath(new URL('../../apps/cli/bin/crownfall.js', import.meta.url));
const HOSTS = ['Terminalia buceras', 'Tilia americana', 'Quercus virginiana'];
const METRES_PER_DEGREE = 111_195;

interface Run {
  readonly crowns: number;
  readonly wallS: number;
  readonly drawsS: number;
  readonly cpuS: number;
  readonly peakMb: number;
}

const sizes = process.argv.slice(2).map(Number);
const runs = (sizes.length > 0 ? sizes : [10_000, 100_000]).map(timed);
console.log('\n| crowns | pavement | wall, s | of it 1,000 draws, s | CPU, s | growth | peak memory, MB |');
console.log('| ---: | ---: | ---: | ---: | ---: | ---: | ---: |');
for (const { crowns, wallS, drawsS, cpuS, peakMb } of runs) {
  const growth = (cpuS / runs[0].cpuS).toFixed(1);
  console.log(
    `| ${crowns} | ${piecesFor(crowns)} | ${wallS.toFixed(1)} | ${drawsS.toFixed(1)} | ${cpuS.toFixed(1)} | ${growth} | ${peakMb.toFixed(0)} |`,
  );
}

function timed(crowns: number): Run {
  const folder = mkdtempSync(join(tmpdir(), 'city-'));
  try {
    console.error(`${crowns} crowns: writing the city`);
    writeCity(folder, crowns);
    console.error(`${crowns} crowns: reckoning`);
    return reckoned(folder, crowns);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Runs the command under GNU time, which alone tells a child's peak memory. */
function reckoned(folder: string, crowns: number): Run {
  if (spawnSync('/usr/bin/time', ['--version']).status !== 0) {
    throw new Error('GNU time is needed for the peak memory: apt-get install time');
  }
  const figures = join(folder, 'time.txt');
  const command = [process.execPath, COMMAND, 'reckon', folder, '--out', join(folder, 'out'), '--quiet'];
  execFileSync('/usr/bin/time', ['-f', '%e %U %S %M', '-o', figures, ...command], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const [wallS, userS, systemS, peakKb] = execFileSync('cat', [figures], { encoding: 'utf8' })
    .trim()
    .split(' ')
    .map(Number);
  const { timings } = JSON.parse(readFileSync(join(folder, 'out/run.json'), 'utf8'));
  return { crowns, wallS, drawsS: timings.draws, cpuS: userS + systemS, peakMb: peakKb / 1024 };
}

function piecesFor(crowns: number): number {
  return Math.round(0.6 * crowns);
}

/** Streets 60 m apart: strips of sidewalk in both directions, crowns beside them, one block to each cell of the grid. */
function writeCity(folder: string, crowns: number): void {
  const next = random(7);
  const streets = Math.ceil(Math.sqrt(piecesFor(crowns) / 2));
  const layer = (name: string) => new LineFile(join(folder, name));
  const [trees, pavement, blocks, ratings] = ['crowns', 'pavement', 'blocks', 'ratings'].map((name) =>
    layer(name === 'ratings' ? 'ratings.csv' : `${name}.geojsonl`),
  );
  ratings.write('tree_id,rated_on,rater,browned_pct,gall_load,cause,evidence\n');
  for (let i = 0; i < piecesFor(crowns); i++) {
    const across = i % 2 === 0;
    const cell = i >> 1;
    const [x, y] = [60 * (cell % streets), 60 * Math.floor(cell / streets)];
    const ring = across ? box(x + 8, y, 44, 2.5) : box(x, y + 8, 2.5, 44);
    pavement.write(feature({ pavement_id: `P${i}`, kind: 'sidewalk' }, { type: 'Polygon', coordinates: [ring] }));
    if (across) {
      blocks.write(feature({ block_id: `B${cell}` }, { type: 'Polygon', coordinates: [box(x - 30, y - 30, 60, 60)] }));
    }
  }
  for (let i = 0; i < crowns; i++) {
    const cell = Math.floor(next() * (piecesFor(crowns) / 2));
    const [x, y] = [60 * (cell % streets), 60 * Math.floor(cell / streets)];
    const along = 8 + 44 * next();
    const at = next() < 0.5 ? [x + along, y + 3 * next()] : [x + 3 * next(), y + along];
    const outline = wavy(at[0], at[1], 2.5 + 2.5 * next(), 6 * next());
    trees.write(
      feature({ tree_id: `T${i}`, host: HOSTS[Math.floor(3 * next())] }, { type: 'Polygon', coordinates: [outline] }),
    );
    const galled = next() < 0.5;
    ratings.write(
      `T${i},2026-05-0${1 + Math.floor(9 * next())},R${1 + Math.floor(3 * next())},${Math.floor(100 * next())},` +
        `${galled ? 'moderate,frass,galls on the flowers' : 'none,none,'}\n`,
    );
  }
  for (const file of [trees, pavement, blocks, ratings]) {
    file.end();
  }
  const layers = {
    crowns: 'crowns.geojsonl',
    pavement: 'pavement.geojsonl',
    blocks: 'blocks.geojsonl',
    ratings: 'ratings.csv',
  };
  writeFileSync(
    join(folder, 'project.json'),
    JSON.stringify({ title: 'Invented city', season: 2026, units: 'metric', layers }),
  );
}

function feature(properties: object, geometry: object): string {
  return `${JSON.stringify({ type: 'Feature', properties, geometry })}\n`;
}

function box(x: number, y: number, width: number, height: number): number[][] {
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
    [x, y],
  ];
  return corners.map(([cx, cy]) => position(cx, cy));
}

function wavy(x: number, y: number, radius: number, phase: number): number[][] {
  const ring = Array.from({ length: 33 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 32;
    const r = radius * (1 + 0.12 * Math.sin(3 * angle + phase) + 0.06 * Math.sin(7 * angle));
    return position(x + r * Math.cos(angle), y + r * Math.sin(angle));
  });
  ring[32] = ring[0];
  return ring;
}

/** Metres to degrees about a place in the open sea. */
function position(x: number, y: number): number[] {
  return [
    Number((-79 + x / (METRES_PER_DEGREE * Math.cos((25 * Math.PI) / 180))).toFixed(9)),
    Number((25 + y / METRES_PER_DEGREE).toFixed(9)),
  ];
}

function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
