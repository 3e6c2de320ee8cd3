/**
 * The urban forester: corrects a crown and watches the figures, draws another by keyboard alone, rates ten trees, loses the
 * page and the network on the way, and hands the layers on.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { crownfall, SAMPLE, serve, temporaryFolder } from './crownfall-process.ts';
import { servedSample } from './served-sample.ts';
import { drawn, openViewer, PATIENCE_MS, toOutlineBench } from './viewer-page.ts';

const chromium = findChromium();

describe.skipIf(chromium === undefined)('the forester', () => {
  let url: string;
  let browser: Browser;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test(
    'rates ten trees by keys alone, blames a crown only on evidence; the figures follow; a reload in between loses nothing',
    async () => {
      const { page, context, complaints } = await openViewer(browser, url);
      await toOutlineBench(page);
      const before = await totalOf(page);
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await page.getByLabel('Rater (initials)').fill('AB');
      await page.keyboard.press('Enter');
      await blameByEvidence(page);
      for (let tree = 0; tree < 4; tree++) await rateByKeys(page);
      await page.reload();
      await drawn(page);
      await page.waitForSelector('.rating');
      expect(await page.locator('.changes li').count()).toBe(5);
      for (let tree = 0; tree < 5; tree++) await rateByKeys(page);
      expect(await page.locator('.changes li').count()).toBe(10);
      expect(await page.locator('.dateline').textContent()).toContain('924 rated');
      expect(await totalOf(page)).toBeGreaterThan(before);
      expect(complaints).toEqual([]);
      await context.close();
    },
    2 * PATIENCE_MS,
  );

  test(
    'draws a crown by keyboard alone, with live figures, and exports layers that reckon to the figures shown',
    async () => {
      const { page, context } = await openViewer(browser, url);
      await toOutlineBench(page);
      await drawSquareByKeys(page);
      await page.locator('.live').waitFor();
      const shown = Number((await page.locator('.live dd').first().textContent())?.replace(/[^\d.]/g, ''));
      expect(shown).toBeGreaterThan(1);
      await page.keyboard.press('f');
      await page.locator('.notice').getByText('N1 is saved').waitFor();
      const total = await totalOf(page);
      const folder = temporaryFolder();
      cpSync(SAMPLE, folder, { recursive: true });
      writeFileSync(join(folder, 'crowns.geojson'), await exported(page, 'Crowns (GeoJSON)'));
      writeFileSync(join(folder, 'ratings.csv'), await exported(page, 'Ratings (CSV)'));
      const run = crownfall(['reckon', folder, '--out', join(folder, 'out'), '--quiet']);
      expect(run.code, run.stderr).toBe(0);
      const reckoned = JSON.parse(readFileSync(join(folder, 'out/run.json'), 'utf8'));
      expect(reckoned.counts.crowns_used).toBe(1201);
      expect(Math.round(reckoned.total.stained_m2)).toBe(total);
      const gdal = spawnSync('ogrinfo', ['-so', join(folder, 'crowns.geojson'), 'crowns'], { encoding: 'utf8' });
      if (gdal.error === undefined) expect(gdal.stdout).toContain('Feature Count: 1201');
      await context.close();
    },
    2 * PATIENCE_MS,
  );

  test(
    'corrects an outline with the mouse; undo and redo go over every step, across a crash',
    async () => {
      const { page, context } = await openViewer(browser, url);
      await toOutlineBench(page);
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await page.keyboard.press('o');
      await page.locator('.live').waitFor();
      // The first unrated tree has two diameters; its outline gets points to drag.
      await page.getByRole('button', { name: 'Outline by points instead' }).click();
      await page.waitForTimeout(1500);
      const area = (): Promise<string | null> => page.locator('.live dd').first().textContent();
      const before = await area();
      await dragHandle(page);
      await expect.poll(area).not.toBe(before);
      const dragged = await area();
      // The page goes down with an outline that was never saved.
      await page.waitForTimeout(600);
      await page.goto('about:blank');
      await page.goto(url);
      await drawn(page);
      await toSketch(page);
      await expect.poll(area).toBe(dragged);
      await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(area).toBe(before);
      await page.getByRole('button', { name: 'Redo' }).click();
      await expect.poll(area).toBe(dragged);
      await page.getByRole('button', { name: 'Save crown' }).click();
      await page.locator('.changes li').waitFor({ state: 'attached' });
      await context.close();
    },
    2 * PATIENCE_MS,
  );

  test(
    'without a network the page comes back, with its edits, and goes on working',
    async () => {
      const own = await serve(SAMPLE);
      const { page, context } = await openViewer(browser, own.url);
      await toOutlineBench(page);
      // The service worker keeps what this first visit loaded.
      await page.waitForFunction(async (wanted) => {
        const kept = (await (await caches.open('crownfall-1')).keys()).map(({ url }) => url);
        return wanted.every((part) => kept.some((url) => url.includes(part)));
      }, FIRST_VISIT);
      await own.stop();
      await page.reload();
      await drawn(page);
      await toOutlineBench(page);
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await page.getByLabel('Rater (initials)').fill('AB');
      await page.keyboard.press('Enter');
      await rateByKeys(page);
      expect(await page.locator('.changes li').count()).toBe(1);
      await context.close();
    },
    2 * PATIENCE_MS,
  );
});

/** Of what a first visit loads: the page, its code and its worker's, the figures, the records. */
const FIRST_VISIT = [
  '/assets/index-',
  '/assets/reckoner.worker-',
  '/api/assessment',
  '/crowns.geojson',
  '/ratings.csv',
];

