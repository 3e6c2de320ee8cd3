/**
 * The US Forest Service's 5 % crown classes, as used for crown density, dieback and transparency. A code is the upper limit
 * of its class in whole per cent, not a percentage: 05 means 1–5 %, 99 means 96–100 %.
 * Source: USDA Forest Service, FIA Database Handbook v9.3, TREE table 3.1.52–3.1.54. Midpoints are a convention of ours.
 */
import type { ClassScale } from './class-scale.ts';

export const FOREST_SERVICE_CROWN: ClassScale = {
  name: 'forest-service-crown-5pct',
  title: 'US Forest Service crown classes, 5 %',
  source: 'USDA Forest Service, FIA Database Handbook v9.3, TREE 3.1.52–3.1.54',
  classes: [
    { code: '00', loPct: 0, hiPct: 0 },
    ...Array.from({ length: 19 }, (_, i) => fivePercent(5 * (i + 1))),
    { code: '99', loPct: 96, hiPct: 100 },
  ],
};

function fivePercent(upper: number) {
  return { code: String(upper).padStart(2, '0'), loPct: upper - 4, hiPct: upper };
}
