/** Installs what the repository needs and does not have: npm packages, and for tests Chromium and GDAL's command line. */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { ROOT } from './repository.mjs';
import { run } from './run.mjs';

const LEAST_NODE = [20, 19];

/** Programs of the system that tests call, with the Debian package that brings each. */
const TEST_PROGRAMS = [
  {
    names: ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'],
    debian: 'chromium',
    what: 'Chromium, for the browser tests',
  },
  { names: ['ogrinfo'], debian: 'gdal-bin', what: 'GDAL, which reads our files as an outside program' },
  { names: ['cs2cs'], debian: 'proj-bin', what: 'PROJ, which our coordinate systems are compared with' },
];

/** Runs `npm ci` when packages are missing or the lock file is newer than what is installed. */
export async function installPackages() {
  requireNode();
  const installed = new URL('node_modules/.package-lock.json', ROOT);
  const lock = new URL('package-lock.json', ROOT);
  if (existsSync(installed) && statSync(installed).mtimeMs >= statSync(lock).mtimeMs) return;
  if (existsSync(installed) && lockedVersions(installed) === lockedVersions(lock)) return;
  console.error('Installing packages (npm ci) …');
  await run('npm', ['ci', '--no-audit', '--no-fund']);
}

/** Installs the programs that tests call where that can be done (Debian, root); otherwise says exactly what to install. */
export async function installTestPrograms() {
  const missing = TEST_PROGRAMS.filter((program) => !program.names.some(onPath));
  if (missing.length === 0) return;
  const packages = missing.map((program) => program.debian);
  if (onPath('apt-get') && process.getuid?.() === 0) {
    console.error(`Installing ${packages.join(' and ')} (apt-get) …`);
    await run('apt-get', ['update', '-qq']);
    await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages]);
    return;
  }
  console.error('These programs are missing, and the tests that need them will be skipped:');
  for (const program of missing)
    console.error(`  ${program.what}. On Debian or Ubuntu: sudo apt-get install ${program.debian}`);
}

function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1])) return;
  console.error(
    `Node ${LEAST_NODE.join('.')} or newer is needed; this is ${process.versions.node}. Get it from nodejs.org.`,
  );
  process.exit(2);
}

/** The packages of a lock file with their versions, in a form that can be compared; a fresh checkout has new file times. */
function lockedVersions(file) {
  const { packages } = JSON.parse(readFileSync(file, 'utf8'));
  return JSON.stringify(
    Object.entries(packages)
      .filter(([path, entry]) => path.startsWith('node_modules/') && !entry.link && !entry.optional)
      .map(([path, entry]) => `${path}@${entry.version}`)
      .sort(),
  );
}

function onPath(name) {
  return spawnSync('sh', ['-c', `command -v ${name}`]).status === 0;
}
