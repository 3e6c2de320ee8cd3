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
import type { ProjectPlace } from '../project/project-files.ts';
import { type GivenFiles, type NamedFiles, type PlanFiles, planFiles } from './plan-files.ts';
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
  place: ProjectPlace | null,
  { settings, given }: { readonly settings: PlanSettings; readonly given: GivenFiles },
): Promise<PlanOutcome> {
  const { temperature_file } = reckoner.assessment.run.settings.bloom;
  const named = { temperatures: temperature_file, addresses: settings.address_file };
  const files = await filesBeside(place, named, given);
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

let beside: { readonly at: ProjectPlace | null; readonly key: string; readonly files: Promise<PlanFiles> } | null =
  null;

/** Read once for the same place and names. */
function filesBeside(at: ProjectPlace | null, named: NamedFiles, given: GivenFiles): Promise<PlanFiles> {
  if (!at) throw new Error('No project is open.');
  // Files given are copies with every question: the same file has the same name, size and day.
  const marks = [given.temperatures, given.addresses].map((file) => file && [file.name, file.size, file.lastModified]);
  const key = JSON.stringify([named, marks]);
  if (beside?.at !== at || beside.key !== key) beside = { at, key, files: planFiles(at, named, given) };
  return beside.files;
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
