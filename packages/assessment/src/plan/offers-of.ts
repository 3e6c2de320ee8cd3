/** Every offer of every block: what may be done, what it avoids, what it costs, and what forbids it. */
import {
  type ActionOffer,
  type BloomWindow,
  chargeOf,
  type DailyTemperature,
  PARTS,
  reasonsAgainst,
} from '@crownfall/priority';
import { type FigureSamples, type Ranged, rangesOf, unranged } from '@crownfall/stain';
import { ACTIONS, type Action } from '@crownfall/survey';
import { drawWorkOf, type Reckoned } from '../assess.ts';
import type { DrawWork } from '../draws/draw-work.ts';
import { expectDraws } from '../draws/drawn-ranges.ts';
import { type ActionEffects, actionEffects } from './action-effects.ts';
import { type TownBloom, townBloom } from './bloom-calendar-of.ts';
import { type EffectSamples, effectDraws } from './effect-draws.ts';
import { type PlanScene, planScene } from './plan-scene.ts';

/** All offers, with the draws behind them: made once, it serves any number of plans with other budgets or crews. */
export interface OfferBook {
  readonly reckoned: Reckoned;
  readonly scene: PlanScene;
  /** By block as in `Ground.blocks`, then in the order of `ACTIONS`. */
  readonly offers: readonly ActionOffer[];
  /** The windows that treatments are offered in. */
  readonly bloom: TownBloom;
  /** null without draws. */
  readonly work: DrawWork | null;
  readonly samples: EffectSamples | null;
  readonly draws: number;
  readonly seed: number;
}

export interface OfferOptions {
  /** Random draws for the ranges and the plan's firmness: 0 for none, else 100 to 60,000. */
  readonly draws?: number;
  readonly seed?: number;
  /** Daily temperatures of this and earlier seasons, for the forecast of the bloom. */
  readonly temperatures?: readonly DailyTemperature[];
}

/**
 * Offers for all blocks on the day of the figures. Effects equal a full reckoning with changed doses. RangeError for draws that
 * are neither 0 nor from 100 to 60,000.
 */
export function offersOf(reckoned: Reckoned, options: OfferOptions = {}): OfferBook {
  const { draws = 0, seed = 1, temperatures = [] } = options;
  expectDraws(draws);
  const { stages, settings } = reckoned;
  const bloom = townBloom(reckoned, temperatures);
  const scene = planScene(reckoned, bloom.windows);
  const effects = actionEffects(stages.stain.ledgers.field, stages.ground, scene, settings.plan);
  const work = draws > 0 ? drawWorkOf(reckoned, seed) : null;
  const samples = work && effectDraws(work, scene, settings.plan, draws);
  const offers = stages.ground.blocks.flatMap((_, block) =>
    ACTIONS.map((action) => offer(block, action, { reckoned, scene, bloom, effects, samples })),
  );
  return { reckoned, scene, bloom, offers, work, samples, draws, seed };
}

interface Known {
  readonly reckoned: Reckoned;
  readonly scene: PlanScene;
  readonly bloom: TownBloom;
  readonly effects: ActionEffects;
  readonly samples: EffectSamples | null;
}

function offer(block: number, action: Action, known: Known): ActionOffer {
  const { scene, bloom, reckoned } = known;
  const { plan } = reckoned.settings;
  const { blockId } = reckoned.stages.ground.blocks[block];
  const zones = zonesOf(action, block, scene);
  const parts = PARTS[action];
  const areaM2 = parts.includes('clean') ? scene.cleanM2[block] : 0;
  const quantity = { trees: zones.length, areaM2 };
  const charges = parts.map((part) => ({ part, charge: chargeOf(part, quantity, plan.prices) }));
  const priced = charges.every(({ charge }) => charge !== null);
  const sum = (of: 'cost' | 'crewHours') => charges.reduce((total, { charge }) => total + (charge?.[of] ?? 0), 0);
  const inWindow = charges.find(({ part }) => part === 'treat');
  return {
    blockId,
    action,
    treeIds: zones.map((zone) => reckoned.stages.ground.crowns[zone].tree.treeId),
    areaM2,
    avoidedM2: avoided(block, action, known),
    cost: priced ? sum('cost') : null,
    crewHours: priced ? sum('crewHours') : null,
    hoursInWindow: inWindow?.charge?.crewHours ?? 0,
    lastDay: inWindow ? lastDayOf(bloom.windows[block], reckoned.asOf) : null,
    forbidden: reasonsAgainst(action, scene.situations[block], plan),
  };
}

/** The expected end of the window, never before the day of the figures. */
function lastDayOf({ closes }: BloomWindow, asOf: string): string {
  return closes === null || closes.day < asOf ? asOf : closes.day;
}

function zonesOf(action: Action, block: number, scene: PlanScene): readonly number[] {
  if (action === 'inspect') return scene.unrated[block];
  if (action === 'treat' || action === 'treat_and_clean') return scene.treated[block];
  return action === 'replace' && scene.replaced[block] >= 0 ? [scene.replaced[block]] : [];
}

const EFFECT = { clean: 'clean', treat: 'treat', treat_and_clean: 'treatAndClean', replace: 'replace' } as const;

/** Which of the effects belongs to an action; null for those that take no stain off. */
export function effectOf(action: Action): (typeof EFFECT)[keyof typeof EFFECT] | null {
  return action === 'leave' || action === 'inspect' ? null : EFFECT[action];
}

function avoided(block: number, action: Action, { effects, samples }: Known): Ranged {
  const effect = effectOf(action);
  if (effect === null) return { value: 0, range80: [0, 0], range95: [0, 0] };
  return ranged(effects[effect][block], samples?.[effect], block);
}

/** A figure with the range of its draws, if any. */
export function ranged(value: number, samples: FigureSamples | null | undefined, row: number): Ranged {
  return samples ? { value, ...rangesOf(samples, row) } : unranged(value);
}
