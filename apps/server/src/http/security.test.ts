import { describe, expect, test } from 'vitest';
import { answersTo, securityHeaders } from './security.ts';

describe('which names the server answers to', () => {
  test('bound to loopback, only to loopback names', () => {
    for (const name of ['localhost:8137', '127.0.0.1:8137', '[::1]:8137', 'LOCALHOST']) {
      expect(answersTo(name, '127.0.0.1')).toBe(true);
    }
    for (const name of ['trees.example:8137', '127.0.0.1.example', 'localhost.example', '', undefined]) {
      expect(answersTo(name, '127.0.0.1')).toBe(false);
    }
  });

  test('bound to the network on purpose, to any name', () => {
    expect(answersTo('trees.example', '0.0.0.0')).toBe(true);
  });
});

describe('what a page may fetch', () => {
  const connects = (background: string | null): string =>
    /connect-src ([^;]*)/.exec(securityHeaders(background)['content-security-policy'])?.[1] ?? '';

  test('nothing from other machines, unless background tiles are allowed; then from theirs alone', () => {
    expect(connects(null)).toBe("'self'");
    expect(connects('https://tiles.example.org/a/{z}/{x}/{y}.png')).toBe("'self' https://tiles.example.org");
  });
});
