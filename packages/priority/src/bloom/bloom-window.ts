/**
 * The bloom window of a block in one season: when the first flowers opened or are expected to, and when flowering ends. Seen
 * where two visits enclose it, forecast where a forecast is given, else reckoned from the length the settings assume.
 */
import type { BloomObservation, BloomSettings } from '@crownfall/survey';
import { bloomStateOf, stateOf } from '../bloom-state.ts';
import { addDays, daysBetween } from '../days.ts';
import type { BloomState } from '../score.ts';

/** A day that is not known to the day. `seen` between two visits, `forecast` from heat, `assumed` from the usual length. */
export interface DayRange {
  readonly day: string;
  readonly earliest: string;
  readonly latest: string;
  readonly from: 'seen' | 'forecast' | 'assumed';
}

export interface BloomWindow {
  readonly state: BloomState;
  /** Newest observation up to the day of the figures; null: none this season. */
  readonly seenOn: string | null;
  readonly bbch: number | null;
  /** First day with open flowers; null: not known. */
  readonly opens: DayRange | null;
  /** Last day on which larvae are exposed; null: not known. */
  readonly closes: DayRange | null;
}

/** The window of one block in the season (calendar year) of `asOf`, from its observations and a forecast of its start, if any. */
export function bloomWindowOf(
  observations: readonly BloomObservation[],
  { asOf, staleDays, bloom }: { readonly asOf: string; readonly staleDays: number; readonly bloom: BloomSettings },
  forecast: DayRange | null,
): BloomWindow {
  const season = observations
    .filter(({ observedOn }) => observedOn.slice(0, 4) === asOf.slice(0, 4) && observedOn <= asOf)
    .sort((a, b) => (a.observedOn < b.observedOn ? -1 : a.observedOn > b.observedOn ? 1 : a.bbch - b.bbch));
  const newest = season.at(-1);
  const opens = openingSeen(season, bloom) ?? (forecast && notBefore(forecast, season));
  return {
    state: bloomStateOf(observations, asOf, staleDays),
    seenOn: newest?.observedOn ?? null,
    bbch: newest?.bbch ?? null,
    opens,
    closes: closingSeen(season) ?? closingAfter(opens, season, { asOf, bloom }),
  };
}

const isOpen = (seen: BloomObservation): boolean => stateOf(seen) === 'open';
const isPast = (seen: BloomObservation): boolean => ['closing', 'closed'].includes(stateOf(seen));

/** Between the last visit before the first open flowers and the visit that saw them; they may not be older than a bloom lasts. */
function openingSeen(season: readonly BloomObservation[], { open_days }: BloomSettings): DayRange | null {
  const first = season.find(isOpen);
  if (!first) return null;
  const latest = first.observedOn;
  const floor = addDays(latest, -Math.round(open_days) + 1);
  const before = season.filter((seen) => seen.observedOn < latest && stateOf(seen) === 'before').at(-1);
  const earliest = before && addDays(before.observedOn, 1) > floor ? addDays(before.observedOn, 1) : floor;
  const day = before ? middle(earliest, latest) : latest;
  return { day, earliest, latest, from: before ? 'seen' : 'assumed' };
}

/** A forecast cannot be earlier than a visit that saw no open flowers yet. */
function notBefore(forecast: DayRange, season: readonly BloomObservation[]): DayRange {
  const before = season.filter((seen) => stateOf(seen) === 'before').at(-1);
  if (!before) return forecast;
  const floor = addDays(before.observedOn, 1);
  const { day, earliest, latest, from } = forecast;
  return { day: later(day, floor), earliest: later(earliest, floor), latest: later(latest, floor), from };
}

/** Between the last visit that saw open flowers and the first one that saw them past. */
function closingSeen(season: readonly BloomObservation[]): DayRange | null {
  const last = season.filter(isOpen).at(-1);
  const past = season.find((seen) => isPast(seen) && (!last || seen.observedOn > last.observedOn));
  if (!last || !past) return null;
  const latest = addDays(past.observedOn, -1);
  return { day: middle(last.observedOn, latest), earliest: last.observedOn, latest, from: 'seen' };
}

/** From the opening and the usual length; flowers seen open later than that last at least until then. */
function closingAfter(
  opens: DayRange | null,
  season: readonly BloomObservation[],
  { asOf, bloom }: { readonly asOf: string; readonly bloom: BloomSettings },
): DayRange | null {
  if (!opens) return null;
  const lastOpen = season.filter(isOpen).at(-1)?.observedOn;
  const floor = lastOpen ?? opens.day;
  const after = (day: string) => later(addDays(day, Math.round(bloom.open_days) - 1), floor);
  const stillOpen = lastOpen !== undefined && !season.some((seen) => isPast(seen) && seen.observedOn > lastOpen);
  const day = stillOpen && lastOpen === asOf ? later(after(opens.day), asOf) : after(opens.day);
  return {
    day,
    earliest: after(opens.earliest),
    latest: later(after(opens.latest), day),
    from: opens.from === 'forecast' ? 'forecast' : 'assumed',
  };
}

function middle(from: string, to: string): string {
  return addDays(from, Math.floor(daysBetween(from, to) / 2));
}

function later(a: string, b: string): string {
  return a > b ? a : b;
}
