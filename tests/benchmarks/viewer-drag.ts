/**
 * From a dragged vertex to the updated rank, in a real browser: `npx tsx tests/benchmarks/viewer-drag.ts [crowns] [moves]`
 * (default 100000 crowns, 200 moves). A seeded invented city is opened by the page alone; a vertex of one crown is dragged. Told
 * are, per move: scripting on the page (Chromium's ScriptDuration), reckoning (question to the worker until its answer is there),
 * from the move until the rank is on the page; and the share of frames longer than 16.7 ms. The built viewer is needed.
 */
import { cpSync, createReadStream, existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { findChromium, launch } from '../journeys/browser.ts';
import { openViewer, toOutlineBench } from '../journeys/viewer-page.ts';
import { writeViewerCity } from './viewer-city.ts';

const VIEWER = resolve(import.meta.dirname, '../../apps/viewer/dist');
const [crowns = 100_000, moves = 200] = process.argv.slice(2).map(Number);

const site = mkdtempSync(join(tmpdir(), 'viewer-drag-'));
cpSync(VIEWER, site, { recursive: true });
rmSync(join(site, 'demo'), { recursive: true });
writeViewerCity(join(site, 'demo'), crowns);
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
