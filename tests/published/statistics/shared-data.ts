import { existsSync } from 'node:fs';
import { resolve } from 'node:path';

/** Real data kept outside the repository: the path of one file there, or undefined (after saying so) where it is absent. */
export function sharedData(file: string): string | undefined {
  const shared = process.env.CROWNFALL_SHARED ?? resolve(import.meta.dirname, '../../../../shared');
  const path = resolve(shared, 'data', file);
  if (existsSync(path)) return path;
  console.warn(`skipped: ${file} is not there; set CROWNFALL_SHARED to the folder that holds data/${file}`);
  return undefined;
}
