/** Blocks as results, and their ledger by kind of pavement. */
import { figuresAt } from '@crownfall/stain';
import { PAVEMENT_KINDS, type Settings } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { Ranking } from '../rank-stage.ts';
import type { BlockResult, LedgerRow } from '../result.ts';
import type { Stain } from '../stain-stage.ts';

/** One result for each block, in rank order. */
export function blockResults(ground: Ground, stain: Stain, ranking: Ranking, settings: Settings): BlockResult[] {
  return ranking.ranked.map(({ index, rank, score, scoreParts }): BlockResult => {
    const { zones, ...notes } = ranking.notes[index];
    return {
      ...figuresAt(stain.ledgers.byBlock, index),
      ...ground.blocks[index],
      rank,
      score,
      scoreParts,
      topShare: null,
      trees: zones.length,
      ...notes,
      calibrated: settings.calibrated,
    };
  });
}

/** One row for each block and kind of pavement it has, blocks in the order given; what lies in no block last. */
export function ledgerRows(ground: Ground, { ledgers }: Stain, blockOrder: readonly number[]): LedgerRow[] {
  const kinds = PAVEMENT_KINDS.length;
  return [...blockOrder, ground.blocks.length].flatMap((block) =>
    PAVEMENT_KINDS.flatMap((kind, k): LedgerRow[] => {
      const figures = figuresAt(ledgers.byBlockAndKind, block * kinds + k);
      if (figures.pavementM2 === 0) return [];
      return [{ blockId: block < ground.blocks.length ? ground.blocks[block].blockId : null, kind, ...figures }];
    }),
  );
}
