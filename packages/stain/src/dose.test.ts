import { DEFAULT_SETTINGS, type TreeSeverity } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { layerShares, treeDoses } from './dose.ts';

const severity = (weightedSeverity: number): TreeSeverity => ({
  treeId: 't',
  share: 0.4,
  lo: 0.4,
  hi: 0.4,
  from: 'rating',
  cause: 'frass',
  gateShare: weightedSeverity > 0 ? 1 : 0,
  weightedSeverity,
  weightedLo: weightedSeverity,
  weightedHi: weightedSeverity,
  raters: [],
  ratedOn: null,
  group: '',
});

describe('dose', () => {
  // Closed form: k · (g·w·s).
  test('is k times the weighted severity, tree by tree', () => {
    expect([...treeDoses([severity(0.4), severity(0)], { dose_coefficient: 1.2 })]).toEqual([0.48, 0]);
  });

  test('layers: the crown takes all of it, each ring its share', () => {
    expect([...layerShares(DEFAULT_SETTINGS)]).toEqual([1, 0.5, 0.25]);
    expect([...layerShares({ drift_rings: [] })]).toEqual([1]);
  });
});
