/** The README's example is a real run: its lines are compared with what the program prints today. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { crownfall, ROOT, SAMPLE, temporaryFolder } from './crownfall-process.ts';

test('the figures in README.md are those of a run on the sample town', () => {
  const readme = readFileSync(join(ROOT, 'README.md'), 'utf8');
  const quoted = readme.split('\n').filter((line) => /^ {4}.*(stained m²| % {2})/.test(line));
  expect(quoted.length).toBeGreaterThanOrEqual(3);
  const { stdout } = crownfall(['reckon', SAMPLE, '--out', join(temporaryFolder(), 'out'), '--quiet']);
  for (const line of quoted) expect(stdout).toContain(line.slice(4));
  const bold = /\*\*([\d.,]+) m²\*\*/.exec(readme)?.[1];
  expect(quoted[1]).toContain(` ${bold} `);
});
