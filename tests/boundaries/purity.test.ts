/**
 * The pure rooms ask neither clock nor chance nor network: the same input gives the same digits. The compiler already
 * refuses DOM and Node types there; clock and chance are plain JavaScript, so the source is searched for them as syntax.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseSync } from '@swc/core';
import { describe, expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');
const PURE = ['geometry', 'statistics', 'imagery', 'survey', 'stain', 'priority', 'assessment'];

interface SyntaxNode {
  readonly type?: string;
  readonly [part: string]: unknown;
}

const isNode = (value: unknown): value is SyntaxNode => typeof value === 'object' && value !== null;
const nameOf = (value: unknown): string => (isNode(value) && typeof value.value === 'string' ? value.value : '');

/** Impure expressions in a source text, as a person would write them. */
function impurities(source: string): string[] {
  const found: string[] = [];
  visit(parseSync(source, { syntax: 'typescript', target: 'es2022' }) as unknown as SyntaxNode, found);
  return found;
}

function visit(node: SyntaxNode, found: string[]): void {
  const impure = impurity(node);
  if (impure !== undefined) found.push(impure);
  for (const part of Object.values(node)) {
    if (Array.isArray(part)) for (const each of part) isNode(each) && visit(each, found);
    else if (isNode(part)) visit(part, found);
  }
}

const IMPURE_MEMBERS = ['Math.random', 'Date.now', 'performance.now', 'crypto.getRandomValues', 'crypto.randomUUID'];
const IMPURE_LOCALE = ['toLocaleString', 'toLocaleDateString', 'toLocaleUpperCase', 'toLocaleLowerCase'];

function impurity(node: SyntaxNode): string | undefined {
  if (node.type === 'NewExpression' && nameOf(node.callee) === 'Date') {
    const given = Array.isArray(node.arguments) ? node.arguments.length : 0;
    return given === 0 ? 'new Date()' : undefined;
  }
  if (node.type === 'CallExpression' && ['fetch', 'Date'].includes(nameOf(node.callee)))
    return `${nameOf(node.callee)}()`;
  if (node.type !== 'MemberExpression') return undefined;
  const member = `${nameOf(node.object)}.${nameOf(node.property)}`;
  if (IMPURE_MEMBERS.includes(member)) return member;
  return IMPURE_LOCALE.includes(nameOf(node.property)) ? nameOf(node.property) : undefined;
}

test('the search finds what it looks for, and only that', () => {
  expect(impurities('const a = Math.random(), b = Date.now(), c = new Date(), d = (1).toLocaleString();')).toEqual([
    'Math.random',
    'Date.now',
    'new Date()',
    'toLocaleString',
  ]);
  expect(impurities('fetch("x"); Date();')).toEqual(['fetch()', 'Date()']);
  expect(impurities('// Math.random()\nconst a = new Date("2026-05-01"), b = Math.sin(1), c = "Date.now()";')).toEqual(
    [],
  );
});

describe.each(PURE)('packages/%s', (room) => {
  const files = readdirSync(join(ROOT, 'packages', room, 'src'), { recursive: true, encoding: 'utf8' }).filter(
    (file) => file.endsWith('.ts') && !/[.](test|bench|d)[.]ts$/.test(file),
  );

  test('asks no clock, no chance, no network, no locale', () => {
    const impure = files.flatMap((file) =>
      impurities(readFileSync(join(ROOT, 'packages', room, 'src', file), 'utf8')).map((what) => `${file}: ${what}`),
    );
    expect(impure).toEqual([]);
    expect(files.length).toBeGreaterThan(0);
  });
});
