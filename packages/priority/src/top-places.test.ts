import { CRITERIA, type Criterion, DEFAULT_SETTINGS } from '@crownfall/survey';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rankBlocks } from './rank.ts';
import { TopPlaces } from './top-places.ts';

const settings = { ...DEFAULT_SETTINGS.priority, top_n: 3 };
const amount = fc.double({ min: 0, max: 80, noNaN: true });
const block = fc.record({
  stainedM2: fc.oneof(fc.constant(0), amount),
  visible: fc.double({ min: 0, max: 1, noNaN: true }),
  traffic: fc.double({ min: 0, max: 1, noNaN: true }),
  worst: fc.double({ min: 0, max: 1, noNaN: true }),
  complaints: fc.nat(4),
});

test('the first places of a draw are those of a ranking of its amounts', () => {
  fc.assert(
    fc.property(fc.array(block, { minLength: 1, maxLength: 9 }), (blocks) => {
      const evidence = blocks.map((one, i) => {
        const zero = Object.fromEntries(CRITERIA.map((criterion) => [criterion, 0])) as Record<Criterion, number>;
        const amounts = {
          ...zero,
          stained: one.visible * one.stainedM2,
          foot_traffic: one.stainedM2 > 0 ? (one.traffic * one.stainedM2) / one.stainedM2 : 0,
          worst_severity: 100 * one.worst,
          complaints: one.complaints,
        };
        return { blockId: `B${(7 * i) % 10}`, stainedM2: one.stainedM2, amounts };
      });
      const first = rankBlocks(evidence, settings).slice(0, settings.top_n);
      const count = new Uint32Array(blocks.length);
      new TopPlaces(evidence, settings).countTop(
        {
          stainedM2: Float64Array.from(blocks, (one) => one.stainedM2),
          visibleM2: Float64Array.from(blocks, (one) => one.visible * one.stainedM2),
          trafficM2: Float64Array.from(blocks, (one) => one.traffic * one.stainedM2),
          worst: Float64Array.from(blocks, (one) => one.worst),
        },
        count,
      );
      const found = [...count.keys()].filter((i) => count[i] === 1);
      expect(found).toEqual(first.map(({ index }) => index).sort((a, b) => a - b));
    }),
  );
});

test('no blocks have no first places', () => {
  const count = new Uint32Array(0);
  const none = new Float64Array(0);
  new TopPlaces([], settings).countTop({ stainedM2: none, visibleM2: none, trafficM2: none, worst: none }, count);
  expect(count.length).toBe(0);
});
