/** What would change a block's place: the least move of one weight, and the lead of the block above. */
import { leastShift, weightShiftToChangeTop } from '@crownfall/priority';
import type { Criterion } from '@crownfall/survey';
import type { BlockSummary } from '../project/project.ts';

export interface PlaceChange {
  /** The block that would come first (for the first), or that would be passed. */
  readonly rival: string;
  readonly criterion: Criterion;
  /** Shares of all weight. */
  readonly from: number;
  readonly to: number;
}

/** For the first block who passes it, for the others when they pass the one above; null when no single weight does it. */
export function placeChange(ranked: readonly BlockSummary[], block: BlockSummary): PlaceChange | null {
  const above = ranked[block.rank - 2];
  const least = leastShift(weightShiftToChangeTop(above ? [above, block] : ranked));
  if (!least) return null;
  return {
    rival: above?.blockId ?? least.rival,
    criterion: least.criterion,
    from: least.weight - least.shift,
    to: least.weight,
  };
}
