/** A project reckoned tile by tile, in processes of their own, ends in the very files of one run. */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const FILES = ['blocks.geojson', 'trees.geojson', 'pavement.geojson', 'ledger.csv', 'findings.json'];

function crownfall(...words: string[]) {
  const command = [join(ROOT, 'apps/cli/bin/crownfall.js'), ...words, '--quiet'];
  return spawnSync(process.execPath, command, { cwd: ROOT, encoding: 'utf8' });
}

describe('reckon --tile', () => {
  let folder = '';
  const inFolder = (name: string) => join(folder, name);

  beforeAll(() => {
    folder = temporaryFolder('tiles');
    expect(crownfall('reckon', 'sample-geo', '--draws', '0', '--out', inFolder('whole')).status).toBe(0);
    for (const tile of ['2/2', '1/2']) {
      expect(crownfall('reckon', 'sample-geo', '--tile', tile, '--out', inFolder('tiles')).status).toBe(0);
    }
  });

  test('all tiles together give the files of the whole, byte for byte', () => {
    const run = crownfall(
      'reckon',
      'sample-geo',
      '--draws',
      '0',
      '--tiles',
      inFolder('tiles'),
      '--out',
      inFolder('merged'),
    );
    expect(run.status).toBe(0);
    for (const name of FILES) {
      expect(readFileSync(join(inFolder('merged'), name), 'utf8')).toBe(
        readFileSync(join(inFolder('whole'), name), 'utf8'),
      );
    }
  });

  test('a missing tile is named', () => {
    const other = inFolder('one');
    expect(crownfall('reckon', 'sample-geo', '--tile', '1/3', '--out', other).status).toBe(0);
    const run = crownfall('reckon', 'sample-geo', '--tiles', other, '--out', inFolder('never'));
    expect(run.status).toBe(2);
    expect(run.stderr).toContain('missing: 2, 3 of 3');
  });

  test('tiles of other files, and damaged ones, are refused', () => {
    const path = join(inFolder('tiles'), 'tile-1-of-2.json');
    const good = readFileSync(path, 'utf8');
    writeFileSync(path, good.replace(/"fingerprint":"./, '"fingerprint":"x'));
    expect(
      crownfall('reckon', 'sample-geo', '--tiles', inFolder('tiles'), '--out', inFolder('never')).stderr,
    ).toContain('other files or settings');
    writeFileSync(path, good.slice(0, 100));
    expect(
      crownfall('reckon', 'sample-geo', '--tiles', inFolder('tiles'), '--out', inFolder('never')).stderr,
    ).toContain('is damaged');
    writeFileSync(path, good);
  });
});
