/** Splitting and merging crowns, the report as a file, and a background of the user's own tiles. */
import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import papaparse from 'papaparse';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { SAMPLE, type Served, serve, temporaryFolder } from './crownfall-process.ts';
import { openViewer, PATIENCE_MS, seriousFaults, toOutlineBench } from './viewer-page.ts';

const chromium = findChromium();

describe.skipIf(chromium === undefined)('further work in the viewer', () => {
  let tiles: Server;
  const tilesAsked: string[] = [];
  let served: Served;
  let browser: Browser;

  beforeAll(async () => {
    tiles = createServer((request, response) => {
      tilesAsked.push(request.url ?? '');
      response.writeHead(200, {
        'content-type': 'image/png',
        'access-control-allow-origin': '*',
        'cross-origin-resource-policy': 'cross-origin',
      });
      response.end(GREY_PIXEL);
    }).listen(0, '127.0.0.1');
    await once(tiles, 'listening');
    const background = `http://127.0.0.1:${(tiles.address() as AddressInfo).port}/{z}/{x}/{y}.png`;
    [served, browser] = await Promise.all([serve(SAMPLE, '--background', background), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await served?.stop();
    tiles?.close();
  });

  test(
    'a crown is split between two of its points and merged again: area and stain are what they were',
    async () => {
      const { page, context, complaints } = await openViewer(browser, `${served.url}/#bench=outline&tree=T0097`);
      const before = await crownArea(page);
      await page.getByRole('button', { name: 'Correct outline' }).click();
      await page.locator('.live').waitFor();
      await page.locator('canvas.maplibregl-canvas').focus();
      await page.keyboard.press(']');
      await page.getByRole('button', { name: 'Split: cut from this point' }).click();
      await page.locator('canvas.maplibregl-canvas').focus();
      for (let step = 0; step < 6; step++) await page.keyboard.press(']');
      await page.getByRole('button', { name: 'Split: cut to this point' }).click();
      await page.locator('#tree-title').getByText('N1', { exact: true }).waitFor();
      const part = await crownArea(page);
      expect(part).toBeGreaterThan(0.5);
      expect(part).toBeLessThan(before / 2 + 0.1);
      await page.getByText('Merge with a neighbour').click();
      await page.getByLabel('Neighbour').selectOption('T0097');
      await page.getByRole('button', { name: 'Merge', exact: true }).click();
      await page.locator('.notice').getByText('T0097 is now part of N1').waitFor();
      await expect.poll(() => crownArea(page)).toBeCloseTo(before, 0);
      // Four steps back, everything is as it was.
      for (let step = 0; step < 4; step++) await page.getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => page.locator('.changes li:not([data-undone])').count()).toBe(0);
      expect(complaints).toEqual([]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );

  test(
    'background tiles come from the one machine that the server allows; the report is a PDF, or a page that asks nobody',
    async () => {
      const { page, context, asked, complaints } = await openViewer(browser, served.url);
      await expect.poll(() => tilesAsked.length, { timeout: PATIENCE_MS }).toBeGreaterThan(0);
      expect(tilesAsked.every((path) => /^\/\d+\/\d+\/\d+\.png$/.test(path))).toBe(true);
      const others = asked.filter((url) => !url.startsWith(served.url) && !/^(data|blob):/.test(url));
      expect(new Set(others.map((url) => new URL(url).host)).size).toBeLessThanOrEqual(1);
      await page.locator('.exports summary').click();
      const pdf = await exported(page, 'Report as PDF');
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      const path = join(temporaryFolder(), 'report.pdf');
      writeFileSync(path, pdf);
      const text = spawnSync('pdftotext', [path, '-'], { encoding: 'utf8' });
      if (text.error === undefined) expect(text.stdout).toContain('Port Calessa');
      const html = (await exported(page, 'Report as a page')).toString();
      expect(html).toContain('Port Calessa');
      expect(html).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)[^"' <]+\.(js|css|png)/);
      // Blocks 3 and 1 of the list, chosen in that order: a book in walking order behind its map.
      for (const row of [2, 0]) {
        await page.locator('.row-head').nth(row).click();
        await page.getByRole('button', { name: 'Add to the day' }).click();
      }
      await page.getByLabel('Paper').selectOption('letter');
      expect(await seriousFaults(page)).toEqual([]);
      const book = await exported(page, 'Sheets of 2 blocks (PDF)');
      // ANSI/ASME Y14.1 size A in points, on every page.
      const boxes = book.toString('latin1').match(/\/MediaBox \[[^\]]+\]/g) ?? [];
      expect(boxes.length).toBeGreaterThanOrEqual(3);
      for (const box of boxes) expect(box).toMatch(/\[0 0 612(\.0+)? 792(\.0+)?\]/);
      await toOutlineBench(page);
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await shareFromPicture(page);
      await outlineFromPicture(page);
      const pictures = new Set(asked.filter((url) => /\.tif/.test(url)));
      expect([...pictures]).toEqual([`${served.url}/api/imagery/aerial.tif`]);
      expect(complaints).toEqual([]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );
});

/** One grey pixel: the smallest tile there is. */
const GREY_PIXEL = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==',
  'base64',
);

/** The chosen tree by one key; then without it, as a new tree, by a click. */
async function outlineFromPicture(page: Page): Promise<void> {
  const treeId = await page.locator('#tree-title').textContent();
  const proposedM2 = async (): Promise<number> => {
    await page.getByText(/Proposed from the picture; how sure: (low|medium|high)/).waitFor();
    await page.locator('.live').waitFor();
    return Number((await page.locator('.live dd').first().textContent())?.replace(/[^\d.]/g, ''));
  };
  const clickMiddle = async (): Promise<void> => {
    await page.getByRole('button', { name: 'From the picture', exact: true }).click();
    const box = await page.locator('.map-holder').boundingBox();
    if (box === null) throw new Error('the map has no place on the page');
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  };
  await page.keyboard.press('t');
  const own = await proposedM2();
  await page.locator('canvas.maplibregl-canvas').focus();
  await page.keyboard.press('f');
  await page.locator('.notice').getByText(`${treeId} is saved`).waitFor();
  expect(await crownArea(page)).toBe(own);
  await clickMiddle();
  await page.getByText('lies in a crown that is outlined already').waitFor();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByRole('button', { name: 'Remove', exact: true }).click();
  await page.locator('.notice').getByText(`${treeId} is taken away`).waitFor();
  await clickMiddle();
  const again = await proposedM2();
  await page.getByRole('button', { name: 'Save crown' }).click();
  await page.locator('#tree-title').getByText('N1', { exact: true }).waitFor();
  expect(await crownArea(page)).toBe(again);
  const { features } = JSON.parse((await exported(page, 'Crowns (GeoJSON)')).toString());
  expect(features.at(-1).properties).toMatchObject({ tree_id: 'N1', outlined_by: 'imagery' });
}

/** 95 of 100 shares lie within this of the truth (docs/accuracy.md), points. */
const BROWNED_WITHIN = 8;

/** By keys: asked for, taken, the day told, confirmed by initials; then the next tree is there. */
async function shareFromPicture(page: Page): Promise<void> {
  const treeId = await page.locator('#tree-title').textContent();
  // What the picture was drawn from.
  const { trees } = JSON.parse(readFileSync(join(SAMPLE, 'truth.json'), 'utf8'));
  const truth = trees.find((tree: { readonly tree_id: string }) => tree.tree_id === treeId).browned_in_image;
  await page.keyboard.press('i');
  await page.getByText('of the lit leaves look browned').waitFor();
  await page.keyboard.press('i');
  await page.getByText('your initials make it a rating').waitFor();
  const pct = Number(await page.getByLabel('Browned').inputValue());
  expect(Math.abs(pct - 100 * truth)).toBeLessThan(BROWNED_WITHIN);
  await page.getByLabel('Confirmed by (initials)').fill('AB');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await page.locator('.notice').getByText('Give the day the picture was flown').waitFor();
  await page.getByLabel('Picture flown on').fill('2026-05-08');
  await page.locator('h1').click();
  await page.keyboard.press('Enter');
  await page.locator('.notice').getByText(`The rating of ${treeId} is saved`).waitFor();
  const file = (await exported(page, 'Ratings (CSV)')).toString().trim();
  const row = papaparse.parse<Record<string, string>>(file, { header: true }).data.at(-1);
  expect(row).toMatchObject({
    tree_id: treeId,
    rated_on: '2026-05-08',
    rater: 'imagery',
    browned_pct: String(pct),
    cause: 'unknown',
    confidence: 'low',
    confirmed_by: 'AB',
    image: 'aerial.tif',
  });
  expect(row?.evidence).toMatch(/lit leaf pixels from above; browned below NGRDI/);
  await page.waitForFunction((was) => document.querySelector('#tree-title')?.textContent !== was, treeId);
  await page.waitForSelector('.rating');
}

/** m², as the card says it. */
async function crownArea(page: Page): Promise<number> {
  const card = page.locator('.tree');
  await card.getByRole('button', { name: 'Correct outline' }).waitFor();
  return Number(/crown ([\d.,]+)/.exec((await card.textContent()) ?? '')?.[1].replace(',', ''));
}

async function exported(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}
