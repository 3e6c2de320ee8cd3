/**
 * The fields of every layer as typed columns. A value that is not of its column's type is kept all the same: in the
 * column `extra`, a JSON object, so that nothing a file said is lost or bent.
 */
import { isIsoDay, type LayerName, schemas } from '@crownfall/survey';
import type { FieldType } from './project-store.ts';

export interface StoredField {
  readonly name: string;
  readonly type: FieldType;
  /** What it holds, for people who see the table in another program. */
  readonly description?: string;
  /** The words it may hold. */
  readonly words?: readonly string[];
}

/** Layers whose records have no place. */
export const PLACELESS_LAYERS: readonly LayerName[] = ['ratings', 'bloom'];

/** The field that names a record, where the contract has one, with the letter that made-up names begin with. */
export const NAMING_FIELDS: Partial<Readonly<Record<LayerName, { readonly field: string; readonly prefix: string }>>> =
  {
    crowns: { field: 'tree_id', prefix: 'T' },
    pavement: { field: 'pavement_id', prefix: 'P' },
    blocks: { field: 'block_id', prefix: 'B' },
    quadrats: { field: 'quadrat_id', prefix: 'Q' },
    complaints: { field: 'complaint_id', prefix: 'C' },
    sites: { field: 'site_id', prefix: 'S' },
  };

/** Fields that records of other layers are looked up by. */
export const LOOKUP_FIELDS: Partial<Readonly<Record<LayerName, readonly string[]>>> = {
  ratings: ['tree_id'],
  bloom: ['tree_id', 'block_id'],
};

interface Rule {
  readonly type?: string;
  readonly format?: string;
  readonly enum?: readonly string[];
  readonly anyOf?: readonly unknown[];
  readonly description?: string;
  readonly 'x-unit'?: string;
}

/** A quadrat's lon and lat in a table are its place, not fields of it. */
const PLACE_FIELDS: Partial<Readonly<Record<LayerName, readonly string[]>>> = { quadrats: ['lon', 'lat'] };

/** The contract's fields of a layer, in its order. */
export function contractFields(layer: LayerName): readonly StoredField[] {
  const rules = schemas[layer].properties as unknown as Readonly<Record<string, Rule>>;
  return Object.entries(rules)
    .filter(([name]) => !PLACE_FIELDS[layer]?.includes(name))
    .map(([name, rule]) => ({
      name,
      type: typeOf(rule),
      ...(rule.description === undefined ? {} : { description: described(rule) }),
      ...(rule.enum === undefined ? {} : { words: rule.enum }),
    }));
}

function described(rule: Rule): string {
  return rule['x-unit'] === undefined ? `${rule.description}` : `${rule.description} Unit: ${rule['x-unit']}.`;
}

function typeOf(rule: Rule): FieldType {
  if (rule.anyOf !== undefined) return 'numbers';
  if (rule.type === 'number') return 'number';
  if (rule.type === 'integer') return 'integer';
  return rule.format === 'date' ? 'day' : 'text';
}

/** A value as a column of a type holds it; `undefined` when it does not fit there without loss. */
export function columnValue(value: unknown, type: FieldType): string | number | undefined {
  switch (type) {
    case 'text':
      return isPlainText(value) ? value : undefined;
    case 'number':
      return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
    case 'integer':
      return Number.isSafeInteger(value) ? (value as number) : undefined;
    case 'boolean':
      return typeof value === 'boolean' ? Number(value) : undefined;
    case 'day':
      return typeof value === 'string' && isIsoDay(value) ? value : undefined;
    case 'numbers':
      return numbersAsText(value);
  }
}

/** The value a column of a type stands for. What another program wrote there comes back as it is. */
export function valueOfColumn(stored: unknown, type: FieldType): unknown {
  if (type === 'boolean' && (stored === 0 || stored === 1)) return stored === 1;
  return type === 'numbers' && typeof stored === 'string' ? (numbersFromText(stored) ?? stored) : stored;
}

/** The type whose columns hold all these values; null when there is none. Absent and null values decide nothing. */
export function fittingType(values: Iterable<unknown>): FieldType | null {
  let types: readonly FieldType[] = ['boolean', 'integer', 'number', 'day', 'text'];
  let seen = false;
  for (const value of values) {
    if (value === undefined || value === null) continue;
    seen = true;
    types = types.filter((type) => columnValue(value, type) !== undefined);
    if (types.length === 0) return null;
  }
  return seen ? types[0] : null;
}

/** No NUL, which other programs end a text at, and no half of a surrogate pair, which UTF-8 cannot hold. */
function isPlainText(value: unknown): value is string {
  return typeof value === 'string' && !value.includes('\0') && !/\p{Surrogate}/u.test(value);
}

/** `4;5.5;4`, as the contract writes lists. A text that looks like one is not a list and does not fit. */
function numbersAsText(value: unknown): string | undefined {
  if (typeof value === 'string') return isPlainText(value) && numbersFromText(value) === null ? value : undefined;
  if (!Array.isArray(value) || value.length === 0) return undefined;
  return value.every((item) => typeof item === 'number' && Number.isFinite(item))
    ? value.map(String).join(';')
    : undefined;
}

function numbersFromText(text: string): readonly number[] | null {
  const numbers = text.split(';').map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  return numbers.every(Number.isFinite) ? numbers : null;
}
