/**
 * Outlines proposed in the viewer, in its own worker: `npx tsx tests/benchmarks/viewer-outlines.ts [trees]` (default 60). Unrated
 * trees of the sample town that lie in its picture (0.25 m) are asked for one after the other by key. Told are, of each: how long
 * the outline was reckoned once the pixels of its 30 m were there, and beside it the whole way from the key to the proposal in the
 * page. The built viewer is needed.
 */
import type { Page } from 'playwright-core';
import { quantile } from '../cases/demo-picture.ts';
import { findChromium, launch } from '../journeys/browser.ts';
import { SAMPLE, serve } from '../journeys/crownfall-process.ts';
import { openViewer } from '../journeys/viewer-page.ts';

const [trees = 60] = process.argv.slice(2).map(Number);
const chromium = findChromium();
if (chromium === undefined) throw new Error('Chromium is needed for this benchmark.');
const [served, browser] = await Promise.all([serve(SAMPLE), launch(chromium)]);
try {
  const { page } = await openViewer(browser, `${served.url}/#bench=outline&tree=T0097`);
  await page.waitForSelector('.rating');
  // The first one also opens the picture and finds out what counts as leaves in it.
  console.log(`first, the picture opened and its leaves found: ${(await proposed(page)).wholeMs.toFixed(0)} ms`);
  const all: { readonly reckonedMs: number; readonly wholeMs: number }[] = [];
  while (all.length < trees) {
    await page.keyboard.press('n');
    await page.waitForSelector('.rating');
    const one = await proposed(page);
    if (one.reckonedMs > 0) all.push(one);
  }
  console.log(`reckoned, ${trees} trees: ${told(all.map(({ reckonedMs }) => reckonedMs))} ms`);
  console.log(`from key to proposal: ${told(all.map(({ wholeMs }) => wholeMs))} ms`);
} finally {
  await browser.close();
  await served.stop();
}

/** Asks for the chosen tree's outline and leaves it again. A tree outside the picture is reckoned in no time. */
async function proposed(page: Page): Promise<{ readonly reckonedMs: number; readonly wholeMs: number }> {
  const from = await page.evaluate(() => performance.now());
  await page.keyboard.press('t');
  const mark = await page.waitForFunction((since) => {
    const last = performance.getEntriesByName('outline-proposed').at(-1) as PerformanceMark | undefined;
    return last && last.startTime > since ? { at: last.startTime, ms: last.detail as number } : null;
  }, from);
  const { at, ms } = (await mark.jsonValue()) as { at: number; ms: number };
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.waitForSelector('.rating');
  return { reckonedMs: ms, wholeMs: at - from };
}

function told(times: readonly number[]): string {
  const [least, median, most95, most] = [0, 0.5, 0.95, 1].map((share) => quantile(times, Math.max(share, 1e-9)));
  const [a, b, c, d] = [least, median, most95, most].map((ms) => ms.toFixed(0));
  return `least ${a}, median ${b}, 95th percentile ${c}, greatest ${d}`;
}
