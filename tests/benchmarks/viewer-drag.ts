/**
 * From a dragged vertex to the updated rank, in a real browser: `npx tsx tests/benchmarks/viewer-drag.ts [crowns] [moves]`
 * (default 100000 crowns, 200 moves). A seeded invented city is opened by the page alone; a vertex of one crown is dragged. Told
 * are, per move: scripting on the page (Chromium's ScriptDuration), reckoning (question to the worker until its answer is there),
 * from the move until the rank is on the page; and the share of frames longer than 16.7 ms. The built viewer is needed.
 */
import { cpSync, createReadStream, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { findChromium, launch } from '../journeys/browser.ts';
import { openViewer, toOutlineBench } from '../journeys/viewer-page.ts';
import { LineFile } from './line-file.ts';

const VIEWER = resolve(import.meta.dirname, '../../apps/viewer/dist');
const [crowns = 100_000, moves = 200] = process.argv.slice(2).map(Number);
const METRES_PER_DEGREE = 111_195;

const site = mkdtempSync(join(tmpdir(), 'viewer-drag-'));
cpSync(VIEWER, site, { recursive: true });
rmSync(join(site, 'demo'), { recursive: true });
writeCity(join(site, 'demo'), crowns);
const server = createServer((request, response) => {
  const path = join(site, new URL(request.url ?? '/', 'http://x').pathname.replace(/\/$/, '/index.html'));
  if (!existsSync(path)) return void response.writeHead(404).end();
  response.writeHead(200, { 'content-type': TYPES[extname(path)] ?? 'application/octet-stream' });
  createReadStream(path).pipe(response);
}).listen(0, '127.0.0.1');
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
};
const chromium = findChromium();
if (chromium === undefined) throw new Error('Chromium is needed for this benchmark.');
interface Timings {
  readonly scriptMs: readonly number[];
  readonly rankMs: readonly number[];
  readonly frameMs: readonly number[];
}

async function dragged(page: Page): Promise<Timings> {
  await page.keyboard.press('n');
  await page.waitForSelector('.rating');
  await page.keyboard.press('o');
  await page.locator('.live').waitFor();
  await page.waitForTimeout(3000);
  const [x, y] = await handle(page);
  const inspector = await page.context().newCDPSession(page);
  await inspector.send('Performance.enable');
  const scripted = async (): Promise<number> => {
    const { metrics } = await inspector.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? 0);
  };
  await page.evaluate(WATCH);
  await page.mouse.move(x, y);
  await page.mouse.down();
  const scriptMs: number[] = [];
  for (let move = 0; move < moves + WARM_UP; move++) {
    const angle = move / 9;
    const before = await scripted();
    await page.evaluate('startMove()');
    await page.mouse.move(x + 30 * Math.cos(angle), y + 30 * Math.sin(angle));
    await page.evaluate('figuresShown()');
    if (move >= WARM_UP) scriptMs.push((await scripted()) - before);
  }
  await page.mouse.up();
  const { rankMs, frameMs } = (await page.evaluate('timings')) as Omit<Timings, 'scriptMs'>;
  return { scriptMs, rankMs: rankMs.slice(WARM_UP), frameMs: frameMs.slice(WARM_UP) };
}

/** First moves compile code and fill caches. */
const WARM_UP = 20;

/** Watches the live figures and the frames from within the page. */
const WATCH = `
  timings = { rankMs: [], frameMs: [] };
  let began = 0, shown = null;
  new MutationObserver(() => { if (began) { timings.rankMs.push(performance.now() - began); began = 0; shown?.(); } })
    .observe(document.querySelector('.live'), { subtree: true, childList: true, characterData: true });
  startMove = () => { began = performance.now(); };
  // A move that changes no digit of the figures is over after a while.
  figuresShown = () => new Promise((done) => { if (!began) return done(); shown = done; setTimeout(done, 250); });
  let last = performance.now();
  const frame = (now) => { timings.frameMs.push(now - last); last = now; requestAnimationFrame(frame); };
  requestAnimationFrame(frame);
`;

