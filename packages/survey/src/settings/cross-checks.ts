/** Checks between settings that are each in range by themselves but make no sense together. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import { CRITERIA, DEFAULT_SETTINGS, type PrioritySettings, type Settings } from '../settings.ts';
import { settingPlace } from './setting-place.ts';

/**
 * Settings with senseless combinations replaced by their defaults: drift rings that do not reach outwards, reference
 * levels that coincide or run backwards, weights that are all zero, class limits upside down, a stain from `none` or
 * `unknown`.
 */
export function crossChecks(settings: Settings, findings: Finding[]): Settings {
  const tell = (path: readonly string[], got: unknown, expected: string, used: unknown): void => {
    const facts = { got: JSON.stringify(got), expected, used: JSON.stringify(used) };
    findings.push(finding('setting-out-of-range', 'warning/assumed', settingPlace(path), facts));
  };
  return {
    ...settings,
    drift_rings: outwardRings(settings, tell),
    cause_factor: noStainWithoutCause(settings, tell),
    scales: uprightScales(settings, tell),
    priority: {
      ...settings.priority,
      weights: someWeight(settings.priority, tell),
      levels: distinctLevels(settings.priority, tell),
    },
  };
}

type Tell = (path: readonly string[], got: unknown, expected: string, used: unknown) => void;

function outwardRings(settings: Settings, tell: Tell): Settings['drift_rings'] {
  const rings = settings.drift_rings;
  if (rings.every((ring, i) => i === 0 || ring.to_m > rings[i - 1].to_m)) return rings;
  tell(['drift_rings'], rings, 'to_m[1] < to_m[2] < …', DEFAULT_SETTINGS.drift_rings);
  return DEFAULT_SETTINGS.drift_rings;
}

function noStainWithoutCause(settings: Settings, tell: Tell): Settings['cause_factor'] {
  for (const cause of ['none', 'unknown'] as const) {
    const got = settings.cause_factor[cause];
    if (got !== 0) tell(['cause_factor', cause], got, '0', 0);
  }
  return { ...settings.cause_factor, none: 0, unknown: 0 };
}

function uprightScales(settings: Settings, tell: Tell): Settings['scales'] {
  const entries = Object.entries(settings.scales).filter(([name, table]) => {
    const upright = Object.values(table.classes).every(([lo, hi]) => lo <= hi);
    if (!upright) tell(['scales', name], table.classes, '[lo, hi], lo ≤ hi', '–');
    return upright;
  });
  return Object.fromEntries(entries);
}

function someWeight(priority: PrioritySettings, tell: Tell): PrioritySettings['weights'] {
  if (CRITERIA.some((name) => priority.weights[name] > 0)) return priority.weights;
  tell(['priority', 'weights'], priority.weights, 'Σ > 0', DEFAULT_SETTINGS.priority.weights);
  return DEFAULT_SETTINGS.priority.weights;
}

function distinctLevels(priority: PrioritySettings, tell: Tell): PrioritySettings['levels'] {
  const levels = { ...priority.levels };
  for (const name of CRITERIA) {
    if (levels[name].full > levels[name].none) continue;
    tell(['priority', 'levels', name], levels[name], 'full > none', DEFAULT_SETTINGS.priority.levels[name]);
    levels[name] = DEFAULT_SETTINGS.priority.levels[name];
  }
  return levels;
}
