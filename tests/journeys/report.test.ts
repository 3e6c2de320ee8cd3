/** Reports and letters as a person makes them: the command, and the file in a real browser. */
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { findChromium, launch } from './browser.ts';
import { crownfall, SAMPLE, temporaryFolder } from './crownfall-process.ts';

const chromium = findChromium();
let folder: string;

beforeAll(() => {
  folder = temporaryFolder('report');
  const { code, stdout, stderr } = crownfall([
    'report',
    SAMPLE,
    '--draws',
    '100',
    '--out',
    join(folder, 'r.html'),
    '--quiet',
  ]);
  expect(code, stderr).toBe(0);
  expect(stdout).toContain('With the plan.');
  expect(stdout).toContain('Follow-up from');
}, 180_000);

describe('crownfall report, crownfall letter', () => {
  test('a letter is written as PDF and said to be read first', () => {
    const out = join(folder, 'answer.pdf');
    const args = ['letter', SAMPLE, '--block', 'B04', '--ask', 'Tree desk, 555-0100', '--no-plan', '--draws', '0'];
    const { code, stdout, stderr } = crownfall([...args, '--out', out, '--quiet']);
    expect(code, stderr).toBe(0);
    expect(stdout).toContain('Read it before you send it.');
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  }, 120_000);

  test('a name of no known kind is wrong use, and nothing is written', () => {
    const out = join(folder, 'report.docx');
    const { code, stderr } = crownfall(['report', SAMPLE, '--out', out]);
    expect(code).toBe(2);
    expect(stderr).toContain('.html or .pdf');
    expect(existsSync(out)).toBe(false);
  });

  test.skipIf(chromium === undefined)(
    'the page has no fault that axe finds, asks for nothing, and fits a phone',
    async () => {
      const browser = await launch(chromium as string);
      try {
        const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
        const asked: string[] = [];
        page.on('request', (request) => asked.push(request.url()));
        await page.goto(pathToFileURL(join(folder, 'r.html')).href);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide).toBeLessThanOrEqual(390);
        await page.addScriptTag({ path: createRequire(import.meta.url).resolve('axe-core') });
        const faults = await page.evaluate(async () => {
          const { axe } = window as unknown as {
            axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
          };
          const { violations } = await axe.run();
          return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
        });
        expect(faults).toEqual([]);
        expect(asked.filter((url) => !url.startsWith('file:'))).toEqual([]);
      } finally {
        await browser.close();
      }
    },
    120_000,
  );
});
