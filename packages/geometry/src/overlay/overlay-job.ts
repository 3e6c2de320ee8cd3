/**
 * An overlay cut into shares for several threads or machines. A job is plain data that can be posted between threads; a
 * share is a list of its pieces; the ledgers of shares merge in any order and grouping to the very ledger of the whole.
 */
import type { Region } from '../ring.ts';
import type { PackedBoxes } from './box-index.ts';
import { type FlatRegions, flatRegions, regionAt, regionsOf } from './flat-regions.ts';
import type { OverlayInput, OverlayLedger } from './ledger.ts';
import { ledgerOf } from './ledger-of.ts';
import { mergeLedgers } from './merge-ledgers.ts';
import type { PieceCells } from './piece-cells.ts';
import { PieceReckoner } from './piece-reckoner.ts';
import { Scene } from './scene.ts';
import { type FalloutRecipe, zonesFromCrowns } from './zones-from-crowns.ts';

export interface OverlayJob {
  readonly crowns: FlatRegions;
  readonly recipe: FalloutRecipe;
  readonly pieces: FlatRegions;
  readonly blocks: FlatRegions;
  /** Packed indexes of the boxes, so that each thread need not build them again. */
  readonly packed: { readonly pieces: PackedBoxes; readonly blocks: PackedBoxes; readonly zones: PackedBoxes };
  /** Piece numbers, neighbours in space near each other. */
  readonly order: Int32Array;
}

export interface CrownScene {
  readonly crowns: readonly Region[];
  readonly recipe: FalloutRecipe;
  readonly pieces: readonly Region[];
  readonly blocks: readonly Region[];
}

/** The scene as the overlay reads it, zones made when they are needed. */
export function sceneInput({ crowns, recipe, pieces, blocks }: CrownScene): OverlayInput {
  return { zones: zonesFromCrowns(crowns.length, (i) => crowns[i], recipe), pieces, blocks };
}

/** Makes a job of regions in the plane. With `shared` its arrays lie in shared memory and posting it copies nothing. */
export function overlayJob({ crowns, recipe, pieces, blocks }: CrownScene, shared: boolean): OverlayJob {
  const flat = {
    crowns: flatRegions(crowns, shared),
    recipe,
    pieces: flatRegions(pieces, shared),
    blocks: flatRegions(blocks, shared),
  };
  const scene = new Scene(inputOf(flat));
  return { ...flat, packed: scene.packedBoxes(shared), order: scene.piecesBySpace() };
}

/** Cuts the pieces into `count` shares of neighbours, of about equal numbers of vertices. */
export function sharesOf({ order, pieces }: OverlayJob, count: number): Int32Array[] {
  const { regionStart, ringStart } = pieces;
  const verticesOf = (piece: number) => ringStart[regionStart[piece + 1]] - ringStart[regionStart[piece]];
  const all = order.reduce((sum, piece) => sum + verticesOf(piece), 0);
  const shares: Int32Array[] = [];
  let from = 0;
  let before = 0;
  for (let i = 0; i < order.length; i++) {
    before += verticesOf(order[i]);
    if (before >= (all * (shares.length + 1)) / count || i + 1 === order.length) {
      shares.push(order.subarray(from, i + 1));
      from = i + 1;
    }
  }
  return shares;
}

/** Reckons shares of one job: what a thread keeps. Piece, block and zone numbers are those of the whole. */
export class ShareReckoner {
  private readonly scene: Scene;
  private readonly reckoner = new PieceReckoner();
  private readonly pieceCount: number;

  constructor(job: OverlayJob) {
    this.scene = new Scene(inputOf(job), job.packed);
    this.pieceCount = job.order.length;
  }

  reckon(share: Int32Array): OverlayLedger {
    const cells = new Array<PieceCells | undefined>(this.pieceCount);
    for (const piece of share) {
      cells[piece] = this.reckoner.cells(this.scene, piece);
    }
    return ledgerOf(cells);
  }
}

/** A thread that has a {@link ShareReckoner} of the job and answers with the ledger of each share it is sent. */
export interface ShareWorker {
  reckon(share: Int32Array): Promise<OverlayLedger>;
}

/** Shares to each worker: many enough that the last to finish is not far behind, few enough that neighbours stay together. */
const SHARES_EACH = 8;

/**
 * The ledger of a job from several workers, to the bit that of {@link reckonOverlay}, whatever their number and speed: each
 * piece is reckoned by itself, and the merge puts pieces in order. `onPiece` is told how many are done.
 */
export async function reckonInShares(
  job: OverlayJob,
  workers: readonly ShareWorker[],
  onPiece?: (done: number, total: number) => void,
): Promise<OverlayLedger> {
  const waiting = sharesOf(job, workers.length * SHARES_EACH);
  const ledgers: OverlayLedger[] = [];
  let done = 0;
  await Promise.all(
    workers.map(async (worker) => {
      for (let share = waiting.shift(); share; share = waiting.shift()) {
        ledgers.push(await worker.reckon(share));
        done += share.length;
        onPiece?.(done, job.order.length);
      }
    }),
  );
  return mergeLedgers(ledgers);
}

function inputOf(job: Pick<OverlayJob, 'crowns' | 'recipe' | 'pieces' | 'blocks'>): OverlayInput {
  const { crowns, recipe, pieces, blocks } = job;
  return {
    zones: zonesFromCrowns(crowns.regionStart.length - 1, (i) => regionAt(crowns, i), recipe),
    pieces: regionsOf(pieces),
    blocks: regionsOf(blocks),
  };
}
