/** What a whole plan avoids: all its actions reckoned together, as crowns of different blocks stain the same pavement. */
import type { ActionOffer } from '@crownfall/priority';
import { BalancedSums, cellDose, figureSamples, makeDraws, type Ranged } from '@crownfall/stain';
import type { DrawWork } from '../draws/draw-work.ts';
import { type OfferBook, ranged } from './offers-of.ts';

/**
 * Stained area avoided by the offers taken together, m²; equal to reckoning anew with all doses changed (tested to 1e-9), with the
 * range of the book's draws. No offers avoid nothing.
 */
export function jointEffect(book: OfferBook, offers: readonly ActionOffer[]): Ranged {
  const change = changeOf(book, offers);
  const value = avoidedNow(book, change);
  return ranged(value, book.work && avoidedInDraws(book.work, book.draws, change), 0);
}

interface Change {
  /** By zone: the share of its dose that a crown keeps. */
  readonly keeps: Float64Array;
  /** By block: share of the stain on cleaned pavement that stays; 1 where nothing is cleaned. */
  readonly leaves: Float64Array;
  readonly isCleaned: Uint8Array;
}

function changeOf({ reckoned, scene }: OfferBook, offers: readonly ActionOffer[]): Change {
  const { ground } = reckoned.stages;
  const { treat_lowers, clean_removes } = reckoned.settings.plan;
  const blockOf = new Map(ground.blocks.map(({ blockId }, block) => [blockId, block]));
  const keeps = new Float64Array(ground.crowns.length).fill(1);
  const leaves = new Float64Array(ground.blocks.length).fill(1);
  for (const { action, blockId } of offers) {
    const block = blockOf.get(blockId) ?? -1;
    if (block < 0) throw new RangeError(`expected a block of the project, got ${blockId}`);
    if (action === 'treat' || action === 'treat_and_clean')
      for (const zone of scene.treated[block]) keeps[zone] = 1 - treat_lowers;
    if (action === 'clean' || action === 'treat_and_clean') leaves[block] = 1 - clean_removes;
    if (action === 'replace' && scene.replaced[block] >= 0) keeps[scene.replaced[block]] = 0;
  }
  return { keeps, leaves, isCleaned: scene.isCleaned };
}

function avoidedNow({ reckoned }: OfferBook, { keeps, leaves, isCleaned }: Change): number {
  const { field } = reckoned.stages.stain.ledgers;
  const lowered = { ...field, dose: field.dose.map((dose, zone) => keeps[zone] * dose) };
  const { ledger } = field;
  const avoided = new BalancedSums(1);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const before = -Math.expm1(-cellDose(field, cell));
    if (before === 0) continue;
    const cleaned = ledger.block[cell] >= 0 && isCleaned[ledger.piece[cell]] === 1;
    const after = -Math.expm1(-cellDose(lowered, cell)) * (cleaned ? leaves[ledger.block[cell]] : 1);
    avoided.add(0, ledger.areaM2[cell] * (before - after));
  }
  return avoided.at(0);
}

function avoidedInDraws(work: DrawWork, draws: number, { keeps, leaves, isCleaned }: Change) {
  const { stain } = work.plan;
  const samples = figureSamples(1, draws);
  const runLeaves = Float64Array.from(stain.runBlock, (block, run) =>
    block < stain.blockCount && isCleaned[stain.runPiece[run]] === 1 ? leaves[block] : 1,
  );
  const crownKeeps = Float64Array.from(stain.zones, (zone) => keeps[zone]);
  const weigh = ({ draw, clean, cleanLowered }: { draw: number; clean: Float64Array; cleanLowered: Float64Array }) => {
    let avoidedM2 = 0;
    for (let cell = 0; cell < stain.areaM2.length; cell++) {
      let bare = 1;
      let lowered = 1;
      for (let i = stain.coverStart[cell]; i < stain.coverStart[cell + 1]; i++) {
        bare *= clean[stain.cover[i]];
        lowered *= cleanLowered[stain.cover[i]];
      }
      avoidedM2 += stain.areaM2[cell] * (1 - bare - runLeaves[stain.run[cell]] * (1 - lowered));
    }
    samples.value[draw] = avoidedM2;
  };
  makeDraws(work.plan, 0, draws, weigh, crownKeeps);
  return samples;
}
