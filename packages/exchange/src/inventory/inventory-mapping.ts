/** What a person confirms before an inventory is taken in: which column is what, in which unit, and how names are read. */

/** Fields an inventory may give; `trunk_cm` is the trunk's diameter at breast height. */
export const INVENTORY_FIELDS = [
  'tree_id',
  'host',
  'cultivar',
  'height_m',
  'spread_m',
  'spread_a_m',
  'spread_b_m',
  'trunk_cm',
] as const;
export type InventoryField = (typeof INVENTORY_FIELDS)[number];

/** How spreads that are missing are estimated from trunks. */
export interface SpreadRules {
  /** `own`: from measured pairs when there are enough, else the published relation. `published`: that one always. `none`: not at all. */
  readonly from: 'own' | 'published' | 'none';
  /** Pairs needed before an own fit is trusted, of a genus or of all trees. */
  readonly least_pairs: number;
  /**
   * An assumption, not a published figure: how far street trees scatter about the open-grown relation beyond the scatter
   * of the trees it was made from (pruning, paving, climate), per cent of the spread, one standard deviation.
   */
  readonly site_sd_pct: number;
}

export interface InventoryMapping {
  /** The inventory's coordinate system when its file does not state it. */
  readonly crs?: string;
  /** Columns of the position when they bear no usual names. */
  readonly position?: { readonly x: string; readonly y: string };
  /** OUR_NAME: THEIR_COLUMN; the host may be put together from two columns, genus and epithet. */
  readonly fields: Readonly<Partial<Record<InventoryField, string | readonly string[]>>>;
  /** OUR_NAME: unit of the column. */
  readonly units: Readonly<Partial<Record<InventoryField, string>>>;
  /** Name as it stands: name to take; an empty name takes none. Wins over all mending. */
  readonly species: Readonly<Record<string, string>>;
  readonly spread: SpreadRules;
}

export const DEFAULT_SPREAD_RULES: SpreadRules = { from: 'own', least_pairs: 20, site_sd_pct: 25 };

/** Lengths in centimetres; a girth is the way round the trunk, a radius half the spread. */
const IN_CENTIMETRES: Readonly<Record<string, number>> = {
  mm: 0.1,
  cm: 1,
  m: 100,
  in: 2.54,
  ft: 30.48,
  'us-ft': (100 * 1200) / 3937,
  'cm-girth': 1 / Math.PI,
  'in-girth': 2.54 / Math.PI,
  'm-girth': 100 / Math.PI,
  'm-radius': 200,
  'ft-radius': 60.96,
};

/** The units that make sense for a field, as factors to the unit its name ends in; none for fields without a unit. */
export function inventoryUnits(field: InventoryField): Readonly<Record<string, number>> {
  const scale = field.endsWith('_cm') ? 1 : field.endsWith('_m') ? 0.01 : undefined;
  if (scale === undefined) return {};
  const fits = (unit: string): boolean =>
    unit.endsWith('-girth') ? field === 'trunk_cm' : !unit.endsWith('-radius') || field.startsWith('spread');
  const units = Object.entries(IN_CENTIMETRES).filter(([unit]) => fits(unit));
  return Object.fromEntries(units.map(([unit, factor]) => [unit, factor * scale]));
}

/**
 * A mapping as read from a file that a person edited. Throws a `RangeError` that names the first thing that is not usable
 * and what may stand there: a wrong unit would silently change every crown.
 */
export function readInventoryMapping(value: unknown): InventoryMapping {
  const given = objectAt(value, 'the mapping');
  const fields = objectAt(given.fields ?? {}, 'fields');
  for (const [field, column] of Object.entries(fields)) {
    if (!isField(field)) throw new RangeError(`fields: expected one of ${INVENTORY_FIELDS.join(', ')}; got ${field}`);
    const list = Array.isArray(column) ? column : [column];
    if (!list.every((name) => typeof name === 'string'))
      throw new RangeError(`fields.${field}: expected a column's name`);
  }
  const units = objectAt(given.units ?? {}, 'units');
  for (const [field, unit] of Object.entries(units)) {
    const valid = isField(field) ? Object.keys(inventoryUnits(field)) : [];
    if (!valid.includes(String(unit))) {
      throw new RangeError(`units.${field}: expected one of ${valid.join(', ') || 'no unit at all'}; got ${unit}`);
    }
  }
  const species = objectAt(given.species ?? {}, 'species');
  const position = given.position === undefined ? undefined : objectAt(given.position, 'position');
  return {
    ...(typeof given.crs === 'string' ? { crs: given.crs } : {}),
    ...(position ? { position: { x: String(position.x), y: String(position.y) } } : {}),
    fields,
    units: units as InventoryMapping['units'],
    species: Object.fromEntries(Object.entries(species).map(([name, taken]) => [name, String(taken ?? '')])),
    spread: spreadRules(objectAt(given.spread ?? {}, 'spread')),
  };
}

function spreadRules({ from, least_pairs, site_sd_pct }: Record<string, unknown>): SpreadRules {
  const rules = {
    from: from ?? DEFAULT_SPREAD_RULES.from,
    least_pairs: least_pairs ?? DEFAULT_SPREAD_RULES.least_pairs,
    site_sd_pct: site_sd_pct ?? DEFAULT_SPREAD_RULES.site_sd_pct,
  };
  if (rules.from !== 'own' && rules.from !== 'published' && rules.from !== 'none') {
    throw new RangeError(`spread.from: expected own, published or none; got ${rules.from}`);
  }
  // A fit of two figures leaves nothing to judge it by below five pairs.
  if (typeof rules.least_pairs !== 'number' || !(rules.least_pairs >= 5)) {
    throw new RangeError(`spread.least_pairs: expected a number of at least 5; got ${rules.least_pairs}`);
  }
  if (typeof rules.site_sd_pct !== 'number' || !(rules.site_sd_pct >= 0 && rules.site_sd_pct <= 100)) {
    throw new RangeError(`spread.site_sd_pct: expected 0 to 100; got ${rules.site_sd_pct}`);
  }
  return rules as SpreadRules;
}

function isField(field: string): field is InventoryField {
  return (INVENTORY_FIELDS as readonly string[]).includes(field);
}

function objectAt(value: unknown, name: string): Record<string, unknown> & InventoryMapping['fields'] {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw new RangeError(`${name}: expected an object, got ${JSON.stringify(value)?.slice(0, 40)}`);
  }
  return value as Record<string, unknown> & InventoryMapping['fields'];
}
