/** The cells of all pieces, put together in the order of pieces, and taken apart again. */
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

/** The cells of each of `pieceCount` pieces: views into a ledger, which must not change. */
export function cellsByPiece(ledger: OverlayLedger, pieceCount: number): PieceCells[] {
  const cells = new Array<PieceCells>(pieceCount).fill(NO_CELLS);
  for (let from = 0; from < ledger.cellCount; ) {
    const piece = ledger.piece[from];
    let to = from + 1;
    while (to < ledger.cellCount && ledger.piece[to] === piece) {
      to++;
    }
    const [entry, end] = [ledger.coverStart[from], ledger.coverStart[to]];
    cells[piece] = {
      block: ledger.block.subarray(from, to),
      areaM2: ledger.areaM2.subarray(from, to),
      coverStart: ledger.coverStart.subarray(from, to + 1).map((start) => start - entry),
      zone: ledger.zone.subarray(entry, end),
      layer: ledger.layer.subarray(entry, end),
    };
    from = to;
  }
  return cells;
}
