import { describe, expect, test } from 'vitest';
import { progressOn } from './progress.ts';

/** A stream that keeps what is written to it. */
function stream(isTTY: boolean): { stream: NodeJS.WriteStream; text: () => string } {
  let text = '';
  const write = (piece: string): boolean => {
    text += piece;
    return true;
  };
  return { stream: { isTTY, write } as unknown as NodeJS.WriteStream, text: () => text };
}

describe('progress', () => {
  test('on a terminal is one line that is overwritten and cleared', () => {
    const terminal = stream(true);
    const progress = progressOn(terminal.stream, false);
    progress.stage('Reading town', 0.5);
    progress.end();
    expect(terminal.text()).toContain(`${'█'.repeat(12)}${'░'.repeat(12)} Reading town`);
    expect(terminal.text()).not.toContain('\n');
    expect(terminal.text().endsWith('\u001b[2K')).toBe(true);
  });

  test('elsewhere is plain lines without control characters', () => {
    const file = stream(false);
    const progress = progressOn(file.stream, false);
    progress.stage('Reading town', 0.1);
    progress.stage('Ranking', 0.9);
    progress.end();
    expect(file.text()).toBe('Reading town\nRanking\n');
  });

  test('is silent when asked to be', () => {
    const terminal = stream(true);
    const progress = progressOn(terminal.stream, true);
    progress.stage('Reading town', 0.1);
    progress.end();
    expect(terminal.text()).toBe('');
  });
});
