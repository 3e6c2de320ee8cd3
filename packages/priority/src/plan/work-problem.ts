/** The season's plan as an integer programme: which offer for which block, within money, crew and windows. */
import type { PlanSettings } from '@crownfall/survey';
import { daysBetween } from '../days.ts';
import { type ActionOffer, isOffered } from './action-offer.ts';
import type { Programme, ProgrammeRow } from './programme.ts';

export interface WorkLimits {
  readonly asOf: string;
  /** null: not limited. */
  readonly budget: number | null;
  readonly crewHoursPerWeek: number | null;
  readonly weeks: number;
  readonly mustDo: PlanSettings['must_do'];
  readonly districts: PlanSettings['districts'];
  readonly districtFloor: number;
}

type Offered = ActionOffer & { readonly cost: number; readonly crewHours: number };

export interface WorkProblem {
  readonly limits: WorkLimits;
  /** One for each column. */
  readonly columns: readonly Offered[];
  /** Position of each column in the offers that were given. */
  readonly source: Int32Array;
  readonly programme: Programme;
}

/** What the settings say, with what was asked for instead. */
export function limitsOf(asOf: string, plan: PlanSettings, asked: Partial<Omit<WorkLimits, 'asOf'>> = {}): WorkLimits {
  const days = plan.crew_days_per_week;
  return {
    asOf,
    budget: plan.budget,
    crewHoursPerWeek: days === null ? null : days * plan.crew_hours_per_day,
    weeks: plan.weeks,
    mustDo: plan.must_do,
    districts: plan.districts,
    districtFloor: plan.district_floor,
    ...asked,
  };
}

/**
 * The programme over all offers that may be done and that avoid some stain, or that must be done. An offer that another of its
 * block matches at no more money and time is left out. `stainedM2` by block: what a district's proportional part is reckoned
 * from.
 */
export function workProblem(
  offers: readonly ActionOffer[],
  limits: WorkLimits,
  stainedM2: ReadonlyMap<string, number>,
): WorkProblem {
  const asked = new Set(limits.mustDo.map(({ block_id, action }) => `${action} ${block_id}`));
  const named = (offer: ActionOffer) => asked.has(`${offer.action} ${offer.blockId}`);
  const able = offers.flatMap((offer, at) =>
    isOffered(offer) && offer.action !== 'leave' && (offer.avoidedM2.value > 0 || named(offer)) ? [{ offer, at }] : [],
  );
  const rivals = byBlock(able.map(({ offer }) => offer));
  const kept = able.filter(
    ({ offer }) => named(offer) || !(rivals.get(offer.blockId) ?? []).some((rival) => outdoes(rival, offer)),
  );
  const columns = kept.map(({ offer }) => offer);
  return {
    limits,
    columns,
    source: Int32Array.from(kept, ({ at }) => at),
    programme: {
      gain: Float64Array.from(columns, ({ avoidedM2 }) => avoidedM2.value),
      rows: [
        ...onePerBlock(columns),
        ...moneyRow(columns, limits),
        ...crewRows(columns, limits),
        ...mustDoRows(columns, limits),
        ...districtRows(columns, limits, stainedM2),
      ],
    },
  };
}

/** Crew hours there are from the day of the figures to the end of `day`; crew days lie evenly in the week. */
export function hoursUntil(day: string, { asOf, crewHoursPerWeek, weeks }: WorkLimits): number {
  const days = Math.min(7 * weeks, daysBetween(asOf, day) + 1);
  return ((crewHoursPerWeek ?? Number.POSITIVE_INFINITY) * Math.max(0, days)) / 7;
}

/** At least as good in everything and better in something; of two that are alike the first named stays. */
function outdoes(rival: Offered, offer: Offered): boolean {
  if (rival === offer) return false;
  const differences = [
    rival.avoidedM2.value - offer.avoidedM2.value,
    offer.cost - rival.cost,
    offer.crewHours - rival.crewHours,
    offer.hoursInWindow - rival.hoursInWindow,
  ];
  return differences.every((by) => by >= 0) && (differences.some((by) => by > 0) || rival.action < offer.action);
}

function byBlock<T extends { readonly blockId: string }>(offers: readonly T[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const offer of offers) {
    const group = groups.get(offer.blockId);
    if (group) group.push(offer);
    else groups.set(offer.blockId, [offer]);
  }
  return groups;
}

type Entries = Pick<ProgrammeRow, 'column' | 'value'>;

