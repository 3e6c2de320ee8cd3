import type { RawFeature } from '@crownfall/survey';
import { fieldRule } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { newStop, type Stop, steppedPct } from './stop.ts';
import { visitOfStop } from './visit-of-stop.ts';

const BEGUN: Stop = newStop({
  stopId: '6b1f1f0e-0000-4000-8000-000000000001',
  project: 'town',
  blockId: 'B01',
  treeId: 'T1',
  startedAt: '2026-05-21T01:30:00.000Z',
  day: '2026-05-20',
});

describe('a stop as a visit', () => {
  test('nothing noted is an inspection, and holds nothing else', () => {
    expect(visitOfStop(BEGUN, 'R1')).toEqual({
      visitId: BEGUN.stopId,
      treeId: 'T1',
      blockId: 'B01',
      visitedOn: BEGUN.startedAt,
      visitor: 'R1',
      did: 'inspected',
      details: {},
    });
  });

  test('what was seen stands under the layers’ own field names, on the day where the person stood', () => {
    const { did, details } = visitOfStop(
      {
        ...BEGUN,
        brownedPct: 40,
        gallLoad: 'heavy',
        cause: 'frass',
        evidence: ['larvae-seen', 'galls-opened'],
        bbch: 65,
        bees: 'yes',
        quadrats: [
          { quadratId: 'Q-1', areaM2: 0.25, stainedPct: 12, range: [4.2, 30], method: 'count', at: [-80, 28] },
        ],
        hostSeen: 'Quercus virginiana',
      },
      'R1',
    );
    expect(did).toBe('inspected + rated + measured');
    expect(details).toMatchObject({
      ratings: [
        {
          browned_pct: 40,
          gall_load: 'heavy',
          cause: 'frass',
          evidence: 'larvae seen in galls; galls opened',
          rated_on: '2026-05-20',
          rater: 'R1',
        },
      ],
      bloom: [{ bbch: 65, larvae_in_galls: 'unknown', bees_at_flowers: 'yes', observed_on: '2026-05-20' }],
      quadrats: [{ quadrat_id: 'Q-1', area_m2: 0.25, stained_pct: 12, lon: -80, lat: 28, by: 'R1' }],
      wrong_species: { host: 'Quercus virginiana' },
    });
    // The contract knows each field by this name.
    for (const layer of ['ratings', 'bloom', 'quadrats'] as const) {
      const [row] = (details as unknown as Record<string, RawFeature['properties'][]>)[layer];
      const own = ['stained_lo_pct', 'stained_hi_pct', 'method'];
      expect(Object.keys(row).filter((field) => !own.includes(field) && !fieldRule(layer, field))).toEqual([]);
    }
  });
});

describe('a share by steps', () => {
  test('fine below 5 %, then by fives, and never out of 0 to 100', () => {
    const walked = (from: number | null, by: 1 | -1, steps: number): number[] => {
      const seen: number[] = [];
      for (let i = 0; i < steps; i++) seen.push(steppedPct(seen.at(-1) ?? from, by));
      return seen;
    };
    expect(walked(null, 1, 4)).toEqual([5, 10, 15, 20]);
    expect(walked(0, 1, 5)).toEqual([1, 2, 3, 5, 10]);
    expect(walked(20, -1, 7)).toEqual([15, 10, 5, 3, 2, 1, 0]);
    expect(steppedPct(100, 1)).toBe(100);
    expect(steppedPct(0, -1)).toBe(0);
    expect(steppedPct(null, -1)).toBe(0);
  });
});
