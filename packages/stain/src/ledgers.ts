/** All figures of the stain at once: by piece, block, block and kind, crown, and in total. */
import { PAVEMENT_KINDS } from '@crownfall/survey';
import { type AreaColumns, areasBy } from './area-columns.ts';
import { type BlameColumns, type BlockRuns, blameByBlock, blockKey, crownAreas, runsByBlock } from './attribution.ts';
import type { CrownColumns } from './crown-columns.ts';
import { type StainRuns, stainRuns } from './stain-runs.ts';
import type { DoseField } from './stained-share.ts';

/** What the ledger's indices stand for. */
export interface LedgerKeys {
  /** Kind of each pavement piece, as a position in `PAVEMENT_KINDS`. */
  readonly pieceKind: Uint8Array;
  readonly blockCount: number;
}

export interface StainLedgers {
  readonly field: DoseField;
  readonly keys: LedgerKeys;
  /** What all else is summed from. */
  readonly runs: StainRuns;
  readonly blockRuns: BlockRuns;
  /** One row. */
  readonly total: AreaColumns;
  readonly byPiece: AreaColumns;
  /** `blockCount + 1` rows; the last is what lies in no block. */
  readonly byBlock: AreaColumns;
  /** Row `block · PAVEMENT_KINDS.length + kind`; the last block is what lies in no block. */
  readonly byBlockAndKind: AreaColumns;
  readonly crowns: CrownColumns;
  readonly blame: BlameColumns;
}

/**
 * Reckons the stained area and its ledgers. Linear in the ledger's size; no geometry. Ledgers balance: crowns, blocks with
 * the outside row, pieces and kinds each sum to the total (tested to 1e-9 relative). An empty ledger gives zeros. Overlaps count
 * once, because each cell is one piece of ground.
 *
 * Example: a crown of dose 1 over 10 m² of a 40 m² sidewalk: pavement 40, drip line 10, stained 6.3212 m².
 */
export function reckonLedgers(field: DoseField, keys: LedgerKeys): StainLedgers {
  return ledgersOf(stainRuns(field), field, keys);
}

/** The ledgers of runs that are known. */
export function ledgersOf(runs: StainRuns, field: DoseField, keys: LedgerKeys): StainLedgers {
  const { pieceKind, blockCount } = keys;
  const kinds = PAVEMENT_KINDS.length;
  const kindRow = runs.block.map((block, run) => blockKey(block, blockCount) * kinds + pieceKind[runs.piece[run]]);
  const byBlockAndKind = areasBy(runs.areas, kindRow, (blockCount + 1) * kinds);
  const blockOfRow = Int32Array.from({ length: (blockCount + 1) * kinds }, (_, row) => Math.floor(row / kinds));
  const byBlock = areasBy(byBlockAndKind, blockOfRow, blockCount + 1);
  const blockRuns = runsByBlock(runs, blockCount);
  return {
    field,
    keys,
    runs,
    blockRuns,
    total: areasBy(byBlock, new Int32Array(blockCount + 1), 1),
    byPiece: areasBy(runs.areas, runs.piece, pieceKind.length),
    byBlock,
    byBlockAndKind,
    crowns: crownAreas(runs, field.dose.length),
    blame: blameByBlock(runs, blockRuns, field.dose.length),
  };
}
