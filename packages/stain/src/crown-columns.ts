/** What crowns do to pavement, as columns, and their rows as figures. */
import { unranged } from './area-columns.ts';
import type { CrownFigures } from './figures.ts';

/** One row for each zone; m². Drip line and fallout are the crown's own, overlaps with other crowns not removed. */
export interface CrownColumns {
  readonly driplineM2: Float64Array;
  readonly falloutM2: Float64Array;
  /** Attributed. */
  readonly stainedM2: Float64Array;
}

/** One row of the columns as figures, without ranges. */
export function crownFiguresAt(columns: CrownColumns, zone: number): CrownFigures {
  return {
    driplineM2: columns.driplineM2[zone],
    falloutM2: columns.falloutM2[zone],
    stainedM2: unranged(columns.stainedM2[zone]),
  };
}
