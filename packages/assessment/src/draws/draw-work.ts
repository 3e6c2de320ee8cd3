/** The work of drawing, laid out as plain data: what is drawn, and what each draw means for blocks, kinds and ranks. */

import { type DrawPlan, severityPlan, sharedSpread, stainPlan } from '@crownfall/stain';
import type { PrioritySettings, Settings } from '@crownfall/survey';
import { CRITERIA, type Criterion, PAVEMENT_KINDS } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { Ranking } from '../rank-stage.ts';
import type { Stain } from '../stain-stage.ts';

export interface DrawWork {
  readonly plan: DrawPlan;
  /** By run of cells (one piece in one block). */
  readonly runVisibility: Float64Array;
  readonly runTraffic: Float64Array;
  /** Row of block and kind; see `kindKeys`. */
  readonly runKindRow: Int32Array;
  /** By row: block · kinds + kind, ascending. The last block is what lies in no block. */
  readonly kindKeys: Int32Array;
  /** By tree: the block in which its trunk stands, −1 for none. */
  readonly treeBlock: Int32Array;
  /** In the order of `Ground.blocks`. */
  readonly blocks: readonly { readonly blockId: string; readonly amounts: Readonly<Record<Criterion, number>> }[];
  readonly priority: PrioritySettings;
}

/** Lays out the work for a seed (whole number from 0). Linear in ledger, trees and blocks. */
export function drawWork(
  ground: Ground,
  stain: Stain,
  ranking: Ranking,
  by: { settings: Settings; seed: number },
): DrawWork {
  const { settings, seed } = by;
  const { drift_rings: rings, uncertainty, priority } = settings;
  const { reading, severities, ledgers } = stain;
  const crowns = ground.crowns.map(({ tree, spreadM }, zone) => ({
    tree: ground.treeIndex[zone],
    spreadM,
    outlineSdM: tree.outlineSdM ?? uncertainty.outline_sd_m,
  }));
  const severity = severityPlan(reading, settings);
  const byRing = {
    layerShare: Float64Array.from(ledgers.field.layerShare),
    ringToM: Float64Array.from(rings, ({ to_m }) => to_m),
  };
  const mayStain = (zone: number) => severities[zone].from !== 'none' && severities[zone].weightedHi > 0;
  const plan: DrawPlan = {
    seed,
    severity,
    stain: stainPlan(ground.ledger, crowns, byRing, { mayStain, keys: ledgers.keys }),
    ...sharedSpread(settings),
  };
  return {
    plan,
    ...runColumns(ground, plan, priority),
    treeBlock: treeBlocks(ground, reading.trees.length),
    blocks: amountsOf(ground, ranking),
    priority,
  };
}

function runColumns({ pavement }: Ground, { stain: { runPiece, runBlock } }: DrawPlan, priority: PrioritySettings) {
  const kinds = PAVEMENT_KINDS.length;
  const records = Array.from(runPiece, (piece) => pavement[piece].pavement);
  const keyOf = (run: number) => runBlock[run] * kinds + PAVEMENT_KINDS.indexOf(records[run].kind);
  const kindKeys = Int32Array.from(new Set(records.map((_, run) => keyOf(run)))).sort();
  const rowOf = new Map([...kindKeys].map((key, row) => [key, row]));
  return {
    runVisibility: Float64Array.from(records, ({ kind }) => priority.visibility[kind]),
    runTraffic: Float64Array.from(records, ({ footTraffic }) =>
      footTraffic === undefined ? 0 : priority.foot_traffic_value[footTraffic],
    ),
    runKindRow: Int32Array.from(records, (_, run) => rowOf.get(keyOf(run)) as number),
    kindKeys,
  };
}

function treeBlocks({ crowns, treeIndex }: Ground, trees: number): Int32Array {
  const blocks = new Int32Array(trees).fill(-1);
  crowns.forEach(({ block }, zone) => {
    blocks[treeIndex[zone]] = block;
  });
  return blocks;
}

function amountsOf({ blocks }: Ground, { ranked }: Ranking): DrawWork['blocks'] {
  const byBlock = new Map(ranked.map(({ index, scoreParts }) => [index, scoreParts]));
  return blocks.map(({ blockId }, block) => {
    const parts = byBlock.get(block) ?? [];
    const amounts = CRITERIA.map((criterion) => [
      criterion,
      parts.find((part) => part.criterion === criterion)?.amount ?? 0,
    ]);
    return { blockId, amounts: Object.fromEntries(amounts) as Record<Criterion, number> };
  });
}
