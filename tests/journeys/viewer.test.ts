/** The viewer in a real browser over the sample town: it draws, it explains, it asks no other machine for anything. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { countPixels, findChromium, launch } from './browser.ts';
import { servedSample } from './served-sample.ts';
import { type OpenPage, openViewer, PATIENCE_MS } from './viewer-page.ts';

const chromium = findChromium();

/** Colours of the light theme that occur nowhere else on the page: see apps/viewer/src/map. */
const COLOURS = { staining: '#c48647', clean: '#ced2cf', crownLine: '#336144', badge: '#1b2a23' };
/** A drawn layer covers far more pixels than chance. */
const DRAWN_PIXELS = 200;

interface Figures {
  readonly blocks: readonly {
    readonly blockId: string;
    readonly rank: number;
    readonly stainedM2: { readonly value: number };
  }[];
}

describe.skipIf(chromium === undefined)('the viewer', () => {
  let url: string;
  let browser: Browser;
  let figures: Figures;
  /** One page for all tests on a desk: none minds what the others leave open. */
  let desk: OpenPage;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
    figures = (await (await fetch(`${url}/api/assessment`)).json()) as Figures;
    desk = await openViewer(browser, url, { deviceScaleFactor: 1 });
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  const rows = (page: Page) => page.locator('.ranking .row-head');

  test(
    'draws pavement by stained share, crowns and ranks, and asks no other machine',
    async () => {
      const { page, asked, complaints } = desk;
      const picture = await page.locator('.map-holder').screenshot();
      for (const colour of Object.values(COLOURS)) {
        expect(await countPixels(page, picture, colour), colour).toBeGreaterThan(DRAWN_PIXELS);
      }
      const elsewhere = asked.filter((each) => !each.startsWith(url) && !/^(data|blob):/.test(each));
      expect(elsewhere).toEqual([]);
      expect(asked.length).toBeGreaterThan(5);
      expect(complaints).toEqual([]);
    },
    PATIENCE_MS,
  );

  test(
    'lists every block by rank with its square metres, and in feet when asked',
    async () => {
      const { page } = desk;
      expect(await rows(page).count()).toBe(figures.blocks.length);
      const listed = await rows(page).evaluateAll((heads) => heads.map((head) => head.getAttribute('data-block')));
      expect(listed).toEqual(figures.blocks.map((block) => block.blockId));
      const [first] = figures.blocks;
      const figure = rows(page).first().locator('.figure');
      const shown = async (): Promise<number> => Number((await figure.textContent())?.replace(/[^\d.]/g, ''));
      expect(Math.abs((await shown()) - first.stainedM2.value)).toBeLessThanOrEqual(0.5);
      await page.getByRole('button', { name: 'Settings and help' }).click();
      await page.getByRole('radio', { name: 'Square feet' }).click();
      await page.keyboard.press('Escape');
      const squareFeet = await shown();
      // One square foot is 0.09290304 m² exactly (NIST SP 811, appendix B.8).
      expect(Math.abs(squareFeet * 0.09290304 - first.stainedM2.value)).toBeLessThan(0.1);
    },
    PATIENCE_MS,
  );

  test(
    'a block opens by click and by keyboard, explains its rank and is zoomed to',
    async () => {
      const { page } = desk;
      const map = page.locator('.map-holder');
      const before = await map.screenshot();
      await rows(page).first().click();
      expect(await rows(page).first().getAttribute('aria-expanded')).toBe('true');
      expect(await page.locator('.parts tr').count()).toBe(6);
      await page.waitForTimeout(500);
      const chosen = await map.screenshot();
      expect(await countPixels(page, chosen, '#1a634d')).toBeGreaterThan(DRAWN_PIXELS);
      expect(chosen.equals(before)).toBe(false);
      await rows(page).first().focus();
      await page.keyboard.press('ArrowDown');
      await page.keyboard.press('Enter');
      expect(await rows(page).nth(1).getAttribute('aria-expanded')).toBe('true');
      expect(await rows(page).first().getAttribute('aria-expanded')).toBe('false');
    },
    PATIENCE_MS,
  );

  test(
    'a click on the map opens the block under it',
    async () => {
      const { page } = desk;
      const box = await page.locator('.map-holder').boundingBox();
      if (box === null) throw new Error('the map has no place on the page');
      // Crowns take the click first, so a few places are tried; blocks fill the middle of the map.
      for (const [x, y] of [
        [0.5, 0.45],
        [0.47, 0.5],
        [0.55, 0.55],
        [0.4, 0.4],
      ]) {
        await page.mouse.click(box.x + box.width * x, box.y + box.height * y);
        if ((await page.locator('.ranking li.chosen').count()) > 0) break;
      }
      expect(await page.locator('.ranking li.chosen').count()).toBe(1);
    },
    PATIENCE_MS,
  );

  test(
    'on a phone of 390 px a crown is drawn, corrected, saved and rated by fingers alone, with the map in sight',
    async () => {
      const { page } = await openViewer(browser, url, {
        viewport: { width: 390, height: 844 },
        isMobile: true,
        hasTouch: true,
      });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      expect((await page.locator('.map-holder').boundingBox())?.height).toBeGreaterThan(250);
      await rows(page).nth(2).tap();
      expect(await page.locator('.parts').isVisible()).toBe(true);
      await drawByTouch(page);
      await page.getByRole('button', { name: 'Save crown' }).tap();
      await page.locator('#tree-title').getByText('N1', { exact: true }).waitFor();
      await page.getByLabel('Rater (initials)').fill('AB');
      await page.locator('.share input').first().fill('40');
      await page
        .getByRole('group', { name: /^Cause of the stain/ })
        .getByRole('button', { name: 'Fruit' })
        .tap();
      await page.locator('#rating-evidence').fill('fruit below the crown');
      await page.locator('.rating').getByRole('button', { name: /Save/ }).tap();
      await page.locator('.notice').getByText('The rating of N1 is saved').waitFor();
      await page.context().close();
    },
    2 * PATIENCE_MS,
  );
});

/** Four taps about the middle of the map, and one of the points drawn out by a finger: the crown's area follows. */
async function drawByTouch(page: Page): Promise<void> {
  await page.getByRole('radio', { name: 'Outline', exact: true }).tap();
  await page.locator('.tool', { hasText: 'Outline' }).tap();
  const box = await page.locator('.map-holder').boundingBox();
  if (box === null) throw new Error('the map has no place on the page');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const corners = [
    [x - 40, y - 40],
    [x + 40, y - 40],
    [x + 40, y + 40],
    [x - 40, y + 40],
  ] as const;
  // Two taps soon after one another zoom the map.
  for (const corner of corners) {
    await page.touchscreen.tap(...corner);
    await page.waitForTimeout(600);
  }
  expect(await page.locator('.sketch .count').textContent()).toBe('4 points');
  const area = (): Promise<string | null> => page.locator('.live dd').first().textContent();
  await page.locator('.live').waitFor();
  const before = await area();
  const inspector = await page.context().newCDPSession(page);
  const finger = (type: 'touchStart' | 'touchMove' | 'touchEnd', points: { x: number; y: number }[]) =>
    inspector.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  await finger('touchStart', [{ x: x + 40, y: y + 40 }]);
  for (let step = 1; step <= 5; step++) await finger('touchMove', [{ x: x + 40 + 6 * step, y: y + 40 + 6 * step }]);
  await finger('touchEnd', []);
  await expect.poll(area).not.toBe(before);
}
