import {
  type Action,
  DEFAULT_SETTINGS,
  describeReason,
  type PlanSettings,
  type Price,
  type PricedAction,
} from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { chargeOf } from './action-offer.ts';
import { type BlockSituation, reasonsAgainst } from './reasons-against.ts';
import { rotationNotes } from './rotation.ts';

const price = (action: PricedAction): Price => ({
  action,
  set_up: 90,
  per_tree: 30,
  per_m2: 2,
  hours_set_up: 1,
  hours_per_tree: 0.5,
  hours_per_m2: 0.1,
});

/** Everything done, measured and named: treatment may be done. */
const PLAN: PlanSettings = {
  ...DEFAULT_SETTINGS.plan,
  prices: [price('inspect'), price('clean'), price('treat'), price('replace')],
  keep_off_m: { water: 15, drain: 2, well: 30 },
  wind_max_m_s: 4,
  rain_max_mm: 1,
  applicator: { name: 'Invented', licence: 'X-1' },
  weather: [{ block_id: '*', on: '2026-05-20', wind_m_s: 2, rain_mm: 0 }],
};
const READY: BlockSituation = {
  blockId: 'B1',
  asOf: '2026-05-20',
  trees: 4,
  unrated: 1,
  diagnosed: 2,
  treatable: 2,
  clearOfWater: 1,
  nearestWater: { kind: 'drain', distanceM: 1.5, keepOffM: 2 },
  waterKinds: ['water', 'drain', 'well'],
  bloomState: 'open',
  seenOn: '2026-05-19',
  beesLookedOn: '2026-05-20',
  beesSeen: false,
  stainedToCleanM2: 40,
};

const codes = (action: Action, situation: Partial<BlockSituation>, plan: Partial<PlanSettings> = {}) =>
  reasonsAgainst(action, { ...READY, ...situation }, { ...PLAN, ...plan }).map(({ code }) => code);
const weather = (wind_m_s: number | null, rain_mm: number | null, on = '2026-05-20', block_id = 'B1') => ({
  weather: [{ block_id, on, wind_m_s, rain_mm }],
});

