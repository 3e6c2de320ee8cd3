/** Daily temperatures and the bloom of earlier seasons: warm springs flower early, and every block keeps its lag behind the shore. */
import { randomFor } from '../random.ts';
import { centroid } from '../town/shapes.ts';
import type { Town } from '../town/town.ts';
import { round } from './crown-records.ts';
import type { BloomRow } from './field-notes.ts';
import { clamp } from './truth.ts';

export const TEMPERATURE_COLUMNS = ['date', 'tmin_c', 'tmax_c'] as const;
type TemperatureRow = Readonly<Record<(typeof TEMPERATURE_COLUMNS)[number], string | number>>;

/** How much warmer or colder than usual the first half of each year was, °C. */
const SEASONS = [
  [2022, 0.7],
  [2023, -0.8],
  [2024, 0.3],
  [2025, -0.4],
  [2026, 0],
] as const;
const LAST_DAY = '2026-05-20';
/** The day of this season's first flowers half-way up the town, as its bloom notes have it. */
const MIDDLE_OPENING = '2026-05-12';
const MIDDLE_NORTH_M = 286;
const METRES_PER_DAY = 26 * 0.7;
const STAGES_PER_DAY = 0.7;
/** No growth below, °C. */
const BASE_C = 10;

/** From 1 January 2022 to the day of the figures; a thermometer at the pump house, which is invented too. */
export function temperatureRows(): readonly TemperatureRow[] {
  const random = randomFor('temperatures');
  return SEASONS.flatMap(([year, anomalyC]) => {
    let spell = 0;
    return daysOf(year).map((date, day) => {
      spell = 0.7 * spell + random.normal(0, 1.1);
      const middle = usualC(day) + anomalyC + spell;
      const half = random.between(3.2, 5.4);
      return { date, tmin_c: round(middle - half, 1), tmax_c: round(middle + half, 1) };
    });
  });
}

/** Warmest in late July; a parabola on either side of the year's middle. */
function usualC(day: number): number {
  const away = Math.min(Math.abs(day - 205), 365 - Math.abs(day - 205)) / 182.5;
  return 28 - 9.5 * away * away * (1.6 - 0.6 * away);
}

/** Visits of earlier seasons to a third of the blocks, about a week apart, from before the flowers to after them. */
export function pastBloomRows(town: Town, temperatures: readonly TemperatureRow[]): readonly BloomRow[] {
  const random = randomFor('past bloom');
  const watched = town.blocks.filter(() => random.chance(0.34));
  const needed = heatBy(temperatures, MIDDLE_OPENING);
  return SEASONS.slice(0, -1).flatMap(([year]) => {
    const middle = shifted(dayOfHeat(temperatures, year, needed), random.whole(-1, 1));
    return watched.flatMap((block) => {
      const lag = (centroid(block.loop.points)[1] - MIDDLE_NORTH_M) / METRES_PER_DAY + random.normal(0, 1);
      const rows: BloomRow[] = [];
      for (let day = -15 + random.whole(0, 4); day < 20; day += random.whole(5, 8)) {
        const bbch = Math.round(clamp(59.6 + day * STAGES_PER_DAY + random.normal(0, 0.5), 51, 75));
        const open = bbch >= 60 && bbch <= 69;
        rows.push({
          tree_id: '',
          block_id: block.id,
          observed_on: shifted(middle, Math.round(lag) + day),
          bbch,
          larvae_in_galls: bbch > 69 ? 'yes' : 'no',
          bees_at_flowers: open ? random.pick(['yes', 'yes', 'no']) : 'no',
        });
      }
      return rows;
    });
  });
}

function heatBy(temperatures: readonly TemperatureRow[], day: string): number {
  return temperatures
    .filter(({ date }) => String(date) >= `${day.slice(0, 4)}-01-01` && String(date) <= day)
    .reduce((sum, row) => sum + heatOf(row), 0);
}

function dayOfHeat(temperatures: readonly TemperatureRow[], year: number, needed: number): string {
  let sum = 0;
  for (const row of temperatures) {
    if (!String(row.date).startsWith(String(year))) continue;
    sum += heatOf(row);
    if (sum >= needed) return String(row.date);
  }
  throw new RangeError(`expected ${needed} degree days in ${year}`);
}

function heatOf({ tmin_c, tmax_c }: TemperatureRow): number {
  return Math.max(0, (Number(tmin_c) + Number(tmax_c)) / 2 - BASE_C);
}

function daysOf(year: number): readonly string[] {
  const days: string[] = [];
  for (let day = `${year}-01-01`; day <= `${year}-12-31` && day <= LAST_DAY; day = shifted(day, 1)) days.push(day);
  return days;
}

function shifted(day: string, by: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + by * 86_400_000).toISOString().slice(0, 10);
}
