/** The settings of bloom and plan as JSON Schema (2020-12). */
import { Type } from 'typebox';
import { ACTIONS, DEGREE_DAY_METHODS, PRICED_ACTIONS } from '../plan-settings.ts';
import { CAUSES, PAVEMENT_KINDS } from '../records.ts';

const number = (unit: string, limits: { minimum?: number; exclusiveMinimum?: number; maximum?: number } = {}) =>
  Type.Number({ 'x-unit': unit, ...limits });
const share = () => number('', { minimum: 0, maximum: 1 });
const amount = (unit: string) => number(unit, { minimum: 0 });
const maybe = (unit: string, maximum?: number) =>
  Type.Union([number(unit, { minimum: 0, ...(maximum === undefined ? {} : { maximum }) }), Type.Null()]);
const text = () => Type.String();
const filled = () => Type.String({ pattern: '\\S' });
const day = () => Type.String({ format: 'date' });

export const bloomSchema = Type.Object({
  count_from: Type.String({ pattern: '^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$' }),
  lower_c: number('°C', { minimum: -20, maximum: 40 }),
  upper_c: Type.Union([number('°C', { minimum: -20, maximum: 60 }), Type.Null()]),
  method: Type.Enum([...DEGREE_DAY_METHODS]),
  open_days: number('d', { exclusiveMinimum: 0, maximum: 366 }),
  closing_soon_days: number('d', { minimum: 0, maximum: 366 }),
  temperature_file: text(),
});

const price = Type.Object({
  action: Type.Enum([...PRICED_ACTIONS]),
  set_up: amount(''),
  per_tree: amount(''),
  per_m2: amount(''),
  hours_set_up: amount('h'),
  hours_per_tree: amount('h'),
  hours_per_m2: amount('h'),
});

const product = Type.Object({
  name: filled(),
  group: filled(),
  label_rate: Type.Optional(text()),
  label_source: Type.Optional(text()),
  typed_by: Type.Optional(text()),
  re_entry: Type.Optional(text()),
});

const weatherCheck = Type.Object({
  block_id: filled(),
  on: day(),
  wind_m_s: maybe('m/s', 100),
  rain_mm: maybe('mm', 2000),
  bees_at_flowers: Type.Optional(Type.Enum(['yes', 'no', 'unknown'])),
  by: Type.Optional(text()),
});

export const planSchema = Type.Object({
  currency: filled(),
  prices: Type.Array(price, { maxItems: PRICED_ACTIONS.length }),
  budget: maybe(''),
  crew_days_per_week: maybe('d'),
  crew_hours_per_day: number('h', { exclusiveMinimum: 0, maximum: 24 }),
  weeks: Type.Integer({ minimum: 1, maximum: 53 }),
  clean_kinds: Type.Array(Type.Enum([...PAVEMENT_KINDS])),
  clean_removes: share(),
  treat_lowers: share(),
  treat_causes: Type.Array(Type.Enum([...CAUSES])),
  fade_half_life_days: number('d', { exclusiveMinimum: 0, maximum: 36_500 }),
  refoliate_days: number('d', { minimum: 0, maximum: 3660 }),
  keep_off_m: Type.Object({ water: maybe('m', 10_000), drain: maybe('m', 10_000), well: maybe('m', 10_000) }),
  wind_max_m_s: maybe('m/s', 100),
  rain_max_mm: maybe('mm', 2000),
  check_days: number('d', { minimum: 0, maximum: 366 }),
  applicator: Type.Object({ name: text(), licence: text() }),
  products: Type.Array(product),
  product: text(),
  treatments: Type.Array(Type.Object({ block_id: filled(), on: day(), product: filled() })),
  weather: Type.Array(weatherCheck),
  notice_m: maybe('m', 10_000),
  address_file: text(),
  must_do: Type.Array(Type.Object({ block_id: filled(), action: Type.Enum([...ACTIONS, 'any']) })),
  districts: Type.Array(Type.Object({ name: filled(), blocks: Type.Array(filled()) })),
  district_floor: share(),
});
