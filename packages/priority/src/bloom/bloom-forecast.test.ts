import { type BloomObservation, DEFAULT_SETTINGS } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { addDays, daysBetween } from '../days.ts';
import {
  type DailyTemperature,
  forecastBloom,
  type PlacedObservation,
  placeOpening,
  seasonOpenings,
} from './bloom-forecast.ts';

const BLOOM = { ...DEFAULT_SETTINGS.bloom, lower_c: 10, upper_c: null, count_from: '01-01' };

const seen = (
  place: string,
  observedOn: string,
  bbch: number,
  change: Partial<BloomObservation> = {},
): PlacedObservation => ({
  place,
  blockId: place,
  observedOn,
  bbch,
  larvaeInGalls: 'no',
  beesAtFlowers: 'unknown',
  extra: {},
  ...change,
});

/** A whole year of one temperature, so that every day has `meanC − 10` degree days. */
function steadyYear(year: number, meanC: number, to = `${year}-12-31`): DailyTemperature[] {
  const days: DailyTemperature[] = [];
  for (let date = `${year}-01-01`; date <= to; date = addDays(date, 1))
    days.push({ date, lowestC: meanC - 5 < 10 ? meanC : meanC - 5, highestC: meanC - 5 < 10 ? meanC : meanC + 5 });
  return days;
}

/** Two visits a day apart, so that the opening is known to the day. */
const opening = (place: string, day: string) => [seen(place, addDays(day, -1), 59), seen(place, day, 61)];

describe('forecast of the bloom', () => {
  // Closed form: 1200 degree days at 10 a day are reached on day 120 (30 April), at 12 a day on day 100, at 8 on day 150.
  const past = [...opening('A', '2023-04-30'), ...opening('A', '2024-04-09'), ...opening('A', '2025-05-30')];
  const years = [...steadyYear(2023, 20), ...steadyYear(2024, 22), ...steadyYear(2025, 18)];

  test('finds the heat that past seasons needed, and this season’s day from it', () => {
    const found = forecastBloom(past, [...years, ...steadyYear(2026, 25, '2026-12-31')], {
      asOf: '2026-03-10',
      bloom: BLOOM,
    });
    if (!found.possible) throw new Error(found.because);
    expect(found.needed).toBeCloseTo(1200, 9);
    expect(found.errorDays).toBeCloseTo(0, 9);
    expect(found.knownTo).toBe('2026-03-10');
    // 69 days at 15 make 1035; the 165 left take 17, 14 or 21 days in the past seasons' weather: mean 17.33.
    expect(found.opening.day).toBe(addDays('2026-03-10', 17));
    expect(daysBetween(found.opening.day, found.opening.latest)).toBe(
      daysBetween(found.opening.earliest, found.opening.day),
    );
  });

  test('with all temperatures known the day is exact and the range only that of the visits', () => {
    const found = forecastBloom(past, [...years, ...steadyYear(2026, 25)], { asOf: '2026-04-30', bloom: BLOOM });
    // 1200 / 15 = day 80: 21 March.
    expect(found.possible && found.opening.day).toBe('2026-03-21');
    // t(0.9; 2) = 1.886 (tables of Student's t) times 0.5/√3 days: below one day.
    expect(found.possible && found.opening.latest).toBe('2026-03-22');
  });

  test('leaving a season out tells how far off its forecast would have been', () => {
    // 2025 opened 15 days later than its heat says: 1320 instead of 1200 degree days.
    const odd = [...past.slice(0, 4), ...opening('A', '2025-06-14')];
    const found = forecastBloom(odd, [...years, ...steadyYear(2026, 25)], { asOf: '2026-04-30', bloom: BLOOM });
    if (!found.possible) throw new Error(found.because);
    // From the others 1260, 1260 and 1200: days 126, 105 and 150 against 120, 100 and 165 seen.
    expect(found.seasons.map(({ errorDays }) => errorDays)).toEqual([6, 5, -15]);
    expect(found.errorDays).toBeCloseTo(Math.sqrt((36 + 25 + 225) / 3), 9);
    expect(found.needed).toBeCloseTo(1240, 9);
  });

  test('a block that always opens later is forecast later; one never seen has a wider range', () => {
    const both = [...past, ...opening('B', '2023-05-06'), ...opening('B', '2024-04-15'), ...opening('B', '2025-06-05')];
    const found = forecastBloom(both, [...years, ...steadyYear(2026, 25)], { asOf: '2026-04-30', bloom: BLOOM });
    if (!found.possible) throw new Error(found.because);
    const [a, b, c] = ['A', 'B', 'C'].map((place) => placeOpening(found, place));
    expect(daysBetween(a.day, b.day)).toBe(6);
    expect(daysBetween(c.earliest, c.latest)).toBeGreaterThan(daysBetween(b.earliest, b.latest));
  });

  test('fewer than three seasons, or no temperatures, give no forecast and say why', () => {
    const by = { asOf: '2026-04-30', bloom: BLOOM };
    const all = [...years, ...steadyYear(2026, 25)];
    expect(forecastBloom(past.slice(0, 4), all, by)).toEqual({
      possible: false,
      because: 'too-few-seasons',
      seasons: [2023, 2024],
    });
    expect(forecastBloom(past, [], by)).toMatchObject({ possible: false, because: 'no-temperatures' });
    expect(forecastBloom(past, years, by)).toMatchObject({ possible: false, because: 'temperatures-missing' });
    // Temperatures of 2024 are missing: that season cannot be used.
    expect(
      forecastBloom(
        past,
        all.filter(({ date }) => !date.startsWith('2024')),
        by,
      ),
    ).toMatchObject({
      because: 'too-few-seasons',
      seasons: [2023, 2025],
    });
  });

  test('a short gap in the temperatures is bridged, a long one is not', () => {
    const by = { asOf: '2026-04-30', bloom: BLOOM };
    const without = (from: string, to: string) =>
      [...years, ...steadyYear(2026, 25)].filter(({ date }) => date < from || date > to);
    expect(forecastBloom(past, without('2024-02-01', '2024-02-03'), by)).toMatchObject({
      possible: true,
      needed: 1200,
    });
    expect(forecastBloom(past, without('2024-02-01', '2024-02-04'), by).possible).toBe(false);
  });

  test('an opening needs a visit before and one after, three weeks apart at most', () => {
    expect(seasonOpenings([seen('A', '2025-05-04', 58), seen('A', '2025-05-08', 61)])).toEqual([
      { season: 2025, place: 'A', day: '2025-05-06', halfGapDays: 2 },
    ]);
    expect(seasonOpenings([seen('A', '2025-05-08', 61)])).toEqual([]);
    expect(seasonOpenings([seen('A', '2025-04-01', 51), seen('A', '2025-05-08', 61)])).toEqual([]);
    // Larvae in the galls: the flowers are past, whatever the stage says.
    expect(
      seasonOpenings([seen('A', '2025-05-04', 58), seen('A', '2025-05-08', 61, { larvaeInGalls: 'yes' })]),
    ).toEqual([]);
  });
});
