/** The bloom of a town: a forecast where earlier seasons allow one, the window of each block, in the order in which they matter. */
import {
  type BloomForecast,
  type BloomWindow,
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

export interface BloomCalendar {
  readonly title: string;
  readonly season: number;
  readonly asOf: string;
  readonly forecast: BloomForecast | NoForecast;
  readonly entries: readonly CalendarEntry[];
}

/** A forecast for the town and the window of each block, in the order of the ground's blocks. */
export interface TownBloom {
  readonly forecast: BloomForecast | NoForecast;
  readonly windows: readonly BloomWindow[];
}

/** The calendar on the day of the figures; without temperatures nothing is forecast, and windows are those seen. */
export function bloomCalendar(reckoned: Reckoned, temperatures: readonly DailyTemperature[] = []): BloomCalendar {
  return calendarFrom(reckoned, townBloom(reckoned, temperatures));
}

/** The calendar of windows that were reckoned before. */
export function calendarFrom({ stages, settings, asOf }: Reckoned, { forecast, windows }: TownBloom): BloomCalendar {
  const { title, season } = stages.survey;
  const blocks = stages.ground.blocks.map(({ blockId, name }, block) => ({ blockId, name, window: windows[block] }));
  return { title, season, asOf, forecast, entries: calendarOf(blocks, asOf, settings.bloom.closing_soon_days) };
}

/** Each block is a place of the forecast. */
export function townBloom({ stages, settings, asOf }: Reckoned, temperatures: readonly DailyTemperature[]): TownBloom {
  const { ground, survey } = stages;
  const { bloom, bloom_stale_days: staleDays } = settings;
  const seen = bloomByBlock(ground, survey.bloom);
  const placed = seen.flatMap((own, block) => own.map((each) => ({ ...each, place: ground.blocks[block].blockId })));
  const forecast = forecastBloom(placed, temperatures, { asOf, bloom });
  const opening = (block: number) => (forecast.possible ? placeOpening(forecast, ground.blocks[block].blockId) : null);
  const windows = seen.map((own, block) => bloomWindowOf(own, { asOf, staleDays, bloom }, opening(block)));
  return { forecast, windows };
}
