/**
 * The query of a request for features: which parameters there are, what each must look like. OGC API – Features Part 1 Core
 * 1.0.1 (OGC 17-069r4), requirements fc-limit-definition, fc-bbox-definition, fc-time-definition, query-param-unknown and
 * query-param-invalid.
 */
import { Refusal } from '../http/refusal.ts';
import { type Period, readPeriod } from './period.ts';

/** Features of one page: the default, and the most that are sent whatever was asked (fc-limit-response-1). */
export const LIMIT = { default: 100, max: 10_000 } as const;

export type Box = readonly [west: number, south: number, east: number, north: number];

export interface ItemQuery {
  readonly limit: number;
  /** How many of the matching features come before the page. */
  readonly offset: number;
  readonly bbox: Box | null;
  readonly period: Period | null;
}

const PARAMETERS = ['limit', 'offset', 'bbox', 'datetime', 'f'] as const;

/** Reads the query, or throws a refusal (400) that names the parameter. Empty values are invalid, not absent. */
export function readItemQuery(query: Readonly<Record<string, unknown>>): ItemQuery {
  const given = onlyKnown(query, PARAMETERS);
  const limit = given.limit === undefined ? LIMIT.default : wholeNumber('limit', given.limit, 1);
  return {
    limit: Math.min(limit, LIMIT.max),
    offset: given.offset === undefined ? 0 : wholeNumber('offset', given.offset, 0),
    bbox: given.bbox === undefined ? null : readBox(given.bbox),
    period: given.datetime === undefined ? null : readPeriod(given.datetime),
  };
}

/** For resources that take no parameter of their own. */
export function readFormatOnly(query: Readonly<Record<string, unknown>>): void {
  onlyKnown(query, ['f']);
}

/** The given parameters, each once; throws for an unknown one, for a repeated one and for a format we do not write. */
function onlyKnown(
  query: Readonly<Record<string, unknown>>,
  valid: readonly string[],
): Readonly<Record<string, string | undefined>> {
  for (const [name, value] of Object.entries(query)) {
    if (!valid.includes(name)) throw invalid(name, `There is no such parameter. Valid: ${valid.join(', ')}.`);
    if (typeof value !== 'string') throw invalid(name, 'It may be given once.');
  }
  const given = query as Readonly<Record<string, string | undefined>>;
  if (given.f !== undefined && given.f !== 'json') throw invalid('f', 'The one valid value is json.');
  return given;
}

function wholeNumber(name: string, text: string, least: number): number {
  if (!/^\d{1,15}$/.test(text) || Number(text) < least) throw invalid(name, `Expected a whole number from ${least}.`);
  return Number(text);
}

/** Four numbers, or six of which the two heights say nothing about features without height. West > east crosses 180°. */
export function readBox(text: string): Box {
  const parts = text.split(',');
  const numbers = parts.map((part) => (NUMBER.test(part.trim()) ? Number(part) : Number.NaN));
  if (![4, 6].includes(parts.length) || !numbers.every(Number.isFinite)) {
    throw invalid('bbox', 'Expected four or six numbers: west,south,east,north in degrees.');
  }
  const [west, south] = numbers;
  const [east, north] = numbers.slice(parts.length / 2);
  if ([west, east].some((lon) => Math.abs(lon) > 180) || [south, north].some((lat) => Math.abs(lat) > 90)) {
    throw invalid('bbox', 'Longitudes lie within ±180 and latitudes within ±90.');
  }
  if (south > north) throw invalid('bbox', 'The southern edge lies north of the northern edge.');
  if (parts.length === 6 && numbers[2] > numbers[5]) throw invalid('bbox', 'The lower height lies above the upper.');
  return [west, south, east, north];
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

const invalid = (parameter: string, why: string): Refusal =>
  new Refusal(400, 'invalid-parameter', `${parameter}: ${why}`);
