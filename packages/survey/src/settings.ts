/**
 * Every parameter of the model, by the name that project.json uses. Defaults that are assumptions are marked (A); a run
 * prints the ones it used. Lengths in metres, shares 0–1.
 */
import { type BloomSettings, DEFAULT_BLOOM, DEFAULT_PLAN, type PlanSettings } from './plan-settings.ts';
import type { Cause, FootTraffic, PavementKind } from './records.ts';

export interface Settings {
  /** (A) Rings beyond the drip line, outwards: each reaches to `to_m` and takes `share` of the crown's dose. */
  readonly drift_rings: readonly { readonly to_m: number; readonly share: number }[];
  /** (A) Displacement of the whole fallout by a prevailing wind: bearing it blows towards, and distance. */
  readonly wind: { readonly towards_deg: number; readonly distance_m: number };
  /** (A) How far a straight edge may lie from the true arc. */
  readonly chord_tolerance_m: number;
  /** (A) k, when no calibration is stored. */
  readonly dose_coefficient: number;
  /** True only when `dose_coefficient` was fitted to quadrats. */
  readonly calibrated: boolean;
  /** How far the figures that go in may be off: what the random draws are drawn from. */
  readonly uncertainty: UncertaintySettings;
  /** What a rater check found, by rater; a rater who is not listed has no known bias. */
  readonly raters: Readonly<Record<string, RaterSettings>>;
  /** (A) w, by cause. `none` and `unknown` never stain. */
  readonly cause_factor: Readonly<Record<Cause, number>>;
  /** (A) What severity is taken from: the browned share, the defoliated share, or the greater of both. */
  readonly severity_from: 'browned' | 'defoliated' | 'greater';
  /** (A) Ratings of one tree this many days before its newest still belong to the same visit and are averaged with it. */
  readonly visit_window_days: number;
  /** Class tables of the project's own, by name, beside the published ones. */
  readonly scales: Readonly<Record<string, ClassTable>>;
  /** (A) A crown spread beyond this is taken for a slip of the pen. */
  readonly spread_max_m: number;
  /** (A) Width of a pavement line that states none, by kind. */
  readonly default_width_m: Readonly<Record<PavementKind, number>>;
  /** (A) Side of the square cells used when there are neither blocks nor streets. */
  readonly block_cell_m: number;
  /** Faces of the street network smaller than this are not blocks (A). */
  readonly block_min_m2: number;
  /** (A) Streets make blocks only when their faces hold at least this share of the pavement; else square cells do. */
  readonly block_min_share: number;
  /** The day figures are reckoned for, ISO; null = the latest date in the data. */
  readonly as_of: string | null;
  /** (A) A bloom observation older than this many days says nothing about today. */
  readonly bloom_stale_days: number;
  readonly priority: PrioritySettings;
  /** How the start and the end of the bloom are told. */
  readonly bloom: BloomSettings;
  /** What may be done, at what price, within which limits. */
  readonly plan: PlanSettings;
}

export interface UncertaintySettings {
  /** (A) Standard deviation of ln k; its standard error once k was fitted to quadrats. 0.5: within a factor 2.7, 19 times of 20. */
  readonly dose_coefficient_log_sd: number;
  /** Degrees of freedom behind that standard error (Student's t); 0: as good as normal. */
  readonly dose_coefficient_freedom: number;
  /** (A) How much the ratings of one rater may all be off alike, % of the crown at half severity. */
  readonly rater_bias_sd_pct: number;
  /** (A) How much a single rating may be off beside that, % of the crown at half severity. */
  readonly rater_error_sd_pct: number;
  /** (A) The drift rings' shares may be off, together, by up to this part of themselves. */
  readonly ring_share_spread: number;
  /** (A) How far outlines that state no outline_sd_m may lie outside or inside the true ones, standard deviation. */
  readonly outline_sd_m: number;
}

/** How one rater reads, in % of the crown at half severity; less towards 0 and 100 % (see rater-reading.ts). */
export interface RaterSettings {
  /** Positive: reads higher than the truth. Taken off every rating. */
  readonly bias_pct: number;
  /** Standard error of that. */
  readonly bias_se_pct: number;
  /** Scatter of single ratings. */
  readonly error_sd_pct: number;
}

