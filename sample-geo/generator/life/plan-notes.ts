/** The town's price list, crew, products and addresses. All invented: no product, rate, price or licence here is a real one. */

import { onLoop } from '../town/loop.ts';
import { centroid } from '../town/shapes.ts';
import type { Town } from '../town/town.ts';
import type { Note } from './field-notes.ts';

const price = (action: string, money: readonly [number, number, number], hours: readonly [number, number, number]) => ({
  action,
  set_up: money[0],
  per_tree: money[1],
  per_m2: money[2],
  hours_set_up: hours[0],
  hours_per_tree: hours[1],
  hours_per_m2: hours[2],
});

export function planSettings(town: Town) {
  return {
    currency: 'USD',
    budget: 12_000,
    crew_days_per_week: 3,
    weeks: 6,
    prices: [
      price('inspect', [25, 4, 0], [0.5, 0.1, 0]),
      price('clean', [140, 0, 1.1], [1, 0, 0.012]),
      price('treat', [110, 32, 0], [1, 0.3, 0]),
      price('replace', [250, 1350, 0], [4, 7, 0]),
    ],
    check_days: 3,
    keep_off_m: { water: 15, drain: 2, well: 30 },
    wind_max_m_s: 4,
    rain_max_mm: 1,
    weather: [
      { block_id: '*', on: '2026-05-20', wind_m_s: 2.2, rain_mm: 0, by: 'R1' },
      ...['B13', 'B28', 'B29'].map((block_id) => ({
        block_id,
        on: '2026-05-20',
        wind_m_s: 1.4,
        rain_mm: 0,
        bees_at_flowers: 'no',
        by: 'R2',
      })),
    ],
    applicator: { name: 'Invented applicator', licence: 'INVENTED-0001' },
    products: [
      { name: 'Product Alder (invented)', group: 'X1 (invented)', label_source: 'invented label, no rate typed' },
      { name: 'Product Birch (invented)', group: 'X2 (invented)', label_source: 'invented label, no rate typed' },
    ],
    product: 'Product Alder (invented)',
    treatments: ['B13', 'B17', 'B21', 'B28'].map((block_id) => ({
      block_id,
      on: '2025-05-16',
      product: 'Product Alder (invented)',
    })),
    notice_m: 20,
    address_file: 'addresses.geojson',
    must_do: [{ block_id: 'B04', action: 'any' }],
    districts: districts(town),
    district_floor: 0.5,
  };
}

export const BLOOM_SETTINGS = { temperature_file: 'temperatures.csv', open_days: 11 };

/** The shore and the upper town, parted half-way up. */
function districts(town: Town) {
  const north = (block: Town['blocks'][number]) => centroid(block.loop.points)[1];
  const of = (within: (north: number) => boolean) =>
    town.blocks.filter((block) => within(north(block))).map(({ id }) => id);
  return [
    { name: 'Shore', blocks: of((m) => m < 220) },
    { name: 'Upper town', blocks: of((m) => m >= 220) },
  ];
}

/** Two front doors on each side of a block. */
export function addressNotes(town: Town): readonly Note[] {
  return town.blocks.flatMap(({ loop }) =>
    loop.sides.flatMap((side, i) =>
      [0.3, 0.7].map((share, door) => ({
        at: onLoop(loop, side.straightFrom + (side.straightTo - side.straightFrom) * share, -7),
        properties: { address: `${10 * (i + 1) + 2 * door} ${side.street}` },
      })),
    ),
  );
}
