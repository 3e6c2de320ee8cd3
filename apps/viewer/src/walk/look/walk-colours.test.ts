import { describe, expect, test } from 'vitest';
import { TEXT_ON, WALK_COLOURS } from './walk-colours.ts';

/** Success criterion 1.4.6 (level AAA) of WCAG 2.2. */
const ENOUGH = 7;

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function contrast(a: string, b: string): number {
  const luminance = (colour: string): number => {
    const [red, green, blue] = [1, 3, 5]
      .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
      .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  };
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

describe('contrast of the walk', () => {
  test('black on white is 21:1 (WCAG 2.2)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  });

  for (const light of ['sun', 'night'] as const) {
    test.each(TEXT_ON)(`${light}: %s on %s stands out 7:1 or more`, (text, ground) => {
      const colours = WALK_COLOURS[light];
      expect(contrast(colours[text], colours[ground])).toBeGreaterThanOrEqual(ENOUGH);
    });

    test(`${light}: edges of controls stand out 3:1 or more (criterion 1.4.11)`, () => {
      const { line, paper, card } = WALK_COLOURS[light];
      expect(Math.min(contrast(line, paper), contrast(line, card))).toBeGreaterThanOrEqual(3);
    });
  }
});
