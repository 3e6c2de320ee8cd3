/**
 * When the first flowers will open, from the user's own dated observations of earlier seasons and daily temperatures: the heat that
 * past seasons needed is looked for in this one. Degree days by Baskerville and Emin (1969) or averages, see `degreeDays`; the
 * thresholds and the day from which heat is counted are settings.
 */
import { degreeDays, studentTQuantile } from '@crownfall/statistics';
import type { BloomObservation, BloomSettings } from '@crownfall/survey';
import { stateOf } from '../bloom-state.ts';
import { addDays, daysBetween } from '../days.ts';
import type { DayRange } from './bloom-window.ts';

/** Lowest and highest temperature of a day, °C. */
export interface DailyTemperature {
  readonly date: string;
  readonly lowestC: number;
  readonly highestC: number;
}

/** Seasons below which nothing is forecast. */
export const LEAST_SEASONS = 3;
/** A visit before and one after the opening may lie so far apart to tell its day; wider ones tell too little. */
const MOST_BETWEEN_DAYS = 21;
/** Days without a temperature that a sum may bridge with the mean of both sides. */
const MOST_GAP_DAYS = 3;
/** The range is meant to hold the opening in 8 of 10 seasons. */
const RANGE_UPPER = 0.9;
/** Days of heat looked ahead before giving up. */
const HORIZON_DAYS = 366;

/** The opening of one place in one season. */
export interface SeasonOpening {
  readonly season: number;
  /** Block, or whatever `placeOf` gives. */
  readonly place: string;
  /** Midway between the last visit without and the first with open flowers, and half the days between. */
  readonly day: string;
  readonly halfGapDays: number;
}

interface FittedSeason {
  readonly season: number;
  /** Median opening of all places, and the degree days until then. */
  readonly day: string;
  readonly degreeDays: number;
  readonly places: number;
  /** Day forecast for this season from the others alone, minus the day seen; days. */
  readonly errorDays: number;
}

export interface BloomForecast {
  readonly possible: true;
  readonly seasons: readonly FittedSeason[];
  /** Degree days until the first open flowers: mean of the seasons. */
  readonly needed: number;
  /** Root mean square of the errors with each season left out, days. */
  readonly errorDays: number;
  /** Opening of the town's median place in the season of the figures. */
  readonly opening: DayRange;
  /** Days by which a place opens after the median, with the seasons it was seen in. */
  readonly offsets: ReadonlyMap<string, { readonly days: number; readonly seasons: number }>;
  /** Spread of places about the median, days: for a place never seen before. */
  readonly placeSdDays: number;
  /** Temperatures were known up to here; later days take the past seasons' course. */
  readonly knownTo: string;
}

export interface NoForecast {
  readonly possible: false;
  readonly because: 'no-temperatures' | 'too-few-seasons' | 'temperatures-missing' | 'heat-not-reached';
  /** Seasons with an opening and temperatures up to it. */
  readonly seasons: readonly number[];
}

/** Observations with the place each belongs to. */
export interface PlacedObservation extends BloomObservation {
  readonly place: string;
}

/**
 * Openings that two visits enclose, by season (calendar year) and place; visits more than 21 days apart tell none.
 * @example one block seen at BBCH 58 on 4 May and 61 on 8 May opens on 6 May, ± 2 days
 */
export function seasonOpenings(observations: readonly PlacedObservation[]): SeasonOpening[] {
  const groups = new Map<string, PlacedObservation[]>();
  for (const seen of observations) {
    const key = `${seen.observedOn.slice(0, 4)} ${seen.place}`;
    const group = groups.get(key);
    if (group) group.push(seen);
    else groups.set(key, [seen]);
  }
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([key, group]) => {
      const first = group
        .filter((seen) => stateOf(seen) === 'open')
        .map(({ observedOn }) => observedOn)
        .sort()[0];
      if (first === undefined) return [];
      const before = group
        .filter((seen) => stateOf(seen) === 'before' && seen.observedOn < first)
        .map(({ observedOn }) => observedOn)
        .sort()
        .at(-1);
      if (before === undefined || daysBetween(before, first) > MOST_BETWEEN_DAYS) return [];
      const gap = daysBetween(before, first);
      return [
        {
          season: Number(key.slice(0, 4)),
          place: key.slice(5),
          day: addDays(before, Math.ceil(gap / 2)),
          halfGapDays: gap / 2,
        },
      ];
    });
}

