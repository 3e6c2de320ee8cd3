/** A phone with the walk on it, in the system's Chromium; and what is measured on its screens. */
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
export async function takeBlocks(page: Page, count: number): Promise<string> {
  await page.locator('.choice').first().waitFor();
  for (let i = 0; i < count; i++) await page.locator('.choice').nth(i).tap();
  const take = page.locator('.screen.blocks .thumb-bar .main');
  await page.waitForFunction(() =>
    /[kM]B/.test(document.querySelector('.screen.blocks .thumb-bar .main')?.textContent ?? ''),
  );
  const size = String(await take.textContent());
  await take.tap();
  await page
    .locator('.pack')
    .nth(count - 1)
    .waitFor();
  return size;
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
