/**
 * Runs once around all tests: whatever they, and the programs they start (browsers, databases, converters), put among the
 * temporary files goes into one folder, which is removed when the last test is done, however a test file ended.
 */
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where tsx keeps what it has compiled: started programs need not compile anew in each run. */
const COMPILED = `tsx-${process.geteuid?.() ?? 'cache'}`;

export function setup(): () => void {
  const [before, around] = [process.env.TMPDIR, tmpdir()];
  removeThoseOfKilledRuns(around);
  const home = mkdtempSync(join(around, `crownfall-tests-${process.pid}-`));
  // A database server runs as another user and has to get through to its own folder.
  chmodSync(home, 0o711);
  mkdirSync(join(around, COMPILED), { recursive: true });
  symlinkSync(join(around, COMPILED), join(home, COMPILED), 'junction');
  process.env.TMPDIR = home;
  return () => {
    if (before === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before;
    rmSync(home, { recursive: true, force: true, maxRetries: 3 });
  };
}

/** A run that was killed could not remove its own; its folder bears the number of its process. */
function removeThoseOfKilledRuns(around: string): void {
  for (const name of readdirSync(around)) {
    const pid = Number(/^crownfall-tests-(\d+)-/.exec(name)?.[1] ?? 0);
    if (pid > 0 && !lives(pid)) rmSync(join(around, name), { recursive: true, force: true, maxRetries: 3 });
  }
}

function lives(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code !== 'ESRCH';
  }
}
