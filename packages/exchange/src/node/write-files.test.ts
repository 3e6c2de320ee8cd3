import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { Outage } from './outage.ts';
import { writeFiles } from './write-files.ts';

let folder: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'out-'));
  await writeFile(join(folder, 'a.txt'), 'old a');
  await writeFile(join(folder, 'other.txt'), 'kept');
});
afterEach(() => rm(folder, { recursive: true }));

const read = (name: string) => readFile(join(folder, name), 'utf8');

test('all files are there, other files stay, nothing is left over', async () => {
  await writeFiles(folder, [
    { name: 'a.txt', text: ['new ', 'a'] },
    { name: 'below/b.txt', text: ['ü'.repeat(300_000), '.'] },
  ]);
  expect(await read('a.txt')).toBe('new a');
  expect((await read('below/b.txt')).length).toBe(300_001);
  expect((await readdir(folder)).sort()).toEqual(['a.txt', 'below', 'other.txt']);
});

test('a text that cannot be made leaves the earlier files whole, and its own error passes through', async () => {
  function* failing(): Generator<string> {
    yield 'half';
    throw new RangeError('no more');
  }
  const files = [
    { name: 'a.txt', text: ['new a'] },
    { name: 'b.txt', text: failing() },
  ];
  await expect(writeFiles(folder, files)).rejects.toThrow(RangeError);
  expect(await read('a.txt')).toBe('old a');
  expect((await readdir(folder)).sort()).toEqual(['a.txt', 'other.txt']);
});

test('a move that fails midway is undone', async () => {
  // A folder that is not empty stands where the second file must go below: the move into it fails.
  await writeFile(join(folder, 'below'), 'a file, not a folder');
  const files = [
    { name: 'a.txt', text: ['new a'] },
    { name: 'new.txt', text: ['x'] },
    { name: 'below/b.txt', text: ['b'] },
  ];
  await expect(writeFiles(folder, files)).rejects.toThrow(Outage);
  expect(await read('a.txt')).toBe('old a');
  expect((await readdir(folder)).sort()).toEqual(['a.txt', 'below', 'other.txt']);
});

test('a run that was killed amid moving is undone by the next one', async () => {
  const dead = join(folder, '.crownfall-writing-999999999');
  await mkdir(join(dead, 'old'), { recursive: true });
  await writeFile(join(dead, 'old', 'b.txt'), 'old b');
  await writeFiles(folder, [{ name: 'a.txt', text: ['new a'] }]);
  expect(await read('b.txt')).toBe('old b');
  expect((await readdir(folder)).sort()).toEqual(['a.txt', 'b.txt', 'other.txt']);
});

test('where nothing can be written an outage is thrown with its cause', async () => {
  const error = await writeFiles(join(folder, 'a.txt', 'x'), []).catch((thrown) => thrown);
  expect(error).toBeInstanceOf(Outage);
  expect(error.cause.code).toMatch(/ENOTDIR|EEXIST/);
});
