/** A seeded part of overlay-geos.ts, with GEOS 3.13.0 as WebAssembly. */
import { expect, test } from 'vitest';
import { AreaComparison } from './compare-areas.ts';
import { geosAreas } from './geos-wasm-areas.ts';
import { randomNeighbourhood, randomPair } from './overlay-case.ts';

/** Far from the numbers of the long run, so that the suite adds cases to it. */
const FIRST = 3_000_000_000;

test.each([
  ['pairs', 1000, randomPair],
  ['neighbourhoods', 60, randomNeighbourhood],
] as const)('random %s agree with GEOS to 1e-9, 500 km from the origin', (_, count, make) => {
  const comparison = new AreaComparison();
  for (let number = FIRST; number < FIRST + count; number++) {
    const overlayCase = make(number);
    comparison.add(number, overlayCase, geosAreas(overlayCase));
  }
  expect(comparison.disagreements).toEqual([]);
  expect(comparison.invalid).toBeLessThan(count / 100);
  expect(comparison.areasAboveZero).toBeGreaterThan(count / 3);
});
