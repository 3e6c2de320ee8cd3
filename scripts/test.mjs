/**
 * `npm test`: installs what is missing, builds the viewer for the browser tests, runs every test.
 *
 *   npm test                          everything
 *   npm test -- packages/geometry     one room
 *   npm test -- -t 'ledgers balance'  by name
 */
import { buildViewer } from './build-viewer.mjs';
import { installPackages, installTestPrograms } from './install.mjs';
import { run } from './run.mjs';

await installPackages();
await installTestPrograms();
await buildViewer();
process.exitCode = await run('node_modules/.bin/vitest', ['run', ...process.argv.slice(2)], { mayFail: true });
