/** Rows of an inventory turned into crowns, each with an account of what was taken, mended and refused. */
import type { LonLatGeometry } from '@crownfall/geometry';
import { isMissing, type RawFeature } from '@crownfall/survey';
import type { OutFeature } from '../geojson/write-geojson.ts';
import { rounded } from '../round.ts';
import { allNames, cellOf } from './guess-mapping.ts';
import { type InventoryField, type InventoryMapping, inventoryUnits } from './inventory-mapping.ts';
import { readMeasure } from './measure-text.ts';
import { type SpeciesReader, speciesReader } from './species-name.ts';
import { type SpreadEstimator, spreadEstimator } from './spread-estimator.ts';
import type { MeasuredPair } from './spread-fit.ts';

/** Why a row is not taken. */
type Refusal =
  | 'no position'
  | 'no tree stands there'
  | 'repeats another row'
  | 'already in the project'
  | 'no spread and no trunk to estimate it from'
  | 'a palm without a spread: its crown does not follow its trunk';

/** One thing told of a row. */
export interface RowNote {
  readonly field: string;
  /** As it stood. */
  readonly from: unknown;
  readonly to: unknown;
  readonly why: string;
}

export interface AdoptedRow {
  readonly row: number;
  readonly treeId: string | null;
  readonly action: 'taken' | 'mended' | 'refused';
  readonly refusal?: Refusal;
  readonly notes: readonly RowNote[];
  readonly geometry: LonLatGeometry;
  /** The crown, for rows that are not refused. */
  readonly crown?: OutFeature;
}

export interface AdoptOptions {
  /** Ids that the project has already; their rows are refused: what was drawn or measured there stays. */
  readonly existingIds?: ReadonlySet<string>;
  /** Pairs measured before, beside those of the inventory. */
  readonly pairs?: readonly MeasuredPair[];
  /** Greatest spread that is believed, m (the project's `spread_max_m`). */
  readonly spreadMaxM?: number;
}

export interface Adoption {
  readonly rows: readonly AdoptedRow[];
  readonly estimator: SpreadEstimator;
  /** Measured pairs that the estimator was given. */
  readonly pairs: number;
}

/** Beyond these a figure is a slip, whatever its unit (the stoutest and tallest trees known lie below them). */
const MOST: Readonly<Partial<Record<InventoryField, number>>> = { trunk_cm: 400, height_m: 130 };
const LEAST_TRUNK_CM = 0.5;
const SPREAD_MAX_M = 60;
const OUTLINE_SD_MAX_M = 20;

/**
 * Takes in all rows by a confirmed mapping. Spreads that are missing or zero are estimated from the trunk and marked:
 * `spread_from: estimated`, `spread_basis`, and `outline_sd_m`, half the standard deviation of the spread, since the
 * outline lies a radius away from the trunk. Every column that is not mapped is kept.
 */
export function adoptRows(
  features: readonly RawFeature[],
  mapping: InventoryMapping,
  options: AdoptOptions = {},
): Adoption {
  const species = speciesReader(
    allNames(
      features.map(({ properties }) => properties),
      mapping.fields.host,
    ),
    mapping.species,
  );
  const spreadMaxM = options.spreadMaxM ?? SPREAD_MAX_M;
  const drafts = features.map((feature) => draftOf(feature, mapping, species, spreadMaxM));
  const pairs = [...(options.pairs ?? []), ...ownPairs(drafts, mapping)];
  const estimator = spreadEstimator(pairs, mapping.spread);
  const register = new Register(options.existingIds ?? new Set());
  const shared = positionCounts(drafts);
  return {
    rows: drafts.map((draft) => finished(draft, mapping, estimator, register, shared)),
    estimator,
    pairs: pairs.length,
  };
}

/** A row whose cells have been read. */
interface Draft {
  readonly feature: RawFeature;
  readonly values: Readonly<Partial<Record<InventoryField, number>>>;
  readonly host: string | null;
  readonly cultivar: string | undefined;
  readonly withoutTree: boolean;
  readonly notes: RowNote[];
}

