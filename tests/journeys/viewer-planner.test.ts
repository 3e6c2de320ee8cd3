/**
 * The planner: moves weights and sees the order follow, saves a scenario, filters, exports what is seen. The figures on the
 * screen, of the command line and of the API are the same.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';
import { servedSample } from './served-sample.ts';
import { drawn, openViewer, PATIENCE_MS, seriousFaults } from './viewer-page.ts';

const chromium = findChromium();

describe.skipIf(chromium === undefined)('the planner', () => {
  let url: string;
  let browser: Browser;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test(
    'exports the very digits of the command line and of the API; GDAL opens them; paper gets a map at 300 dots per inch',
    async () => {
      const { page, context } = await openViewer(browser, url);
      await page.locator('.exports summary').click();
      const screen = JSON.parse((await exported(page, 'GeoJSON')).toString());
      const out = join(temporaryFolder(), 'out');
      expect(crownfall(['reckon', SAMPLE, '--out', out, '--quiet']).code).toBe(0);
      const file = JSON.parse(readFileSync(join(out, 'blocks.geojson'), 'utf8'));
      const api = (await (await fetch(`${url}/api/assessment`)).json()) as { blocks: ApiBlock[] };
      // Draws are the command line's own: ranges are compared with the server's, all else with both.
      expect(screen.features.map(withoutRanges)).toEqual(file.features.map(withoutRanges));
      expect(screen.features.map((each: Feature) => each.geometry)).toEqual(
        file.features.map((each: Feature) => each.geometry),
      );
      const digits = (value: number): number => Math.round(value * 1e6) / 1e6;
      expect(screen.features.map(({ properties }: Feature) => properties.stained_m2)).toEqual(
        api.blocks.map(({ stainedM2 }) => digits(stainedM2.value)),
      );
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: 'GeoJSON' }).click(),
      ]);
      const path = join(temporaryFolder(), download.suggestedFilename());
      await download.saveAs(path);
      const gdal = spawnSync('ogrinfo', ['-so', '-al', path], { encoding: 'utf8' });
      if (gdal.error === undefined) {
        expect(gdal.stdout).toContain('Feature Count: 42');
        expect(gdal.stdout).toContain('stained_m2: Real');
      }
      const folder = temporaryFolder();
      writeFileSync(join(folder, 'blocks.gpkg'), await exported(page, 'GeoPackage'));
      const packed = spawnSync('ogrinfo', ['-so', join(folder, 'blocks.gpkg'), 'blocks'], { encoding: 'utf8' });
      if (packed.error === undefined) {
        expect(packed.stderr).toBe('');
        expect(packed.stdout).toContain('Feature Count: 42');
        expect(packed.stdout).toContain('stained_points: Real');
      }
      const png = await exported(page, 'Map as PNG, 300 dpi');
      // PNG specification, 11.2.1 and 11.3.4.3: width and height in IHDR, pixels per metre in pHYs. 300/0.0254 = 11811.
      expect(png.readUInt32BE(16)).toBeGreaterThan(3000);
      const physical = png.indexOf('pHYs');
      expect(png.readUInt32BE(physical + 4)).toBe(11811);
      await context.close();
    },
    2 * PATIENCE_MS,
  );

  test(
    'weights move by keyboard and the ranking is that of a full run with them; a scenario outlives a reload and is compared side by side',
    async () => {
      const { page, context, complaints } = await openViewer(browser, url);
      const before = await listed(page);
      await page.locator('.weights > summary').click();
      await page.getByRole('slider', { name: 'Weight of Stain in plain sight' }).focus();
      await page.keyboard.press('Home');
      await page.getByRole('slider', { name: 'Weight of Bloom' }).focus();
      await page.keyboard.press('End');
      await expect.poll(() => listed(page)).not.toEqual(before);
      const after = await listed(page);
      await page.locator('.exports summary').click();
      const screen = JSON.parse((await exported(page, 'GeoJSON')).toString()).features as Feature[];
      expect(screen.map(({ properties }) => properties.block_id)).toEqual(after);
      const full = rankedByCommandLine({ ...WEIGHTS, stained: 0, bloom_window: 1 });
      expect(screen.map(withoutRanges)).toEqual(full.map(withoutRanges));
      // Undo brings the project's own weights back; so does the button.
      await page.locator('h1').click();
      await page.keyboard.press('Control+z');
      await page.keyboard.press('Control+z');
      await expect.poll(() => listed(page)).toEqual(before);
      await page.getByRole('slider', { name: 'Weight of Open complaints' }).focus();
      await page.keyboard.press('End');
      await page.locator('.scenarios > summary').click();
      await page.getByLabel('Name of the scenario').fill('Complaints first');
      await page.keyboard.press('Enter');
      await page.getByRole('button', { name: 'Use: Complaints first' }).waitFor();
      await page.reload();
      await drawn(page);
      await page.locator('.scenarios > summary').click();
      await page.getByRole('button', { name: 'Compare side by side' }).click();
      const table = page.getByRole('dialog').locator('table');
      expect(await table.locator('thead th').allTextContents()).toEqual(['Block', 'Project’s own', 'Complaints first']);
      expect(await table.locator('.moved').count()).toBeGreaterThan(0);
      expect(await seriousFaults(page)).toEqual([]);
      expect(complaints).toEqual([]);
      await context.close();
    },
    2 * PATIENCE_MS,
  );

  test(
    'filters list and export alike; the link to it shows the same to somebody else, in Spanish, in feet, in the dark',
    async () => {
      const { page, context } = await openViewer(browser, url);
      await page.getByRole('combobox', { name: 'Bloom' }).selectOption('closed');
      await page.locator('.ranking .row-head').first().click();
      const seen = await listed(page);
      expect(seen.length).toBeGreaterThan(0);
      expect(seen.length).toBeLessThan(42);
      await page.locator('.exports summary').click();
      const csv = (await exported(page, 'CSV table')).toString().trim().split('\r\n');
      expect(csv.length - 1).toBe(seen.length);
      expect(csv[0].split(',').slice(0, 4)).toEqual(['block_id', 'name', 'rank', 'score']);
      const link = page.url();
      const other = await openViewer(browser, link);
      expect(await listed(other.page)).toEqual(seen);
      expect(await other.page.locator('.ranking li.chosen .row-head').getAttribute('data-block')).toBe(seen[0]);
      await inSpanish(other.page);
      await other.context.close();
      await context.close();
    },
    2 * PATIENCE_MS,
  );
});

interface Feature {
  readonly properties: Record<string, unknown>;
  readonly geometry: unknown;
}

interface ApiBlock {
  readonly stainedM2: { readonly value: number };
}

/** Of the sample's settings: the defaults. */
const WEIGHTS = {
  stained: 0.45,
  foot_traffic: 0.15,
  complaints: 0.15,
  worst_severity: 0.1,
  sensitive_sites: 0.1,
  bloom_window: 0.05,
};

