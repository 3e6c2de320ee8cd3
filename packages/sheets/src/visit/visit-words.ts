/** The words of visit sheets, one catalogue per language. */
import type { BlockResult, TreeResult } from '@crownfall/assessment';

export interface VisitWords {
  readonly block: string;
  readonly day: string;
  readonly season: (season: number, asOf: string) => string;
  readonly rank: (rank: number, of: number) => string;
  readonly page: (page: number, of: number) => string;
  readonly continued: (name: string) => string;
  readonly before: string;
  readonly traffic: string;
  readonly overhead: string;
  readonly openOnPhone: string;
  readonly figures: string;
  readonly stained: string;
  readonly range80: string;
  readonly noRange: string;
  readonly pavement: string;
  readonly fallout: string;
  readonly trees: string;
  readonly treesRated: (rated: number, trees: number) => string;
  readonly worst: string;
  readonly complaints: string;
  readonly drains: string;
  /** Of trees that a treatment could be meant for. */
  readonly nearestWater: string;
  readonly waterKinds: Readonly<Record<'water' | 'drain' | 'well', string>>;
  readonly waterFrom: (distance: string, kind: string, tree: number, keep: string | null) => string;
  readonly sites: string;
  readonly siteKinds: Readonly<Record<'school' | 'clinic' | 'transit' | 'outdoor_dining' | 'other', string>>;
  readonly bloom: string;
  readonly bloomStates: Readonly<Record<BlockResult['bloomState'], string>>;
  readonly bloomMeans: Readonly<Record<BlockResult['bloomState'], string>>;
  readonly seen: (day: string, bbch: number) => string;
  readonly neverSeen: string;
  readonly bees: Readonly<Record<'yes' | 'no' | 'unknown', string>>;
  readonly against: string;
  readonly nothingAgainst: string;
  readonly more: (count: number) => string;
  readonly findings: string;
  readonly map: (block: string, scale: string) => string;
  readonly mapAbout: (trees: number) => string;
  readonly legend: {
    readonly stains: string;
    readonly clean: string;
    readonly unrated: string;
    readonly fallout: string;
    readonly drain: string;
    readonly well: string;
    readonly water: string;
    readonly edge: string;
  };
  readonly columns: {
    readonly number: string;
    readonly tree: string;
    readonly browned: string;
    readonly ratedOn: string;
    readonly cause: string;
    readonly look: string;
    readonly today: string;
    readonly galls: string;
    readonly note: string;
  };
  readonly tableAbout: string;
  readonly noHost: string;
  readonly notRated: string;
  readonly group: (percent: string) => string;
  readonly defoliated: (percent: string) => string;
  readonly causes: Readonly<Record<TreeResult['cause'], string>>;
  readonly look: Readonly<Record<LookFor, string>>;
  readonly write: {
    readonly title: string;
    readonly date: string;
    readonly crew: string;
    readonly wind: string;
    readonly rain: string;
    readonly bees: string;
    readonly yes: string;
    readonly no: string;
    readonly bbch: string;
    readonly notes: string;
  };
  readonly calibrated: (k: string) => string;
  readonly uncalibrated: (k: string) => string;
  readonly draws: (draws: number, seed: number) => string;
  readonly madeBy: (version: string) => string;
  readonly months: readonly string[];
  readonly index: {
    readonly title: (blocks: number) => string;
    readonly about: string;
    readonly mapAlt: (blocks: number) => string;
    readonly columns: readonly [string, string, string, string, string, string, string];
    readonly tableAbout: string;
  };
}

/** What a visitor is asked to look for at a tree. */
export type LookFor = 'rate' | 'cause' | 'again' | 'open' | 'closing' | 'inside' | 'falling' | 'leaves' | 'clean';

/** An ISO day with its month spelled, short enough for a table: `12 May 2026`. */
export function shortDay(iso: string, { months }: VisitWords): string {
  const [year, month, day] = iso.split('-').map(Number);
  return `${day} ${months[month - 1]} ${year}`;
}