function draftOf(feature: RawFeature, mapping: InventoryMapping, species: SpeciesReader, spreadMaxM: number): Draft {
  const notes: RowNote[] = [];
  const values: Partial<Record<InventoryField, number>> = {};
  for (const field of ['height_m', 'spread_m', 'spread_a_m', 'spread_b_m', 'trunk_cm'] as const) {
    const value = measureOf(field, feature, mapping, spreadMaxM, notes);
    if (value !== undefined) values[field] = value;
  }
  const cell = cellOf(feature.properties, mapping.fields.host);
  const name = species.read(cell);
  if (name.mend === 'spelling') notes.push({ field: 'host', from: cell, to: name.host, why: 'spelling' });
  else if (name.mend === 'form') notes.push({ field: 'host', from: cell, to: name.host, why: 'form of the name' });
  else if (name.without === 'unknown' || name.without === 'several') {
    notes.push({
      field: 'host',
      from: cell,
      to: null,
      why: `${name.without === 'several' ? 'several species' : 'unknown species'} in one cell`,
    });
  }
  const given = cellOf(feature.properties, mapping.fields.cultivar);
  const cultivar = isMissing(given) ? name.cultivar : String(given).trim();
  return { feature, values, host: name.host, cultivar, withoutTree: name.without === 'no tree', notes };
}

function measureOf(
  field: Exclude<InventoryField, 'tree_id' | 'host' | 'cultivar'>,
  { properties }: RawFeature,
  { fields, units }: InventoryMapping,
  spreadMaxM: number,
  notes: RowNote[],
): number | undefined {
  const raw = cellOf(properties, fields[field]);
  const read = readMeasure(raw);
  if (read === 'missing') return undefined;
  if (read === 'zero' || read === 'unreadable') {
    const why = read === 'zero' ? 'zero is no measurement' : 'not a length';
    notes.push({ field, from: raw, to: null, why });
    return undefined;
  }
  const scale = field.endsWith('_cm') ? 1 : 0.01;
  const own = field.endsWith('_cm') ? 'cm' : 'm';
  const factor =
    read.centimetresPerUnit === undefined
      ? inventoryUnits(field)[units[field] ?? own]
      : read.centimetresPerUnit * scale;
  const value = Number((read.value * factor).toPrecision(12));
  const most = field.startsWith('spread') ? spreadMaxM : (MOST[field] ?? Infinity);
  const least = field === 'trunk_cm' ? LEAST_TRUNK_CM : 0;
  if (value > most || value < least) {
    notes.push({
      field,
      from: raw,
      to: null,
      why: `${rounded(value, 1)} ${own} is not possible (at most ${most} ${own})`,
    });
    return undefined;
  }
  if (read.how !== undefined) notes.push({ field, from: raw, to: rounded(value, 3), why: HOW[read.how] });
  return value;
}

const HOW: Readonly<Record<string, string>> = {
  unit: 'unit stated in the cell',
  range: 'middle of the range',
  bound: 'only a bound; the bound is taken',
  stems: 'several stems: one trunk of the same cross-section',
  fraction: 'fraction',
  about: 'about',
  number: 'number written as text',
};

/** Each tree once, also when its row is repeated. */
function ownPairs(drafts: readonly Draft[], { fields }: InventoryMapping): MeasuredPair[] {
  const seen = new Set<string>();
  return drafts.flatMap(({ feature, values, host }) => {
    const key = JSON.stringify([cellOf(feature.properties, fields.tree_id) ?? feature.row, values]);
    if (seen.has(key)) return [];
    seen.add(key);
    return pairOf(values, host);
  });
}

function pairOf(values: Draft['values'], host: string | null): MeasuredPair[] {
  const spreadM = spreadOf(values);
  return values.trunk_cm === undefined || spreadM === undefined ? [] : [{ trunkCm: values.trunk_cm, spreadM, host }];
}

function spreadOf({ spread_m, spread_a_m, spread_b_m }: Draft['values']): number | undefined {
  if (spread_a_m !== undefined && spread_b_m !== undefined) return (spread_a_m + spread_b_m) / 2;
  return spread_m;
}

function finished(
  draft: Draft,
  mapping: InventoryMapping,
  estimator: SpreadEstimator,
  register: Register,
  shared: ReadonlyMap<string, number>,
): AdoptedRow {
  const { feature, notes } = draft;
  const { row, geometry, properties } = feature;
  const cell = cellOf(properties, mapping.fields.tree_id);
  const given = isMissing(cell) ? null : String(cell).trim();
  const refused = (refusal: Refusal): AdoptedRow => ({
    row,
    treeId: given,
    action: 'refused',
    refusal,
    notes,
    geometry,
  });
  if (draft.withoutTree) return refused('no tree stands there');
  if (!isPlaced(geometry)) return refused('no position');
  const claim = register.claim(given, draft);
  if (claim.refusal !== undefined) return refused(claim.refusal);
  const size = geometry.kind === 'area' ? {} : sizeOf(draft, estimator);
  if (typeof size === 'string') return refused(size);
  if (claim.treeId !== given && given !== null) {
    notes.push({ field: 'tree_id', from: given, to: claim.treeId, why: 'another row has this id' });
  }
  const count = shared.get(positionKey(geometry)) ?? 1;
  const crown = { geometry, properties: crownProperties(draft, mapping, claim.treeId, size, count) };
  return {
    row,
    treeId: claim.treeId,
    action: notes.some((note) => !isEstimate(note)) ? 'mended' : 'taken',
    notes,
    geometry,
    crown,
  };
}

