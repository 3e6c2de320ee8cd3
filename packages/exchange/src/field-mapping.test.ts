import { expect, test } from 'vitest';
import { fieldMapping } from './field-mapping.ts';
import { findingSink } from './finding-sink.ts';

function mapped(entry: object, record: Record<string, unknown>) {
  const findings = findingSink();
  const mapping = fieldMapping({ path: 'a.csv', ...entry }, { layer: 'crowns', file: 'a.csv' }, findings);
  const out = mapping.apply(record);
  mapping.finish();
  return { out, findings: findings.all() };
}

// International yard and pound agreement (1959): foot 0.3048 m, inch 0.0254 m. NIST SP 811: US survey foot 1200/3937 m.
test.each([
  ['spread_m', 'ft', 10, 3.048],
  ['spread_m', 'us-ft', 3937, 1200],
  ['height_m', 'in', 100, 2.54],
  ['outline_sd_m', 'cm', 25, 0.25],
  ['width_m', 'km', 0.002, 2],
  ['width_m', 'mm', 1500, 1.5],
  ['area_m2', 'ft2', 100, 9.290304],
  ['browned_pct', 'share', 0.4, 40],
  ['browned_pct', 'pct', 40, 40],
  ['spread_m', 'ft', '10', 3.048],
  ['spread_m', 'ft', '10 or so', '10 or so'],
  ['spread_m', 'ft', null, null],
  ['radii_m', 'ft', [10, '20'], [3.048, 6.096]],
  ['radii_m', 'ft', '10; 20;30', [3.048, 6.096, 9.144]],
])('%s in %s: %j is %j', (field, unit, given, expected) => {
  const { out, findings } = mapped({ fields: { [field]: 'THEIRS' }, units: { [field]: unit } }, { THEIRS: given });
  expect(out).toEqual({ [field]: expected });
  expect(findings).toEqual([]);
});

test('what is not mapped stays, and a column our name displaces is kept beside it', () => {
  const { out } = mapped({ fields: { height_m: 'HT' } }, { HT: 4, height_m: 13, street: 'x' });
  expect(out).toEqual({ height_m: 4, height_m_given: 13, street: 'x' });
});

test('a unit or a column that is not there is told with the nearest one', () => {
  const { findings } = mapped({ fields: { spread_m: 'CRN_SPRED' }, units: { spread_m: 'feet' } }, { CRN_SPRD: 1 });
  expect(findings).toMatchObject([
    { code: 'unit-unknown', severity: 'error', facts: { got: 'feet', valid: expect.stringContaining('us-ft') } },
    { code: 'mapping-field-missing', facts: { got: 'CRN_SPRED', nearest: 'CRN_SPRD' } },
  ]);
});