function withoutRanges({ properties }: Feature): Record<string, unknown> {
  const entries = Object.entries(properties).filter(([name]) => !/_(lo|hi)\d\d_m2$|^top_share$/.test(name));
  return Object.fromEntries(entries);
}

/** Somebody else’s page, as they like it. */
async function inSpanish(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Settings and help' }).click();
  await page.getByRole('radio', { name: 'Español' }).click();
  await page.getByRole('radio', { name: 'Pies cuadrados' }).click();
  await page.getByRole('radio', { name: 'Oscuro' }).click();
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByText('Manzanas por orden de necesidad').waitFor();
  expect(await page.locator('html').getAttribute('lang')).toBe('es');
  expect(await page.locator('.total').textContent()).toContain('ft²');
  await page.locator('.ranking .row-head').first().click();
  await page.locator('.weights > summary').click();
  await page.locator('.scenarios > summary').click();
  await page.locator('.exports summary').click();
  await page.locator('.findings summary').click();
  expect(await seriousFaults(page)).toEqual([]);
}

const listed = (page: Page): Promise<(string | null)[]> =>
  page.locator('.ranking .row-head').evaluateAll((heads) => heads.map((head) => head.getAttribute('data-block')));

async function exported(page: Page, button: string): Promise<Buffer> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button, exact: true }).click(),
  ]);
  return readFileSync(await download.path());
}

/** The sample town with other weights in its project.json, reckoned by the command line. */
function rankedByCommandLine(weights: typeof WEIGHTS): Feature[] {
  const folder = temporaryFolder();
  cpSync(SAMPLE, folder, { recursive: true });
  const path = join(folder, 'project.json');
  const project = JSON.parse(readFileSync(path, 'utf8'));
  project.settings.priority = { weights };
  writeFileSync(path, JSON.stringify(project));
  const run = crownfall(['reckon', folder, '--out', join(folder, 'out'), '--quiet']);
  if (run.code !== 0) throw new Error(run.stderr);
  return JSON.parse(readFileSync(join(folder, 'out/blocks.geojson'), 'utf8')).features;
}
