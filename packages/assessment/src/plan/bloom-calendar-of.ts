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
import type { BloomObservation } from '@crownfall/survey';
import type { Reckoned } from '../assess.ts';
import { bloomByBlock } from '../rank-stage.ts';

/** What was seen of one tree by itself this season. */
export interface TreeBloom extends Pick<BloomWindow, 'state' | 'bbch'> {
  readonly treeId: string;
  /** null: it stands in no block. */
  readonly blockId: string | null;
  readonly seenOn: string;
}

export interface BloomCalendar {
  readonly title: string;
  readonly season: number;
  readonly asOf: string;
  readonly forecast: BloomForecast | NoForecast;
  readonly entries: readonly CalendarEntry[];
  /** Trees with observations of their own this season, in the order of the crowns. */
  readonly trees: readonly TreeBloom[];
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
export function calendarFrom(reckoned: Reckoned, { forecast, windows }: TownBloom): BloomCalendar {
  const { stages, settings, asOf } = reckoned;
  const { title, season } = stages.survey;
  const blocks = stages.ground.blocks.map(({ blockId, name }, block) => ({ blockId, name, window: windows[block] }));
  const entries = calendarOf(blocks, asOf, settings.bloom.closing_soon_days);
  return { title, season, asOf, forecast, entries, trees: treeBloom(reckoned) };
}

/** A tree's state counts for its block among the others; told by itself it says which trees are ahead. */
function treeBloom({ stages: { ground, survey }, settings, asOf }: Reckoned): TreeBloom[] {
  const byTree = new Map<string, BloomObservation[]>();
  for (const seen of survey.bloom) {
    if (seen.treeId === undefined) continue;
    const own = byTree.get(seen.treeId);
    if (own) own.push(seen);
    else byTree.set(seen.treeId, [seen]);
  }
  const { bloom, bloom_stale_days: staleDays } = settings;
  return ground.crowns.flatMap(({ tree: { treeId }, block }) => {
    const { state, seenOn, bbch } = bloomWindowOf(byTree.get(treeId) ?? [], { asOf, staleDays, bloom }, null);
    return seenOn === null ? [] : [{ treeId, blockId: ground.blocks[block]?.blockId ?? null, state, seenOn, bbch }];
  });
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
