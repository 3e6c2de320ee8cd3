import { type Action, describeReason, type PlanSettings, REASON_CODES, type ReasonCode } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { chargeOf } from './action-offer.ts';
import { READY_PLAN as PLAN, READY_BLOCK as READY, REASON_CASES, reasonsIn } from './reason-cases.test-data.ts';
import { type BlockSituation, reasonsAgainst } from './reasons-against.ts';
import { rotationNotes } from './rotation.ts';

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

  // Each reason there is, alone, with the words it is told by.
  test.each(REASON_CODES)('%s forbids', (code: ReasonCode) => {
    const { says } = REASON_CASES[code];
    const [reason, ...others] = reasonsIn(REASON_CASES[code]);
    expect(reason?.code).toBe(code);
    expect(others).toEqual([]);
    expect(describeReason(reason, 'en').what).toContain(says);
    for (const language of ['en', 'es'] as const) {
      const { what, remedy } = describeReason(reason, language);
      expect(what).not.toMatch(/…|[{}]/);
      expect(remedy).not.toMatch(/^$|…|[{}]/);
    }
  });

  test('what forbids a treatment forbids it with a cleaning too', () => {
    const treating = REASON_CODES.filter((code) => code !== 'price-missing' && REASON_CASES[code].action === 'treat');
    expect(treating.length).toBe(13);
    for (const code of treating)
      expect(reasonsIn({ ...REASON_CASES[code], action: 'treat_and_clean' }).map((reason) => reason.code)).toEqual([
        code,
      ]);
  });

  test.each<[string, Partial<BlockSituation>, Partial<PlanSettings>, string]>([
    ['window-not-open', { bloomState: 'before' }, {}, 'not open: not in flower yet'],
    ['window-not-open', { bloomState: 'closing' }, {}, 'not open: closing'],
    ['window-not-open', { bloomState: 'unknown' }, {}, 'not observed lately'],
    ['pollinator-check-missing', { beesLookedOn: null }, {}, 'Nobody has looked for bees'],
    ['licence-missing', {}, { applicator: { name: '', licence: 'X-1' } }, 'No licensed applicator'],
  ])('%s in its other forms', (code, situation, plan, words) => {
    const reasons = reasonsAgainst('treat', { ...READY, ...situation }, { ...PLAN, ...plan });
    expect(reasons.map((reason) => reason.code)).toEqual([code]);
    expect(describeReason(reasons[0], 'en').what).toContain(words);
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
    expect(codes('treat_and_clean', {}, { prices: [PLAN.prices[1]] })).toEqual(['price-missing']);
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
