/** Runs another program in the repository's root and ends this one with its exit code when it fails. */
import { spawn } from 'node:child_process';
import { ROOT } from './repository.mjs';

export async function run(program, args, { mayFail = false } = {}) {
  const code = await new Promise((done, fail) => {
    const child = spawn(program, args, { cwd: ROOT, stdio: 'inherit' });
    child.on('error', fail);
    child.on('exit', (status) => done(status ?? 1));
  });
  if (code !== 0 && !mayFail) process.exit(code);
  return code;
}
