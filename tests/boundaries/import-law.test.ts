/**
 * The import law really bites: each forbidden import is tried in a small copy of the house and must be caught by the rule
 * that names it; what the law allows must pass. The law itself is `.dependency-cruiser.cjs`.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
let house: string;

/** Rooms as they are in package.json and doors, but empty inside. */
beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'crownfall-law-'));
  for (const file of ['package.json', '.dependency-cruiser.cjs']) cpSync(join(ROOT, file), join(house, file));
  for (const kind of ['packages', 'apps']) {
    for (const room of readdirSync(join(ROOT, kind))) {
      mkdirSync(join(house, kind, room, 'src'), { recursive: true });
      cpSync(join(ROOT, kind, room, 'package.json'), join(house, kind, room, 'package.json'));
      write(`${kind}/${room}/src/index.ts`, 'export {};');
      write(`${kind}/${room}/src/inner.ts`, 'export const inner = 1;');
      if (room === 'exchange') write('packages/exchange/src/node/index.ts', 'export {};');
    }
  }
  mkdirSync(join(house, 'node_modules'));
  for (const name of readdirSync(join(ROOT, 'node_modules'))) {
    if (name !== '@crownfall') symlinkSync(join(ROOT, 'node_modules', name), join(house, 'node_modules', name));
  }
  mkdirSync(join(house, 'node_modules/@crownfall'));
  for (const kind of ['packages', 'apps']) {
    for (const room of readdirSync(join(house, kind))) {
      symlinkSync(join(house, kind, room), join(house, 'node_modules/@crownfall', room));
    }
  }
});

afterAll(() => rmSync(house, { recursive: true, force: true }));

function write(path: string, text: string): void {
  mkdirSync(dirname(join(house, path)), { recursive: true });
  writeFileSync(join(house, path), `${text}\n`);
}

interface Cruise {
  readonly summary: {
    readonly violations: readonly { readonly rule: { readonly name: string }; readonly from: string }[];
  };
}

/** Each file with the names of the rules that it breaks; all are tried in one go. */
function brokenBy(files: Readonly<Record<string, string>>): Map<string, string[]> {
  for (const [path, text] of Object.entries(files)) write(path, text);
  const depcruise = join(ROOT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const args = [depcruise, '--config', '.dependency-cruiser.cjs', '-T', 'json', 'packages', 'apps'];
  const { stdout, stderr } = spawnSync(process.execPath, args, { cwd: house, encoding: 'utf8', maxBuffer: 1 << 28 });
  if (stdout === '') throw new Error(stderr);
  const broken = new Map<string, string[]>();
  for (const { from, rule } of (JSON.parse(stdout) as Cruise).summary.violations) {
    broken.set(from, [...(broken.get(from) ?? []), rule.name]);
  }
  return broken;
}

const ALLOWED: Readonly<Record<string, string>> = {
  'packages/stain/src/allowed.ts': "import '@crownfall/geometry';\nimport '@crownfall/survey';",
  'packages/assessment/src/allowed.ts': "import '@crownfall/priority';\nimport '@crownfall/imagery';",
  'packages/exchange/src/node/allowed.ts': "import 'node:fs';\nimport '@crownfall/assessment';",
  'apps/cli/src/allowed.ts': "import '@crownfall/exchange/node';\nimport 'node:fs';\nimport 'commander';",
  'packages/geometry/src/allowed.test.ts': "import 'node:fs';\nimport 'vitest';",
};

/** Rule, room, text of a file that breaks it. */
const FORBIDDEN: readonly (readonly [rule: string, room: string, text: string])[] = [
  ['geometry-imports-only-what-it-may', 'packages/geometry', "import '@crownfall/survey';"],
  ['statistics-imports-only-what-it-may', 'packages/statistics', "import '@crownfall/geometry';"],
  ['imagery-imports-only-what-it-may', 'packages/imagery', "import '@crownfall/survey';"],
  ['survey-imports-only-what-it-may', 'packages/survey', "import '@crownfall/stain';"],
  ['stain-imports-only-what-it-may', 'packages/stain', "import '@crownfall/priority';"],
  ['priority-imports-only-what-it-may', 'packages/priority', "import '@crownfall/geometry';"],
  ['assessment-imports-only-what-it-may', 'packages/assessment', "export * from '@crownfall/exchange';"],
  ['exchange-imports-only-what-it-may', 'packages/exchange', "import '@crownfall/stain';"],
  ['sheets-imports-only-what-it-may', 'packages/sheets', "import '@crownfall/exchange';"],
  ['survey-imports-only-what-it-may', 'packages/survey', "import type { Assessment } from '@crownfall/assessment';"],
  ['apps-stand-alone', 'apps/cli', "import '../../server/src/index.ts';"],
  ['through-the-door', 'apps/cli', "import '../../../packages/survey/src/inner.ts';"],
  ['by-name-not-by-path', 'packages/survey', "import '../../geometry/src/index.ts';"],
  ['pure-rooms-touch-no-machine', 'packages/stain', "import { readFileSync } from 'node:fs';"],
  ['pure-rooms-touch-no-machine', 'packages/geometry', "export const os = await import('os');"],
  ['pure-rooms-draw-nothing', 'packages/imagery', "import 'maplibre-gl';"],
  ['tests-stay-outside', 'packages/survey', "import 'fast-check';"],
  ['resolvable', 'apps/cli', "import '@crownfall/survey/src/inner.ts';"],
  ['no-cycles', 'packages/stain', "export * from './index.ts';"],
];

describe('the import law', () => {
  const path = (room: string, i: number): string => `${room}/src/forbidden-${i}.ts`;
  let broken: Map<string, string[]>;

  beforeAll(() => {
    const forbidden = FORBIDDEN.map(([, room, text], i) => [path(room, i), text] as const);
    write('packages/stain/src/index.ts', `import './forbidden-${FORBIDDEN.length - 1}.ts';`);
    broken = brokenBy({ ...ALLOWED, ...Object.fromEntries(forbidden) });
  });

  test.each(Object.keys(ALLOWED))('lets %s be', (file) => {
    expect(broken.get(file) ?? []).toEqual([]);
  });

  test.each(FORBIDDEN.map(([rule, room, text], i) => ({ rule, room, text, i })))(
    '$rule: $room may not $text',
    ({ rule, room, i }) => {
      expect(broken.get(path(room, i)) ?? []).toContain(rule);
    },
  );
});

test('every room has a rule', () => {
  const law = readFileSync(join(ROOT, '.dependency-cruiser.cjs'), 'utf8');
  const listed = /MAY_IMPORT = \{(.*?)\n\};/s.exec(law)?.[1] ?? '';
  for (const room of readdirSync(join(ROOT, 'packages'))) expect(listed).toContain(`  ${room}: [`);
});
