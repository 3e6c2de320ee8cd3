/** The ledger cut down to what can be stained in any draw, laid out as plain arrays so that it can be sent to a worker. */
import type { OverlayLedger } from '@crownfall/geometry';
import { blockKey } from '../attribution.ts';
import type { LedgerKeys } from '../ledgers.ts';
import { depthOf } from './outline-shift.ts';

/** What the plan needs to know of a crown. */
export interface PlannedCrown {
  /** Position among the trees whose severities are drawn. */
  readonly tree: number;
  readonly spreadM: number;
  /** Standard deviation of how far its outline may lie off, m. */
  readonly outlineSdM: number;
}

export interface StainPlan {
  /** Crowns that may stain pavement; all below goes by their positions here. */
  readonly zones: Int32Array;
  readonly tree: Int32Array;
  readonly outlineSdM: Float64Array;
  readonly depthM: Float64Array;
  /** Own fallout on the pavement, m². */
  readonly falloutM2: Float64Array;
  /** Shares of the dose by layer, `[1, ring 1, …]`. */
  readonly layerShare: Float64Array;
  readonly ringToM: Float64Array;
  /** Cells under these crowns, in compressed rows; an entry is crown · layers + layer. */
  readonly areaM2: Float64Array;
  readonly coverStart: Int32Array;
  readonly cover: Int32Array;
  /** Run of cells of one piece in one block. */
  readonly run: Int32Array;
  readonly runPiece: Int32Array;
  /** The last block is what lies in no block. */
  readonly runBlock: Int32Array;
  readonly blockCount: number;
}

/** Plans over the crowns that `mayStain` (by zone). Linear in the ledger. */
export function stainPlan(
  ledger: OverlayLedger,
  crowns: readonly PlannedCrown[],
  rings: { readonly layerShare: Float64Array; readonly ringToM: Float64Array },
  { mayStain, keys }: { readonly mayStain: (zone: number) => boolean; readonly keys: Pick<LedgerKeys, 'blockCount'> },
): StainPlan {
  const layers = rings.layerShare.length;
  const layerM2 = areasByLayer(ledger, crowns.length, layers);
  const zones = Int32Array.from(
    [...crowns.keys()].filter((zone) => mayStain(zone) && rowSum(layerM2, zone * layers, layers) > 0),
  );
  const active = new Int32Array(crowns.length).fill(-1);
  zones.forEach((zone, i) => {
    active[zone] = i;
  });
  const own = (zone: number) => layerM2.subarray(zone * layers, (zone + 1) * layers);
  return {
    zones,
    tree: zones.map((zone) => crowns[zone].tree),
    outlineSdM: Float64Array.from(zones, (zone) => crowns[zone].outlineSdM),
    depthM: Float64Array.from(zones, (zone) => depthOf(own(zone), rings.ringToM, crowns[zone].spreadM)),
    falloutM2: Float64Array.from(zones, (zone) => rowSum(layerM2, zone * layers, layers)),
    ...rings,
    ...cellsOf(ledger, active, layers, keys.blockCount),
    blockCount: keys.blockCount,
  };
}

/** Own area of each crown on the pavement by layer, m². */
function areasByLayer(ledger: OverlayLedger, zones: number, layers: number): Float64Array {
  const areas = new Float64Array(zones * layers);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      areas[ledger.zone[entry] * layers + ledger.layer[entry]] += ledger.areaM2[cell];
    }
  }
  return areas;
}

function rowSum(values: Float64Array, start: number, length: number): number {
  let sum = 0;
  for (let i = start; i < start + length; i++) sum += values[i];
  return sum;
}

function cellsOf(ledger: OverlayLedger, active: Int32Array, layers: number, blockCount: number) {
  const areaM2: number[] = [];
  const coverStart = [0];
  const cover: number[] = [];
  const run: number[] = [];
  const runPiece: number[] = [];
  const runBlock: number[] = [];
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const before = cover.length;
    for (let entry = ledger.coverStart[cell]; entry < ledger.coverStart[cell + 1]; entry++) {
      const zone = active[ledger.zone[entry]];
      if (zone >= 0) cover.push(zone * layers + ledger.layer[entry]);
    }
    if (cover.length === before) continue;
    const piece = ledger.piece[cell];
    const block = blockKey(ledger.block[cell], blockCount);
    if (runPiece.at(-1) !== piece || runBlock.at(-1) !== block) {
      runPiece.push(piece);
      runBlock.push(block);
    }
    areaM2.push(ledger.areaM2[cell]);
    run.push(runPiece.length - 1);
    coverStart.push(cover.length);
  }
  return {
    areaM2: Float64Array.from(areaM2),
    coverStart: Int32Array.from(coverStart),
    cover: Int32Array.from(cover),
    run: Int32Array.from(run),
    runPiece: Int32Array.from(runPiece),
    runBlock: Int32Array.from(runBlock),
  };
}
