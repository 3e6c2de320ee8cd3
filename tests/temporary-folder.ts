/** Folders that last as long as the test file, or the program, that asked for them. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const made = new Set<string>();

/**
 * A new, empty folder; it is removed with all it holds after the last test of the file (see temporary-folders-removed.ts),
 * at the latest when this process ends.
 *
 * @example temporaryFolder('journey') // /tmp/crownfall-journey-x7Yq2A
 */
export function temporaryFolder(purpose = 'test'): string {
  if (made.size === 0) process.once('exit', removeTemporaryFolders);
  const folder = mkdtempSync(join(tmpdir(), `crownfall-${purpose}-`));
  made.add(folder);
  return folder;
}

/** What somebody else still writes to, a server that is being stopped for instance, is tried again for a moment. */
export function removeTemporaryFolders(): void {
  for (const folder of made) rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
  made.clear();
}
