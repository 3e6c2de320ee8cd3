/** The draws of every action's effect: each draw of the ledger is weighed again as it would be with the doses lowered. */
import { type Drawn, type FigureSamples, figureSamples, makeDraws } from '@crownfall/stain';
import type { PlanSettings } from '@crownfall/survey';
import type { DrawWork } from '../draws/draw-work.ts';
import { turned } from './action-effects.ts';
import type { PlanScene } from './plan-scene.ts';

/** Rows are blocks, values m² avoided anywhere in the town. */
export interface EffectSamples {
  readonly draws: number;
  readonly clean: FigureSamples;
  readonly treat: FigureSamples;
  readonly treatAndClean: FigureSamples;
  readonly replace: FigureSamples;
  /** Stained area of each block; one row more is the town. */
  readonly stained: FigureSamples;
  readonly unrated: UnratedSamples;
}

/** What the draws say of single trees that nobody rated, in rows of trees. */
interface UnratedSamples {
  readonly zones: readonly number[];
  /** Block of each. */
  readonly block: Int32Array;
  /** g·w·s. */
  readonly weighted: FigureSamples;
  /** Attributed stained area, m². */
  readonly stainedM2: FigureSamples;
}

/** Trees beyond this many, least stained area last, are not followed one by one: a city would not fit into memory. */
const FOLLOWED_TREES = 2000;

type Shares = Pick<PlanSettings, 'clean_removes' | 'treat_lowers'>;

/** Makes `draws` draws of all effects, as `actionEffects` reckons them. Linear in draws and covers. */
export function effectDraws(work: DrawWork, scene: PlanScene, shares: Shares, draws: number): EffectSamples {
  const { stain } = work.plan;
  const count = stain.blockCount;
  const keeps = Float64Array.from(stain.zones, (zone) => (scene.treatedIn[zone] >= 0 ? 1 - shares.treat_lowers : 1));
  const unrated = followedTrees(work, scene);
  const samples: EffectSamples = {
    draws,
    clean: figureSamples(count, draws),
    treat: figureSamples(count, draws),
    treatAndClean: figureSamples(count, draws),
    replace: figureSamples(count, draws),
    stained: figureSamples(count + 1, draws),
    unrated: {
      ...unrated,
      weighted: figureSamples(unrated.zones.length, draws),
      stainedM2: figureSamples(unrated.zones.length, draws),
    },
  };
  const weigher = new EffectWeigher(work, scene);
  makeDraws(
    work.plan,
    0,
    draws,
    (drawn) => {
      weigher.weigh(drawn);
      keep(samples, weigher, shares, drawn);
      followTrees(samples.unrated, unrated.crown, work, drawn);
    },
    keeps,
  );
  return samples;
}

/** One draw's sums by block. */
class EffectWeigher {
  readonly stained: Float64Array;
  readonly toClean: Float64Array;
  readonly treat: Float64Array;
  readonly treatHere: Float64Array;
  readonly replace: Float64Array;
  readonly #work: DrawWork;
  /** By crown of the plan. */
  readonly #treatedIn: Int32Array;
  readonly #replacedIn: Int32Array;
  /** By run: its block when its pavement is cleaned, else −1. */
  readonly #cleaned: Int32Array;

