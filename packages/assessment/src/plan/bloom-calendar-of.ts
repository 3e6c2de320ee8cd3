/** The bloom of a town: a forecast where earlier seasons allow one, the window of each block, in the order in which they matter. */
import {
  type BloomForecast,
  bloomWindowOf,
  type CalendarEntry,
  calendarOf,
  type DailyTemperature,
  forecastBloom,
  type NoForecast,
  placeOpening,
} from '@crownfall/priority';
import type { Reckoned } from '../assess.ts';
import { bloomByBlock } from '../rank-stage.ts';
import type { OpeningForecast } from './plan-scene.ts';

export interface BloomCalendar {
  readonly title: string;
  readonly season: number;
  readonly asOf: string;
  readonly forecast: BloomForecast | NoForecast;
  readonly entries: readonly CalendarEntry[];
}

/** The calendar on the day of the figures; without temperatures nothing is forecast, and windows are those seen. */
export function bloomCalendar(reckoned: Reckoned, temperatures: readonly DailyTemperature[] = []): BloomCalendar {
  const { stages, settings, asOf } = reckoned;
  const { ground, survey } = stages;
  const seen = bloomByBlock(ground, survey.bloom);
  const forecast = bloomForecastOf(reckoned, temperatures);
  const opening = openingBy(reckoned, forecast);
  const blocks = ground.blocks.map(({ blockId, name }, block) => {
    const by = { asOf, staleDays: settings.bloom_stale_days, bloom: settings.bloom };
    return { blockId, name, window: bloomWindowOf(seen[block], by, opening(block)) };
  });
  const { title, season } = survey;
  return { title, season, asOf, forecast, entries: calendarOf(blocks, asOf, settings.bloom.closing_soon_days) };
}

/** The forecast for the town, each block a place. */
export function bloomForecastOf(
  { stages, settings, asOf }: Reckoned,
  temperatures: readonly DailyTemperature[],
): BloomForecast | NoForecast {
  const { ground, survey } = stages;
  const placed = bloomByBlock(ground, survey.bloom).flatMap((seen, block) =>
    seen.map((each) => ({ ...each, place: ground.blocks[block].blockId })),
  );
  return forecastBloom(placed, temperatures, { asOf, bloom: settings.bloom });
}

/** Each block's opening by the forecast; null everywhere when there is none. */
export function openingBy({ stages }: Reckoned, forecast: BloomForecast | NoForecast): OpeningForecast {
  return (block) => (forecast.possible ? placeOpening(forecast, stages.ground.blocks[block].blockId) : null);
}
