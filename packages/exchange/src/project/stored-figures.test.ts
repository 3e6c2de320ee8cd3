import { DEFAULT_SETTINGS, type ProjectInput, readSettings } from '@crownfall/survey';
import { expect, test } from 'vitest';
import { ratersText, withCalibration, withRaters } from './stored-figures.ts';

const bytes = (value: unknown): Uint8Array =>
  new TextEncoder().encode(typeof value === 'string' ? value : JSON.stringify(value));
const stored = { dose_coefficient: 0.9, dose_coefficient_log_sd: 0.07, dose_coefficient_freedom: 44 };

function input(settings: ProjectInput['settings'] = {}, sha256 = 'a'): ProjectInput {
  const layer = { file: 'ratings.csv', shape: 'table', crs: 'OGC:CRS84', features: [] } as const;
  const sources = [{ file: 'ratings.csv', sha256, bytes: 1 }];
  return {
    title: '',
    season: 2026,
    units: 'metric',
    layers: { ratings: layer },
    imagery: [],
    settings,
    sources,
    findings: [],
  };
}

test('a stored calibration sets k, its spread and the word calibrated', () => {
  const { settings, findings } = withCalibration(bytes(stored), input());
  const read = readSettings(settings).settings;
  expect(findings).toEqual([]);
  expect([read.dose_coefficient, read.calibrated]).toEqual([0.9, true]);
  expect(read.uncertainty).toEqual({
    ...DEFAULT_SETTINGS.uncertainty,
    dose_coefficient_log_sd: 0.07,
    dose_coefficient_freedom: 44,
  });
});

test('what project.json sets itself counts more, and a finding says so', () => {
  const own = input({ dose_coefficient: 2 });
  const { settings, findings } = withCalibration(bytes(stored), own);
  expect(settings).toBe(own.settings);
  expect(findings.map(({ code }) => code)).toEqual(['stored-figures-overridden']);
});

test('a change of ratings or drift since then is told, and the coefficient still used', () => {
  const { drift_rings, wind, cause_factor, severity_from, raters } = DEFAULT_SETTINGS;
  const restsOn = {
    files: { 'ratings.csv': 'a' },
    settings: { drift_rings, wind, cause_factor, severity_from, raters },
  };
  const record = bytes({ ...stored, rests_on: restsOn });
  expect(withCalibration(record, input()).findings).toEqual([]);
  const changed = withCalibration(record, input({ severity_from: 'greater' }, 'b'));
  expect(changed.findings.map(({ code, facts }) => [code, facts.changed])).toEqual([
    ['calibration-stale', 'ratings.csv, severity_from'],
  ]);
  expect(changed.settings.dose_coefficient).toBe(0.9);
});

test.each([
  '',
  '{',
  '[]',
  'null',
  '{"dose_coefficient":"0.9"}',
  '{"dose_coefficient":-1,"dose_coefficient_log_sd":0,"dose_coefficient_freedom":1}',
])('a damaged calibration is left out with a finding: %s', (text) => {
  const { settings, findings } = withCalibration(bytes(text), input());
  expect(settings).toEqual({});
  expect(findings.map(({ code }) => code)).toEqual(['stored-figures-unreadable']);
});

test('raters are read back as written; one listed in project.json stays as listed', () => {
  const reading = { bias_pct: 5, bias_se_pct: 1, error_sd_pct: 6 };
  const own = { bias_pct: 0, bias_se_pct: 0, error_sd_pct: 1 };
  const text = ratersText({ A: reading, B: reading }, 'known-answers');
  const { settings, findings } = withRaters(bytes(text), input({ raters: { B: own } }));
  expect(findings).toEqual([]);
  expect(readSettings(settings).settings.raters).toEqual({ A: reading, B: own });
  expect(withRaters(bytes('{"raters":{"A":{}}}'), input()).findings.map(({ code }) => code)).toEqual([
    'stored-figures-unreadable',
  ]);
});
