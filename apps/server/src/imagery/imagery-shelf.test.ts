import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { ImageryShelf } from './imagery-shelf.ts';

const folder = mkdtempSync(join(tmpdir(), 'crownfall-shelf-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('pictures that are there, each under a name of its own; nothing else of the machine', async () => {
  for (const part of ['project', 'flown/2025', 'flown/2026', 'folder.tif'])
    mkdirSync(join(folder, part), { recursive: true });
  writeFileSync(join(folder, 'flown/2025/town.tif'), 'II*\0 and so on');
  writeFileSync(join(folder, 'flown/2026/town.tif'), 'MM\0+ and so on');
  writeFileSync(join(folder, 'key.tif'), 'a secret that somebody named a picture');
  const listed = [
    '../flown/2025/town.tif',
    '../flown/2026/town.tif',
    '../key.tif',
    '../folder.tif',
    'gone.tif',
    'https://elsewhere.example/other.tif',
  ];
  const shelf = new ImageryShelf(join(folder, 'project'), () => listed);
  expect(await shelf.names()).toEqual(['town.tif', '2-town.tif']);
  expect(await shelf.path('2-town.tif')).toBe(join(folder, 'flown/2026/town.tif'));
  for (const name of ['key.tif', 'folder.tif', 'gone.tif', 'other.tif', '../key.tif', '../flown/2025/town.tif', ''])
    expect(await shelf.path(name)).toBeNull();
});
