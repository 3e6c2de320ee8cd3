/** Makes the season's plan in the worker. The solver is loaded when the first plan is asked for. */
import {
  type Assessment,
  type BlockWater,
  type BloomCalendar,
  blockWater,
  calendarFrom,
  type OfferBook,
  offersOf,
  planWork,
} from '@crownfall/assessment';
import { highsSolver, type NoPlan, type Solver, type WorkPlan } from '@crownfall/priority';
import type { PlanSettings } from '@crownfall/survey';
import loadHighs from 'highs';
import solverUrl from 'highs/runtime?url';
import type { PlanFiles } from './plan-files.ts';
import type { ProjectReckoner } from './project-reckoner.ts';

export interface PlanOutcome {
  readonly plan: WorkPlan | NoPlan;
  readonly calendar: BloomCalendar;
  /** Files that the settings name or a person gave, and why they could not be read. */
  readonly notRead: readonly string[];
}

/** Enough for ranges and firmness that move by less than they say. */
const DRAWS = 200;
const SEED = 1;

interface KnownOffers {
  readonly of: Assessment;
  readonly under: string;
  readonly with: PlanFiles;
  readonly book: OfferBook;
}

let solver: Promise<Solver> | null = null;
let offers: KnownOffers | null = null;

/** Offers are made anew only when records or prices and conditions changed: with other limits they are the same. */
export async function makePlan(
  reckoner: ProjectReckoner,
  settings: PlanSettings,
  files: PlanFiles,
): Promise<PlanOutcome> {
  solver ??= loadHighs({ locateFile: () => solverUrl }).then(highsSolver);
  const solve = await solver;
  const reckoned = reckoner.reckoned(settings);
  const { assessment } = reckoner;
  const under = JSON.stringify({ ...settings, ...NO_LIMITS });
  if (offers?.of !== assessment || offers.under !== under || offers.with !== files) {
    const book = offersOf(reckoned, { draws: DRAWS, seed: SEED, temperatures: files.temperatures });
    offers = { of: assessment, under, with: files, book };
  }
  const { book } = offers;
  const plan = planWork(reckoned, { solve, book, addresses: files.addresses });
  return { plan, calendar: calendarFrom(reckoned, book.bloom), notRead: files.notRead };
}

const NO_LIMITS: Partial<PlanSettings> = {
  budget: null,
  crew_days_per_week: null,
  weeks: 0,
  must_do: [],
  district_floor: 0,
};

/** Water about a block of the plan made last; null before there is one. */
export function waterAbout(blockId: string): BlockWater | null {
  return offers && blockWater(offers.book, blockId);
}
