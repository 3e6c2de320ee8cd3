/** GEOS from C: compiles a program that links GEOS and runs it on doubles. */
import { spawn, spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { temporaryFolder } from '../temporary-folder.ts';

/**
 * Compiles a C source beside GEOS in a temporary folder; the path of the program.
 *
 * @throws Error that says what to install, when the compiler or GEOS is missing
 */
export function compiledWithGeos(source: string): string {
  const program = join(temporaryFolder('geos'), 'program');
  const { error, stderr, status } = spawnSync('cc', ['-O2', source, '-lgeos_c', '-lm', '-o', program], {
    encoding: 'utf8',
  });
  if (error || status !== 0) {
    const why = error ? 'no C compiler was found' : `the compiler said: ${stderr.split('\n').slice(0, 3).join(' ')}`;
    throw new Error(`needs a C compiler and GEOS (Debian: apt-get install gcc libc6-dev libgeos-dev); ${why}`);
  }
  return program;
}

/** Starts a program on doubles, through files beside it; the promise holds what it answers. Its complaints go to ours. */
export function doublesFrom(program: string, input: Float64Array): Promise<Float64Array> {
  const [from, to] = [`${program}.in`, `${program}.out`];
  writeFileSync(from, new Uint8Array(input.buffer, input.byteOffset, input.byteLength));
  const files = [openSync(from, 'r'), openSync(to, 'w')] as const;
  const running = spawn(program, { stdio: [...files, 'inherit'] });
  files.forEach(closeSync);
  return new Promise((resolve, reject) => {
    running.on('error', reject);
    running.on('exit', (code) => {
      if (code === 0) resolve(new Float64Array(new Uint8Array(readFileSync(to)).buffer));
      else reject(new Error(`${program} ended with ${code}`));
    });
  });
}
