/** Writes into the service worker which files the walk needs, so that one visit is enough to work without a network. */
import { readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import type { Plugin, Rolldown } from 'vite';

const PLACE = '/* files of the walk */';

export const walkShell: Plugin = {
  name: 'walk-shell',
  apply: 'build',
  async writeBundle({ dir }, bundle) {
    const out = resolve(dir ?? 'dist');
    const files = ['/walk.html', '/walk.webmanifest', '/icon.svg', ...shellOf(bundle).map((name) => `/${name}`)];
    const path = join(out, 'offline.js');
    const text = await readFile(path, 'utf8');
    if (!text.includes(PLACE)) throw new Error(`offline.js holds no ${PLACE}`);
    await writeFile(path, text.replace(PLACE, files.map((file) => `'${file}'`).join(', ')));
  },
};

/** The walk's chunk, what it imports at once, their styles and fonts, and the map's worker. */
function shellOf(bundle: Rolldown.OutputBundle): readonly string[] {
  const found = new Set<string>();
  const take = (name: string): void => {
    const file = bundle[name];
    if (file?.type !== 'chunk' || found.has(name)) return;
    found.add(name);
    file.imports.forEach(take);
    const { importedCss = [], importedAssets = [] } =
      (file as { viteMetadata?: { importedCss?: Set<string>; importedAssets?: Set<string> } }).viteMetadata ?? {};
    for (const asset of [...importedCss, ...importedAssets]) found.add(asset);
  };
  for (const [name, file] of Object.entries(bundle))
    if (file.type === 'chunk' && file.isEntry && file.name === 'walk') take(name);
  for (const name of Object.keys(bundle))
    if (
      /maplibre-gl-worker|inter-latin-(400|600)-normal.*woff2|inter-latin-ext-400-normal.*woff2|photo-quadrat\.worker/.test(
        name,
      )
    )
      found.add(name);
  return [...found].filter((name) => !name.endsWith('.woff')).sort();
}
