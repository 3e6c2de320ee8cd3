/** For each reason that forbids an action, a situation in which it alone does; all else is done, measured and named. */
import {
  type Action,
  DEFAULT_SETTINGS,
  type PlanSettings,
  type Price,
  type PricedAction,
  type Reason,
  type ReasonCode,
} from '@crownfall/survey';
import { type BlockSituation, reasonsAgainst } from './reasons-against.ts';

const price = (action: PricedAction): Price => ({
  action,
  set_up: 90,
  per_tree: 30,
  per_m2: 2,
  hours_set_up: 1,
  hours_per_tree: 0.5,
  hours_per_m2: 0.1,
});

export const READY_PLAN: PlanSettings = {
  ...DEFAULT_SETTINGS.plan,
  prices: [price('inspect'), price('clean'), price('treat'), price('replace')],
  keep_off_m: { water: 15, drain: 2, well: 30 },
  wind_max_m_s: 4,
  rain_max_mm: 1,
  applicator: { name: 'Invented', licence: 'X-1' },
  weather: [{ block_id: '*', on: '2026-05-20', wind_m_s: 2, rain_mm: 0 }],
};

export const READY_BLOCK: BlockSituation = {
  blockId: 'B1',
  asOf: '2026-05-20',
  trees: 4,
  unrated: 1,
  diagnosed: 2,
  treatable: 2,
  clearOfWater: 1,
  nearestWater: { kind: 'drain', distanceM: 1.5, keepOffM: 2 },
  waterKinds: ['water', 'drain', 'well'],
  bloomState: 'open',
  seenOn: '2026-05-19',
  beesLookedOn: '2026-05-20',
  beesSeen: false,
  stainedToCleanM2: 40,
};

export interface ReasonCase {
  readonly action: Action;
  readonly situation?: Partial<BlockSituation>;
  readonly plan?: Partial<PlanSettings>;
  /** In the English words. */
  readonly says: string;
}

const weather = (wind_m_s: number | null, rain_mm: number | null): Partial<PlanSettings> => ({
  weather: [{ block_id: 'B1', on: '2026-05-20', wind_m_s, rain_mm }],
});

/** A reason without a case does not compile. */
export const REASON_CASES: Readonly<Record<ReasonCode, ReasonCase>> = {
  'price-missing': { action: 'treat', plan: { prices: [] }, says: 'no entry for treat in bloom' },
  'nothing-stained': { action: 'clean', situation: { stainedToCleanM2: 0 }, says: 'No stain is expected' },
  'no-tree': { action: 'treat', situation: { trees: 0 }, says: 'No tree stands' },
  'all-rated': { action: 'inspect', situation: { unrated: 0 }, says: 'Every tree of the block is rated' },
  'cause-without-evidence': {
    action: 'treat',
    situation: { treatable: 0, clearOfWater: 0 },
    says: 'No tree of the block has a cause',
  },
  'window-not-open': {
    action: 'treat',
    situation: { bloomState: 'closed' },
    says: 'not open: closed, last seen 2026-05-19',
  },
  'pollinator-check-missing': {
    action: 'treat',
    situation: { beesLookedOn: '2026-05-18' },
    says: 'Nobody has looked for bees at the flowers since 2026-05-18',
  },
  'bees-seen': { action: 'treat', situation: { beesSeen: true }, says: 'Bees were at the flowers on 2026-05-20' },
  'water-not-mapped': {
    action: 'treat',
    situation: { waterKinds: [], nearestWater: null },
    says: 'Water, drains and wells are not mapped',
  },
  'keep-off-not-stated': {
    action: 'treat',
    plan: { keep_off_m: { water: 15, drain: null, well: 30 } },
    says: 'keep from a drain is not stated',
  },
  'water-near': { action: 'treat', situation: { clearOfWater: 0 }, says: '1.5 m from a drain, 2 m are to be kept' },
  'wind-missing': { action: 'treat', plan: weather(null, 0), says: 'The wind is not filled in for 2026-05-20' },
  'wind-above-limit': { action: 'treat', plan: weather(4.5, 0), says: 'The wind is 4.5 m/s' },
  'rain-missing': { action: 'treat', plan: weather(2, null), says: 'The rain is not filled in for 2026-05-20' },
  'rain-above-limit': { action: 'treat', plan: weather(2, 3), says: 'Rain of 3 mm' },
  'licence-missing': {
    action: 'treat',
    plan: { applicator: { name: 'Invented', licence: ' ' } },
    says: 'No licensed applicator',
  },
};

/** What the rules say in the case. */
export function reasonsIn({ action, situation, plan }: ReasonCase): Reason[] {
  return reasonsAgainst(action, { ...READY_BLOCK, ...situation }, { ...READY_PLAN, ...plan });
}
