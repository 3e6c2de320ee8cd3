/** `crownfall sheet`, from outside: what it writes, says, and how it refuses. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';

const folder = temporaryFolder('sheets');

test('a day’s book in Spanish on A4, with the picture and what forbids treatment', { timeout: 180_000 }, () => {
  const out = join(folder, 'new', 'day.pdf');
  const options = ['--top', '2', '--out', out, '--paper', 'a4', '--language', 'es', '--draws', '100', '--imagery'];
  const { code, stdout, stderr } = crownfall(['sheet', SAMPLE, ...options, '--json', '--quiet']);
  expect([code, stderr]).toEqual([0, '']);
  const told = JSON.parse(stdout);
  expect(told.blocks).toEqual(['B04', 'B30']); // the first two of the README's ranking
  expect(told.pages).toBeGreaterThan(2);
  const bytes = readFileSync(out);
  expect(bytes.subarray(0, 8).toString()).toBe('%PDF-1.7');
  expect(bytes.includes('/Subtype /Image')).toBe(true);
  const text = pdfText(out);
  if (text === null) return console.warn('skipped: pdftotext is not installed');
  expect(text).toContain('Antes de empezar');
  expect(text).toContain('No tratar, porque');
  expect(text).toContain('La ventana de floración no está abierta');
});

test('an unknown block is answered with the known ones and the nearest; what stood there stays', {
  timeout: 180_000,
}, () => {
  const out = join(folder, 'kept.pdf');
  writeFileSync(out, 'earlier');
  const { code, stderr } = crownfall(['sheet', SAMPLE, '--block', 'B4', '--out', out, '--draws', '0', '--quiet']);
  expect(code).toBe(2);
  expect(stderr).toContain('got B4; did you mean B04?');
  expect(readFileSync(out, 'utf8')).toBe('earlier');
});

test.each([
  [['--out', 'x.pdf'], 'expected --block with ids of blocks, or --top with how many, got neither'],
  [['--top', '2', '--out', 'x.pdf', '--link', 'nowhere'], 'Expected an address'],
  [['--top', '2', '--out', 'x.pdf', '--from', '28.3'], 'Expected longitude and latitude'],
])('wrong use %j is refused before anything is read', (options, words) => {
  const { code, stderr } = crownfall(['sheet', SAMPLE, ...options]);
  expect(code).toBe(2);
  expect(stderr).toContain(words);
  expect(existsSync('x.pdf')).toBe(false);
});

function pdfText(file: string): string | null {
  try {
    return execFileSync('pdftotext', [file, '-'], { encoding: 'utf8' }).replaceAll(/\s+/g, ' ');
  } catch {
    return null;
  }
}