/** A rating scale of classes: each class stands for an interval of per cent of the crown. */
export interface ClassTable {
  /** Where the table comes from: a publication, a house rule. */
  readonly source: string;
  /** Class code → lower and upper limit, per cent. */
  readonly classes: Readonly<Record<string, readonly [number, number]>>;
}

export const CRITERIA = [
  'stained',
  'foot_traffic',
  'complaints',
  'worst_severity',
  'sensitive_sites',
  'bloom_window',
] as const;
export type Criterion = (typeof CRITERIA)[number];

/** Value 0 at or below `none`, 1 at or beyond `full`, linear between. */
export interface ReferenceLevels {
  readonly none: number;
  readonly full: number;
}

export interface PrioritySettings {
  /** (A) Relative; divided by their sum. */
  readonly weights: Readonly<Record<Criterion, number>>;
  /** (A) In the criterion's own unit: m² (visible), share, open complaints (age-weighted), %, sites, state value. */
  readonly levels: Readonly<Record<Criterion, ReferenceLevels>>;
  /** (A) How much a stained square metre of each kind is noticed. */
  readonly visibility: Readonly<Record<PavementKind, number>>;
  /** (A) Value of each foot-traffic class, 0–1. */
  readonly foot_traffic_value: Readonly<Record<FootTraffic, number>>;
  /** (A) Value of each state of the bloom window, 0–1. */
  readonly bloom_state_value: Readonly<Record<'before' | 'open' | 'closing' | 'closed' | 'unknown', number>>;
  /** (A) A complaint outside every block belongs to the nearest one within this distance. */
  readonly complaint_distance_m: number;
  /** (A) An open complaint counts 1 when new and halves with each such span. */
  readonly complaint_half_life_days: number;
  /** (A) Sites within this distance of the block's stained pavement count. */
  readonly site_distance_m: number;
  /** (A) Number of blocks that `top_share` speaks of. */
  readonly top_n: number;
}

export const DEFAULT_SETTINGS: Settings = {
  drift_rings: [
    { to_m: 0.5, share: 0.5 },
    { to_m: 1.0, share: 0.25 },
  ],
  wind: { towards_deg: 0, distance_m: 0 },
  chord_tolerance_m: 0.01,
  dose_coefficient: 1,
  calibrated: false,
  uncertainty: {
    dose_coefficient_log_sd: 0.5,
    dose_coefficient_freedom: 0,
    rater_bias_sd_pct: 4,
    rater_error_sd_pct: 8,
    ring_share_spread: 0.5,
    outline_sd_m: 0.3,
  },
  raters: {},
  cause_factor: { frass: 1, honeydew: 0.8, fruit: 0.6, leaf_litter: 0.4, none: 0, unknown: 0 },
  severity_from: 'browned',
  visit_window_days: 14,
  scales: {},
  spread_max_m: 60,
  default_width_m: { sidewalk: 1.5, carriageway: 6, parking: 2.5, plaza: 5, driveway: 3, path: 1.5, other: 1.5 },
  block_cell_m: 100,
  block_min_m2: 200,
  block_min_share: 0.5,
  as_of: null,
  bloom_stale_days: 14,
  priority: {
    weights: {
      stained: 0.45,
      foot_traffic: 0.15,
      complaints: 0.15,
      worst_severity: 0.1,
      sensitive_sites: 0.1,
      bloom_window: 0.05,
    },
    levels: {
      stained: { none: 0, full: 200 },
      foot_traffic: { none: 0, full: 1 },
      complaints: { none: 0, full: 4 },
      worst_severity: { none: 5, full: 60 },
      sensitive_sites: { none: 0, full: 2 },
      bloom_window: { none: 0, full: 1 },
    },
    visibility: { sidewalk: 1, carriageway: 0.3, parking: 0.6, plaza: 1, driveway: 0.7, path: 0.8, other: 0.5 },
    foot_traffic_value: { low: 0.2, medium: 0.6, high: 1 },
    bloom_state_value: { before: 0.4, open: 1, closing: 0.6, closed: 0, unknown: 0.2 },
    complaint_distance_m: 25,
    complaint_half_life_days: 90,
    site_distance_m: 60,
    top_n: 5,
  },
  bloom: DEFAULT_BLOOM,
  plan: DEFAULT_PLAN,
};
