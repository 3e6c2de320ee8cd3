/**
 * The planner plans the season in the browser: prices and a budget in, actions out; what forbids a treatment is said; the figures
 * are those of the same plan made outside the browser.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isStopped, planWork, reckonProject } from '@crownfall/assessment';
import { readAddresses, readTemperatures } from '@crownfall/exchange';
import { readProject } from '@crownfall/exchange/node';
import { highsSolver, type WorkPlan } from '@crownfall/priority';
import { describeReason, rotationReminders, treatmentCautions } from '@crownfall/survey';
import loadHighs from 'highs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { SAMPLE } from './crownfall-process.ts';
import { servedSample } from './served-sample.ts';
import { openViewer, PATIENCE_MS, seriousFaults } from './viewer-page.ts';

const chromium = findChromium();
const BUDGET = 4000;
describe.skipIf(chromium === undefined)('the season’s plan in the viewer', () => {
  let url: string;
  let browser: Browser;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test(
    'a budget gives the plan that is made outside the browser; a reload keeps it',
    async () => {
      const { page, context, complaints } = await openViewer(browser, `${url}/#bench=plan`);
      expect(await page.locator('.cautions li').allTextContents()).toEqual(treatmentCautions('en'));
      await page.locator('.plan-outcome').waitFor();
      await page.getByLabel('Budget', { exact: true }).fill(String(BUDGET));
      await page.keyboard.press('Tab');
      const plan = await planOutside();
      const says = `It costs ${grouped(plan.cost)}\u00a0${plan.currency}`;
      await page.locator('.plan-outcome').getByText(says).waitFor();
      const avoided = plan.avoidedM2.value;
      expect(await page.locator('.plan-outcome .total strong').textContent()).toBe(
        `${grouped(avoided, avoided < 99.95 ? 1 : 0)}\u00a0m²`,
      );
      const done = plan.blocks.filter(({ action }) => action !== 'leave');
      expect(await page.locator('.planned-block:not([data-action="leave"])').count()).toBe(done.length);
      expect(plan.cost).toBeLessThanOrEqual(BUDGET);
      // A treatment is forbidden, and every reason is on the screen.
      await page.locator('.planned-block summary').first().click();
      const [block] = done;
      const forbidden = block.offers.find(({ action }) => action === 'treat')?.forbidden ?? [];
      expect(forbidden.length).toBeGreaterThan(0);
      const shown = await page.locator('.planned-block').first().locator('.reasons').allTextContents();
      for (const reason of forbidden) expect(shown.join(' ')).toContain(describeReason(reason, 'en').what);
      // What stands beside the plan: closing soon ahead of over; floors, groups, addresses, weights, trees to rate.
      const groups = await page.locator('.bloom-calendar li .when').allTextContents();
      expect(groups[0]).toContain('closing soon');
      const treated = plan.blocks.filter(({ action }) => action === 'treat' || action === 'treat_and_clean');
      expect(treated.length).toBeGreaterThan(0);
      await page.locator('.before-treating').getByText(`${plan.notices.length} addresses within 20\u00a0m`).waitFor();
      expect(await page.locator('.before-treating li').allTextContents()).toEqual(
        rotationReminders(plan.rotation, 'en'),
      );
      const { worthRating, districts } = plan;
      expect(await page.locator('.worth li button').allTextContents()).toEqual(
        worthRating.slice(0, 5).map(({ treeId }) => treeId),
      );
      expect(await page.locator('.plan-outcome .figures-table tbody th').allTextContents()).toEqual(
        districts.map(({ name }) => name),
      );
      expect(await page.locator('.what-could-change tbody tr').count()).toBe(6);
      // A treated block's row tells each tree's distance to water, and the map draws it.
      const row = page.locator('.planned-block', { hasText: treated[0].name ?? treated[0].blockId }).first();
      await row.locator('summary').click();
      const own = plan.treated.filter(({ blockId }) => blockId === treated[0].blockId);
      for (const { treeId } of own) await row.locator('.tree-water').getByText(treeId, { exact: true }).waitFor();
      expect(await page.locator('.legend .water-keep').count()).toBe(1);
      const files = {
        'notices.csv': page.locator('.before-treating button'),
        'plan.csv': page.getByRole('button', { name: 'Table (CSV)' }),
        'plan.geojson': page.getByRole('button', { name: 'Map (GeoJSON)' }),
        'bloom.ics': page.getByRole('button', { name: 'Calendar (iCalendar)' }),
      };
      for (const [name, button] of Object.entries(files)) {
        const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
        expect(download.suggestedFilename()).toBe(name);
        const text = readFileSync(await download.path(), 'utf8').replace(/\r\n /g, '');
        expect(text).toContain('Only a licensed applicator treats.');
      }
      expect(await seriousFaults(page)).toEqual([]);
      await page.reload();
      await page.locator('.plan-outcome').getByText(says).waitFor();
      expect(complaints).toEqual([]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );
});

async function planOutside(): Promise<WorkPlan> {
  const input = await readProject(SAMPLE);
  const reckoned = reckonProject(input);
  if (isStopped(reckoned)) throw new Error('the sample town stopped');
  const plan = planWork(reckoned, {
    solve: highsSolver(await loadHighs()),
    draws: 200,
    seed: 1,
    temperatures: await readTemperatures(sampleFile('temperatures.csv'), 'temperatures.csv'),
    addresses: readAddresses(sampleFile('addresses.geojson'), 'addresses.geojson'),
    limits: { budget: BUDGET },
  });
  if (!plan.feasible) throw new Error('the plan is not feasible');
  return plan;
}

const sampleFile = (name: string): Uint8Array => readFileSync(join(SAMPLE, name));

const grouped = (value: number, decimals = 0): string =>
  value.toLocaleString('en-US', { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