describe('rules that forbid', () => {
  test.each(['leave', 'inspect', 'clean', 'treat', 'treat_and_clean', 'replace'] as const)(
    'nothing forbids %s when all is done',
    (action) => {
      expect(codes(action, {})).toEqual([]);
    },
  );

  // Each rule alone, with the words it is told by.
  test.each<[string, Partial<BlockSituation>, Partial<PlanSettings>, string]>([
    ['no-tree', { trees: 0 }, {}, 'No tree stands'],
    ['cause-without-evidence', { treatable: 0, clearOfWater: 0 }, {}, 'No tree of the block has a cause'],
    ['window-not-open', { bloomState: 'before' }, {}, 'not open: not in flower yet'],
    ['window-not-open', { bloomState: 'closing' }, {}, 'not open: closing'],
    ['window-not-open', { bloomState: 'closed' }, {}, 'not open: closed'],
    ['window-not-open', { bloomState: 'unknown' }, {}, 'not observed lately'],
    ['pollinator-check-missing', { beesLookedOn: null }, {}, 'Nobody has looked for bees'],
    ['pollinator-check-missing', { beesLookedOn: '2026-05-18' }, {}, 'since 2026-05-18'],
    ['bees-seen', { beesSeen: true }, {}, 'Bees were at the flowers on 2026-05-20'],
    ['water-not-mapped', { waterKinds: [], nearestWater: null }, {}, 'not mapped'],
    [
      'keep-off-not-stated',
      {},
      { keep_off_m: { water: 15, drain: null, well: 30 } },
      'keep from a drain is not stated',
    ],
    ['water-near', { clearOfWater: 0 }, {}, '1.5 m from a drain, 2 m are to be kept'],
    ['wind-missing', {}, weather(null, 0), 'The wind is not filled in'],
    ['rain-missing', {}, weather(2, null), 'The rain is not filled in'],
    ['wind-above-limit', {}, weather(4.5, 0), 'The wind is 4.5 m/s'],
    ['rain-above-limit', {}, weather(2, 3), 'Rain of 3 mm'],
    ['licence-missing', {}, { applicator: { name: 'Invented', licence: ' ' } }, 'No licensed applicator'],
    ['licence-missing', {}, { applicator: { name: '', licence: 'X-1' } }, 'No licensed applicator'],
  ])('%s forbids treatment, alone and with cleaning', (code, situation, plan, words) => {
    for (const action of ['treat', 'treat_and_clean'] as const) {
      const [reason, ...others] = reasonsAgainst(action, { ...READY, ...situation }, { ...PLAN, ...plan });
      expect(reason?.code).toBe(code);
      expect(others).toEqual([]);
      expect(describeReason(reason, 'en').what).toContain(words);
      expect(describeReason(reason, 'es').what).not.toMatch(/…|\{/);
      expect(describeReason(reason, 'es').remedy).not.toBe('');
    }
  });

  test('weather that is too old, or read for another block, is not read', () => {
    expect(codes('treat', {}, weather(2, 0, '2026-05-18'))).toEqual(['wind-missing', 'rain-missing']);
    expect(codes('treat', {}, weather(2, 0, '2026-05-20', 'B2'))).toEqual(['wind-missing', 'rain-missing']);
  });

  test('other actions have rules of their own', () => {
    expect(codes('inspect', { unrated: 0 })).toEqual(['all-rated']);
    expect(codes('inspect', { trees: 0, unrated: 0 })).toEqual(['no-tree']);
    expect(codes('clean', { stainedToCleanM2: 0 })).toEqual(['nothing-stained']);
    expect(codes('treat_and_clean', { stainedToCleanM2: 0 })).toEqual(['nothing-stained']);
    expect(codes('replace', { diagnosed: 0 })).toEqual(['cause-without-evidence']);
    expect(codes('leave', { trees: 0, treatable: 0, stainedToCleanM2: 0 })).toEqual([]);
  });

  test('without a price nothing is offered but leaving alone', () => {
    expect(codes('treat_and_clean', {}, { prices: [price('clean')] })).toEqual(['price-missing']);
    expect(codes('inspect', {}, { prices: [] })).toEqual(['price-missing']);
    expect(codes('leave', {}, { prices: [] })).toEqual([]);
  });

  test('every reason is told at once, not one after the other', () => {
    const all = codes('treat', { bloomState: 'closed', beesSeen: true }, { applicator: { name: '', licence: '' } });
    expect(all).toEqual(['window-not-open', 'bees-seen', 'licence-missing']);
  });
});

// Arithmetic: 90 + 4 · 30 = 210; 1 + 4 · 0.5 = 3. 90 + 50 · 2 = 190.
test('what an action costs', () => {
  expect(chargeOf('treat', { trees: 4, areaM2: 0 }, PLAN.prices)).toEqual({ cost: 210, crewHours: 3 });
  expect(chargeOf('clean', { trees: 0, areaM2: 50 }, PLAN.prices)).toEqual({ cost: 190, crewHours: 6 });
  expect(chargeOf('clean', { trees: 0, areaM2: 50 }, [])).toBeNull();
});

// Principle: IRAC, alternate mode-of-action groups between generations and seasons (from memory).
test('the same mode of action as last time is told, another is not', () => {
  const products = [
    { name: 'P', group: 'X1' },
    { name: 'Q', group: ' x1' },
    { name: 'R', group: 'X2' },
  ];
  const treatments = [
    { block_id: 'B1', on: '2024-05-01', product: 'P' },
    { block_id: 'B1', on: '2025-05-01', product: 'R' },
    { block_id: 'B2', on: '2025-05-01', product: 'Q' },
    { block_id: 'B3', on: '2026-05-02', product: 'P' },
    { block_id: 'B4', on: '2023-05-02', product: 'P' },
  ];
  const notes = rotationNotes(['B1', 'B2', 'B3', 'B4'], { product: 'P', products, treatments }, '2026-05-20');
  expect(notes.map(({ blockId, since }) => `${blockId} ${since}`)).toEqual(['B2 last-season', 'B3 this-season']);
  expect(rotationNotes(['B2'], { product: '', products, treatments }, '2026-05-20')).toEqual([]);
});
