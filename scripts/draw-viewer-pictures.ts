/**
 * Takes the pictures of the viewer for the guides: the sample town served, each bench at 1440, 1024 and 390 pixels.
 *
 *   npx tsx scripts/draw-viewer-pictures.ts [FOLDER [SCENE …]]     default docs/pictures/viewer, all scenes
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { findChromium, launch } from '../tests/journeys/browser.ts';
import { SAMPLE, serve } from '../tests/journeys/crownfall-process.ts';
import { picturesOf, WIDTHS } from '../tests/pictures/viewer-scenes.ts';

const [given = 'docs/pictures/viewer', ...wanted] = process.argv.slice(2);
const folder = resolve(given);
mkdirSync(folder, { recursive: true });
const chromium = findChromium();
if (chromium === undefined) throw new Error('Chromium is needed for the pictures.');
const [served, browser] = await Promise.all([serve(SAMPLE), launch(chromium)]);
for (const { width } of WIDTHS) {
  for await (const [name, picture] of picturesOf(browser, served.url, width)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    writeFileSync(resolve(folder, `${name}-${width}.png`), picture);
    console.log(`${name}-${width}.png`);
  }
}
await browser.close();
await served.stop();