/** The columns for which `amountOf` is not 0. */
function entries(columns: readonly Offered[], amountOf: (offer: Offered) => number): Entries {
  const column: number[] = [];
  const value: number[] = [];
  columns.forEach((offer, i) => {
    const each = amountOf(offer);
    if (each === 0) return;
    column.push(i);
    value.push(each);
  });
  return { column, value };
}

function onePerBlock(columns: readonly Offered[]): ProgrammeRow[] {
  const rows = new Map<string, number[]>();
  columns.forEach(({ blockId }, i) => {
    const row = rows.get(blockId);
    if (row) row.push(i);
    else rows.set(blockId, [i]);
  });
  return [...rows]
    .filter(([, column]) => column.length > 1)
    .map(([blockId, column]) => ({
      constraint: { kind: 'one-per-block', blockId },
      from: Number.NEGATIVE_INFINITY,
      to: 1,
      column,
      value: column.map(() => 1),
    }));
}

function moneyRow(columns: readonly Offered[], { budget }: WorkLimits): ProgrammeRow[] {
  if (budget === null) return [];
  const row = entries(columns, ({ cost }) => cost);
  return [{ constraint: { kind: 'budget', money: budget }, from: Number.NEGATIVE_INFINITY, to: budget, ...row }];
}

/**
 * What must be done by a day fits into the hours until then, for every such day, and everything into all hours. All windows begin
 * on the day of the figures, so these prefix sums are enough (Hall's condition for work that may be split).
 */
function crewRows(columns: readonly Offered[], limits: WorkLimits): ProgrammeRow[] {
  if (limits.crewHoursPerWeek === null) return [];
  const days = [...new Set(columns.flatMap(({ lastDay }) => lastDay ?? []))].sort();
  const row = (until: string | null, hours: number, of: Entries): ProgrammeRow => ({
    constraint: { kind: 'crew', until, hours },
    from: Number.NEGATIVE_INFINITY,
    to: hours,
    ...of,
  });
  return [
    ...days.map((day) => {
      const due = (offer: Offered) => (offer.lastDay !== null && offer.lastDay <= day ? offer.hoursInWindow : 0);
      return row(day, hoursUntil(day, limits), entries(columns, due));
    }),
    row(
      null,
      limits.crewHoursPerWeek * limits.weeks,
      entries(columns, ({ crewHours }) => crewHours),
    ),
  ];
}

function mustDoRows(columns: readonly Offered[], { mustDo }: WorkLimits): ProgrammeRow[] {
  return mustDo.map(({ block_id: blockId, action }) => {
    const counts = (offer: Offered) =>
      offer.blockId === blockId && (action === 'any' ? offer.avoidedM2.value > 0 : offer.action === action);
    return {
      constraint: { kind: 'must-do', blockId, action },
      // Leaving alone is done by doing nothing else.
      from: action === 'leave' ? Number.NEGATIVE_INFINITY : 1,
      to: action === 'leave' ? 0 : 1,
      ...entries(columns, (offer) => ((action === 'leave' ? offer.blockId === blockId : counts(offer)) ? 1 : 0)),
    };
  });
}

/**
 * `Σ_district gain ≥ floor · share · Σ gain`, where share is the district's part of the stain expected in all districts. A
 * district in which nothing can be done is left out, else nothing could be done anywhere.
 */
function districtRows(
  columns: readonly Offered[],
  { districts, districtFloor }: WorkLimits,
  stainedM2: ReadonlyMap<string, number>,
): ProgrammeRow[] {
  if (districtFloor <= 0) return [];
  const gainIn = (blocks: ReadonlySet<string>) =>
    columns.reduce((sum, { blockId, avoidedM2 }) => sum + (blocks.has(blockId) ? avoidedM2.value : 0), 0);
  const able = districts
    .map(({ name, blocks }) => ({ name, blocks: new Set(blocks) }))
    .filter(({ blocks }) => gainIn(blocks) > 0);
  const stainIn = (blocks: ReadonlySet<string>) => [...blocks].reduce((sum, id) => sum + (stainedM2.get(id) ?? 0), 0);
  const all = able.reduce((sum, { blocks }) => sum + stainIn(blocks), 0);
  return able.map(({ name, blocks }) => {
    const share = all > 0 ? districtFloor * (stainIn(blocks) / all) : 0;
    const part = ({ blockId, avoidedM2 }: Offered) => avoidedM2.value * ((blocks.has(blockId) ? 1 : 0) - share);
    return { constraint: { kind: 'district', name }, from: 0, to: Number.POSITIVE_INFINITY, ...entries(columns, part) };
  });
}
