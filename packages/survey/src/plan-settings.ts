/**
 * The settings of the season's plan: bloom, price list, crew, products, safety rules, must-do blocks, districts. Every price,
 * distance and name is the user's own; where none is given the action that needs it is not offered. Defaults that are
 * assumptions are marked (A).
 */
import type { Cause, PavementKind, WaterFeature, YesNoUnknown } from './records.ts';

/** What may be done in a block; `treat` is always treatment in bloom, `replace` is one tree. */
export const ACTIONS = ['leave', 'inspect', 'clean', 'treat', 'treat_and_clean', 'replace'] as const;
export type Action = (typeof ACTIONS)[number];
/** Actions that have a price of their own; treating and cleaning costs both. */
export const PRICED_ACTIONS = ['inspect', 'clean', 'treat', 'replace'] as const;
export type PricedAction = (typeof PRICED_ACTIONS)[number];

export const DEGREE_DAY_METHODS = ['sine', 'triangle', 'average', 'clamped-average'] as const;
type DegreeDayMethod = (typeof DEGREE_DAY_METHODS)[number];

export interface BloomSettings {
  /** (A) Where heat is summed from each year, `MM-DD`. */
  readonly count_from: string;
  /** (A) Temperatures below which nothing grows and above which growth is no faster, °C; null: no upper one. */
  readonly lower_c: number;
  readonly upper_c: number | null;
  readonly method: DegreeDayMethod;
  /** (A) Days from first open flowers (BBCH 60) to the end of flowering (past BBCH 67) of one block. */
  readonly open_days: number;
  /** (A) A window that ends within so many days is called closing soon. */
  readonly closing_soon_days: number;
  /** File of daily temperatures beside the project (date, tmin_c, tmax_c); empty: none. */
  readonly temperature_file: string;
}

/** What one action costs: `set_up + per_tree · trees + per_m2 · m²`, in the plan's currency, and the crew hours alike. */
export interface Price {
  readonly action: PricedAction;
  readonly set_up: number;
  readonly per_tree: number;
  readonly per_m2: number;
  readonly hours_set_up: number;
  readonly hours_per_tree: number;
  readonly hours_per_m2: number;
}

/** A product as its label and the licensed person describe it. Nothing here is computed. */
export interface Product {
  readonly name: string;
  /** Mode-of-action group as the label states it. */
  readonly group: string;
  /** The rate as the licensed person typed it from the label, shown back as it stands. */
  readonly label_rate?: string;
  /** Where on which label that stands. */
  readonly label_source?: string;
  readonly typed_by?: string;
  /** Re-entry as the label states it. */
  readonly re_entry?: string;
}

/** A treatment that was done: what rotation is judged by. */
export interface PastTreatment {
  readonly block_id: string;
  readonly on: string;
  readonly product: string;
}

/** What the person on the spot read and saw before a treatment; null: not read. */
export interface WeatherCheck {
  /** A block, or `*` for all. */
  readonly block_id: string;
  readonly on: string;
  readonly wind_m_s: number | null;
  readonly rain_mm: number | null;
  /** A look for bees right before the work; for a named block only. */
  readonly bees_at_flowers?: YesNoUnknown;
  readonly by?: string;
}

export interface PlanSettings {
  /** ISO 4217, or whatever the price list is in. */
  readonly currency: string;
  readonly prices: readonly Price[];
  /** Money there is; null: not limited. */
  readonly budget: number | null;
  /** Crew days there are in each week; null: not limited. */
  readonly crew_days_per_week: number | null;
  /** (A) Hours one crew works in a day. */
  readonly crew_hours_per_day: number;
  /** (A) Weeks that are planned, from the day of the figures. */
  readonly weeks: number;
  /** (A) Kinds of pavement that are cleaned, and the share of the stain that cleaning takes off. */
  readonly clean_kinds: readonly PavementKind[];
  readonly clean_removes: number;
  /** (A) Share by which a treatment in bloom lowers the dose of the trees treated. */
  readonly treat_lowers: number;
  /** (A) Causes that a treatment in bloom acts on. */
  readonly treat_causes: readonly Cause[];
  /** (A) Days in which stain that nothing renews fades to half. */
  readonly fade_half_life_days: number;
  /** (A) Days within which crowns left alone refoliate. */
  readonly refoliate_days: number;
  /** Keep-off distances by label and local code, m; null: not stated, and no treatment is offered. */
  readonly keep_off_m: Readonly<Record<WaterFeature['kind'], number | null>>;
  /** Limits of the label; null: none stated. */
  readonly wind_max_m_s: number | null;
  readonly rain_max_mm: number | null;
  /** (A) Pollinator and weather checks older than this count as not done. */
  readonly check_days: number;
  /** Who treats; empty: nobody named, and no treatment is offered. */
  readonly applicator: { readonly name: string; readonly licence: string };
  readonly products: readonly Product[];
  /** The product meant to be used, by name; empty: not chosen. */
  readonly product: string;
  readonly treatments: readonly PastTreatment[];
  readonly weather: readonly WeatherCheck[];
  /** Notices go to addresses within this distance of a treated crown, m; null: not stated. */
  readonly notice_m: number | null;
  /** File of addresses or parcels beside the project; empty: none. */
  readonly address_file: string;
  /** Blocks where something must be done: a given action, or `any` that takes stain off. */
  readonly must_do: readonly { readonly block_id: string; readonly action: Action | 'any' }[];
  readonly districts: readonly { readonly name: string; readonly blocks: readonly string[] }[];
  /** Least share of its proportional part of the benefit that each district gets, 0–1; 0: not asked for. */
  readonly district_floor: number;
}

export const DEFAULT_BLOOM: BloomSettings = {
  count_from: '01-01',
  lower_c: 10,
  upper_c: 30,
  method: 'sine',
  open_days: 14,
  closing_soon_days: 5,
  temperature_file: '',
};

export const DEFAULT_PLAN: PlanSettings = {
  currency: 'USD',
  prices: [],
  budget: null,
  crew_days_per_week: null,
  crew_hours_per_day: 8,
  weeks: 8,
  clean_kinds: ['sidewalk', 'plaza', 'path'],
  clean_removes: 0.9,
  treat_lowers: 0.7,
  treat_causes: ['frass'],
  fade_half_life_days: 60,
  refoliate_days: 60,
  keep_off_m: { water: null, drain: null, well: null },
  wind_max_m_s: null,
  rain_max_mm: null,
  check_days: 1,
  applicator: { name: '', licence: '' },
  products: [],
  product: '',
  treatments: [],
  weather: [],
  notice_m: null,
  address_file: '',
  must_do: [],
  districts: [],
  district_floor: 0,
};
