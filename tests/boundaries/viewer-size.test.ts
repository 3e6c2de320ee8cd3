/** The viewer's first load stays small: what a phone on a poor line must fetch before there is a ranking on the screen. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';

const PAGE = resolve(import.meta.dirname, '../../apps/viewer/dist');
/** Compressed, without imagery: promised to the people who use it. */
const MOST_BYTES = 1_200_000;
describe.skipIf(!existsSync(join(PAGE, 'index.html')))('the built viewer', () => {
  test('loads less than 1.2 MB compressed before imagery', () => {
    const paths = [join(PAGE, 'index.html'), ...firstAssets().map((name) => join(PAGE, 'assets', name))];
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

/** What the page asks for before anything is done: its own files, two workers, what these import at once, and fonts. */
function firstAssets(): readonly string[] {
  const all = readdirSync(join(PAGE, 'assets'));
  const named = [...readFileSync(join(PAGE, 'index.html'), 'utf8').matchAll(/assets\/([^"']+)/g)].map(
    ([, name]) => name,
  );
  const found = new Set<string>();
  const take = (name: string): void => {
    if (found.has(name)) return;
    found.add(name);
    if (!name.endsWith('.js')) return;
    const code = readFileSync(join(PAGE, 'assets', name), 'utf8');
    for (const [, other] of code.matchAll(/\bimport(?:[\w$\s{},*]*from)?\s*["']\.\/([^"']+)["']/g)) take(other);
  };
  for (const name of named) take(name);
  for (const name of all) if (/^(reckoner\.worker|maplibre-gl-worker).*js$|\.woff2$/.test(name)) take(name);
  expect(found.size).toBeGreaterThan(8);
  return [...found];
}

/** Web fonts are compressed already. */
function compressed(path: string): number {
  const bytes = readFileSync(path);
  return path.endsWith('.woff2') ? bytes.length : gzipSync(bytes).length;
}
