/**
 * Runs once around all tests: whatever they, and the programs they start (browsers, databases, converters), put among the
 * temporary files goes into one folder, which is removed when the last test is done, however a test file ended.
 */
import { chmodSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function setup(): () => void {
  const before = process.env.TMPDIR;
  const home = mkdtempSync(join(tmpdir(), 'crownfall-tests-'));
  // A database server runs as another user and has to get through to its own folder.
  chmodSync(home, 0o711);
  process.env.TMPDIR = home;
  return () => {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
    rmSync(home, { recursive: true, force: true, maxRetries: 3 });
  };
}
