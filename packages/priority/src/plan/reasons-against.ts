/**
 * The rules that forbid an action in a block. A rule speaks from facts alone and gives its reason as data; the words are in the
 * survey's catalogue. On doubt it forbids: what nobody looked at, measured or named counts as not done. That treatment reaches
 * larvae only on open flowers, and must wait while bees visit them: common practice, no source; the label and the local code
 * govern.
 */
import type { Action, PlanSettings, Reason, WaterFeature } from '@crownfall/survey';
import { daysBetween } from '../days.ts';
import type { BloomState } from '../score.ts';
import { PARTS } from './action-offer.ts';

/** What the rules must know of a block on the day of the figures. */
export interface BlockSituation {
  readonly blockId: string;
  readonly asOf: string;
  readonly trees: number;
  readonly unrated: number;
  /** Trees with a cause found on evidence: any staining cause, and one that treatment in bloom acts on. */
  readonly diagnosed: number;
  readonly treatable: number;
  /** Of the treatable ones, those that keep every stated distance. */
  readonly clearOfWater: number;
  /** Nearest water to a treatable tree relative to the distance to keep; null without such a tree or without water. */
  readonly nearestWater: {
    readonly kind: WaterFeature['kind'];
    readonly distanceM: number;
    readonly keepOffM: number;
  } | null;
  /** Kinds in the water layer; empty: nothing is mapped. */
  readonly waterKinds: readonly WaterFeature['kind'][];
  readonly bloomState: BloomState;
  /** Newest observation of any kind, and newest look for bees with its answer. */
  readonly seenOn: string | null;
  readonly beesLookedOn: string | null;
  readonly beesSeen: boolean;
  /** Stain expected on pavement that is cleaned, m². */
  readonly stainedToCleanM2: number;
}

type Rule = (situation: BlockSituation, plan: PlanSettings) => readonly Reason[];

/** Every reason against an action, in the order in which one would look; empty: it may be done. Leaving alone never is. */
export function reasonsAgainst(action: Action, situation: BlockSituation, plan: PlanSettings): Reason[] {
  const priced = PARTS[action]
    .filter((part) => !plan.prices.some((price) => price.action === part))
    .map((part) => reason('price-missing', { action: part }));
  return [...RULES[action].flatMap((rule) => rule(situation, plan)), ...priced];
}

const anyTree: Rule = ({ trees }) => (trees === 0 ? [reason('no-tree')] : []);
const anyUnrated: Rule = ({ trees, unrated }) => (trees > 0 && unrated === 0 ? [reason('all-rated')] : []);
const anyStain: Rule = ({ stainedToCleanM2 }) => (stainedToCleanM2 > 0 ? [] : [reason('nothing-stained')]);
const evidence: Rule = ({ diagnosed }) => (diagnosed > 0 ? [] : [reason('cause-without-evidence')]);
const treatableEvidence: Rule = ({ treatable }) => (treatable > 0 ? [] : [reason('cause-without-evidence')]);

const openWindow: Rule = ({ bloomState, seenOn }) =>
  bloomState === 'open' ? [] : [reason('window-not-open', { state: bloomState, seen_on: seenOn ?? undefined })];

const pollinators: Rule = ({ beesLookedOn, beesSeen, asOf }, { check_days: days }) => {
  const fresh = beesLookedOn !== null && daysBetween(beesLookedOn, asOf) <= days;
  if (!fresh) return [reason('pollinator-check-missing', { days, seen_on: beesLookedOn ?? undefined })];
  return beesSeen ? [reason('bees-seen', { seen_on: beesLookedOn })] : [];
};

const water: Rule = ({ waterKinds, nearestWater, treatable, clearOfWater }, { keep_off_m }) => {
  if (waterKinds.length === 0) return [reason('water-not-mapped')];
  const unstated = waterKinds.filter((kind) => keep_off_m[kind] === null);
  if (unstated.length > 0) return unstated.map((kind) => reason('keep-off-not-stated', { kind }));
  if (treatable === 0 || clearOfWater > 0 || nearestWater === null) return [];
  const { kind, distanceM, keepOffM } = nearestWater;
  return [reason('water-near', { kind, distance_m: Number(distanceM.toFixed(1)), keep_off_m: keepOffM })];
};

const weather: Rule = ({ blockId, asOf }, plan) => {
  const { windMS, rainMm } = weatherAt(blockId, asOf, plan);
  return [...limitOf('wind', windMS, plan.wind_max_m_s, asOf), ...limitOf('rain', rainMm, plan.rain_max_mm, asOf)];
};

const licence: Rule = (_, { applicator: { name, licence: number } }) =>
  name.trim() === '' || number.trim() === '' ? [reason('licence-missing')] : [];

const TREATMENT = [anyTree, treatableEvidence, openWindow, pollinators, water, weather, licence];

const RULES: Readonly<Record<Action, readonly Rule[]>> = {
  leave: [],
  inspect: [anyTree, anyUnrated],
  clean: [anyStain],
  treat: TREATMENT,
  treat_and_clean: [...TREATMENT, anyStain],
  replace: [anyTree, evidence],
};

/** The newest wind and rain read for the block (or for all) that are not too old. */
function weatherAt(blockId: string, asOf: string, { weather: checks, check_days: days }: PlanSettings) {
  const fresh = checks
    .filter(({ block_id }) => block_id === blockId || block_id === '*')
    .filter(({ on }) => on <= asOf && daysBetween(on, asOf) <= days)
    .sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
  const newest = (of: 'wind_m_s' | 'rain_mm') => fresh.find((check) => check[of] !== null)?.[of] ?? null;
  return { windMS: newest('wind_m_s'), rainMm: newest('rain_mm') };
}

function limitOf(what: 'wind' | 'rain', got: number | null, limit: number | null, on: string): Reason[] {
  if (got === null) return [reason(`${what}-missing`, { on })];
  return limit !== null && got > limit ? [reason(`${what}-above-limit`, { got, limit })] : [];
}

function reason(code: Reason['code'], facts: Readonly<Record<string, string | number | undefined>> = {}): Reason {
  const known = Object.entries(facts).filter((fact): fact is [string, string | number] => fact[1] !== undefined);
  return { code, facts: Object.fromEntries(known) };
}
