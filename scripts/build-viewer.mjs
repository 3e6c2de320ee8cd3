/** Builds the viewer's page when it is missing or older than its source. */
import { existsSync } from 'node:fs';
import { newestChange, ROOT } from './repository.mjs';
import { run } from './run.mjs';

const PAGE = 'apps/viewer/dist/index.html';

export async function buildViewer() {
  const source = newestChange(['apps/viewer', 'packages'], (path) => !path.endsWith('.test.ts'));
  if (existsSync(new URL(PAGE, ROOT)) && newestChange([PAGE]) >= source) return;
  console.error('Building the viewer …');
  await run('npm', ['run', 'build', '--silent', '-w', 'apps/viewer', '--', '--logLevel', 'warn']);
}
