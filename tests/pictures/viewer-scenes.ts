/** What the guides show of the viewer, and what the picture tests look at. */
import type { Browser, Page } from 'playwright-core';
import { openViewer, toOutlineBench } from '../journeys/viewer-page.ts';

export const WIDTHS = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
] as const;

interface Scene {
  readonly name: string;
  readonly show: (page: Page) => Promise<void>;
}

/** Scenes that follow one another on one page. */
interface Visit {
  readonly colorScheme: 'light' | 'dark';
  readonly scenes: readonly Scene[];
}

export const VISITS: readonly Visit[] = [
  {
    colorScheme: 'light',
    scenes: [
      {
        name: 'plan',
        show: async (page) => {
          await page.getByRole('radio', { name: 'Plan' }).click();
          await page.locator('.planned-block').first().waitFor();
        },
      },
      {
        name: 'weigh',
        show: async (page) => {
          await page.getByRole('radio', { name: 'Weigh' }).click();
          await page.locator('.weights > summary').click();
          await page.locator('.ranking .row-head').first().click();
        },
      },
      {
        name: 'seasons',
        show: async (page) => {
          await page.getByRole('button', { name: 'Whole town' }).click();
          await page.getByRole('button', { name: 'Two seasons' }).click();
          await page.locator('.earlier-map canvas[data-drawn]').waitFor();
        },
      },
      {
        name: 'rate',
        show: async (page) => {
          await page.getByRole('button', { name: 'Two seasons' }).click();
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
          await page.keyboard.press('o');
          await page.locator('.live').waitFor();
        },
      },
    ],
  },
  {
    colorScheme: 'dark',
    scenes: [
      {
        name: 'weigh-es-dark',
        show: async (page) => {
          await page.getByRole('button', { name: 'Settings and help' }).click();
          await page.getByRole('radio', { name: 'Español' }).click();
          await page.keyboard.press('Escape');
          await page.locator('.ranking .row-head').nth(1).click();
        },
      },
    ],
  },
];

/** All scenes at a width, as PNG. */
export async function* picturesOf(browser: Browser, url: string, width: number): AsyncGenerator<[string, Buffer]> {
  const viewport = WIDTHS.find((each) => each.width === width) ?? WIDTHS[0];
  const touch = width < 500 ? { isMobile: true, hasTouch: true } : {};
  for (const { colorScheme, scenes } of VISITS) {
    const { page, context } = await openViewer(browser, url, { viewport, colorScheme, deviceScaleFactor: 1, ...touch });
    for (const { name, show } of scenes) {
      await show(page);
      // Tiles and fonts settle.
      await page.waitForTimeout(4000);
      yield [name, await page.screenshot()];
    }
    await context.close();
  }
}
