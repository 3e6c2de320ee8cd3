/** All figures of the stain at once: by piece, block, block and kind, crown, and in total. */
import { PAVEMENT_KINDS } from '@crownfall/survey';
import { type AreaColumns, areasBy } from './area-columns.ts';
import { type BlameColumns, blameByBlock, blockKey, type CrownColumns, crownAreas } from './attribution.ts';
import { type DoseField, stainedShares } from './stained-share.ts';

/** What the ledger's indices stand for. */
export interface LedgerKeys {
  /** Kind of each pavement piece, as a position in `PAVEMENT_KINDS`. */
  readonly pieceKind: Uint8Array;
  readonly blockCount: number;
}

export interface StainLedgers {
  readonly field: DoseField;
  readonly keys: LedgerKeys;
  /** Stained share by cell, 0–1. */
  readonly share: Float64Array;
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
 * the outside row, pieces and kinds each sum to the total (tested to 1e-9 relative). An empty ledger gives zeros.
 *
 * Example: a crown of dose 1 over 10 m² of a 40 m² sidewalk: pavement 40, drip line 10, stained 6.3212 m².
 */
export function reckonLedgers(field: DoseField, keys: LedgerKeys): StainLedgers {
  const { ledger } = field;
  const share = stainedShares(field);
  const kinds = PAVEMENT_KINDS.length;
  const blockOf = (cell: number) => blockKey(ledger.block[cell], keys.blockCount);
  return {
    field,
    keys,
    share,
    total: areasBy(ledger, share, 1, () => 0),
    byPiece: areasBy(ledger, share, keys.pieceKind.length, (cell) => ledger.piece[cell]),
    byBlock: areasBy(ledger, share, keys.blockCount + 1, blockOf),
    byBlockAndKind: areasBy(
      ledger,
      share,
      (keys.blockCount + 1) * kinds,
      (cell) => blockOf(cell) * kinds + keys.pieceKind[ledger.piece[cell]],
    ),
    crowns: crownAreas(field, share),
    blame: blameByBlock(field, share, keys.blockCount),
  };
}
