import fc from 'fast-check';
import { expect, test } from 'vitest';
import { distanceMap } from './distance-map.ts';

test('against the nearest cell by looking at all of them', () => {
  const rasters = fc
    .record({ width: fc.integer({ min: 1, max: 12 }), height: fc.integer({ min: 1, max: 12 }) })
    .chain(({ width, height }) =>
      fc.record({
        width: fc.constant(width),
        height: fc.constant(height),
        mask: fc.uint8Array({ minLength: width * height, maxLength: width * height, max: 1 }),
      }),
    );
  fc.assert(
    fc.property(rasters, ({ width, height, mask }) => {
      const got = distanceMap(mask, width, height);
      for (let p = 0; p < mask.length; p++) {
        let nearest = Infinity;
        for (let q = 0; q < mask.length; q++) {
          if (mask[q] === 1) continue;
          const across = (p % width) - (q % width);
          nearest = Math.min(nearest, Math.hypot(across, Math.floor(p / width) - Math.floor(q / width)));
        }
        expect(got[p]).toBe(Math.fround(nearest));
      }
    }),
  );
});
