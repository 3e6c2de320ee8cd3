/** The system's Chromium, driven headless. */
import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';

const PLACES = [
  process.env.CROWNFALL_CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * Where Chromium is. Without one the browser tests are skipped on a person's machine, with a message; in CI that would hide a
 * broken viewer, so there it is an error.
 */
export function findChromium(): string | undefined {
  const found = PLACES.find((place) => place !== undefined && existsSync(place));
  if (found === undefined && process.env.CI)
    throw new Error('No Chromium found. Install it, or set CROWNFALL_CHROMIUM.');
  if (found === undefined)
    console.warn('No Chromium found: browser tests are skipped. Install it, or set CROWNFALL_CHROMIUM.');
  return found;
}

/** `--no-sandbox` because tests often run as root in a container; only our own page is ever opened. */
export const launch = (executablePath: string): Promise<Browser> =>
  chromium.launch({ executablePath, args: ['--no-sandbox'] });

/** How many pixels of a screenshot have about the given colour (each channel within `within`). */
export async function countPixels(page: Page, picture: Buffer, colour: string, within = 6): Promise<number> {
  return page.evaluate(
    async ({ data, colour, within }) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const canvas = new OffscreenCanvas(image.width, image.height);
      const pen = canvas.getContext('2d') as OffscreenCanvasRenderingContext2D;
      pen.drawImage(image, 0, 0);
      const pixels = pen.getImageData(0, 0, image.width, image.height).data;
      const wanted = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
      let count = 0;
      for (let i = 0; i < pixels.length; i += 4) {
        if (wanted.every((channel, c) => Math.abs(pixels[i + c] - channel) <= within)) count++;
      }
      return count;
    },
    { data: picture.toString('base64'), colour, within },
  );
}
