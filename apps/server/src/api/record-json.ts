/** Records on the wire: GeoJSON features with version; and what comes in, checked before it reaches the store. */

import type { Properties, StoredRecord } from '@crownfall/exchange';
import { geometryFromJson, geometryToJson } from '@crownfall/exchange';
import type { LonLatGeometry } from '@crownfall/geometry';
import { type FieldRule, fieldRule, isIsoDay, type LayerName } from '@crownfall/survey';
import { Refusal } from '../http/refusal.ts';

/** Positions of one geometry at most; a hand-drawn crown has tens, an imported park thousands. */
const MOST_POSITIONS = 200_000;
/** How deep values may nest: lists of objects are kept, documents are not. */
const DEEPEST = 6;

/** The record as a GeoJSON feature; coordinates as stored, not rounded. */
export function recordFeature({ layer, recordId, version, geometry, properties }: StoredRecord): object {
  const shape = geometryToJson(geometry, (degrees) => degrees);
  return { type: 'Feature', id: recordId, layer, version, geometry: shape, properties };
}

/** Layers whose records have no place of their own. */
const PLACELESS: readonly LayerName[] = ['ratings', 'bloom'];

/** A GeoJSON geometry or null, strict by RFC 7946: closed rings of four positions and more, on the earth. */
export function geometryGiven(layer: LayerName, given: unknown): LonLatGeometry {
  if (given === null) return { kind: 'none' };
  if (PLACELESS.includes(layer)) throw bad(`geometry: records of ${layer} have no place of their own.`);
  const { type, coordinates } = (typeof given === 'object' ? given : {}) as Record<string, unknown>;
  const depth = DEPTHS[String(type)];
  if (depth === undefined) throw bad(`geometry: expected null or a type of ${Object.keys(DEPTHS).join(', ')}.`);
  const seen = { positions: 0 };
  checkCoordinates(coordinates, depth, String(type), seen);
  const geometry = geometryFromJson({ type, coordinates }, { unclosed: () => {}, collectionMixed: () => {} });
  if (geometry.kind === 'none') throw bad('geometry: it holds no position; give null for none.');
  return geometry;
}

/** How many lists lie around a position. */
const DEPTHS: Readonly<Record<string, number>> = Object.assign(Object.create(null), {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
});

function checkCoordinates(value: unknown, depth: number, type: string, seen: { positions: number }): void {
  if (!Array.isArray(value)) throw bad(`geometry: the coordinates are not those of a ${type}.`);
  if (depth === 0) {
    checkPosition(value);
    if (++seen.positions > MOST_POSITIONS) throw bad(`geometry: more than ${MOST_POSITIONS} positions.`);
    return;
  }
  for (const each of value) checkCoordinates(each, depth - 1, type, seen);
  if (depth > 1 || type === 'MultiPoint') return;
  if (type.endsWith('Polygon')) checkRing(value as number[][]);
  else if (value.length < 2) throw bad('geometry: a line needs two positions.');
}

function checkPosition(value: readonly unknown[]): void {
  const [lon, lat] = value;
  const fits = value.length >= 2 && value.length <= 4 && value.every((each) => Number.isFinite(each));
  if (!fits || Math.abs(lon as number) > 180 || Math.abs(lat as number) > 90) {
    throw bad('geometry: a position is longitude and latitude in degrees, within ±180 and ±90.');
  }
}

function checkRing(ring: readonly (readonly number[])[]): void {
  const last = ring.at(-1);
  const closed = last !== undefined && ring[0][0] === last[0] && ring[0][1] === last[1];
  if (ring.length < 4 || !closed) throw bad('geometry: a ring has four positions or more and ends where it begins.');
}

/** Properties whose known fields have the type, words and limits of their layer; null empties a field. */
export function propertiesGiven(layer: LayerName, given: unknown): Properties {
  if (typeof given !== 'object' || given === null || Array.isArray(given)) throw bad('properties: expected an object.');
  for (const [field, value] of Object.entries(given)) {
    if (field === '' || field.length > 100) throw bad('properties: a field name has 1 to 100 letters.');
    if (hasControl(field)) throw bad('properties: a field name holds a control character.');
    checkDepth(value, field, 1);
    const rule = fieldRule(layer, field);
    if (rule !== undefined && value !== null) checkValue(field, value, rule);
  }
  return given as Properties;
}

/** Databases hold no NUL in text, and no screen shows the others. */
const hasControl = (text: string): boolean => [...text].some((letter) => letter.charCodeAt(0) < 32);

function checkDepth(value: unknown, field: string, depth: number): void {
  if (typeof value === 'string' && value.includes('\0')) throw bad(`${field}: the text holds a NUL character.`);
  if (typeof value !== 'object' || value === null) return;
  if (depth > DEEPEST) throw bad(`${field}: nested deeper than ${DEEPEST}.`);
  for (const [key, each] of Object.entries(value)) {
    if (key.includes('\0')) throw bad(`${field}: a name in it holds a NUL character.`);
    checkDepth(each, field, depth + 1);
  }
}

function checkValue(field: string, value: unknown, rule: FieldRule): void {
  if (rule.enum !== undefined && !rule.enum.includes(value as string)) {
    throw bad(`${field}: expected one of ${rule.enum.join(', ')}.`);
  }
  if (rule.type === 'string' && typeof value !== 'string') throw bad(`${field}: expected text.`);
  if (rule.type === 'string' && (rule as { format?: string }).format === 'date' && !isIsoDay(value as string)) {
    throw bad(`${field}: expected a day as YYYY-MM-DD.`);
  }
  if (rule.type === 'number' || rule.type === 'integer') checkNumber(field, value, rule);
}

function checkNumber(field: string, value: unknown, rule: FieldRule): void {
  const unit = rule['x-unit'] === undefined ? '' : ` in ${rule['x-unit']}`;
  const { minimum = -Infinity, maximum = Infinity, exclusiveMinimum = -Infinity } = rule;
  const fits = typeof value === 'number' && value >= minimum && value <= maximum && value > exclusiveMinimum;
  if (!fits || (rule.type === 'integer' && !Number.isInteger(value))) {
    throw bad(`${field}: expected a number${unit}${limits(rule)}.`);
  }
}

function limits({ minimum, exclusiveMinimum, maximum }: FieldRule): string {
  const low =
    minimum === undefined ? (exclusiveMinimum === undefined ? '' : ` above ${exclusiveMinimum}`) : ` from ${minimum}`;
  return `${low}${maximum === undefined ? '' : ` up to ${maximum}`}`;
}

const bad = (words: string): Refusal => new Refusal(400, 'invalid-record', words);
