/**
 * The viewer looks as its guides show it: pictures of the sample town against those in docs/pictures/viewer, with a tolerance for
 * other machines' rounding of letters and lines. When it is meant to look otherwise: `npx tsx scripts/draw-viewer-pictures.ts`.
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from '../journeys/browser.ts';
import { servedSample } from '../journeys/served-sample.ts';
import { PATIENCE_MS } from '../journeys/viewer-page.ts';
import { picturesOf, VISITS } from './viewer-scenes.ts';

const chromium = findChromium();
const PICTURES = resolve(import.meta.dirname, '../../docs/pictures/viewer');
/** A pixel differs when a channel is off by more than this; edges of letters are, by less. */
const CHANNEL = 48;
/** Share of pixels that may differ. A panel that is missing or moved by a line is far more. */
const MOST = 0.02;

describe.skipIf(chromium === undefined)('the viewer looks as the guides show it', () => {
  let url: string;
  let browser: Browser;
  let judge: Page;

  beforeAll(async () => {
    [url, browser] = await Promise.all([servedSample(), launch(chromium as string)]);
    judge = await browser.newPage();
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
  });

  test.each([1440, 390])(
    'at %i pixels',
    async (width) => {
      const shares: Record<string, number> = {};
      for await (const [name, picture] of picturesOf(browser, url, width)) {
        const path = resolve(PICTURES, `${name}-${width}.png`);
        shares[name] = existsSync(path) ? await differingShare(judge, picture, readFileSync(path)) : 1;
      }
      expect(Object.entries(shares).filter(([, share]) => !(share < MOST))).toEqual([]);
      expect(Object.keys(shares).length).toBe(VISITS.flatMap(({ scenes }) => scenes).length);
    },
    2 * PATIENCE_MS,
  );

  test('a picture with a missing panel would be noticed', async () => {
    const whole = readFileSync(resolve(PICTURES, 'weigh-1440.png'));
    const other = readFileSync(resolve(PICTURES, 'outline-1440.png'));
    expect(await differingShare(judge, whole, other)).toBeGreaterThan(MOST);
  });
});

/** 1 when the sizes differ. */
function differingShare(page: Page, a: Buffer, b: Buffer): Promise<number> {
  const texts = [a, b].map((picture) => picture.toString('base64'));
  return page.evaluate(
    async ({ texts, channel }) => {
      const [one, two] = await Promise.all(
        texts.map(async (text) => {
          const image = new Image();
          image.src = `data:image/png;base64,${text}`;
          await image.decode();
          const pen = new OffscreenCanvas(image.width, image.height).getContext(
            '2d',
          ) as OffscreenCanvasRenderingContext2D;
          pen.drawImage(image, 0, 0);
          return pen.getImageData(0, 0, image.width, image.height);
        }),
      );
      if (one.width !== two.width || one.height !== two.height) return 1;
      let differing = 0;
      for (let i = 0; i < one.data.length; i += 4) {
        const off = [0, 1, 2].some((c) => Math.abs(one.data[i + c] - two.data[i + c]) > channel);
        if (off) differing++;
      }
      return differing / (one.width * one.height);
    },
    { texts, channel: CHANNEL },
  );
}
