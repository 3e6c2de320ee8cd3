/** The cells of all pieces, put together in the order of pieces. */
import type { OverlayLedger } from './ledger.ts';
import { NO_CELLS, type PieceCells } from './piece-cells.ts';

/** Pieces without an entry have no cells. */
export function ledgerOf(cells: readonly (PieceCells | undefined)[]): OverlayLedger {
  let cellCount = 0;
  let entryCount = 0;
  for (const piece of cells) {
    cellCount += piece?.block.length ?? 0;
    entryCount += piece?.zone.length ?? 0;
  }
  const ledger = {
    cellCount,
    piece: new Int32Array(cellCount),
    block: new Int32Array(cellCount),
    areaM2: new Float64Array(cellCount),
    coverStart: new Int32Array(cellCount + 1),
    zone: new Int32Array(entryCount),
    layer: new Uint8Array(entryCount),
  };
  let cell = 0;
  let entry = 0;
  for (let number = 0; number < cells.length; number++) {
    const { block, areaM2, coverStart, zone, layer } = cells[number] ?? NO_CELLS;
    ledger.piece.fill(number, cell, cell + block.length);
    ledger.block.set(block, cell);
    ledger.areaM2.set(areaM2, cell);
    ledger.zone.set(zone, entry);
    ledger.layer.set(layer, entry);
    for (let i = 1; i < coverStart.length; i++) {
      ledger.coverStart[cell + i] = entry + coverStart[i];
    }
    cell += block.length;
    entry += zone.length;
  }
  return ledger;
}
