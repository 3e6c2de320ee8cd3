/** The viewer's first load stays small: what a phone on a poor line must fetch before there is a ranking on the screen. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const PAGE = resolve(import.meta.dirname, '../../apps/viewer/dist');
/** Compressed, without imagery: promised to the people who use it. */
const MOST_BYTES = 1_200_000;
/** Fetched when imagery, a plan or a report is asked for, never before; codecs that only some images need; and the walk, a page of its own. */
const LATER =
  /^(walk|sample-town|photo-quadrat|highs|plan-maker|plan-bench|chart|calibration-shown|pdf|report|svg-path|sRGB|imagery\.worker|basedecoder|deflate|jpeg|lerc|lzw|packbits|pako|raw|webimage|zstd|decoder)/;

describe.skipIf(!existsSync(join(PAGE, 'index.html')))('the built viewer', () => {
  test('loads less than 1.2 MB compressed before imagery', () => {
    const assets = readdirSync(join(PAGE, 'assets')).filter((name) => !LATER.test(name) && !name.endsWith('.woff'));
    const paths = [join(PAGE, 'index.html'), ...assets.map((name) => join(PAGE, 'assets', name))];
    const bytes = paths.reduce((sum, path) => sum + compressed(path), 0);
    expect(bytes).toBeLessThan(MOST_BYTES);
  });

  test('keeps the whole walk for the time without a network in less than 1.2 MB compressed', () => {
    const files = [...readFileSync(join(PAGE, 'offline.js'), 'utf8').matchAll(/'(\/[^']+\.\w+)'/g)].map(
      ([, file]) => file,
    );
    expect(files).toContain('/walk.html');
    expect(files.some((file) => /\/assets\/maplibre-gl-worker/.test(file))).toBe(true);
    const bytes = files.reduce((sum, file) => sum + compressed(join(PAGE, file)), 0);
    expect(bytes).toBeLessThan(MOST_BYTES);
  });
});

/** Web fonts are compressed already. */
function compressed(path: string): number {
  const bytes = readFileSync(path);
  return path.endsWith('.woff2') ? bytes.length : gzipSync(bytes).length;
}
