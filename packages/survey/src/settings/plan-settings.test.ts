import { describe, expect, test } from 'vitest';
import { told } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { readSettings } from './read-settings.ts';

const PRICE = { set_up: 1, per_tree: 2, per_m2: 3, hours_set_up: 1, hours_per_tree: 1, hours_per_m2: 0 };

describe('settings of the plan', () => {
  test('nothing is priced, stated or named by default', () => {
    const { plan } = readSettings({}).settings;
    expect(plan.prices).toEqual([]);
    expect(plan.keep_off_m).toEqual({ water: null, drain: null, well: null });
    expect(plan.applicator).toEqual({ name: '', licence: '' });
  });

  test('what is written is taken, fields that may be absent may be', () => {
    const plan = {
      budget: 500,
      prices: [{ action: 'clean', ...PRICE }],
      keep_off_m: { drain: 3 },
      products: [{ name: 'P', group: 'X1' }],
      weather: [{ block_id: '*', on: '2026-05-20', wind_m_s: null, rain_mm: 0 }],
    };
    const { settings, findings } = readSettings({ plan, bloom: { upper_c: null } });
    expect(findings).toEqual([]);
    expect(settings.plan).toEqual({
      ...DEFAULT_SETTINGS.plan,
      ...plan,
      keep_off_m: { water: null, drain: 3, well: null },
    });
    expect(settings.bloom.upper_c).toBeNull();
  });

  test.each([
    ['plan.budget', { plan: { budget: -1 } }],
    ['plan.prices', { plan: { prices: [{ action: 'clean', ...PRICE, per_m2: -3 }] } }],
    ['plan.prices', { plan: { prices: [{ action: 'spray', ...PRICE }] } }],
    ['plan.products', { plan: { products: [{ name: ' ', group: 'X1' }] } }],
    ['plan.weather', { plan: { weather: [{ block_id: '*', on: 'today', wind_m_s: 1, rain_mm: 0 }] } }],
    ['plan.keep_off_m.drain', { plan: { keep_off_m: { drain: 'far' } } }],
    ['bloom.count_from', { bloom: { count_from: '13-01' } }],
    ['bloom.method', { bloom: { method: 'cosine' } }],
  ])('%s out of range gives way to the default, with a finding', (field, raw) => {
    const { settings, findings } = readSettings(raw);
    expect(told(findings)).toEqual([`setting-out-of-range warning/assumed ${field}`]);
    expect(settings).toEqual(DEFAULT_SETTINGS);
  });
});
