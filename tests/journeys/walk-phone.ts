/** A phone with the walk on it, in the system's Chromium; and what is measured on its screens. */
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { PATIENCE_MS } from './viewer-page.ts';

interface Phone {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly complaints: string[];
}

export async function openPhone(browser: Browser, url: string, width = 390, locale = 'en-US'): Promise<Phone> {
  const context = await browser.newContext({
    viewport: { width, height: 844 },
    isMobile: true,
    hasTouch: true,
    locale,
    reducedMotion: 'reduce',
    acceptDownloads: true,
    permissions: ['geolocation'],
    geolocation: { longitude: -80.0565, latitude: 28.3045, accuracy: 6 },
  });
  context.setDefaultTimeout(PATIENCE_MS);
  return openWalkPage(context, url);
}

/** Another page of the same phone: the app opened again after it was killed. */
export async function openWalkPage(context: BrowserContext, url: string): Promise<Phone> {
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(`${url}/walk.html`);
  await page.locator('.screen.blocks').waitFor();
  return { context, page, complaints };
}

/** Chooses the first blocks and takes them along; answers what their size was said to be. */
export async function takeBlocks(page: Page, count: number, { withImagery = false } = {}): Promise<string> {
  await page.locator('.choice').first().waitFor();
  for (let i = 0; i < count; i++) await page.locator('.choice').nth(i).tap();
  const take = page.locator('.screen.blocks .thumb-bar .main');
  if (withImagery) await page.locator('.check-line').tap();
  await take.filter({ hasText: withImagery ? /about .*[kM]B/ : /[kM]B/ }).waitFor();
  const size = String(await take.textContent());
  await take.tap();
  await page
    .locator('.pack')
    .nth(count - 1)
    .waitFor();
  await take.waitFor({ state: 'detached' });
  return size;
}

/** The sheet of a block that is on the phone, as it is saved from its card. */
export async function sheetOf(page: Page, block: number): Promise<Buffer> {
  const link = page.locator('.pack').nth(block).locator('a[download]');
  const [saved] = await Promise.all([page.waitForEvent('download'), link.tap()]);
  return readFileSync(await saved.path());
}

/** Bytes on the phone, by what they are. */
export async function keptBytes(page: Page): Promise<Readonly<Record<'packs' | 'sheets' | 'imagery', number>>> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((opened) => {
      const asked = indexedDB.open('crownfall-walk');
      asked.onsuccess = () => opened(asked.result);
    });
    const rows: Record<'packs' | 'sheets' | 'tiles', Record<string, unknown>[]> = { packs: [], sheets: [], tiles: [] };
    for (const store of ['packs', 'sheets', 'tiles'] as const) {
      rows[store] = await new Promise((read) => {
        const asked = database.transaction(store).objectStore(store).getAll();
        asked.onsuccess = () => read(asked.result);
      });
    }
    database.close();
    return {
      packs: new TextEncoder().encode(JSON.stringify(rows.packs)).length,
      sheets: rows.sheets.reduce((sum, { pdf }) => sum + (pdf as Blob).size, 0),
      imagery: rows.tiles.reduce((sum, { picture }) => sum + (picture as Blob).size, 0),
    };
  });
}

/** A mark on a photo taken by a finger, near its middle, and dragged to a place: shares of the photo's width and height. */
export async function dragMark(page: Page, mark: number, [x, y]: readonly [number, number]): Promise<void> {
  const touch = await page.context().newCDPSession(page);
  const boxOf = async (selector: string) => {
    const box = await page
      .locator(selector)
      .nth(selector === '.handle' ? mark : 0)
      .boundingBox();
    if (box === null) throw new Error(`${selector} is not on the page`);
    return box;
  };
  const [photo, handle] = [await boxOf('.marking'), await boxOf('.handle')];
  const off = 9;
  const from = { x: handle.x + handle.width / 2 + off, y: handle.y + handle.height / 2 + off };
  const to = { x: photo.x + x * photo.width + off, y: photo.y + y * photo.height + off };
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [from] });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [to] });
  // A finger rests before it is lifted; one lifted in full flight throws the page, and the next tap only stops it.
  await page.waitForTimeout(60);
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [to] });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

/** Until the whole walk is kept for the time without a network. */
export const keptWhole = async (page: Page): Promise<void> => {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise((done) => active?.addEventListener('statechange', done));
  });
};

/** Through the cautions to the first tree of a block. */
export async function startWalking(page: Page, block = 0): Promise<void> {
  await page.locator('.pack .main').nth(block).tap();
  await page.locator('.cautions').waitFor();
  const initials = page.locator('.field input');
  if ((await initials.count()) > 0) await initials.fill('MR');
  await page.locator('.thumb-bar .main').tap();
  await page.locator('.tree-head').waitFor();
}

/** Browned 25 %, nothing falls: by taps alone. */
export async function rateTree(page: Page): Promise<void> {
  await page.locator('.doing').first().tap();
  await page.locator('.stepper').first().locator('.chip').nth(2).tap();
  await page.locator('.screen.rate > .chips').nth(1).locator('.chip').nth(4).tap();
}

export const treeShown = async (page: Page): Promise<string> =>
  String(await page.locator('.tree-head h1').textContent()).split(' ')[0];

/** Buttons, links and fields that a thumb could miss: less than 44 CSS pixels either way (WCAG 2.2, criterion 2.5.5). */
export async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const LEAST = 44;
    const targets = document.querySelectorAll<HTMLElement>('button, a, input, textarea, label:has(input)');
    return [...targets].flatMap((target) => {
      // A box is pressed by its whole label.
      if (target.matches('.spoken-only, label input[type="checkbox"]') || target.closest('[inert]')) return [];
      const { width, height } = target.getBoundingClientRect();
      if (width === 0 || (width >= LEAST - 0.01 && height >= LEAST - 0.01)) return [];
      return [`${target.outerHTML.slice(0, 100)}: ${width.toFixed(1)} × ${height.toFixed(1)}`];
    });
  });
}

/** Texts that do not fit: wider than their box, beyond the screen's edge, or a page that scrolls sideways. */
export async function clippedTexts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const wide = document.documentElement.scrollWidth;
    if (wide > innerWidth) found.push(`the page is ${wide} px wide`);
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const box = node.parentElement;
      if (!box || !node.textContent?.trim() || box.closest('.spoken-only, [inert], .photo-row, [data-empty]')) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const text = range.getBoundingClientRect();
      if (text.width === 0) continue;
      const frame = (box.closest('button, a, .card, .warn, li') ?? box).getBoundingClientRect();
      const isOut = text.left < frame.left - 1 || text.right > frame.right + 1 || text.right > innerWidth + 1;
      const isTall = box.closest('button') && (text.top < frame.top - 1 || text.bottom > frame.bottom + 1);
      if (isOut || isTall) found.push(node.textContent.trim());
    }
    return found;
  });
}
