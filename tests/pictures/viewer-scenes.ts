/** What the guides show of the viewer, and what the picture tests look at. */
import type { Browser, Page } from 'playwright-core';
import { openViewer, toOutlineBench } from '../journeys/viewer-page.ts';

export const WIDTHS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const;

export interface Scene {
  readonly name: string;
  readonly colorScheme?: 'dark';
  readonly show: (page: Page) => Promise<void>;
}

export const SCENES: readonly Scene[] = [
  {
    name: 'weigh',
    show: async (page) => {
      await page.locator('.weights > summary').click();
      await page.locator('.ranking .row-head').first().click();
    },
  },
  {
    name: 'weigh-es-dark',
    colorScheme: 'dark',
    show: async (page) => {
      await page.getByRole('button', { name: 'Settings and help' }).click();
      await page.getByRole('radio', { name: 'Español' }).click();
      await page.keyboard.press('Escape');
      await page.locator('.ranking .row-head').nth(1).click();
    },
  },
  {
    name: 'plan',
    show: async (page) => {
      await page.getByRole('radio', { name: 'Plan' }).click();
      await page.locator('.planned-block').first().waitFor();
    },
  },
  {
    name: 'seasons',
    show: async (page) => {
      await page.getByRole('button', { name: 'Two seasons' }).click();
      await page.locator('.earlier-map canvas[data-drawn]').waitFor();
    },
  },
  {
    name: 'rate',
    show: async (page) => {
      await toOutlineBench(page);
      await page.getByRole('button', { name: 'Imagery' }).click();
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      for (const key of ['4', '5', 'c', 'g', 'g', 'g']) await page.keyboard.press(key);
    },
  },
  {
    name: 'outline',
    show: async (page) => {
      await toOutlineBench(page);
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await page.keyboard.press('o');
      await page.locator('.live').waitFor();
    },
  },
];

/** A scene at a width, as PNG. */
export async function pictureOf(browser: Browser, url: string, scene: Scene, width: number): Promise<Buffer> {
  const viewport = WIDTHS.find((each) => each.width === width) ?? WIDTHS[0];
  const touch = width < 500 ? { isMobile: true, hasTouch: true } : {};
  const { colorScheme = 'light' } = scene;
  const { page, context } = await openViewer(browser, url, { viewport, colorScheme, deviceScaleFactor: 1, ...touch });
  await scene.show(page);
  // Tiles and fonts settle.
  await page.waitForTimeout(4000);
  const picture = await page.screenshot();
  await context.close();
  return picture;
}