/**
 * Fits the heat needed to the earlier seasons and forecasts the opening in the season of `asOf`. The range is
 * ± t(0.9; seasons − 1) · √(mean square of the leave-one-season-out errors + variance of the weather still to come + the visits'
 * own half gap²/3), 8 seasons of 10. Weather to come: each past season's temperatures in turn. Fewer than three seasons, or
 * no temperatures: no forecast, and why.
 */
export function forecastBloom(
  observations: readonly PlacedObservation[],
  temperatures: readonly DailyTemperature[],
  { asOf, bloom }: { readonly asOf: string; readonly bloom: BloomSettings },
): BloomForecast | NoForecast {
  const heat = new HeatSums(temperatures, bloom);
  const year = Number(asOf.slice(0, 4));
  const openings = seasonOpenings(observations).filter(({ season }) => season < year);
  const byPlace = placeOffsets(openings);
  const seen = medians(openings).flatMap((each) => {
    const sum = heat.until(each.season, each.day);
    return sum === null ? [] : [{ ...each, degreeDays: sum }];
  });
  const refuse = (because: NoForecast['because']): NoForecast => ({
    possible: false,
    because,
    seasons: seen.map(({ season }) => season),
  });
  if (temperatures.length === 0) return refuse('no-temperatures');
  if (seen.length < LEAST_SEASONS) return refuse('too-few-seasons');
  const known = heat.lastKnown(year, asOf);
  if (known === null) return refuse('temperatures-missing');
  const fitted = seen.map((season) => {
    const others = seen.filter((other) => other !== season).map(({ degreeDays: sum }) => sum);
    const day = heat.dayOf(season.season, mean(others));
    return { ...season, errorDays: day === null ? Number.NaN : daysBetween(season.day, day) };
  });
  const needed = mean(seen.map(({ degreeDays: sum }) => sum));
  const days = seen.flatMap(({ season }) => heat.dayWith({ year, known, needed, as: season }) ?? []);
  if (days.length === 0 || fitted.some(({ errorDays }) => Number.isNaN(errorDays))) return refuse('heat-not-reached');
  const errorDays = Math.sqrt(mean(fitted.map((season) => season.errorDays ** 2)));
  const ahead = days.map((day) => daysBetween(asOf, day));
  const middle = Math.round(mean(ahead));
  const visits = mean(openings.map(({ halfGapDays }) => halfGapDays)) ** 2 / 3;
  const sd = Math.sqrt(errorDays ** 2 + variance(ahead) + visits);
  const half = Math.ceil(studentTQuantile(RANGE_UPPER, seen.length - 1) * sd);
  return {
    possible: true,
    seasons: fitted,
    needed,
    errorDays,
    opening: {
      day: addDays(asOf, middle),
      earliest: addDays(asOf, middle - half),
      latest: addDays(asOf, middle + half),
      from: 'forecast',
    },
    ...byPlace,
    knownTo: known,
  };
}

/** The opening of one place: the town's, moved by how much earlier or later the place was; wider where it was never seen. */
export function placeOpening(forecast: BloomForecast, place: string): DayRange {
  const { opening, offsets, placeSdDays } = forecast;
  const known = offsets.get(place);
  const shift = Math.round(known?.days ?? 0);
  const spread = known ? placeSdDays / Math.sqrt(known.seasons + 1) : placeSdDays;
  const half = daysBetween(opening.day, opening.latest);
  const wide = Math.ceil(Math.hypot(half, studentTQuantile(RANGE_UPPER, forecast.seasons.length - 1) * spread));
  const day = addDays(opening.day, shift);
  return { day, earliest: addDays(day, -wide), latest: addDays(day, wide), from: 'forecast' };
}

/** Degree days summed from the day of counting, season by season. */
class HeatSums {
  readonly #byDay = new Map<string, number>();
  readonly #from: string;

