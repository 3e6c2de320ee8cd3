/**
 * A 10,000 × 10,000 aerial picture in the viewer: `npx tsx tests/benchmarks/viewer-imagery.ts [pixels] [repeats]` (default 10000,
 * 5). The picture is the sample town's, enlarged by GDAL into 512-pixel JPEG tiles with overviews. Told are: from switching the
 * imagery on until its first tile is there, beside the same for the sample town's own small picture; and the memory of the page's
 * process (resident, Linux) before and after panning over 50 tiles. The built viewer and GDAL are needed.
 */
import { execFileSync } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
  createReadStream,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { findChromium, launch } from '../journeys/browser.ts';
import { openViewer } from '../journeys/viewer-page.ts';

const VIEWER = resolve(import.meta.dirname, '../../apps/viewer/dist');
const [pixels = 10_000, repeats = 5] = process.argv.slice(2).map(Number);
const TILES_PANNED = 50;
const TILE_PX = 256;
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.mjs': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
};

const site = mkdtempSync(join(tmpdir(), 'viewer-imagery-'));
cpSync(VIEWER, site, { recursive: true });
const small = JSON.parse(readFileSync(join(site, 'demo/project.json'), 'utf8')).layers.imagery[0] as string;
const server = createServer((request, response) => {
  const path = join(site, new URL(request.url ?? '/', 'http://x').pathname.replace(/\/$/, '/index.html'));
  if (!existsSync(path)) return void response.writeHead(404).end();
  const type = TYPES[extname(path)] ?? 'application/octet-stream';
  const part = /bytes=(\d+)-(\d+)/.exec(request.headers.range ?? '');
  if (!part) {
    response.writeHead(200, { 'content-type': type });
    return void createReadStream(path).pipe(response);
  }
  const [start, end] = [Number(part[1]), Math.min(Number(part[2]), statSync(path).size - 1)];
  response.writeHead(206, { 'content-type': type, 'content-range': `bytes ${start}-${end}/${statSync(path).size}` });
  createReadStream(path, { start, end }).pipe(response);
}).listen(0, '127.0.0.1');
await once(server, 'listening');
const chromium = findChromium();
if (chromium === undefined) throw new Error('Chromium is needed for this benchmark.');
const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/?open=demo`;
const browser = await launch(chromium);
try {
  const own = await firstTiles(browser);
  enlarge();
  const large = await firstTiles(browser);
  const { page, context } = await openViewer(browser, url);
  await imageryOn(page);
  const before = await residentMb(browser);
  await pan(page);
  const after = await residentMb(browser);
  await context.close();
  const told = (times: readonly number[]): string =>
    `${Math.min(...times).toFixed(0)} least, ${times[Math.floor(times.length / 2)].toFixed(0)} median`;
  console.log(`first tile, ${pixels} × ${pixels} pixels: ${told(large)} ms`);
  console.log(`first tile, the sample town’s own picture: ${told(own)} ms`);
  console.log(`page memory: ${before.toFixed(0)} MB, after ${TILES_PANNED} tiles ${after.toFixed(0)} MB`);
} finally {
  await browser.close();
  server.close();
  rmSync(site, { recursive: true });
}

function enlarge(): void {
  const [from, to] = [join(site, 'demo', small), join(site, 'demo', 'large.tif')];
  const tiles = ['-co', 'TILED=YES', '-co', 'BLOCKXSIZE=512', '-co', 'BLOCKYSIZE=512', '-co', 'COMPRESS=JPEG'];
  const bands = ['-b', '1', '-b', '2', '-b', '3', '-co', 'PHOTOMETRIC=YCBCR'];
  const size = ['-outsize', String(pixels), String(pixels), '-r', 'bilinear'];
  execFileSync('gdal_translate', ['-q', ...size, ...bands, ...tiles, from, to]);
  execFileSync('gdaladdo', ['-q', '-r', 'average', to, '2', '4', '8', '16', '32']);
  const path = join(site, 'demo/project.json');
  const project = JSON.parse(readFileSync(path, 'utf8'));
  project.layers.imagery = ['large.tif'];
  writeFileSync(path, JSON.stringify(project));
}

/** Ascending, ms; each in a page of its own. */
async function firstTiles(browser: Browser): Promise<number[]> {
  const times: number[] = [];
  for (let i = 0; i < repeats; i++) {
    const { page, context } = await openViewer(browser, url);
    times.push(await imageryOn(page));
    await context.close();
  }
  return times.sort((a, b) => a - b);
}

/** Switches the imagery on; answers after how many ms the first tile was there. */
async function imageryOn(page: Page): Promise<number> {
  const button = page.getByRole('button', { name: 'Imagery' });
  await button.waitFor();
  return button.evaluate(async (element: HTMLElement) => {
    const from = performance.now();
    element.click();
    for (;;) {
      const [tile] = performance.getEntriesByName('imagery-tile');
      if (tile) return tile.startTime - from;
      if (performance.now() - from > 60_000) throw new Error('No tile of the imagery came within a minute.');
      await new Promise((next) => setTimeout(next, 5));
    }
  });
}

async function pan(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Zoom in' }).click();
  await page.getByRole('button', { name: 'Zoom in' }).click();
  const box = await page.locator('.map-holder').boundingBox();
  if (!box) throw new Error('the map has no place on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  for (let tile = 0; tile < TILES_PANNED; tile++) {
    // To and fro in rows, so that it stays over the picture.
    const way = Math.floor(tile / 5) % 2 === 0 ? -1 : 1;
    const [dx, dy] = tile % 5 === 4 ? [0, -TILE_PX] : [way * TILE_PX, 0];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + dx, y + dy, { steps: 4 });
    await page.mouse.up();
    await page.waitForTimeout(250);
  }
}

/** Resident memory of the largest page process, MB. */
async function residentMb(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = (await session.send('SystemInfo.getProcessInfo')) as unknown as {
    processInfo: readonly { readonly id: number; readonly type: string }[];
  };
  const sizes = processInfo
    .filter(({ type }) => type === 'renderer')
    .map(({ id }) => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1] ?? 0) / 1024);
  return Math.max(...sizes);
}
