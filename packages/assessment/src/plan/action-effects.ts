/**
 * What each action would avoid, from the pieces of the overlay: no geometry is redone. One pass over the cells gives the effect of
 * every block's actions, each as if done alone.
 */
import { BalancedSums, cellDose, type DoseField } from '@crownfall/stain';
import type { PlanSettings } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { PlanScene } from './plan-scene.ts';

/** Stained area avoided anywhere in the town, m², by block index. */
export interface ActionEffects {
  readonly clean: Float64Array;
  readonly treat: Float64Array;
  readonly treatAndClean: Float64Array;
  readonly replace: Float64Array;
}

type Shares = Pick<PlanSettings, 'clean_removes' | 'treat_lowers'>;

/**
 * Effects of all actions. Treatment: the doses of the block's treated crowns fall to `1 − treat_lowers` of themselves,
 * `Σ A·e^−(D − d)·(1 − e^−d)` with d what is taken away, in whatever block it lies. Cleaning takes `clean_removes` off what is
 * stained on the block's cleaned pavement, after a treatment off what is left there. Replacing sets one crown's dose to 0.
 * Linear in the ledger's covers; equal to reckoning anew with changed doses (tested to 1e-9).
 */
export function actionEffects(field: DoseField, ground: Ground, scene: PlanScene, shares: Shares): ActionEffects {
  const { ledger, layerShare, dose } = field;
  const count = ground.blocks.length;
  const sums = { stained: new BalancedSums(count), treat: new BalancedSums(count), treatHere: new BalancedSums(count) };
  const replace = new BalancedSums(count);
  const replacedIn = turned(scene.replaced, ground.crowns.length);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const total = cellDose(field, cell);
    if (total === 0) continue;
    const areaM2 = ledger.areaM2[cell];
    const cleaned = scene.isCleaned[ledger.piece[cell]] === 1 ? ledger.block[cell] : -1;
    if (cleaned >= 0) sums.stained.add(cleaned, areaM2 * -Math.expm1(-total));
    const own = (entry: number) => layerShare[ledger.layer[entry]] * dose[ledger.zone[entry]];
    const avoided = (taken: number) => areaM2 * Math.exp(-Math.max(0, total - taken)) * -Math.expm1(-taken);
    const end = ledger.coverStart[cell + 1];
    for (let entry = ledger.coverStart[cell]; entry < end; entry++) {
      const zone = ledger.zone[entry];
      if (replacedIn[zone] >= 0 && own(entry) > 0) replace.add(replacedIn[zone], avoided(own(entry)));
      const block = scene.treatedIn[zone];
      if (block < 0 || isEarlier(ledger, scene.treatedIn, cell, entry)) continue;
      let taken = 0;
      for (let other = entry; other < end; other++)
        if (scene.treatedIn[ledger.zone[other]] === block) taken += shares.treat_lowers * own(other);
      sums.treat.add(block, avoided(taken));
      if (cleaned === block) sums.treatHere.add(block, avoided(taken));
    }
  }
  const [stained, treat, treatHere] = [sums.stained.values(), sums.treat.values(), sums.treatHere.values()];
  return {
    clean: stained.map((areaM2) => shares.clean_removes * areaM2),
    treat,
    treatAndClean: treat.map((areaM2, b) => areaM2 + shares.clean_removes * (stained[b] - treatHere[b])),
    replace: replace.values(),
  };
}

/** Whether an earlier entry of the cell's cover belongs to the same treatment, which was then counted with it. */
function isEarlier(ledger: DoseField['ledger'], treatedIn: Int32Array, cell: number, entry: number): boolean {
  const block = treatedIn[ledger.zone[entry]];
  for (let before = ledger.coverStart[cell]; before < entry; before++)
    if (treatedIn[ledger.zone[before]] === block) return true;
  return false;
}

/** From zone by block to block by zone, −1 for none. */
export function turned(zoneOf: Int32Array, zones: number): Int32Array {
  const blockOf = new Int32Array(zones).fill(-1);
  zoneOf.forEach((zone, block) => {
    if (zone >= 0) blockOf[zone] = block;
  });
  return blockOf;
}
