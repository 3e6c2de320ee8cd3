/**
 * `npm start`: from a clean clone to ranked blocks on a map. Installs what is missing, builds the viewer when it is missing or
 * older than its source, reckons the sample town, prints the ranking and serves the map.
 *
 *   npm start                    reckon and serve
 *   npm start -- --once          reckon, do not serve
 *   npm start -- --port 9000     serve on another port
 *   npm start -- --project DIR   another project than sample-geo
 */
import { spawn } from 'node:child_process';
import { parseArgs } from 'node:util';
import { buildViewer } from './build-viewer.mjs';
import { installPackages } from './install.mjs';
import { ROOT } from './repository.mjs';
import { run } from './run.mjs';

const OPTIONS = {
  once: { type: 'boolean', default: false },
  port: { type: 'string', default: '8137' },
  host: { type: 'string', default: '127.0.0.1' },
  project: { type: 'string', default: 'sample-geo' },
  help: { type: 'boolean', default: false },
};

const wish = readWish();
await installPackages();
await buildViewer();
await run(process.execPath, ['apps/cli/bin/crownfall.js', 'reckon', wish.project, '--out', 'results']);
if (!wish.once) serve();

function readWish() {
  try {
    const { values } = parseArgs({ options: OPTIONS });
    if (!values.help) return values;
    console.log('npm start -- [--once] [--port N] [--host ADDRESS] [--project DIR]');
    process.exit(0);
  } catch (error) {
    console.error(`npm start: ${error.message}`);
    console.error('Valid options: --once, --port N, --host ADDRESS, --project DIR');
    process.exit(2);
  }
}

/** The server ends with this process: both stand in one terminal and get the same Ctrl-C; other signals are passed on. */
function serve() {
  const args = ['apps/cli/bin/crownfall.js', 'serve', wish.project, '--port', wish.port, '--host', wish.host];
  const server = spawn(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  process.on('SIGINT', () => {});
  process.on('SIGTERM', () => server.kill('SIGTERM'));
  server.on('exit', (code) => process.exit(code ?? 1));
}
