/** The two commands a newcomer types, as far as a test can type them. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT, temporaryFolder } from './crownfall-process.ts';

const npm = (args: readonly string[]): { code: number | null; stdout: string; stderr: string } => {
  const { status, stdout, stderr } = spawnSync('npm', [...args], { cwd: ROOT, encoding: 'utf8' });
  return { code: status, stdout, stderr };
};

describe('npm start', () => {
  test('-- --once reckons the sample town, prints the ranking and ends', () => {
    const { code, stdout, stderr } = npm(['start', '--silent', '--', '--once']);
    expect(stderr).not.toMatch(/error/i);
    expect(code).toBe(0);
    expect(stdout).toContain('(invented)');
    expect(stdout).toMatch(/rank +block +stained m²/);
    expect(stdout).toMatch(/\n +1 {2}\S+/);
  });

  test('answers an unknown option with the valid ones', () => {
    const { code, stderr } = npm(['start', '--silent', '--', '--twice']);
    expect(code).not.toBe(0);
    expect(stderr).toContain('--once, --port N');
  });
});

test('the closing count tells the truth about a report', () => {
  const count = (report: unknown): { code: number | null; line: string } => {
    const saved = join(temporaryFolder(), 'report.json');
    writeFileSync(saved, JSON.stringify(report));
    const { status, stdout } = spawnSync(process.execPath, ['scripts/test-count.mjs', saved], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    return { code: status, line: stdout.trim() };
  };
  const file = (status: string, ...tests: string[]): unknown => ({
    status,
    assertionResults: tests.map((each) => ({ status: each })),
  });
  expect(count({ testResults: [file('passed', 'passed', 'passed')] })).toEqual({ code: 0, line: '2 passed, 0 failed' });
  expect(count({ testResults: [file('passed', 'passed', 'skipped'), file('failed', 'failed', 'passed')] })).toEqual({
    code: 1,
    line: '2 passed, 1 failed, 1 skipped',
  });
  // A file that does not load has no tests to fail, and still fails.
  expect(count({ testResults: [file('failed'), file('passed', 'passed')] })).toEqual({
    code: 1,
    line: '1 passed, 1 failed',
  });
  expect(count({ testResults: [] })).toEqual({ code: 1, line: '0 passed, 0 failed' });
});
