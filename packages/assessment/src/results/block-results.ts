/** Blocks as results, and their ledger by kind of pavement. */
import { figuresAt } from '@crownfall/stain';
import { PAVEMENT_KINDS, type Settings } from '@crownfall/survey';
import type { BlockResult, LedgerRow } from '../result.ts';
import type { Stages } from './stages.ts';
import { withRanges } from './with-ranges.ts';

/** One result for each block, in rank order. */
export function blockResults(
  { ground, stain, ranking, drawn }: Pick<Stages, 'ground' | 'stain' | 'ranking' | 'drawn'>,
  settings: Settings,
): BlockResult[] {
  return ranking.ranked.map(({ index, rank, score, scoreParts }): BlockResult => {
    const { zones, ...notes } = ranking.notes[index];
    return {
      ...withRanges(figuresAt(stain.ledgers.byBlock, index), drawn?.ofBlock(index)),
      ...ground.blocks[index],
      rank,
      score,
      scoreParts,
      topShare: drawn?.topShare(index) ?? null,
      trees: zones.length,
      ...notes,
      calibrated: settings.calibrated,
    };
  });
}

/** One row for each block and kind of pavement it has, blocks in the order given; what lies in no block last. */
export function ledgerRows(
  { ground, stain: { ledgers }, drawn }: Pick<Stages, 'ground' | 'stain' | 'drawn'>,
  blockOrder: readonly number[],
): LedgerRow[] {
  const kinds = PAVEMENT_KINDS.length;
  return [...blockOrder, ground.blocks.length].flatMap((block) =>
    PAVEMENT_KINDS.flatMap((kind, k): LedgerRow[] => {
      const figures = withRanges(figuresAt(ledgers.byBlockAndKind, block * kinds + k), drawn?.ofBlockAndKind(block, k));
      if (figures.pavementM2 === 0) return [];
      return [{ blockId: block < ground.blocks.length ? ground.blocks[block].blockId : null, kind, ...figures }];
    }),
  );
}
