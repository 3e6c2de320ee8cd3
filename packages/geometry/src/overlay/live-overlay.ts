/**
 * An overlay that changes: one crown or one pavement piece at a time, with only its neighbourhood reckoned anew. For drawing
 * on a map while the figures follow.
 */
import type { Region } from '../ring.ts';
import type { FalloutZone, OverlayInput, OverlayLedger } from './ledger.ts';
import { cellsByPiece, ledgerOf } from './ledger-of.ts';
import { NO_CELLS, type PieceCells } from './piece-cells.ts';
import { PieceReckoner } from './piece-reckoner.ts';
import { Scene } from './scene.ts';

/**
 * Holds the cells of every piece. An edit answers with the numbers of the pieces whose cells may have changed, ascending;
 * whoever keeps sums adds the new cells of those and takes their old ones away.
 *
 * After any edits the cells are, to the bit, those of {@link reckonOverlay} on the edited input. Zones and pieces are numbered
 * as in the input; a number one beyond the last adds one. A removed zone or piece keeps its number and covers nothing.
 *
 * @example
 * const live = new LiveOverlay({ zones: [], pieces: [[Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)]], blocks: [] });
 * live.setZone(0, { layers: [[Float64Array.of(1, 0, 3, 0, 3, 2, 1, 2)]] }); // [0]
 * live.cells(0).areaM2; // [2, 2]
 */
export class LiveOverlay {
  private readonly scene: Scene;
  private readonly reckoner = new PieceReckoner();
  private readonly cellsOf: PieceCells[];
  private zoneCount: number;

  /** `ledger`: that of the very input, where other threads have reckoned it. */
  constructor(input: OverlayInput, ledger?: OverlayLedger) {
    this.scene = new Scene(input);
    this.zoneCount = 'count' in input.zones ? input.zones.count : input.zones.length;
    if (ledger) {
      this.cellsOf = cellsByPiece(ledger, input.pieces.length);
      return;
    }
    this.cellsOf = new Array<PieceCells>(input.pieces.length);
    for (const piece of this.scene.piecesBySpace()) {
      this.cellsOf[piece] = this.reckoner.cells(this.scene, piece);
    }
  }

  cells(piece: number): PieceCells {
    return this.cellsOf[piece] ?? NO_CELLS;
  }

  /** Of all pieces as they are now; a later edit changes nothing in this list. */
  allCells(): readonly PieceCells[] {
    return Array.from(this.cellsOf, (cells) => cells ?? NO_CELLS);
  }

  ledger(): OverlayLedger {
    return ledgerOf(this.cellsOf);
  }

  /** Puts a crown's zone in place of zone `i`; null removes it. */
  setZone(i: number, zone: FalloutZone | null): number[] {
    this.zoneCount = grownTo(this.zoneCount, i, 'zone');
    return this.redo(this.scene.setZone(i, zone?.layers ?? []));
  }

  /** Puts a region in place of piece `i`; null removes it. */
  setPiece(i: number, piece: Region | null): number[] {
    grownTo(this.cellsOf.length, i, 'piece');
    return this.redo(this.scene.setPiece(i, piece ?? []));
  }

  private redo(pieces: number[]): number[] {
    for (const piece of pieces) {
      this.cellsOf[piece] = this.reckoner.cells(this.scene, piece);
    }
    return pieces;
  }
}

/** The count after number `i` is used; a number that would leave a gap is a mistake of the caller. */
function grownTo(count: number, i: number, what: string): number {
  if (!(Number.isInteger(i) && i >= 0 && i <= count)) {
    throw new RangeError(`${what}: expected a number from 0 to ${count}, got ${i}`);
  }
  return Math.max(count, i + 1);
}
