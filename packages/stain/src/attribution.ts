/** Whose stain it is: each cell's stained area split among the crowns above it in proportion to their doses. */
import { BalancedSums } from './balanced-sum.ts';
import type { CrownColumns } from './crown-columns.ts';
import type { StainRuns } from './stain-runs.ts';

/** The stained area of a block that is attributed to a zone, in compressed form: only pairs with a stain. */
export interface BlameColumns {
  /** −1: outside every block. Rows ascend by block, then zone; outside comes last. */
  readonly block: Int32Array;
  readonly zone: Int32Array;
  readonly stainedM2: Float64Array;
}

/**
 * Own areas and attributed stained area of every crown: `∫ c · d_t / Σd`, 0 where Σd = 0. Attributions sum to the stained
 * area (tested to 1e-9 relative); a crown without a dose is attributed nothing, whatever hangs over it.
 */
export function crownAreas({ zone, crowns }: StainRuns, zones: number): CrownColumns {
  const sums = new BalancedSums(zones);
  const sumsOf = (column: Float64Array): Float64Array => {
    sums.clear(zones);
    for (let entry = 0; entry < zone.length; entry++) sums.add(zone[entry], column[entry]);
    return sums.values();
  };
  return {
    driplineM2: sumsOf(crowns.driplineM2),
    falloutM2: sumsOf(crowns.falloutM2),
    stainedM2: sumsOf(crowns.stainedM2),
  };
}

/** The attribution by block as well: who stains this block, and by how much. Pairs with nothing attributed are left out. */
export function blameByBlock(
  { crownStart, zone, crowns }: StainRuns,
  { start, run }: BlockRuns,
  zones: number,
): BlameColumns {
  const made = { block: [] as number[], zone: [] as number[], stainedM2: [] as number[] };
  const sums = new BalancedSums(zones);
  const rowOf = new Int32Array(zones).fill(-1);
  const seen = new Int32Array(zones);
  const blockCount = start.length - 2;
  for (let b = 0; b <= blockCount; b++) {
    let count = 0;
    for (let i = start[b]; i < start[b + 1]; i++) {
      for (let entry = crownStart[run[i]]; entry < crownStart[run[i] + 1]; entry++) {
        if (crowns.stainedM2[entry] === 0) continue;
        if (rowOf[zone[entry]] < 0) {
          seen[count] = zone[entry];
          rowOf[zone[entry]] = count++;
        }
        sums.add(rowOf[zone[entry]], crowns.stainedM2[entry]);
      }
    }
    for (const each of seen.subarray(0, count).sort()) {
      made.block.push(b === blockCount ? -1 : b);
      made.zone.push(each);
      made.stainedM2.push(sums.at(rowOf[each]));
      rowOf[each] = -1;
    }
    sums.clear(count);
  }
  return {
    block: new Int32Array(made.block),
    zone: new Int32Array(made.zone),
    stainedM2: new Float64Array(made.stainedM2),
  };
}

/** The row of a block in columns that keep a last row for what lies in no block. */
export function blockKey(block: number, blockCount: number): number {
  return block < 0 ? blockCount : block;
}

/** Runs in the order of their blocks: `run[start[b]]` … `run[start[b + 1] − 1]` lie in block `b`, the last in no block. */
export interface BlockRuns {
  /** Length blocks + 2. */
  readonly start: Int32Array;
  readonly run: Int32Array;
}

export function runsByBlock({ block }: StainRuns, blockCount: number): BlockRuns {
  const start = new Int32Array(blockCount + 2);
  for (const each of block) start[blockKey(each, blockCount) + 1]++;
  for (let b = 0; b <= blockCount; b++) start[b + 1] += start[b];
  const next = start.slice();
  const run = new Int32Array(block.length);
  block.forEach((each, i) => {
    run[next[blockKey(each, blockCount)]++] = i;
  });
  return { start, run };
}
