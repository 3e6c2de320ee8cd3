import { describe, expect, test } from 'vitest';
import { told } from '../sample-layers.ts';
import { DEFAULT_SETTINGS } from '../settings.ts';
import { readSettings } from './read-settings.ts';

describe('settings', () => {
  test('nothing written gives the defaults', () => {
    expect(readSettings({})).toEqual({ settings: DEFAULT_SETTINGS, findings: [] });
  });

  test('parts are laid over the defaults at any depth, lists replaced as a whole', () => {
    const { settings, findings } = readSettings({
      drift_rings: [{ to_m: 2, share: 0.3 }],
      priority: { weights: { stained: 1 }, levels: { stained: { full: 300 } } },
      as_of: '2026-07-01',
      scales: { 'house-2': { source: 'house rule', classes: { a: [0, 50], b: [50, 100] } } },
    });
    expect(findings).toEqual([]);
    expect(settings).toEqual({
      ...DEFAULT_SETTINGS,
      drift_rings: [{ to_m: 2, share: 0.3 }],
      as_of: '2026-07-01',
      scales: { 'house-2': { source: 'house rule', classes: { a: [0, 50], b: [50, 100] } } },
      priority: {
        ...DEFAULT_SETTINGS.priority,
        weights: { ...DEFAULT_SETTINGS.priority.weights, stained: 1 },
        levels: { ...DEFAULT_SETTINGS.priority.levels, stained: { none: 0, full: 300 } },
      },
    });
  });

  test('an unknown name is left out, with the nearest valid one', () => {
    const { settings, findings } = readSettings({ drift_ring: [], priority: { wieghts: {}, top_n: 3 } });
    expect(told(findings)).toEqual([
      'setting-unknown warning/left_out drift_ring',
      'setting-unknown warning/left_out priority.wieghts',
    ]);
    expect(findings.map((finding) => finding.facts.nearest)).toEqual(['drift_rings', 'weights']);
    expect(settings.priority.top_n).toBe(3);
  });

  test.each([
    [{ dose_coefficient: -1 }, 'dose_coefficient', '> 0, ≤ 1000'],
    [{ dose_coefficient: '1' }, 'dose_coefficient', '> 0, ≤ 1000'],
    [{ dose_coefficient: Number.NaN }, 'dose_coefficient', '> 0, ≤ 1000'],
    [{ drift_rings: [{ to_m: 1, share: 1.5 }] }, 'drift_rings', '[{ "to_m": > 0, ≤ 50 m, "share": 0–1 }, …]'],
    [
      {
        drift_rings: [
          { to_m: 1, share: 0.5 },
          { to_m: 0.5, share: 0.2 },
        ],
      },
      'drift_rings',
      'to_m[1] < to_m[2] < …',
    ],
    [{ severity_from: 'both' }, 'severity_from', 'browned, defoliated, greater'],
    [{ as_of: '1/7/2026' }, 'as_of', 'YYYY-MM-DD, null'],
    [{ calibrated: 'yes' }, 'calibrated', 'true, false'],
    [{ wind: 3 }, 'wind', '{ "towards_deg": -360–360 °, "distance_m": 0–50 m }'],
    [{ visit_window_days: 1.5 }, 'visit_window_days', '0–366'],
    [{ cause_factor: { unknown: 0.5 } }, 'cause_factor.unknown', '0'],
    [{ default_width_m: { path: 0 } }, 'default_width_m.path', '> 0, ≤ 200 m'],
    [{ priority: { levels: { complaints: { none: 4 } } } }, 'priority.levels.complaints', 'full > none'],
    [{ scales: { s: { source: 'x', classes: { a: [50, 0] } } } }, 'scales.s', '[lo, hi], lo ≤ hi'],
    [
      { scales: { s: { source: 'x', classes: { a: [0, 120] } } } },
      'scales',
      '{ "…": { "source": "…", "classes": { "…": [0–100 %, …] } } }',
    ],
  ])('%j gives way to the default', (raw, field, expected) => {
    const { settings, findings } = readSettings(raw);
    expect(settings).toEqual(DEFAULT_SETTINGS);
    expect(told(findings)).toEqual([`setting-out-of-range warning/assumed ${field}`]);
    expect(findings[0].facts.expected).toBe(expected);
  });

  test('weights that are all zero give way to the default', () => {
    const zero = Object.fromEntries(Object.keys(DEFAULT_SETTINGS.priority.weights).map((name) => [name, 0]));
    expect(readSettings({ priority: { weights: zero } }).settings).toEqual(DEFAULT_SETTINGS);
  });

  test('a table of one’s own may not take a published scale’s name', () => {
    const { settings, findings } = readSettings({ scales: { Percent: { source: 'x', classes: { a: [0, 1] } } } });
    expect(settings.scales).toEqual({});
    expect(told(findings)).toEqual(['setting-out-of-range warning/left_out scales.Percent']);
  });
});
