/** An overlay ledger written out by hand, cell by cell: for worked examples and tests that need no geometry. */
import type { OverlayLedger } from '@crownfall/geometry';

export interface HandCell {
  readonly piece?: number;
  /** −1 or absent: outside every block. */
  readonly block?: number;
  readonly areaM2: number;
  /** Zone and layer of each crown above it. */
  readonly under?: readonly (readonly [zone: number, layer: number])[];
}

export function handLedger(cells: readonly HandCell[]): OverlayLedger {
  const covers = cells.map((cell) => cell.under ?? []);
  const coverStart = new Int32Array(cells.length + 1);
  covers.forEach((cover, i) => {
    coverStart[i + 1] = coverStart[i] + cover.length;
  });
  return {
    cellCount: cells.length,
    piece: Int32Array.from(cells, (cell) => cell.piece ?? 0),
    block: Int32Array.from(cells, (cell) => cell.block ?? -1),
    areaM2: Float64Array.from(cells, (cell) => cell.areaM2),
    coverStart,
    zone: Int32Array.from(covers.flat(), ([zone]) => zone),
    layer: Uint8Array.from(covers.flat(), ([, layer]) => layer),
  };
}
