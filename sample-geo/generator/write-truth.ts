/** The truth as a file beside the project, to hold a reckoning against; the project itself does not refer to it. */

import { round } from './life/crown-records.ts';
import type { QuadratNote } from './life/field-notes.ts';
import { RATERS, TRUE_CAUSE_FACTOR, TRUE_DOSE_COEFFICIENT, TRUE_RINGS, type TreeTruth } from './life/truth.ts';
import type { AerialPicture } from './picture/aerial.ts';
import { areaOf } from './town/shapes.ts';

export function truthFile(
  truth: readonly TreeTruth[],
  quadrats: readonly QuadratNote[],
  picture: AerialPicture,
): string {
  const seen = new Map(picture.crowns.map((crown) => [crown.treeId, crown]));
  const head = {
    description: 'Invented (CC0): what the records of this town were drawn from. Shares 0 to 1, lengths in metres.',
    dose_coefficient: TRUE_DOSE_COEFFICIENT,
    cause_factor: TRUE_CAUSE_FACTOR,
    drift_rings: TRUE_RINGS.map(({ toM, share }) => ({ to_m: toM, share })),
    raters: Object.fromEntries(
      Object.entries(RATERS).map(([name, r]) => [name, { bias_pct: r.biasPct, sd_pct: r.sdPct }]),
    ),
  };
  const trees = truth.map(({ tree, cause, galls, browned, brownedBefore, defoliated }) => {
    const crown = seen.get(tree.id);
    return {
      tree_id: tree.id,
      host: tree.host.name,
      cause,
      gall_load: galls,
      browned_2026: round(browned, 4),
      browned_2025: round(brownedBefore, 4),
      defoliated: round(defoliated, 4),
      crown_m2: round(areaOf(tree.outline), 2),
      ...(crown === undefined
        ? {}
        : { browned_in_image: round(crown.brownedShare, 4), visible_in_image: round(crown.visibleShare, 4) }),
    };
  });
  const plots = quadrats.map(({ id, trueDose, trueShare }) => ({
    quadrat_id: id,
    dose: trueDose,
    stained_share: trueShare,
  }));
  const lines = (items: readonly unknown[]) => items.map((item) => JSON.stringify(item)).join(',\n');
  const start = JSON.stringify(head, null, 1).slice(0, -2);
  return `${start},\n "trees": [\n${lines(trees)}\n],\n "quadrats": [\n${lines(plots)}\n]\n}\n`;
}
