import { type BloomObservation, type Complaint, DEFAULT_SETTINGS } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { bloomStateOf, stateOf } from './bloom-state.ts';
import { complaintWeight, criterionAmounts } from './criterion-amounts.ts';

const settings = DEFAULT_SETTINGS.priority;
const seen = (observedOn: string, bbch: number, larvaeInGalls: BloomObservation['larvaeInGalls'] = 'no') =>
  ({ blockId: 'b', observedOn, bbch, larvaeInGalls, beesAtFlowers: 'unknown', extra: {} }) as const;
const complaint = (more: Partial<Complaint>): Complaint => ({
  complaintId: 'c',
  at: { lon: 0, lat: 0 },
  about: 'staining',
  state: 'open',
  extra: {},
  ...more,
});

describe('bloom window', () => {
  // BBCH monograph: 59 last of inflorescence emergence, 60 first flowers open, 69 end of flowering, 71 fruit set.
  test.each([
    [59, 'before'],
    [60, 'open'],
    [67, 'open'],
    [68, 'closing'],
    [69, 'closing'],
    [71, 'closed'],
  ])('BBCH %d is %s', (bbch, state) => {
    expect(stateOf({ bbch, larvaeInGalls: 'unknown' })).toBe(state);
  });

  // Common practice, no source: no spray reaches larvae inside the galls.
  test('larvae seen inside galls close it at any stage', () => {
    expect(stateOf({ bbch: 63, larvaeInGalls: 'yes' })).toBe('closed');
  });

  test('the newest observation counts, whatever the order, unless stale or from the future', () => {
    const list = [seen('2026-05-01', 58), seen('2026-05-08', 63), seen('2026-05-20', 75)];
    expect(bloomStateOf(list, '2026-05-10', 14)).toBe('open');
    expect(bloomStateOf(list.toReversed(), '2026-05-10', 14)).toBe('open');
    expect(bloomStateOf(list, '2026-05-21', 14)).toBe('closed');
    expect(bloomStateOf(list, '2026-06-03', 14)).toBe('closed');
    expect(bloomStateOf(list, '2026-06-04', 14)).toBe('unknown');
    expect(bloomStateOf([], '2026-06-04', 14)).toBe('unknown');
    expect(bloomStateOf(list, null, 14)).toBe('unknown');
  });

  test('on one day the most trees decide; a tie is not called open', () => {
    const day = '2026-05-08';
    expect(bloomStateOf([seen(day, 63), seen(day, 64), seen(day, 71)], day, 14)).toBe('open');
    expect(bloomStateOf([seen(day, 63), seen(day, 71)], day, 14)).toBe('closed');
    expect(bloomStateOf([seen(day, 63), seen(day, 58)], day, 14)).toBe('before');
  });
});

describe('complaints', () => {
  // Closed form: 2^(−age / half-life).
  test.each([
    ['2026-06-01', 1],
    ['2026-03-03', 0.5],
    ['2026-04-17', Math.SQRT1_2],
    ['2026-06-02', 0],
  ])('received %s, on 2026-06-01, half-life 90 days: weighs %d', (receivedOn, weight) => {
    expect(complaintWeight(complaint({ receivedOn }), settings, '2026-06-01')).toBeCloseTo(weight, 12);
  });

  test('closed ones and other matters do not count; an unknown date counts whole', () => {
    expect(complaintWeight(complaint({ state: 'closed' }), settings, '2026-06-01')).toBe(0);
    expect(complaintWeight(complaint({ about: 'litter' }), settings, '2026-06-01')).toBe(0);
    expect(complaintWeight(complaint({ about: 'larvae' }), settings, '2026-06-01')).toBe(1);
    expect(complaintWeight(complaint({ receivedOn: '2020-01-01' }), settings, null)).toBe(1);
  });

  test('a date that is none is refused', () => {
    expect(() => complaintWeight(complaint({ receivedOn: '1 May' }), settings, '2026-06-01')).toThrow(RangeError);
  });
});

describe('amounts of a block', () => {
  // Worked by hand with the default visibilities (sidewalk 1, carriageway 0.3, plaza 1) and classes (low 0.2, high 1).
  test('stained m² by visibility, foot traffic by stained area, the rest as counted', () => {
    const amounts = criterionAmounts(
      {
        stained: [
          { kind: 'sidewalk', footTraffic: 'high', stainedM2: 10 },
          { kind: 'carriageway', footTraffic: undefined, stainedM2: 20 },
          { kind: 'plaza', footTraffic: 'low', stainedM2: 10 },
        ],
        complaints: [complaint({ receivedOn: '2026-06-01' }), complaint({ receivedOn: '2026-03-03' })],
        severities: [0.2, 0.45],
        sites: 2,
        bloomState: 'closing',
      },
      settings,
      '2026-06-01',
    );
    expect(amounts).toEqual({
      stained: 26,
      foot_traffic: expect.closeTo(0.3, 12),
      complaints: 1.5,
      worst_severity: 45,
      sensitive_sites: 2,
      bloom_window: 0.6,
    });
  });

  test('a block with nothing has nothing', () => {
    const nothing = { stained: [], complaints: [], severities: [], sites: 0, bloomState: 'closed' } as const;
    expect(Object.values(criterionAmounts(nothing, settings, null))).toEqual([0, 0, 0, 0, 0, 0]);
  });
});
