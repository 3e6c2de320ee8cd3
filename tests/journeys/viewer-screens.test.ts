/**
 * Every screen of the viewer judged by axe-core, in either language and either theme: names hang on the language, contrast on the
 * theme. And how much the page weighs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { ROOT } from './crownfall-process.ts';
import { servedSample } from './served-sample.ts';
import { openViewer, PATIENCE_MS, seriousFaults } from './viewer-page.ts';

const chromium = findChromium();
const WORDS = {
  'en-US': {
    settings: 'Settings and help',
    keys: 'Keys',
    imagery: 'Imagery',
    seasons: 'Two seasons',
    charts: 'Charts',
    cancel: 'Cancel',
  },
  'es-ES': {
    settings: 'Ajustes y ayuda',
    keys: 'Teclas',
    imagery: 'Imagen aérea',
    seasons: 'Dos temporadas',
    charts: 'Gráficos',
    cancel: 'Cancelar',
  },
} as const;

const BROKEN = {
  name: 'project.json',
  mimeType: 'application/json',
  buffer: Buffer.from(
    '{"title":"No layers","season":2026,"layers":{"crowns":"crowns.geojson","pavement":"pavement.geojson"}}',
  ),
};

describe.skipIf(chromium === undefined)('every screen', () => {
  let url: string;
  let browser: Browser;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test.each([
    ['en-US', 'light'],
    ['es-ES', 'dark'],
  ] as const)(
    'in %s, %s: no serious accessibility fault',
    async (locale, colorScheme) => {
      const words = WORDS[locale];
      const { page, context, asked } = await openViewer(browser, url, { locale, colorScheme, tour: true });
      if (colorScheme === 'light') expectLight(asked);
      const faults: Record<string, string[]> = {};
      const judge = async (screen: string): Promise<void> => {
        faults[screen] = await seriousFaults(page);
      };
      await judge('tour');
      await page.locator('.tour .quiet').click();
      for (const summary of await page.locator('.panel details > summary').all()) await summary.click();
      await page.locator('.ranking .row-head').first().click();
      await judge('weigh');
      await page.getByRole('button', { name: words.settings }).click();
      await judge('settings');
      await page.getByRole('button', { name: words.keys }).click();
      await judge('help');
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: words.imagery, exact: true }).click();
      await judge('imagery');
      await page.getByRole('button', { name: words.charts, exact: true }).click();
      await page.locator('.chart').nth(1).waitFor();
      await judge('charts');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: words.seasons }).click();
      await page.locator('.earlier-map canvas').waitFor();
      await judge('two seasons');
      await bench(page, 1);
      await page.waitForSelector('.tools');
      await page.keyboard.press('n');
      await page.waitForSelector('.rating');
      await judge('rating');
      await page.keyboard.press('o');
      await page.waitForSelector('.sketch');
      await judge('outline');
      for (const tool of [0, 1, 2, 3]) {
        await page.getByRole('button', { name: words.cancel }).click();
        await page.locator('.tool').nth(tool).click();
        await page.locator('.coordinates summary').click();
        await judge(`drawing tool ${tool}`);
      }
      await page.goto(`${url}/#bench=plan`);
      await page.reload();
      await page.locator('.plan-outcome').waitFor();
      await page.locator('.planned-block summary').first().click();
      await page.locator('.conditions summary').click();
      await judge('plan');
      // A project whose layers are missing is not drawn but explained.
      await page.locator('input[type=file][multiple]').setInputFiles(BROKEN);
      await page.locator('.stopping').waitFor();
      await judge('stopped');
      expect(faults).toEqual(Object.fromEntries(Object.keys(faults).map((screen) => [screen, []])));
      await context.close();
    },
    2 * PATIENCE_MS,
  );
});

/** What a page asks for first is less than 1.2 MB compressed, imagery and the solver aside. */
function expectLight(asked: readonly string[]): void {
  const files = asked.filter((url) => /\/assets\//.test(url)).map((url) => new URL(url).pathname.slice(1));
  const weights = [...new Set(files)].map((file) => {
    const bytes = readFileSync(resolve(ROOT, 'apps/viewer/dist', file));
    return [file, /\.woff2?$/.test(file) ? bytes.length : gzipSync(bytes).length] as const;
  });
  const total = weights.reduce((sum, [, bytes]) => sum + bytes, 0);
  expect(weights.length).toBeGreaterThan(4);
  expect(total, weights.map((each) => each.join(' ')).join('\n')).toBeLessThan(1.2e6);
  // The solver is there, but is not among them.
  expect(readdirSync(resolve(ROOT, 'apps/viewer/dist/assets')).some((file) => /highs.*\.wasm$/.test(file))).toBe(true);
  expect(files.filter((file) => /highs/.test(file))).toEqual([]);
}

const bench = (page: Page, index: number): Promise<void> => page.locator('.benches [role="radio"]').nth(index).click();