/** 40 % browned, frass, moderate galls, then on to the next tree. */
async function rateByKeys(page: Page): Promise<void> {
  const tree = await page.locator('#tree-title').textContent();
  for (const key of ['4', 'c', 'g', 'g', 'g', 'Enter']) await page.keyboard.press(key);
  await nextTree(page, tree);
}

async function nextTree(page: Page, after: string | null): Promise<void> {
  await page.waitForFunction((was) => document.querySelector('#tree-title')?.textContent !== was, after);
  await page.waitForSelector('.rating');
}

/** 60 % browned by frass: kept only once it is written what shows it; then on to the next tree. */
async function blameByEvidence(page: Page): Promise<void> {
  const tree = await page.locator('#tree-title').textContent();
  for (const key of ['6', 'c']) await page.keyboard.press(key);
  await page.locator('.verdict').getByText('blamed only on evidence').waitFor();
  await page.keyboard.press('Enter');
  expect(await page.locator('.changes li').count()).toBe(0);
  await page.keyboard.press('e');
  await page.keyboard.type('galls opened, frass found');
  await page.keyboard.press('Enter');
  await page.locator('.verdict').getByText('will be blamed').waitFor();
  await page.keyboard.press('Enter');
  await nextTree(page, tree);
}

/** The stained total, as the weigh bench says it. */
async function totalOf(page: Page): Promise<number> {
  await page.getByRole('radio', { name: 'Weigh' }).click();
  const total = await page.locator('.total strong').textContent();
  await page.getByRole('radio', { name: 'Outline', exact: true }).click();
  return Number(total?.replace(/[^\d.]/g, ''));
}

/** Tab to the tool, draw four corners about a street corner with arrows and Enter, close. */
async function drawSquareByKeys(page: Page): Promise<void> {
  await page.evaluate(() => {
    location.hash = '';
  });
  await page.locator('.tool').first().focus();
  await page.keyboard.press('Enter');
  await page.locator('.coordinates summary').focus();
  await page.keyboard.press('Enter');
  // The first corner by typed numbers: a sidewalk of the sample town.
  await page.getByLabel('Longitude, degrees').fill('-80.0572');
  await page.getByLabel('Latitude, degrees').fill('28.30329');
  await page.keyboard.press('Enter');
  const canvas = page.locator('canvas.maplibregl-canvas');
  await canvas.focus();
  await page.waitForTimeout(1000);
  for (const arrow of ['ArrowRight', 'ArrowDown', 'ArrowLeft']) {
    for (let i = 0; i < 6; i++) await page.keyboard.press(arrow);
    await page.keyboard.press('Enter');
  }
  await page.keyboard.press('f');
  expect(await page.locator('.sketch .count').textContent()).toBe('4 points');
}

async function exported(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return readFileSync(await download.path());
}

async function toSketch(page: Page): Promise<void> {
  if ((await page.locator('.sketch').count()) === 0)
    await page.getByRole('radio', { name: 'Outline', exact: true }).click();
  await page.locator('.live').waitFor();
}

/** Looks for a handle round the middle of the map and drags it outwards. */
async function dragHandle(page: Page): Promise<void> {
  const box = await page.locator('.map-holder').boundingBox();
  if (box === null) throw new Error('the map has no place on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  for (let radius = 20; radius < 260; radius += 6) {
    for (let angle = 0; angle < 360; angle += 8) {
      const [dx, dy] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
      await page.mouse.move(x + radius * dx, y + radius * dy);
      const cursor = await page.evaluate(() => document.querySelector('canvas')?.style.cursor);
      if (cursor !== 'move') continue;
      await page.mouse.down();
      for (let step = 1; step <= 8; step++)
        await page.mouse.move(x + (radius + 8 * step) * dx, y + (radius + 8 * step) * dy);
      await page.mouse.up();
      return;
    }
  }
  throw new Error('no handle was found round the middle of the map');
}
