/**
 * The collected cases of a polygon clipping library: areas of intersection, union, difference and exclusive or.
 *
 * Their published results read a polygon as its shell less its holes, each ring by the non-zero rule of its own (not
 * even-odd: the case non-zero-rule-not-even-odd says so). With rings as layers the overlay answers by that rule. Rings of one
 * region are read by the non-zero rule together, which is the same unless holes leave their shell, meet each other, or lie in
 * a second shell; {@link DIFFERING_BY_RULE} lists those cases. `readRegion` resolves them to the shell less its holes.
 */
import { readRegion, reckonOverlay } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { exactOperations, overlayOperations } from './clipping-areas.ts';
import { asRegion, type ClippingCase, clippingCases, hasClippingCases } from './clipping-cases.ts';
import { areasByCover, cellsOf, exactCells, WRONG_M2, worstCell } from './exact-area.ts';

if (!hasClippingCases) console.warn('skipped: ../shared/data/geometry/polygon-clipping-cases is not there');

/** Published results round their coordinates: at 32 m by some 1e-11 m, along a hundred metres of border. */
const PUBLISHED_M2 = 1e-8;
/** `readRegion` moves vertices of crossing rings by up to 0.7 µm, along a hundred metres of border. */
const RESOLVED_M2 = 1e-4;

const DIFFERING_BY_RULE = [
  'clean-poly-with-interior-ring-overlapping-exterior',
  'clean-poly-with-interior-ring-splitting-exterior',
  'clean-poly-with-interior-ring-touching-exterior',
  'clean-poly-with-interior-rings-overlapping',
  'multipoly-with-self-crossing-rings',
  'rings-with-no-area',
];

const total = (areas: Iterable<number>) => [...areas].reduce((sum, area) => sum + area, 0);
const unionByOneRule = ({ args }: ClippingCase) => total(areasByCover(args.map(asRegion)).values());
const cases = hasClippingCases ? clippingCases() : [];

describe.skipIf(!hasClippingCases)('cases of a polygon clipping library', () => {
  test.each(cases)('$name: all areas as the exact judge has them', ({ args }) => {
    const got = overlayOperations(args);
    for (const [operation, area] of exactOperations(args)) {
      expect(Math.abs((got.get(operation) ?? 0) - area), operation).toBeLessThan(WRONG_M2);
    }
  });

  test.each(cases)('$name: the first as pavement, the others as crowns', ({ args }) => {
    const [first, ...others] = args.map(asRegion);
    const input = { pieces: [first], blocks: [], zones: others.map((region) => ({ layers: [region] })) };
    expect(worstCell(cellsOf(reckonOverlay(input)), exactCells(input)).offM2).toBeLessThan(WRONG_M2);
  });

  test.each(cases.filter(({ results }) => results.size > 0))('$name: the published result', ({ args, results }) => {
    const got = overlayOperations(args);
    for (const [operation, polygons] of results) {
      const published = exactOperations([polygons]).get('union') ?? 0;
      expect(Math.abs((got.get(operation) ?? 0) - published), operation).toBeLessThan(PUBLISHED_M2);
    }
  });

  test('one non-zero rule for all rings of a region gives another union in the cases named, and in no others', () => {
    const differing = cases.filter((one) => {
      const ruled = exactOperations(one.args).get('union') ?? 0;
      return Math.abs(unionByOneRule(one) - ruled) > WRONG_M2;
    });
    expect(differing.map(({ name }) => name)).toEqual(DIFFERING_BY_RULE);
  });

  // One case is so small that, brought to 32 m, it lies 10¹³ km from the origin: a file's ring of that size has no area.
  test.each(cases.filter((one) => one.name !== 'very-small-polygon'))('$name: as read from a file', ({ args }) => {
    const regions = args.map((polygons) => readRegion(polygons).region);
    const union = total(areasByCover(regions).values());
    expect(Math.abs(union - (exactOperations(args).get('union') ?? 0))).toBeLessThan(RESOLVED_M2);
  });
});
