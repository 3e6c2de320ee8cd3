/** What the report needs of a plan: the figures as they are read, with the cells they come from. */
import type { Language } from '@crownfall/survey';
import { areaNumber, areaRange, areaText, grouped, percentText, rangeNumbers, type Units } from '../quantities.ts';
import type { PlannedBlock, WorkPlan } from './any-plan.ts';
import type { Figure, Trace } from './content.ts';
import type { Reading } from './reading.ts';
import { PLAN_EN, type PlanWords } from './words/plan-en.ts';
import { PLAN_ES } from './words/plan-es.ts';

export const PLAN_WORDS: Readonly<Record<Language, PlanWords>> = { en: PLAN_EN, es: PLAN_ES };

export interface PlanReading extends Reading {
  readonly plan: WorkPlan;
  readonly planWords: PlanWords;
}

/** The reading with its plan; null when there is none to carry out. */
export function planReading(reading: Reading): PlanReading | null {
  const { plan, language } = reading;
  return plan?.feasible ? { ...reading, plan, planWords: PLAN_WORDS[language] } : null;
}

/** What `crownfall plan --out` writes: a row for each block, and all else. */
export const PLAN_TABLE = 'plan.csv';
export const PLAN_FILE = 'plan.json';
const ofPlan = (column: string): Trace => ({ file: PLAN_FILE, column });
const ofBlock = (row: string, column: string): Trace => ({ file: PLAN_TABLE, row, column });

/** Blocks with work, in rank order. */
export const workOf = (plan: WorkPlan): readonly PlannedBlock[] =>
  plan.blocks.filter(({ action }) => action !== 'leave');

export const leftOf = (plan: WorkPlan): readonly PlannedBlock[] =>
  plan.blocks.filter(({ action }) => action === 'leave');

export const isTreated = ({ action }: PlannedBlock): boolean => action === 'treat' || action === 'treat_and_clean';

/** Money with its currency. */
export function moneyText(value: number, currency: string, decimals = 0): string {
  return `${currency}\u00a0${grouped(value, decimals)}`;
}

export function planAvoids({ avoidedM2 }: WorkPlan, units: Units): Figure {
  return { figure: areaText(avoidedM2.value, units), from: [ofPlan('avoided_m2.value')] };
}

export function planAvoidsRange({ avoidedM2: { range80 } }: WorkPlan, units: Units): Figure | null {
  if (range80 === null) return null;
  return { figure: areaRange(range80, units), from: [ofPlan('avoided_m2.range80.0'), ofPlan('avoided_m2.range80.1')] };
}

export function planCost({ cost, currency }: WorkPlan): Figure {
  return { figure: moneyText(cost, currency), from: [ofPlan('cost')] };
}

export function planHours({ crewHours }: WorkPlan): Figure {
  return { figure: grouped(crewHours), from: [ofPlan('crew_hours')] };
}

export function takenAvoids({ blockId, taken }: PlannedBlock, units: Units): Figure {
  return { figure: areaNumber(taken.avoidedM2.value, units), from: [ofBlock(blockId, 'avoided_m2')] };
}

export function takenRange({ blockId, taken }: PlannedBlock, units: Units): Figure | null {
  const range = taken.avoidedM2.range80;
  if (range === null) return null;
  return {
    figure: rangeNumbers(range, units),
    from: [ofBlock(blockId, 'avoided_lo80_m2'), ofBlock(blockId, 'avoided_hi80_m2')],
  };
}

export function takenCost({ blockId, taken }: PlannedBlock): Figure | string {
  return taken.cost === null ? '–' : { figure: grouped(taken.cost), from: [ofBlock(blockId, 'cost')] };
}

export function takenHours({ blockId, taken }: PlannedBlock): Figure | string {
  return taken.crewHours === null
    ? '–'
    : { figure: grouped(taken.crewHours, 1), from: [ofBlock(blockId, 'crew_hours')] };
}

/** How often the draws keep the action. */
export function takenFirm({ blockId, keeps }: PlannedBlock): Figure | null {
  return keeps === null ? null : { figure: percentText(keeps), from: [ofBlock(blockId, 'kept_share')] };
}

/** What is worked on: trees, pavement, or both. */
export function takenWork({ taken }: PlannedBlock, { planWords, units }: PlanReading): string {
  const trees = taken.treeIds.length > 0 ? [planWords.trees(taken.treeIds.length)] : [];
  return [...trees, ...(taken.areaM2 > 0 ? [areaText(taken.areaM2, units)] : [])].join(', ');
}
