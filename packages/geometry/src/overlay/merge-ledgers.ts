/** Ledgers of different pieces put together. */
import type { OverlayLedger } from './ledger.ts';

/**
 * One ledger of all cells, ordered by piece. Each piece's cells must lie in one of the ledgers; they keep their order. Merging
 * is associative and the order of the ledgers does not matter.
 */
export function mergeLedgers(ledgers: readonly OverlayLedger[]): OverlayLedger {
  const runs = ledgers.flatMap(runsOf).sort((a, b) => a.piece - b.piece);
  const cellCount = ledgers.reduce((sum, { cellCount }) => sum + cellCount, 0);
  const entryCount = ledgers.reduce((sum, { zone }) => sum + zone.length, 0);
  const merged = {
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
  for (const { ledger, piece, from, to } of runs) {
    const [first, last] = [ledger.coverStart[from], ledger.coverStart[to]];
    merged.piece.fill(piece, cell, cell + to - from);
    merged.block.set(ledger.block.subarray(from, to), cell);
    merged.areaM2.set(ledger.areaM2.subarray(from, to), cell);
    merged.zone.set(ledger.zone.subarray(first, last), entry);
    merged.layer.set(ledger.layer.subarray(first, last), entry);
    for (let i = from; i < to; i++) {
      merged.coverStart[++cell] = entry + ledger.coverStart[i + 1] - first;
    }
    entry += last - first;
  }
  return merged;
}

/** The cells `from … to − 1` of one piece in one ledger. */
interface Run {
  readonly ledger: OverlayLedger;
  readonly piece: number;
  readonly from: number;
  readonly to: number;
}

function runsOf(ledger: OverlayLedger): Run[] {
  const runs: Run[] = [];
  let from = 0;
  for (let cell = 1; cell <= ledger.cellCount; cell++) {
    if (cell === ledger.cellCount || ledger.piece[cell] !== ledger.piece[from]) {
      runs.push({ ledger, piece: ledger.piece[from], from, to: cell });
      from = cell;
    }
  }
  return runs;
}