  constructor(work: DrawWork, scene: PlanScene) {
    const { zones, blockCount, runBlock, runPiece } = work.plan.stain;
    const replacedIn = turned(scene.replaced, scene.treatedIn.length);
    this.#work = work;
    this.#treatedIn = zones.map((zone) => scene.treatedIn[zone]);
    this.#replacedIn = zones.map((zone) => replacedIn[zone]);
    this.#cleaned = runBlock.map((block, run) =>
      block < blockCount && scene.isCleaned[runPiece[run]] === 1 ? block : -1,
    );
    this.stained = new Float64Array(blockCount + 1);
    [this.toClean, this.treat, this.treatHere, this.replace] = [0, 0, 0, 0].map(() => new Float64Array(blockCount));
  }

  weigh({ clean, cleanLowered }: Drawn): void {
    for (const sums of [this.stained, this.toClean, this.treat, this.treatHere, this.replace]) sums.fill(0);
    const { areaM2, cover, coverStart, run, runBlock, layerShare } = this.#work.plan.stain;
    const layers = layerShare.length;
    for (let cell = 0; cell < areaM2.length; cell++) {
      const start = coverStart[cell];
      const end = coverStart[cell + 1];
      let bare = 1;
      for (let i = start; i < end; i++) bare *= clean[cover[i]];
      if (bare === 1) continue;
      const cleaned = this.#cleaned[run[cell]];
      this.stained[runBlock[run[cell]]] += areaM2[cell] * (1 - bare);
      if (cleaned >= 0) this.toClean[cleaned] += areaM2[cell] * (1 - bare);
      for (let i = start; i < end; i++) {
        const crown = (cover[i] / layers) | 0;
        if (this.#replacedIn[crown] >= 0)
          this.replace[this.#replacedIn[crown]] += areaM2[cell] * (bareWithout(i, start, end, cover, clean) - bare);
        const block = this.#treatedIn[crown];
        if (block < 0 || this.#wasCounted(block, start, i)) continue;
        let lowered = 1;
        for (let j = start; j < end; j++)
          lowered *= (this.#treatedIn[(cover[j] / layers) | 0] === block ? cleanLowered : clean)[cover[j]];
        const avoidedM2 = areaM2[cell] * (lowered - bare);
        this.treat[block] += avoidedM2;
        if (cleaned === block) this.treatHere[block] += avoidedM2;
      }
    }
  }

  #wasCounted(block: number, start: number, entry: number): boolean {
    const { cover, layerShare } = this.#work.plan.stain;
    for (let i = start; i < entry; i++) if (this.#treatedIn[(cover[i] / layerShare.length) | 0] === block) return true;
    return false;
  }
}

function bareWithout(entry: number, start: number, end: number, cover: Int32Array, clean: Float64Array): number {
  let bare = 1;
  for (let i = start; i < end; i++) if (i !== entry) bare *= clean[cover[i]];
  return bare;
}

function keep(samples: EffectSamples, sums: EffectWeigher, shares: Shares, { draw }: Drawn): void {
  const count = sums.treat.length;
  const at = draw * count;
  let town = 0;
  for (let block = 0; block < count; block++) {
    samples.clean.value[at + block] = shares.clean_removes * sums.toClean[block];
    samples.treat.value[at + block] = sums.treat[block];
    samples.treatAndClean.value[at + block] =
      sums.treat[block] + shares.clean_removes * (sums.toClean[block] - sums.treatHere[block]);
    samples.replace.value[at + block] = sums.replace[block];
    samples.stained.value[draw * (count + 1) + block] = sums.stained[block];
    town += sums.stained[block];
  }
  samples.stained.value[draw * (count + 1) + count] = town + sums.stained[count];
}

function followedTrees({ plan: { stain } }: DrawWork, scene: PlanScene) {
  const crownOf = new Map([...stain.zones].map((zone, crown) => [zone, crown]));
  const all = scene.unrated.flatMap((zones, block) =>
    zones.flatMap((zone) => {
      const crown = crownOf.get(zone);
      return crown === undefined ? [] : [{ zone, block, crown }];
    }),
  );
  const kept = all.sort((a, b) => stain.falloutM2[b.crown] - stain.falloutM2[a.crown]).slice(0, FOLLOWED_TREES);
  return {
    zones: kept.map(({ zone }) => zone),
    block: Int32Array.from(kept, ({ block }) => block),
    crown: Int32Array.from(kept, ({ crown }) => crown),
  };
}

function followTrees(
  { weighted, stainedM2 }: UnratedSamples,
  crowns: Int32Array,
  { plan: { stain } }: DrawWork,
  { draw, severities, crownM2 }: Drawn,
): void {
  crowns.forEach((crown, row) => {
    weighted.value[draw * weighted.rows + row] = severities.weighted[stain.tree[crown]];
    stainedM2.value[draw * stainedM2.rows + row] = crownM2[crown];
  });
}
