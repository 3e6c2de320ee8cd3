/** A run of draws, tallied: what one worker hands back. */
import { TopPlaces } from '@crownfall/priority';
import {
  type CrownTally,
  countCrowns,
  crownTally,
  type Drawn,
  type FigureSamples,
  figureSamples,
  makeDraws,
} from '@crownfall/stain';
import type { DrawWork } from './draw-work.ts';

/** Tallies of consecutive draws; plain data. */
export interface DrawPart {
  readonly draws: number;
  readonly total: FigureSamples;
  /** Blocks, then what lies in no block. */
  readonly blocks: FigureSamples;
  /** Rows as `DrawWork.kindKeys`. */
  readonly kinds: FigureSamples;
  readonly crowns: CrownTally;
  /** By block: draws in which it was among the first. */
  readonly top: Uint32Array;
}

/** Told how many draws of this part are done. */
export type OnDraw = (done: number) => void;

/** Makes draws `from` … `to − 1` and tallies them. Parts of any split join to the same figures. */
export function drawPart(work: DrawWork, from: number, to: number, onDraw: OnDraw = () => {}): DrawPart {
  const { plan, blocks: ranked, kindKeys } = work;
  const count = ranked.length;
  const part: DrawPart = {
    draws: to - from,
    total: figureSamples(1, to - from),
    blocks: figureSamples(count + 1, to - from),
    kinds: figureSamples(kindKeys.length, to - from),
    crowns: crownTally(plan.stain.zones.length),
    top: new Uint32Array(count),
  };
  const places = new TopPlaces(ranked, work.priority);
  const amounts = {
    stainedM2: new Float64Array(count + 1),
    visibleM2: new Float64Array(count + 1),
    trafficM2: new Float64Array(count + 1),
    worst: new Float64Array(count),
  };
  makeDraws(plan, from, to, (drawn) => {
    const at = drawn.draw - from;
    sumRuns(work, drawn, at, { part, amounts });
    worstOf(work, drawn, amounts.worst);
    countCrowns(part.crowns, drawn.crownM2, plan.stain.falloutM2);
    places.countTop(amounts, part.top);
    onDraw(at + 1);
  });
  return part;
}

type Amounts = Readonly<Record<'stainedM2' | 'visibleM2' | 'trafficM2' | 'worst', Float64Array>>;

function sumRuns(
  work: DrawWork,
  { runM2 }: Drawn,
  at: number,
  { part, amounts }: { part: DrawPart; amounts: Amounts },
): void {
  const { runVisibility, runTraffic, runKindRow, plan } = work;
  const { stainedM2, visibleM2, trafficM2 } = amounts;
  for (const sums of [stainedM2, visibleM2, trafficM2]) sums.fill(0);
  const kinds = part.kinds.value.subarray(at * part.kinds.rows, (at + 1) * part.kinds.rows);
  let total = 0;
  for (let run = 0; run < runM2.length; run++) {
    const block = plan.stain.runBlock[run];
    const areaM2 = runM2[run];
    total += areaM2;
    stainedM2[block] += areaM2;
    visibleM2[block] += runVisibility[run] * areaM2;
    trafficM2[block] += runTraffic[run] * areaM2;
    kinds[runKindRow[run]] += areaM2;
  }
  part.blocks.value.set(stainedM2, at * part.blocks.rows);
  part.total.value[at] = total;
}

/** The greatest severity among each block's trees that foul pavement in this draw. */
function worstOf({ treeBlock, plan }: DrawWork, { severities }: Drawn, worst: Float64Array): void {
  worst.fill(0);
  for (let tree = 0; tree < treeBlock.length; tree++) {
    const block = treeBlock[tree];
    if (block < 0 || severities.open[tree] === 0 || plan.severity.how[tree] === 0) continue;
    if (severities.share[tree] > worst[block]) worst[block] = severities.share[tree];
  }
}
