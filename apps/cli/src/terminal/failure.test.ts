import { describe, expect, test } from 'vitest';
import { EXIT, explainFailure } from './failure.ts';

describe('a failure', () => {
  test('of the disk is an outage, found through its cause, with a remedy', () => {
    const cause = Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' });
    const failure = explainFailure(new Error('cannot write results', { cause }), false);
    expect(failure.code).toBe(EXIT.outage);
    expect(failure.words).toContain('cannot write results');
    expect(failure.words).toContain('The disk is full');
  });

  test('at a door is wrong use', () => {
    expect(explainFailure(new RangeError('seed: expected a whole number, got 1.5'), false).code).toBe(EXIT.misuse);
  });

  test('shows a stack only when asked', () => {
    const fault = new Error('no such thing');
    expect(explainFailure(fault, false).words).not.toMatch(/\n\s+at /);
    expect(explainFailure(fault, true).words).toMatch(/\n\s+at /);
  });
});