  constructor(temperatures: readonly DailyTemperature[], bloom: BloomSettings) {
    const upper = bloom.upper_c === null ? {} : { upper: bloom.upper_c };
    for (const { date, lowestC, highestC } of temperatures)
      this.#byDay.set(
        date,
        degreeDays({ lowest: lowestC, highest: highestC }, { lower: bloom.lower_c, ...upper }, bloom.method),
      );
    this.#from = bloom.count_from;
  }

  /** To the end of `day`; null when days are missing. */
  until(season: number, day: string): number | null {
    let sum = 0;
    for (let at = this.#start(season, day); at <= day; at = addDays(at, 1)) {
      const heat = this.#on(at);
      if (heat === null) return null;
      sum += heat;
    }
    return sum;
  }

  /** First day on which the season's own temperatures reach a sum; null when they never do. */
  dayOf(season: number, needed: number): string | null {
    let sum = 0;
    const start = this.#start(season, `${season}-12-31`);
    for (let i = 0; i < HORIZON_DAYS; i++) {
      const day = addDays(start, i);
      const heat = this.#on(day);
      if (heat === null) return null;
      sum += heat;
      if (sum >= needed) return day;
    }
    return null;
  }

  /** The same for this year: own temperatures up to `known`, then those of season `as` on the same days of the year. */
  dayWith({ year, known, needed, as }: { year: number; known: string; needed: number; as: number }): string | null {
    let sum = 0;
    const start = this.#start(year, `${year}-12-31`);
    for (let i = 0; i < HORIZON_DAYS; i++) {
      const day = addDays(start, i);
      const lent = addDays(`${as}${this.#start(year, day).slice(4)}`, i);
      const heat = day <= known ? this.#on(day) : this.#on(lent);
      if (heat === null) return null;
      sum += heat;
      if (sum >= needed) return day;
    }
    return null;
  }

  /** Last day up to which this year's temperatures are known without a gap, not after `asOf`; null when none is. */
  lastKnown(year: number, asOf: string): string | null {
    let last: string | null = null;
    for (let day = this.#start(year, asOf); day <= asOf && this.#on(day) !== null; day = addDays(day, 1)) last = day;
    return last;
  }

  /** The day of counting before or on `day`: of the season's own year. */
  #start(season: number, day: string): string {
    const own = `${season}-${this.#from}`;
    return own <= day ? own : `${season - 1}-${this.#from}`;
  }

  /** Heat of a day; in a gap of at most three days the mean of its sides. */
  #on(day: string): number | null {
    const own = this.#byDay.get(day);
    if (own !== undefined) return own;
    for (let width = 1; width <= MOST_GAP_DAYS; width++)
      for (let back = 1; back <= width; back++) {
        const before = this.#byDay.get(addDays(day, -back));
        const after = this.#byDay.get(addDays(day, width + 1 - back));
        if (before !== undefined && after !== undefined) return (before + after) / 2;
      }
    return null;
  }
}

/** Median opening of each season over its places. */
function medians(openings: readonly SeasonOpening[]): { season: number; day: string; places: number }[] {
  const seasons = [...new Set(openings.map(({ season }) => season))].sort((a, b) => a - b);
  return seasons.map((season) => {
    const days = openings
      .filter((each) => each.season === season)
      .map(({ day }) => day)
      .sort();
    return { season, day: days[Math.floor((days.length - 1) / 2)], places: days.length };
  });
}

function placeOffsets(openings: readonly SeasonOpening[]): Pick<BloomForecast, 'offsets' | 'placeSdDays'> {
  const middle = new Map(medians(openings).map(({ season, day }) => [season, day]));
  const byPlace = new Map<string, number[]>();
  for (const { place, season, day } of openings) {
    const days = daysBetween(middle.get(season) as string, day);
    byPlace.set(place, [...(byPlace.get(place) ?? []), days]);
  }
  const offsets = new Map([...byPlace].map(([place, days]) => [place, { days: mean(days), seasons: days.length }]));
  return { offsets, placeSdDays: Math.sqrt(mean([...offsets.values()].map(({ days }) => days ** 2))) };
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function variance(values: readonly number[]): number {
  const middle = mean(values);
  return values.length < 2 ? 0 : values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1);
}
