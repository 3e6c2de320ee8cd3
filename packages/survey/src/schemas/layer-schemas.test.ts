import Value from 'typebox/value';
import { describe, expect, test } from 'vitest';
import { LAYER_NAMES } from '../project-input.ts';
import { settingsSchema } from '../settings/settings-schema.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { fieldRule, schemas } from './layer-schemas.ts';

describe('published schemas', () => {
  test('every layer has one, plain JSON, with a description on every field', () => {
    expect(Object.keys(schemas).sort()).toEqual([...LAYER_NAMES].sort());
    const plain = JSON.parse(JSON.stringify(schemas));
    for (const layer of LAYER_NAMES) {
      for (const field of Object.values<{ description?: string }>(plain[layer].properties)) {
        expect(field.description).toMatch(/\.$/);
      }
    }
  });

  test('names of measures carry the unit that the schema states', () => {
    const units: Record<string, string> = { m: 'm', m2: 'm²', pct: '%', deg: '°' };
    for (const layer of LAYER_NAMES) {
      for (const field of Object.keys(schemas[layer].properties)) {
        const unit = units[field.split('_').at(-1) ?? ''];
        if (unit !== undefined) expect(fieldRule(layer, field)?.['x-unit']).toBe(unit);
      }
    }
  });

  test('they accept what the contract shows and refuse what it does not', () => {
    const rating = {
      tree_id: 'T',
      rated_on: '2026-05-03',
      browned_pct: 40,
      gall_load: 'light',
      cause: 'leaf_litter',
      photo: 1,
    };
    expect(Value.Check(schemas.ratings, rating)).toBe(true);
    expect(Value.Check(schemas.ratings, { ...rating, browned_pct: 140 })).toBe(false);
    expect(Value.Check(schemas.ratings, { ...rating, cause: 'fras' })).toBe(false);
    expect(Value.Check(schemas.ratings, { tree_id: 'T' })).toBe(false);
    expect(Value.Check(schemas.crowns, { radii_m: [1, 2, 3] })).toBe(true);
    expect(Value.Check(schemas.crowns, { spread_m: 0 })).toBe(false);
    expect(Value.Check(schemas.bloom, { observed_on: '2026-05-03', bbch: 62.5 })).toBe(false);
  });

  test('the default settings keep their own schema', () => {
    expect(Value.Check(settingsSchema, DEFAULT_SETTINGS)).toBe(true);
    expect(Object.keys(settingsSchema.properties).sort()).toEqual(Object.keys(DEFAULT_SETTINGS).sort());
  });
});
