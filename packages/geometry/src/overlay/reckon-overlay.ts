/** The overlay of crowns' fallout zones on pavement and blocks, piece by piece: the door of the engine. */
import type { OverlayInput, OverlayLedger } from './ledger.ts';
import { ledgerOf } from './ledger-of.ts';
import type { PieceCells } from './piece-cells.ts';
import { PieceReckoner } from './piece-reckoner.ts';
import { Scene } from './scene.ts';

/**
 * Every square metre of pavement by piece, block and covering zones.
 *
 * Regions are read by the non-zero winding rule; no region is refused. Overlapping pieces (or blocks) share nothing: the
 * common part goes to the one listed first. Pieces, blocks and zones may be empty; the ledger then has no such cells.
 * `onPiece` is told how many pieces are done.
 *
 * Accuracy tested: 1e-9 m² per cell against the plain twin on grids of coincident edges, closed forms to 1e-10 m².
 *
 * @example
 * const square = [Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)];
 * const half = [Float64Array.of(1, 0, 3, 0, 3, 2, 1, 2)];
 * reckonOverlay({ zones: [{ layers: [half] }], pieces: [square], blocks: [] }).areaM2; // [2 (uncovered), 2 (under zone 0)]
 */
export function reckonOverlay(input: OverlayInput, onPiece?: (done: number, total: number) => void): OverlayLedger {
  const scene = new Scene(input);
  const reckoner = new PieceReckoner();
  const cells = new Array<PieceCells | undefined>(input.pieces.length);
  let done = 0;
  for (const piece of scene.piecesBySpace()) {
    cells[piece] = reckoner.cells(scene, piece);
    onPiece?.(++done, input.pieces.length);
  }
  return ledgerOf(cells);
}
