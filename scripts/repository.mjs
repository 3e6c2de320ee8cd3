/** Where the repository is, and when its files last changed. */
import { readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const ROOT = new URL('../', import.meta.url);

/** Latest modification time in milliseconds among files below `paths` (relative to the root) for which `counts` holds. */
export function newestChange(paths, counts = () => true) {
  return paths.reduce((latest, path) => Math.max(latest, newestBelow(fileURLToPath(new URL(path, ROOT)), counts)), 0);
}

function newestBelow(path, counts) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return counts(path) ? stat.mtimeMs : 0;
  return readdirSync(path)
    .filter((name) => name !== 'node_modules' && name !== 'dist')
    .reduce((latest, name) => Math.max(latest, newestBelow(`${path}/${name}`, counts)), 0);
}
