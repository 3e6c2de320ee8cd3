/** Makes the season's plan in the worker. The solver is loaded when the first plan is asked for. */
import { type Assessment, type OfferBook, offersOf, planWork } from '@crownfall/assessment';
import { type BloomWindow, highsSolver, type NoPlan, type Solver, type WorkPlan } from '@crownfall/priority';
import type { PlanSettings } from '@crownfall/survey';
import loadHighs from 'highs';
import solverUrl from 'highs/runtime?url';
import type { ProjectReckoner } from './project-reckoner.ts';

export interface PlanOutcome {
  readonly plan: WorkPlan | NoPlan;
  /** By block. */
  readonly windows: readonly (BloomWindow & { readonly blockId: string; readonly name: string | null })[];
}

/** Enough for ranges and firmness that move by less than they say. */
const DRAWS = 200;
const SEED = 1;

let solver: Promise<Solver> | null = null;
let offers: { readonly of: Assessment; readonly under: string; readonly book: OfferBook } | null = null;

/** Offers are made anew only when records or prices and conditions changed: with other budgets or crews they are the same. */
export async function makePlan(reckoner: ProjectReckoner, settings: PlanSettings): Promise<PlanOutcome> {
  solver ??= loadHighs({ locateFile: () => solverUrl }).then(highsSolver);
  const solve = await solver;
  const reckoned = reckoner.reckoned(settings);
  const under = JSON.stringify({ ...settings, budget: 0, crew_days_per_week: 0, weeks: 0 });
  if (offers?.of !== reckoner.assessment || offers.under !== under) {
    offers = { of: reckoner.assessment, under, book: offersOf(reckoned, { draws: DRAWS, seed: SEED }) };
  }
  const { book } = offers;
  const plan = planWork(reckoned, { solve, book });
  const windows = reckoned.stages.ground.blocks.map(({ blockId, name }, i) => ({ ...book.windows[i], blockId, name }));
  return { plan, windows };
}