/** An estimate fills a gap; nothing that stood there was mended. */
export function isEstimate({ field, from, to }: RowNote): boolean {
  return field === 'spread_m' && from === null && to !== null;
}

type Size = Readonly<Record<string, unknown>>;

function sizeOf({ values, host, notes }: Draft, estimator: SpreadEstimator): Size | Refusal {
  const { spread_m, spread_a_m, spread_b_m, trunk_cm } = values;
  if (spread_a_m !== undefined && spread_b_m !== undefined) return { spread_a_m, spread_b_m, spread_from: 'measured' };
  const single = spread_m ?? spread_a_m ?? spread_b_m;
  if (single !== undefined) return { spread_m: single, spread_from: 'measured' };
  if (trunk_cm === undefined) return 'no spread and no trunk to estimate it from';
  const estimate = estimator.estimate(trunk_cm, host);
  if (estimate === null) return 'a palm without a spread: its crown does not follow its trunk';
  const spread = rounded(estimate.spreadM, 2);
  notes.push({ field: 'spread_m', from: null, to: spread, why: `estimated from ${estimate.basis}` });
  return {
    spread_m: spread,
    outline_sd_m: rounded(Math.min(OUTLINE_SD_MAX_M, estimate.sdM / 2), 2),
    spread_from: 'estimated',
    spread_basis: estimate.basis,
  };
}

function crownProperties(
  { feature, values, host, cultivar }: Draft,
  { fields }: InventoryMapping,
  treeId: string | null,
  size: Size,
  sharing: number,
): Record<string, unknown> {
  const ours = {
    ...(treeId === null ? {} : { tree_id: treeId }),
    ...(host === null ? {} : { host }),
    ...(cultivar === undefined ? {} : { cultivar }),
    ...(values.height_m === undefined ? {} : { height_m: values.height_m }),
    ...size,
    ...(values.trunk_cm === undefined ? {} : { trunk_cm: values.trunk_cm }),
    ...(sharing > 1 ? { position_shared_by: sharing } : {}),
  };
  const mapped = new Set(Object.values(fields).flat());
  const kept = Object.entries(feature.properties)
    .filter(([name]) => !mapped.has(name))
    .map(([name, value]) => [Object.hasOwn(ours, name) ? `${name}_given` : name, value]);
  return { ...ours, ...Object.fromEntries(kept) };
}

/** Ids and rows seen so far. */
class Register {
  readonly #existing: ReadonlySet<string>;
  readonly #taken = new Set<string>();
  readonly #contents = new Set<string>();

  constructor(existing: ReadonlySet<string>) {
    this.#existing = existing;
  }

  claim(given: string | null, { feature, values, host }: Draft): { treeId: string | null; refusal?: Refusal } {
    if (given !== null && this.#existing.has(given)) return { treeId: given, refusal: 'already in the project' };
    const content = `${given}|${positionKey(feature.geometry)}|${host}|${JSON.stringify(values)}`;
    // Without an id of its own a row is the same tree only when everything that is kept is the same.
    const same = given === null ? `${content}|${JSON.stringify(feature.properties)}` : content;
    if (this.#contents.has(same)) return { treeId: given, refusal: 'repeats another row' };
    this.#contents.add(same);
    let treeId = given;
    for (let n = 2; treeId !== null && (this.#taken.has(treeId) || this.#existing.has(treeId)); n++)
      treeId = `${given}~${n}`;
    if (treeId !== null) this.#taken.add(treeId);
    return { treeId };
  }
}

/** Longitude and latitude zero is where positions go that were never recorded. */
function isPlaced(geometry: LonLatGeometry): boolean {
  if (geometry.kind === 'area') return true;
  if (geometry.kind !== 'point' || geometry.points.length < 2) return false;
  const [lon, lat] = geometry.points;
  return Number.isFinite(lon + lat) && Math.abs(lon) <= 180 && Math.abs(lat) <= 90 && !(lon === 0 && lat === 0);
}

function positionKey(geometry: LonLatGeometry): string {
  if (geometry.kind === 'point') return geometry.points.slice(0, 2).join(' ');
  return geometry.kind === 'area' ? String(geometry.polygons[0]?.[0]) : '';
}

function positionCounts(drafts: readonly Draft[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { feature } of drafts) {
    if (feature.geometry.kind !== 'point') continue;
    const key = positionKey(feature.geometry);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}