async function handle(page: Page): Promise<readonly [number, number]> {
  const box = await page.locator('.map-holder').boundingBox();
  if (box === null) throw new Error('the map has no place on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  for (let radius = 20; radius < 320; radius += 5) {
    for (let angle = 0; angle < 6.28; angle += 0.12) {
      const at = [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
      await page.mouse.move(...at);
      if ((await page.evaluate(() => document.querySelector('canvas')?.style.cursor)) === 'move') return at;
    }
  }
  throw new Error('no handle was found');
}

function tell({ scriptMs, rankMs, frameMs }: Timings): void {
  const line = (name: string, values: readonly number[]): void => {
    const sorted = [...values].sort((a, b) => a - b);
    const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(1);
    console.log(`${name}: median ${at(0.5)}, p95 ${at(0.95)}, most ${at(1)} ms (${sorted.length})`);
  };
  line('scripting on the page per move', scriptMs);
  line('from the move to the new figures on the page', rankMs);
  const long = frameMs.filter((ms) => ms > 16.7).length / frameMs.length;
  console.log(`frames over 16.7 ms: ${(100 * long).toFixed(0)} % of ${frameMs.length}`);
}

/** Streets 60 m apart, sidewalks in both directions, crowns beside them, one block to each cell. Invented. */
function writeCity(folder: string, count: number): void {
  mkdirSync(folder, { recursive: true });
  const next = random(11);
  const cells = Math.ceil(0.1 * count);
  const side = Math.ceil(Math.sqrt(cells));
  const files = { crowns: 'crowns.geojsonl', pavement: 'pavement.geojsonl', blocks: 'blocks.geojsonl' };
  const [trees, pavement, blocks] = Object.values(files).map((name) => new LineFile(join(folder, name)));
  const ratings = new LineFile(join(folder, 'ratings.csv'));
  ratings.write('tree_id,rated_on,rater,browned_pct,gall_load,cause\n');
  for (let cell = 0; cell < cells; cell++) {
    const [x, y] = [60 * (cell % side), 60 * Math.floor(cell / side)];
    blocks.write(feature({ block_id: `B${cell}` }, box(x - 30, y - 30, 60, 60)));
    pavement.write(feature({ pavement_id: `P${2 * cell}`, kind: 'sidewalk' }, box(x - 26, y, 52, 2.5)));
    pavement.write(feature({ pavement_id: `P${2 * cell + 1}`, kind: 'carriageway' }, box(x - 26, y + 3, 52, 7)));
  }
  for (let tree = 0; tree < count; tree++) {
    const cell = Math.floor(next() * cells);
    const [x, y] = [60 * (cell % side) - 24 + 48 * next(), 60 * Math.floor(cell / side) + 5 * next()];
    const ring = Array.from({ length: 16 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 16;
      const radius = 3 + next();
      return position(x + radius * Math.cos(angle), y + radius * Math.sin(angle));
    });
    trees.write(feature({ tree_id: `T${tree}`, host: 'Terminalia buceras' }, [[...ring, ring[0]]]));
    if (tree % 50 > 0) ratings.write(`T${tree},2026-05-04,R1,${Math.floor(100 * next())},moderate,frass\n`);
  }
  for (const file of [trees, pavement, blocks, ratings]) file.end();
  const layers = { ...files, ratings: 'ratings.csv' };
  writeFileSync(
    join(folder, 'project.json'),
    JSON.stringify({ title: 'City (invented)', season: 2026, units: 'metric', layers }),
  );
}

function feature(properties: object, coordinates: number[][][]): string {
  return `${JSON.stringify({ type: 'Feature', properties, geometry: { type: 'Polygon', coordinates } })}\n`;
}

function box(x: number, y: number, width: number, height: number): number[][][] {
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
    [x, y],
  ];
  return [corners.map(([cx, cy]) => position(cx, cy))];
}

function position(x: number, y: number): number[] {
  return [x / METRES_PER_DEGREE, y / METRES_PER_DEGREE];
}

/** Mulberry32. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const browser = await launch(chromium);
const started = performance.now();
const at = (server.address() as AddressInfo).port;
// Reading and reckoning such a city takes a minute on a quiet machine.
const { page } = await openViewer(browser, `http://127.0.0.1:${at}/?open=demo`, { patienceMs: 900_000 });
await toOutlineBench(page);
console.log(`${crowns} crowns: opened and reckoned in ${((performance.now() - started) / 1000).toFixed(1)} s`);
tell(await dragged(page));
await browser.close();
server.close();
rmSync(site, { recursive: true, force: true });
