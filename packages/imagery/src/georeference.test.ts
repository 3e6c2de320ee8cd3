import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coarser, groundToPixel, northUp, pixelToGround } from './georeference.ts';

test('corners and middles of pixels lie where the convention says', () => {
  const t = northUp(500, 900, 2, 4);
  expect(pixelToGround(t, 0, 0)).toEqual([500, 900]);
  expect(pixelToGround(t, 0.5, 0.5)).toEqual([501, 898]);
  expect(pixelToGround(t, 10, 5)).toEqual([520, 880]);
});

test('ground and pixel are inverse for any pixels with an area', () => {
  const number = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(number, number, number, number, number, number, (columnX, rowX, columnY, rowY, column, row) => {
      fc.pre(Math.abs(columnX * rowY - rowX * columnY) > 0.1);
      const t = { originX: 1000, columnX, rowX, originY: -2000, columnY, rowY };
      const [c, r] = groundToPixel(t, ...pixelToGround(t, column, row));
      // Positions of 2000 in doubles, divided by a determinant of at least 0.1.
      expect(Math.abs(c - column) + Math.abs(r - row)).toBeLessThan(1e-9);
    }),
    { seed: 3 },
  );
});

test('an overview covers the same ground', () => {
  const t = northUp(10, 20, 0.25);
  expect(pixelToGround(coarser(t, 4, 4), 25, 50)).toEqual(pixelToGround(t, 100, 200));
});

test('pixels without an area are refused', () => {
  expect(() => northUp(0, 0, 0)).toThrow(RangeError);
  expect(() => groundToPixel({ originX: 0, columnX: 1, rowX: 1, originY: 0, columnY: 1, rowY: 1 }, 0, 0)).toThrow(
    'singular',
  );
});
