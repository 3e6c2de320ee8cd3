/** The settings of a project as JSON Schema (2020-12): names, types and the limits within which each makes sense. */
import { Type } from 'typebox';
import { CAUSES, FOOT_TRAFFIC, PAVEMENT_KINDS } from '../records.ts';
import { CRITERIA } from '../settings.ts';
import { bloomSchema, planSchema } from './plan-schema.ts';

const number = (unit: string, limits: { minimum?: number; exclusiveMinimum?: number; maximum?: number } = {}) =>
  Type.Number({ 'x-unit': unit, ...limits });
const share = () => number('', { minimum: 0, maximum: 1 });
const positive = (unit: string, maximum?: number) =>
  number(unit, { exclusiveMinimum: 0, ...(maximum === undefined ? {} : { maximum }) });

/** The same rule under each of several names. */
function each(names: readonly string[], rule: () => ReturnType<typeof number>) {
  return Type.Object(Object.fromEntries(names.map((name) => [name, rule()])));
}

const levels = Type.Object(
  Object.fromEntries(
    CRITERIA.map((name) => [name, Type.Object({ none: number('', { minimum: 0 }), full: number('', { minimum: 0 }) })]),
  ),
);

const priority = Type.Object({
  weights: each(CRITERIA, () => number('', { minimum: 0 })),
  levels,
  visibility: each(PAVEMENT_KINDS, share),
  foot_traffic_value: each(FOOT_TRAFFIC, share),
  bloom_state_value: each(['before', 'open', 'closing', 'closed', 'unknown'], share),
  complaint_distance_m: number('m', { minimum: 0, maximum: 10_000 }),
  complaint_half_life_days: positive('d'),
  site_distance_m: number('m', { minimum: 0, maximum: 10_000 }),
  top_n: Type.Integer({ minimum: 1 }),
});

const classTable = Type.Object({
  source: Type.String(),
  classes: Type.Record(
    Type.String(),
    Type.Array(number('%', { minimum: 0, maximum: 100 }), { minItems: 2, maxItems: 2 }),
  ),
});

const pct = () => number('%', { minimum: 0, maximum: 100 });

const uncertainty = Type.Object({
  dose_coefficient_log_sd: number('', { minimum: 0, maximum: 5 }),
  dose_coefficient_freedom: number('', { minimum: 0 }),
  rater_bias_sd_pct: pct(),
  rater_error_sd_pct: pct(),
  ring_share_spread: share(),
  outline_sd_m: number('m', { minimum: 0, maximum: 20 }),
});

const rater = Type.Object({
  bias_pct: number('%', { minimum: -100, maximum: 100 }),
  bias_se_pct: pct(),
  error_sd_pct: pct(),
});

/** JSON Schema of the `settings` of project.json. */
export const settingsSchema = Type.Object(
  {
    drift_rings: Type.Array(Type.Object({ to_m: positive('m', 50), share: share() }), { maxItems: 20 }),
    wind: Type.Object({
      towards_deg: number('°', { minimum: -360, maximum: 360 }),
      distance_m: number('m', { minimum: 0, maximum: 50 }),
    }),
    chord_tolerance_m: positive('m', 1),
    dose_coefficient: positive('', 1000),
    calibrated: Type.Boolean(),
    uncertainty,
    raters: Type.Record(Type.String(), rater),
    cause_factor: each(CAUSES, () => number('', { minimum: 0, maximum: 100 })),
    severity_from: Type.Enum(['browned', 'defoliated', 'greater']),
    visit_window_days: Type.Integer({ minimum: 0, maximum: 366 }),
    scales: Type.Record(Type.String(), classTable),
    spread_max_m: positive('m', 200),
    default_width_m: each(PAVEMENT_KINDS, () => positive('m', 200)),
    block_cell_m: number('m', { minimum: 1, maximum: 100_000 }),
    block_min_m2: number('m²', { minimum: 0 }),
    block_min_share: number('', { minimum: 0, maximum: 1 }),
    as_of: Type.Union([Type.String({ format: 'date' }), Type.Null()]),
    bloom_stale_days: number('d', { minimum: 0 }),
    priority,
    bloom: bloomSchema,
    plan: planSchema,
  },
  { $id: 'settings', description: 'Every parameter of the model by name; an absent one takes its default.' },
);
