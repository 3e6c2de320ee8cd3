/** The walk on a phone: blocks taken along, the network gone, the app killed, the line cut; then everything is in the store once. */
import type { Visit } from '@crownfall/exchange';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { packedProject } from '../cases/server-running.ts';
import { findChromium, launch } from './browser.ts';
import { SAMPLE, type Served, serve } from './crownfall-process.ts';
import { PATIENCE_MS, seriousFaults } from './viewer-page.ts';
import {
  clippedTexts,
  keptWhole,
  openPhone,
  openWalkPage,
  rateTree,
  smallTargets,
  startWalking,
  takeBlocks,
  treeShown,
} from './walk-phone.ts';

const chromium = findChromium();

describe.skipIf(chromium === undefined)('the walk', () => {
  let served: Served;
  let browser: Browser;

  beforeAll(async () => {
    [served, browser] = await Promise.all([packedProject(SAMPLE).then(serve), launch(chromium as string)]);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await served?.stop();
  });

  const stored = async (): Promise<readonly Visit[]> =>
    ((await (await fetch(`${served.url}/api/visits`)).json()) as { visits: Visit[] }).visits;

  test(
    'without a network, killed and opened again: nothing noted is lost, and each visit is sent once',
    async () => {
      const before = (await stored()).length;
      const { context, page, complaints } = await openPhone(browser, served.url);
      expect(await takeBlocks(page, 2)).toMatch(/2 blocks · [\d.,]+\s[kM]B/);
      await keptWhole(page);
      await context.setOffline(true);
      await startWalking(page);
      const first = await treeShown(page);
      await rateTree(page);
      // Killed in the middle of the rating, and opened again where there is no network.
      await page.close();
      const again = await openWalkPage(context, served.url);
      await again.page.locator('.pack .main').first().tap();
      await again.page.locator('.today').waitFor();
      expect(await treeShown(again.page)).toBe(first);
      expect(await again.page.locator('.today').textContent()).toContain('browned 25');
      await again.page.locator('.thumb-bar .main').tap();
      await waiting(again.page, 1);
      const second = await treeShown(again.page);
      expect(second).not.toBe(first);
      await again.page.locator('.thumb-bar .main').tap();
      await waiting(again.page, 2);
      expect((await stored()).length).toBe(before);
      // The first answer is lost on its way: the server has both visits, the phone does not know it.
      let isLost = false;
      await context.route('**/api/visits', async (route) => {
        if (route.request().method() !== 'POST' || isLost) return route.continue();
        isLost = true;
        await route.fetch();
        await route.abort('connectionreset');
      });
      await context.setOffline(false);
      await expect.poll(async () => (await stored()).length, { timeout: PATIENCE_MS }).toBe(before + 2);
      await again.page.locator('.waiting').tap();
      await again.page.locator('.thumb-bar .main').tap();
      await again.page.getByText('Everything has been sent.').waitFor();
      expect(isLost).toBe(true);
      const sent = (await stored()).slice(before);
      expect(sent.map(({ treeId, visitor, did }) => [treeId, visitor, did])).toEqual([
        [first, 'MR', 'inspected + rated'],
        [second, 'MR', 'inspected'],
      ]);
      expect(sent[0].details?.ratings).toMatchObject([{ browned_pct: 25, cause: 'none', rater: 'MR' }]);
      expect([...complaints, ...again.complaints]).toEqual([]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );

  test(
    'a tree that somebody else visited meanwhile: both versions are shown, both stay in the store',
    async () => {
      const { context, page } = await openPhone(browser, served.url);
      await takeBlocks(page, 1);
      await startWalking(page);
      const treeId = await treeShown(page);
      const other: Visit = {
        visitId: '00000000-0000-4000-8000-00000000a001',
        treeId,
        visitedOn: new Date().toISOString(),
        visitor: 'Other',
        did: 'inspected + rated',
        details: { ratings: [{ browned_pct: 70, cause: 'unknown' }] },
      };
      const sent = await fetch(`${served.url}/api/visits`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ visits: [other] }),
      });
      expect(sent.status).toBe(200);
      await rateTree(page);
      await page.goBack();
      await page.locator('.thumb-bar .main').tap();
      await page.locator('.waiting').tap();
      await page.locator('.thumb-bar .main').tap();
      const versions = page.locator('.versions').filter({ hasText: 'Other' });
      await versions.waitFor();
      expect(await versions.textContent()).toContain('browned 25');
      expect(await versions.textContent()).toContain('browned 70');
      expect(await seriousFaults(page)).toEqual([]);
      const both = (await stored()).filter(
        (visit) => visit.treeId === treeId && visit.visitedOn >= other.visitedOn.slice(0, 10),
      );
      expect(both.filter(({ visitId }) => visitId === other.visitId)).toEqual([other]);
      await context.close();
    },
    3 * PATIENCE_MS,
  );

  for (const [locale, width] of [
    ['en-US', 390],
    ['es-ES', 360],
  ] as const) {
    test(
      `every screen (${locale}, ${width} px): no text clipped, targets of 44 px, no serious fault`,
      async () => {
        const { context, page, complaints } = await openPhone(browser, served.url, width, locale);
        const faults: string[] = [];
        const look = async (screen: string): Promise<void> => {
          const found = [...(await clippedTexts(page)), ...(await smallTargets(page)), ...(await seriousFaults(page))];
          faults.push(...found.map((fault) => `${screen}: ${fault}`));
        };
        await look('blocks');
        await takeBlocks(page, 2);
        await look('packs');
        await page.locator('.pack .main').first().tap();
        await page.locator('.cautions').waitFor();
        await look('cautions');
        await page.goBack();
        await startWalking(page);
        await look('tree');
        const screens = ['rate', 'bloom', 'quadrat', null, 'problem', 'new-tree'];
        for (const [i, screen] of screens.entries()) {
          if (screen === null) continue;
          await page.locator('.doing').nth(i).tap();
          await page
            .locator('.walk')
            .and(page.locator(`[data-screen="${screen}"]`))
            .waitFor();
          if (screen === 'rate') await page.locator('.screen.rate > .chips').nth(1).locator('.chip').first().tap();
          await look(screen);
          await page.goBack();
          await page.locator('.tree-head').waitFor();
        }
        await page.locator('.strip .icon').last().tap();
        await page.locator('.field input').waitFor();
        await look('settings');
        await page.goBack();
        await page.locator('.waiting').tap();
        await look('queue');
        expect(faults).toEqual([]);
        expect(complaints).toEqual([]);
        await context.close();
      },
      3 * PATIENCE_MS,
    );
  }
});

const waiting = (page: Page, count: number): Promise<void> => page.locator(`.waiting[data-count="${count}"]`).waitFor();
