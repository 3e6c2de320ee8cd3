/** Nothing but keys from the first screen to the exported file: open a project, draw a crown, rate it, export. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { servedSample } from './served-sample.ts';
import { openViewer, PATIENCE_MS } from './viewer-page.ts';

const chromium = findChromium();
/** More tab stops than any screen has. */
const STOPS_MOST = 400;

describe.skipIf(chromium === undefined)('by keyboard alone', () => {
  let url: string;
  let browser: Browser;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test(
    'the sample town is opened, a crown drawn, rated and exported',
    async () => {
      const { page, context, complaints } = await openViewer(browser, url);
      await tabTo(page, 'Open another project');
      await page.keyboard.press('Enter');
      await tabTo(page, 'Open the sample town');
      await Promise.all([page.waitForURL(/open=demo/), page.keyboard.press('Enter')]);
      await page.waitForSelector('canvas[data-drawn]');
      await tabTo(page, 'Weigh');
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('Enter');
      await page.waitForSelector('.tools');
      await tabTo(page, 'Trunk and spread');
      await page.keyboard.press('Enter');
      await page.waitForSelector('.sketch');
      await tabTo(page, 'Point by numbers');
      await page.keyboard.press('Enter');
      await page.keyboard.press('Tab');
      await page.keyboard.type('-80.0572');
      await page.keyboard.press('Tab');
      await page.keyboard.type('28.30329');
      await page.keyboard.press('Enter');
      await page.locator('.live').waitFor();
      await tabTo(page, 'Host (scientific name)');
      await page.keyboard.type('Terminalia buceras');
      await tabTo(page, 'Save crown');
      await page.keyboard.press('Enter');
      await page.locator('#tree-title').getByText('N1', { exact: true }).waitFor();
      await page.waitForSelector('.rating');
      await tabTo(page, 'Rater (initials)');
      await page.keyboard.type('AB');
      await page.keyboard.press('Enter');
      for (const key of ['6', 'c', 'g', 'g', 'g', 'Enter']) await page.keyboard.press(key);
      await page.locator('.notice').getByText('The rating of N1 is saved').waitFor();
      await tabTo(page, 'Crowns (GeoJSON)');
      const [crowns] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      const { features } = JSON.parse(readFileSync(await crowns.path(), 'utf8'));
      expect(features.at(-1).properties).toMatchObject({ tree_id: 'N1', host: 'Terminalia buceras', spread_m: 6 });
      await tabTo(page, 'Ratings (CSV)');
      const [ratings] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      expect(
        readFileSync(await ratings.path(), 'utf8')
          .trim()
          .split('\n')
          .at(-1),
      ).toMatch(/^N1,2026-05-20,AB,60,/);
      expect(complaints).toEqual([]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );
});

/** Presses Tab until the named control has the focus; fails when the keyboard cannot get there. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let stop = 0; stop < STOPS_MOST; stop++) {
    await page.keyboard.press('Tab');
    const reached = await page.evaluate((wanted) => {
      const element = document.activeElement;
      if (!element) return false;
      const labels =
        element instanceof HTMLInputElement ? [...(element.labels ?? [])].map((each) => each.textContent) : [];
      const names = [element.getAttribute('aria-label'), element.textContent, ...labels];
      return names.some((each) => each?.trim() === wanted);
    }, name);
    if (reached) return;
  }
  throw new Error(`Tab does not reach “${name}”`);
}
