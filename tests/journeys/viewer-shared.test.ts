/**
 * Two people over one store: what one does the other sees at once; what both do to one crown is kept twice until somebody
 * decides; without a network work goes on and is sent later.
 */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packedProject } from '../cases/server-running.ts';
import { findChromium, launch } from './browser.ts';
import { SAMPLE, type Served, serve } from './crownfall-process.ts';
import { openViewer, PATIENCE_MS, seriousFaults, toOutlineBench } from './viewer-page.ts';

const chromium = findChromium();

interface StoredCrown {
  readonly version: number;
  readonly properties: Readonly<Record<string, unknown>>;
}

describe.skipIf(chromium === undefined)('two viewers over one store', () => {
  let served: Served;
  let browser: Browser;

  beforeAll(async () => {
    [served, browser] = await Promise.all([packedProject(SAMPLE).then(serve), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await served?.stop();
  });

  const stored = async (treeId: string): Promise<StoredCrown> => {
    const answer = await fetch(`${served.url}/api/records/crowns?tree_id=${treeId}`);
    const { features } = (await answer.json()) as { features: StoredCrown[] };
    return features[0];
  };

  test(
    'a rating, its undoing and a crown drawn by one are seen by the other, and are in the store',
    async () => {
      const [ana, ben] = await Promise.all([openViewer(browser, served.url), openViewer(browser, served.url)]);
      await Promise.all([saved(ana.page), saved(ben.page)]);
      const before = await totals(ben.page);
      await toOutlineBench(ana.page);
      await ana.page.keyboard.press('n');
      await ana.page.waitForSelector('.rating');
      const treeId = String(await ana.page.locator('#tree-title').textContent());
      await ana.page.getByLabel('Rater (initials)').fill('AN');
      await ana.page.keyboard.press('Enter');
      for (const key of ['9', 'c', 'g', 'g', 'g', 'Enter']) await ana.page.keyboard.press(key);
      await saved(ana.page);
      await expect.poll(() => totals(ben.page), { timeout: PATIENCE_MS }).not.toEqual(before);
      await expect.poll(() => totals(ana.page)).toEqual(await totals(ben.page));
      const rated = (await (await fetch(`${served.url}/api/records/ratings?tree_id=${treeId}`)).json()) as {
        features: StoredCrown[];
      };
      expect(rated.features.at(-1)?.properties).toMatchObject({ browned_pct: 90, rater: 'AN', cause: 'frass' });
      // Undone after a reload, it goes from the store and from the other's screen.
      await ana.page.reload();
      await saved(ana.page);
      await ana.page.locator('h1').click();
      await ana.page.keyboard.press('Control+z');
      await expect.poll(() => totals(ben.page), { timeout: PATIENCE_MS }).toEqual(before);
      // What was found on a visit counts on both screens too.
      await sendVisit(served.url, treeId);
      await expect.poll(() => totals(ben.page), { timeout: PATIENCE_MS }).not.toEqual(before);
      await expect
        .poll(async () => (await totals(ana.page)) === (await totals(ben.page)), { timeout: PATIENCE_MS })
        .toBe(true);
      expect(ana.complaints).toEqual([]);
      expect(ben.complaints).toEqual([]);
      await Promise.all([ana.context.close(), ben.context.close()]);
    },
    3 * PATIENCE_MS,
  );

  test(
    'two who change one crown: both versions are shown, and one is chosen',
    async () => {
      const [ana, ben] = await Promise.all([
        openViewer(browser, `${served.url}/#bench=outline&tree=T0021`),
        openViewer(browser, `${served.url}/#bench=outline&tree=T0021`),
      ]);
      for (const { page } of [ana, ben]) {
        await saved(page);
        await page.getByRole('button', { name: 'Correct outline' }).click();
        await page.locator('.live').waitFor();
      }
      await hostSaved(ana.page, 'Quercus first');
      const hostStored = async (): Promise<unknown> => (await stored('T0021')).properties.host;
      await expect.poll(hostStored, { timeout: PATIENCE_MS }).toBe('Quercus first');
      const first = await stored('T0021');
      await hostSaved(ben.page, 'Quercus second');
      // Nothing was overwritten; both see both.
      for (const { page } of [ana, ben]) {
        const conflict = page.locator('.conflict');
        await conflict.waitFor();
        expect(await conflict.locator('tbody').textContent()).toContain('Quercus first');
        expect(await conflict.locator('tbody').textContent()).toContain('Quercus second');
      }
      expect((await stored('T0021')).version).toBe(first.version);
      expect(await seriousFaults(ben.page)).toEqual([]);
      await ben.page.getByRole('button', { name: 'Take the change' }).click();
      for (const { page } of [ana, ben]) {
        await page.locator('.conflict').waitFor({ state: 'detached' });
        await page.locator('.tree .host').getByText('Quercus second').waitFor();
      }
      expect((await stored('T0021')).properties.host).toBe('Quercus second');
      await Promise.all([ana.context.close(), ben.context.close()]);
    },
    3 * PATIENCE_MS,
  );

  test(
    'without a network work goes on; it is sent once there is one',
    async () => {
      const { page, context } = await openViewer(browser, `${served.url}/#bench=outline&tree=T0030`);
      await saved(page);
      await context.setOffline(true);
      await page.getByRole('button', { name: 'Correct outline' }).click();
      await page.locator('.live').waitFor();
      await hostSaved(page, 'Quercus offline');
      await page.locator('.sharing-state').getByText('1 change is kept here').waitFor();
      expect((await stored('T0030')).properties.host).not.toBe('Quercus offline');
      await context.setOffline(false);
      await expect
        .poll(async () => (await stored('T0030')).properties.host, { timeout: 60_000 })
        .toBe('Quercus offline');
      await saved(page);
      await context.close();
    },
    2 * PATIENCE_MS,
  );
});

async function sendVisit(url: string, treeId: string): Promise<void> {
  const details = { ratings: [{ browned_pct: 95, cause: 'frass', gall_load: 'heavy' }] };
  const visit = { visitId: crypto.randomUUID(), treeId, visitedOn: '2026-05-20', visitor: 'BE', did: 'rated', details };
  const body = JSON.stringify({ visits: [visit] });
  const sent = await fetch(`${url}/api/visits`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
  });
  expect(sent.status).toBe(200);
}

/** All changes are with the project, and news are followed. */
async function saved(page: Page): Promise<void> {
  await page.locator('.sharing-state').getByText('every change is saved').waitFor();
  await page.waitForFunction(() => document.querySelector('.editing-state progress') === null);
}

const totals = async (page: Page): Promise<string | null> => {
  const chosen = await page.getByRole('radio', { name: 'Weigh' }).getAttribute('aria-checked');
  if (chosen !== 'true') await page.getByRole('radio', { name: 'Weigh' }).click();
  return page
    .locator('.masthead .dateline, .masthead .total')
    .allTextContents()
    .then((texts) => texts.join(' '));
};

async function hostSaved(page: Page, host: string): Promise<void> {
  await page.getByLabel('Host (scientific name)').fill(host);
  await page.getByRole('button', { name: 'Save crown' }).click();
  await page.locator('.sketch').waitFor({ state: 'detached' });
}
