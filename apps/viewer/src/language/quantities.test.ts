import { describe, expect, test } from 'vitest';
import { area, grouped, percent } from './quantities.ts';

describe('quantities on the screen', () => {
  test('one square foot is 0.09290304 m² exactly (international foot, NIST SP 811, appendix B.8)', () => {
    expect(area(0.09290304 * 250, 'us')).toBe('250\u00a0ft²');
    expect(area(0.09290304, 'us')).toBe('1.0\u00a0ft²');
    expect(area(1234.4, 'metric')).toBe('1,234\u00a0m²');
  });

  test('decimals do not jump at the boundary', () => {
    expect(area(99.94, 'metric')).toBe('99.9\u00a0m²');
    expect(area(99.96, 'metric')).toBe('100\u00a0m²');
    expect(percent(0.0994)).toBe('9.9\u00a0%');
    expect(percent(0.0996)).toBe('10\u00a0%');
  });

  test('nothing of nothing is a dash, and no zero is negative', () => {
    expect(percent(0.0001)).toBe('<0.1\u00a0%');
    expect(percent(0)).toBe('0.0\u00a0%');
    expect(percent(0 / 0)).toBe('–');
    expect(grouped(-0.04, 1)).toBe('0.0');
    expect(grouped(-1234567.25, 1)).toBe('−1,234,567.3');
  });
});
