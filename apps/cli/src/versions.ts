/** What ran, for the record of a run. */
import { readFileSync } from 'node:fs';

/** The version of this program, as its package says. */
export function ownVersion(): string {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

export function versions(): Readonly<Record<string, string>> {
  return { crownfall: ownVersion(), node: process.versions.node };
}
