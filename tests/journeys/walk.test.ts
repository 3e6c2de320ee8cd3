/** The walk on a phone: blocks taken along, the network gone, the app killed, the line cut; then everything is in the store once. */
import { cpSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Visit } from '@crownfall/exchange';
import { readProject } from '@crownfall/exchange/node';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rgbPng } from '../../apps/cli/src/jobs/sheet/rgb-png.ts';
import { type MadePhoto, madePhoto, photoRecipe } from '../../packages/imagery/src/quadrat/made-photo.test-data.ts';
import { packedProject } from '../cases/server-running.ts';
import { findChromium, launch } from './browser.ts';
import { SAMPLE, type Served, serve } from './crownfall-process.ts';
import { PATIENCE_MS, seriousFaults } from './viewer-page.ts';
import {
  clippedTexts,
  dragMark,
  keptBytes,
  keptWhole,
  openPhone,
  openWalkPage,
  rateTree,
  sheetOf,
  smallTargets,
  startWalking,
  takeBlocks,
  treeShown,
} from './walk-phone.ts';

const chromium = findChromium();

describe.skipIf(chromium === undefined)('the walk', () => {
  let served: Served;
  let browser: Browser;
  /** Concrete in even light, a third stained, a frame of half a metre with clean ground beside it. */
  const made = madePhoto(
    photoRecipe(7, {
      ...({ surface: 'concrete', light: 'even', stained: 0.33, tilt: 15, width: 480, height: 640 } as const),
      ...{ sideM: 0.5, patchM: [-0.32, 0.1, -0.06, 0.4] },
    }),
  );

  beforeAll(async () => {
    [served, browser] = await Promise.all([picturedProject().then(serve), launch(chromium as string)]);
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
      const address = `${served.url}/api/sheets/B04?paper=a4&language=en&units=metric`;
      const told = Number((await fetch(address, { method: 'HEAD' })).headers.get('content-length'));
      await context.setOffline(true);
      const sheet = await sheetOf(page, 0);
      expect([sheet.subarray(0, 5).toString(), sheet.length]).toEqual(['%PDF-', told]);
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
      const told = await takeBlocks(page, 1, { withImagery: true });
      const size = Number(/about ([\d.,]+)\skB/.exec(told)?.[1].replace(',', ''));
      const kept = await keptBytes(page);
      expect(kept.imagery).toBeGreaterThan(100_000);
      // Imagery is told by a few tiles of its many.
      expect((size * 1000) / (kept.packs + kept.sheets + kept.imagery)).toBeCloseTo(1, 0.5);
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
        // The line is cut between the blocks and their sheets: the blocks go along without.
        if (locale === 'es-ES') await context.route('**/api/sheets/**', (route) => route.abort('connectionreset'));
        await takeBlocks(page, 2);
        if (locale === 'es-ES') expect(await page.locator('.screen > .warn').textContent()).toContain('Faltan 2 hojas');
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
          if (screen === 'quadrat') await lookAtPhoto(page, made, () => look('photo'));
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

/** A store with the sample town, its picture beside it. */
async function picturedProject(): Promise<string> {
  const project = await packedProject(SAMPLE);
  const [picture] = (await readProject(SAMPLE)).imagery;
  cpSync(join(SAMPLE, picture), join(dirname(project), picture));
  return project;
}

/**
 * A photo of a frame is marked, first with a patch amid the stain, which is refused in words, then with a clean one. The photo
 * is made, its stained share counted when it was made.
 */
async function lookAtPhoto(page: Page, made: MadePhoto, look: () => Promise<void>): Promise<void> {
  const { photo, frame, cleanPatch, truth } = made;
  const place = ([x, y]: readonly [number, number]) => [x / photo.width, y / photo.height] as const;
  const middleOf = (ring: readonly (readonly [number, number])[]) =>
    place([0, 1].map((k) => ring.reduce((sum, at) => sum + at[k], 0) / ring.length) as [number, number]);
  await page.locator('.chips').nth(1).locator('.chip').nth(1).tap();
  const png = Buffer.from(rgbPng(Uint8Array.from(photo.rgba.filter((_, i) => i % 4 < 3)), photo.width, photo.height));
  await page.locator('main input[type=file]').setInputFiles({ name: 'frame.png', mimeType: 'image/png', buffer: png });
  await page.locator('.marking img').waitFor();
  for (const [i, corner] of frame.corners.entries()) await dragMark(page, i, place(corner));
  await dragMark(page, 4, middleOf(frame.corners));
  await page.locator('.photo-screen .main').tap();
  await page.locator('.photo-screen .warn').waitFor();
  expect(await page.locator('.photo-screen .warn').textContent()).toMatch(/clean patch is not|parte limpia no es/);
  await look();
  await dragMark(page, 4, middleOf(cleanPatch));
  await page.locator('.photo-screen .main').tap();
  const told = String(await page.locator('.photo-screen .share-found').textContent());
  const [share, from, to] = (told.match(/\d+/g) ?? []).map(Number);
  expect(Math.abs(share - 100 * truth)).toBeLessThan(5);
  expect([from <= 100 * truth, 100 * truth <= to]).toEqual([true, true]);
  await look();
  await page.locator('.photo-screen .main').tap();
  await page.locator('.today').waitFor();
  await page.locator('.doing').nth(2).tap();
}

const waiting = (page: Page, count: number): Promise<void> => page.locator(`.waiting[data-count="${count}"]`).waitFor();
