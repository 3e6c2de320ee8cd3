import { describe, expect, test } from 'vitest';
import { lightOrAlpha, rolesByTag, type StatedBands } from './band-roles.ts';

const COLOUR: StatedBands = { count: 4, photometric: 2, extraSamples: [2], metadata: '', wholeNumbers: true };
const item = (text: string, band: number, role: string) =>
  `<Item name="X" sample="${band}" role="${role}">${text}</Item>`;

describe('roles', () => {
  test('by tag', () => {
    expect(rolesByTag(COLOUR).roles).toEqual(['red', 'green', 'blue', 'alpha']);
    expect(rolesByTag({ ...COLOUR, extraSamples: [0] }).roles[3]).toBe('near-infrared');
    expect(rolesByTag({ ...COLOUR, count: 1, photometric: 3, extraSamples: [] }).roles).toEqual(['palette']);
    expect(rolesByTag({ ...COLOUR, count: 1, photometric: 1, extraSamples: [] }).roles).toEqual(['grey']);
  });

  test('a fourth band tagged as transparency is in doubt, a fifth is not', () => {
    expect(rolesByTag(COLOUR).doubtful).toEqual([3]);
    const five = rolesByTag({ ...COLOUR, count: 5, extraSamples: [0, 2] });
    expect(five.roles.slice(3)).toEqual(['near-infrared', 'alpha']);
    expect(five.doubtful).toEqual([3]);
  });

  test('by name, which outweighs a colour', () => {
    const metadata = item('Alpha', 3, 'colorinterp') + item('Near Infrared', 3, 'description');
    const { roles, doubtful } = rolesByTag({ ...COLOUR, metadata });
    expect([roles[3], doubtful]).toEqual(['near-infrared', []]);
    const swapped = item('Blue', 0, 'colorinterp') + item('Red', 2, 'colorinterp');
    expect(rolesByTag({ ...COLOUR, metadata: swapped }).roles.slice(0, 3)).toEqual(['blue', 'green', 'red']);
  });

  test('bands that nothing names are taken by their order, and it is said', () => {
    const { roles, assumed } = rolesByTag({ ...COLOUR, photometric: 1, extraSamples: [0, 0, 0] });
    expect([roles, assumed]).toEqual([['red', 'green', 'blue', 'near-infrared'], true]);
    const six = rolesByTag({ ...COLOUR, count: 6, photometric: 1, extraSamples: [0, 0, 0, 0, 0] });
    expect([six.roles[1], six.assumed]).toEqual(['other', false]);
  });
});

describe('light or transparency', () => {
  test('light is in between, transparency is not', () => {
    expect(lightOrAlpha(Uint8Array.from({ length: 200 }, (_, i) => i))).toBe('near-infrared');
    expect(lightOrAlpha(Uint8Array.from({ length: 200 }, (_, i) => (i % 3 === 0 ? 0 : 255)))).toBe('alpha');
    // A feathered border of a tenth.
    expect(lightOrAlpha(Uint8Array.from({ length: 200 }, (_, i) => (i < 20 ? i * 12 : 255)))).toBe('alpha');
    // 0–255 kept in 16 bits.
    expect(lightOrAlpha(Uint16Array.of(0, 255, 255, 0))).toBe('alpha');
  });
  test('constant bands', () => {
    expect(lightOrAlpha(Uint8Array.of(255, 255))).toBe('alpha');
    expect(lightOrAlpha(Uint8Array.of(0, 0))).toBe('other');
    expect(lightOrAlpha(new Uint8Array(0))).toBe('other');
  });
});
