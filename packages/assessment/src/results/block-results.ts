/** Blocks as results, and their ledger by kind of pavement. */
import type { RankedBlock } from '@crownfall/priority';
import { type AreaColumns, figuresAt } from '@crownfall/stain';
import { PAVEMENT_KINDS, type Settings } from '@crownfall/survey';
import type { BlockNotes } from '../rank-stage.ts';
import type { BlockResult, LedgerRow } from '../result.ts';
import { Earlier, saysTheSame } from './kept.ts';
import type { Stages } from './stages.ts';
import { withRanges } from './with-ranges.ts';

/** One result for each block, in rank order; those as they were `before` are the same objects. */
export function blockResults(
  { ground, stain, ranking, drawn }: Pick<Stages, 'ground' | 'stain' | 'ranking' | 'drawn'>,
  settings: Settings,
  before: readonly BlockResult[] = [],
): BlockResult[] {
  const earlier = new Earlier(before, ({ blockId }) => blockId);
  return ranking.ranked.map((ranked, place): BlockResult => {
    const { index, rank, score, scoreParts } = ranked;
    const known = drawn ? undefined : earlier.find(ranked.blockId, place);
    if (known && isAsBefore(known, { ranked, notes: ranking.notes[index] }, stain.ledgers.byBlock)) return known;
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

/** Of a block of the same project, under the same calibration. */
function isAsBefore(
  known: BlockResult,
  { ranked, notes }: { readonly ranked: RankedBlock; readonly notes: BlockNotes },
  areas: AreaColumns,
): boolean {
  const { index } = ranked;
  return (
    known.rank === ranked.rank &&
    known.trees === notes.zones.length &&
    known.treesRated === notes.treesRated &&
    known.worstSeverityPct === notes.worstSeverityPct &&
    known.complaintsOpen === notes.complaintsOpen &&
    known.bloomState === notes.bloomState &&
    saysTheSame(known.scoreParts, ranked.scoreParts) &&
    known.pavementM2 === areas.pavementM2[index] &&
    known.driplineM2 === areas.driplineM2[index] &&
    known.falloutM2 === areas.falloutM2[index] &&
    known.stainedM2.value === areas.stainedM2[index]
  );
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
