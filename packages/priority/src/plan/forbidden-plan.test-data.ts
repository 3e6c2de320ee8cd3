/** Hand-made plans of one block, for tests of what is told: one whose actions are forbidden, one that cannot be. */
import { ACTIONS, type Constraint, type Reason, type ReasonCode } from '@crownfall/survey';
import type { ActionOffer } from './action-offer.ts';
import { READY_BLOCK, READY_PLAN, REASON_CASES, reasonsIn } from './reason-cases.test-data.ts';
import type { NoPlan, PlannedBlock, WorkPlan } from './work-plan.ts';

const NOTHING = { value: 0, range80: null, range95: null };
const STAINED = { value: 42, range80: null, range95: null };
const FRAME = {
  title: 'Small & invented',
  season: 2026,
  units: 'metric' as const,
  asOf: '2026-05-20',
  currency: 'USD',
  calibrated: false,
  draws: 0,
  seed: 1,
  limits: {
    asOf: '2026-05-20',
    budget: null,
    crewHoursPerWeek: null,
    weeks: 8,
    mustDo: [],
    districts: [],
    districtFloor: 0,
  },
  settings: READY_PLAN,
};

/** A plan that leaves the block alone, its actions forbidden as given. */
export function planWith(forbidden: (action: ActionOffer['action']) => readonly Reason[]): WorkPlan {
  const offers = ACTIONS.map((action): ActionOffer => {
    const what = {
      blockId: READY_BLOCK.blockId,
      action,
      treeIds: [],
      areaM2: 0,
      avoidedM2: NOTHING,
      cost: 1,
      crewHours: 1,
    };
    return { ...what, hoursInWindow: 0, lastDay: null, forbidden: forbidden(action) };
  });
  const leave = { stainedM2: STAINED, fadedM2: 20, onDay: '2026-07-15', refoliatedBy: '2026-07-19' };
  const { blockId } = READY_BLOCK;
  const left = { action: 'leave' as const, taken: offers[0], week: null, weekOf: null, mustDo: false, keeps: null };
  const block: PlannedBlock = { blockId, name: null, rank: 1, bloomState: 'open', ...left, offers, leave };
  return {
    ...FRAME,
    feasible: true,
    blocks: [block],
    stainedM2: STAINED,
    avoidedM2: NOTHING,
    cost: 0,
    crewHours: 0,
    proof: { avoidedM2: 0, boundM2: 0, gap: 0, greedyM2: 0 },
    next: [],
    frontier: [],
    districts: [],
    worthRating: [],
    rotation: [],
    notices: [],
    treated: [],
  };
}

/** The plan in which one reason forbids its action, and nothing else is forbidden. */
export function planAgainst(code: ReasonCode): WorkPlan {
  const { action: of } = REASON_CASES[code];
  return planWith((action) => (action === of ? reasonsIn(REASON_CASES[code]) : []));
}

export const CLASH: readonly Constraint[] = [
  { kind: 'budget', money: 500 },
  { kind: 'crew', until: '2026-05-25', hours: 8 },
  { kind: 'must-do', blockId: 'B1', action: 'treat' },
  { kind: 'district', name: 'Shore' },
];

export const IMPOSSIBLE: NoPlan = { ...FRAME, feasible: false, clash: CLASH, offers: [] };
