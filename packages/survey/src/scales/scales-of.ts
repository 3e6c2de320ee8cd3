/** All class scales a project knows: the published ones and its own. */
import type { Settings } from '../settings.ts';
import type { ClassScale } from './class-scale.ts';
import { FOREST_SERVICE_CROWN } from './forest-service-crown.ts';
import { HORSFALL_BARRATT_0_11, HORSFALL_BARRATT_1_12 } from './horsfall-barratt.ts';

export const PUBLISHED_SCALES: readonly ClassScale[] = [
  HORSFALL_BARRATT_0_11,
  HORSFALL_BARRATT_1_12,
  FOREST_SERVICE_CROWN,
];

/** Scales by name in lower case. A table in the settings may not take the name of a published scale. */
export function scalesOf(settings: Settings): ReadonlyMap<string, ClassScale> {
  const scales = new Map<string, ClassScale>();
  for (const [name, table] of Object.entries(settings.scales)) {
    const classes = Object.entries(table.classes).map(([code, [loPct, hiPct]]) => ({ code, loPct, hiPct }));
    scales.set(name.toLowerCase(), { name, title: name, source: table.source, classes });
  }
  for (const scale of PUBLISHED_SCALES) scales.set(scale.name, scale);
  return scales;
}
