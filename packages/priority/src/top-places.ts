/** How often a block comes among the first: places under drawn amounts, without making a ranking of each draw. */
import { CRITERIA, type Criterion, type PrioritySettings } from '@crownfall/survey';
import { levelValue } from './level-value.ts';
import { type BlockEvidence, normalisedWeights } from './rank.ts';

/** What a draw changes of the blocks' amounts, by block. */
export interface DrawnAmounts {
  readonly stainedM2: Float64Array;
  /** Σ visibility · stained m². */
  readonly visibleM2: Float64Array;
  /** Σ foot-traffic value · stained m². */
  readonly trafficM2: Float64Array;
  /** Greatest severity 0–1 of the block's fouling trees. */
  readonly worst: Float64Array;
}

const DRAWN: readonly Criterion[] = ['stained', 'foot_traffic', 'worst_severity'];
/** Scores and areas this near to each other, relatively, are a tie, as in `rankBlocks`. */
const TIE = 1e-12;

/** Scores of blocks with what no draw changes reckoned once. */
export class TopPlaces {
  readonly #fixed: Float64Array;
  readonly #byId: Int32Array;
  readonly #score: Float64Array;
  readonly #weights: Readonly<Record<Criterion, number>>;
  readonly #settings: PrioritySettings;

  constructor(blocks: readonly Pick<BlockEvidence, 'blockId' | 'amounts'>[], settings: PrioritySettings) {
    this.#settings = settings;
    this.#weights = normalisedWeights(settings.weights);
    const fixed = CRITERIA.filter((criterion) => !DRAWN.includes(criterion));
    this.#fixed = Float64Array.from(blocks, ({ amounts }) =>
      fixed.reduce((sum, criterion) => sum + this.#points(criterion, amounts[criterion]), 0),
    );
    const order = [...blocks.keys()].sort((a, b) => (blocks[a].blockId < blocks[b].blockId ? -1 : 1));
    this.#byId = new Int32Array(blocks.length);
    order.forEach((block, place) => {
      this.#byId[block] = place;
    });
    this.#score = new Float64Array(blocks.length);
  }

  /** Adds 1 to `count` for every block among the first `top_n` of this draw. Ties as in `rankBlocks`. */
  countTop(drawn: DrawnAmounts, count: Uint32Array): void {
    for (let block = 0; block < this.#score.length; block++) this.#score[block] = this.#scoreOf(drawn, block);
    const wanted = Math.min(this.#settings.top_n, this.#score.length);
    const top: number[] = [];
    for (let block = 0; block < this.#score.length; block++) {
      if (top.length === wanted && !this.#comesBefore(block, top[wanted - 1], drawn)) continue;
      let place = top.length;
      while (place > 0 && this.#comesBefore(block, top[place - 1], drawn)) place--;
      top.splice(place, 0, block);
      if (top.length > wanted) top.pop();
    }
    for (const block of top) count[block]++;
  }

  #scoreOf({ stainedM2, visibleM2, trafficM2, worst }: DrawnAmounts, block: number): number {
    const stained = stainedM2[block];
    return (
      this.#fixed[block] +
      this.#points('stained', visibleM2[block]) +
      this.#points('foot_traffic', stained > 0 ? trafficM2[block] / stained : 0) +
      this.#points('worst_severity', 100 * worst[block])
    );
  }

  #points(criterion: Criterion, amount: number): number {
    return this.#weights[criterion] * levelValue(amount, this.#settings.levels[criterion]);
  }

  #comesBefore(a: number, b: number, { stainedM2 }: DrawnAmounts): boolean {
    const score = compared(this.#score[a], this.#score[b]);
    if (score !== 0) return score > 0;
    const stained = compared(stainedM2[a], stainedM2[b]);
    return stained !== 0 ? stained > 0 : this.#byId[a] < this.#byId[b];
  }
}

function compared(a: number, b: number): number {
  return Math.abs(a - b) <= TIE * Math.max(Math.abs(a), Math.abs(b)) ? 0 : a - b;
}
