/** From the text with which a file states its coordinate system to a system that can be computed with, or a finding. */
import type { Finding, Place } from '../finding.ts';
import { type CoordinateSystem, coordinateSystem, type DatumReading } from './coordinate-system.ts';
import { datumReading, needsGrid } from './datum.ts';
import { epsgEntry, refusedDatum } from './epsg.ts';
import { readProjText } from './proj-text.ts';
import { readProjJson, readWkt, type StatedCrs } from './wkt.ts';

export type CrsFinding = Finding<'crs-unknown' | 'crs-datum-refused' | 'crs-missing'>;

/**
 * Reads a coordinate system from `EPSG:n`, a bare EPSG number, an OGC URN or address, `OGC:CRS84`, a PROJ string,
 * WKT 1 (with the ESRI dialect of `.prj`), WKT 2 or PROJJSON.
 *
 * Axis order is x (east, longitude) first whatever the registry says. NAD83, ETRS89, GDA2020 and their like are taken as
 * WGS 84 (`datum.reading` tells). Text with an EPSG code that is known is read by that code. Empty text gives
 * `crs-missing`, a datum that needs a grid (NAD27) or an unstated shift `crs-datum-refused` with `facts.datum` and
 * `facts.reason`, anything else `crs-unknown` with `facts.given` and `facts.reason`. Never throws.
 * Example: `resolveCrs('EPSG:2236')` → `NAD83 / Florida East (ftUS)`, unit `us-survey-foot`.
 */
export function resolveCrs(text: string | null | undefined, where: Place = {}): CoordinateSystem | CrsFinding {
  const given = String(text ?? '').trim();
  if (given === '') return refusal('crs-missing', where, {});
  try {
    return read(given, where);
  } catch (cause) {
    return unknown(given, where, 'not-readable', String(cause instanceof Error ? cause.message : cause));
  }
}

/** Whether `resolveCrs` gave a finding. */
export function isCrsFinding(result: CoordinateSystem | CrsFinding): result is CrsFinding {
  return 'severity' in result;
}

function read(given: string, where: Place): CoordinateSystem | CrsFinding {
  const code = registeredCode(given);
  if (code !== undefined) return fromCode(code, given, where);
  if (/^\+|^(proj|init)=/.test(given)) return fromProjText(given, where);
  const stated = given.startsWith('{') ? readProjJson(given) : readWkt(given);
  return stated ? fromStated(stated, where) : unknown(given, where, 'not-readable');
}

/** Longitude and latitude in names of their own. */
const LON_LAT_NAMES: Readonly<Record<string, string>> = {
  'OGC:CRS84': 'EPSG:4326',
  'OGC:CRS83': 'EPSG:4269',
  CRS84: 'EPSG:4326',
  CRS83: 'EPSG:4269',
  WGS84: 'EPSG:4326',
  'ESRI:102100': 'EPSG:3857',
  'ESRI:102113': 'EPSG:3857',
  'EPSG:900913': 'EPSG:3857',
};

function registeredCode(given: string): string | undefined {
  const text = given.toUpperCase();
  if (text in LON_LAT_NAMES) return text;
  const form =
    /^(EPSG|ESRI|OGC)\s*:{1,2}\s*(\w+)$/.exec(text) ??
    /^URN:(?:X-)?OGC:DEF:CRS:(EPSG|ESRI|OGC):[\w.]*:(\w+)$/.exec(text) ??
    /^HTTPS?:\/\/WWW\.OPENGIS\.NET\/DEF\/CRS\/(EPSG|ESRI|OGC)\/[\w.]+\/(\w+)$/.exec(text) ??
    /^HTTPS?:\/\/WWW\.OPENGIS\.NET\/GML\/SRS\/(EPSG)\.XML#(\d+)$/.exec(text);
  if (form) return `${form[1]}:${form[2]}`;
  return /^\d{4,6}$/.test(text) ? `EPSG:${text}` : undefined;
}

function fromCode(code: string, given: string, where: Place): CoordinateSystem | CrsFinding {
  const registered = LON_LAT_NAMES[code] ?? code;
  const number = registered.startsWith('EPSG:') ? Number(registered.slice(5)) : Number.NaN;
  const entry = epsgEntry(number);
  if (entry) {
    const name = code.endsWith('CRS84') ? 'OGC:CRS84' : registered;
    return coordinateSystem({ code: name, name: entry.name }, entry.definition, entry.datum);
  }
  const datum = refusedDatum(number);
  return datum === undefined ? unknown(given, where, 'code-not-in-table') : datumRefused(given, where, datum);
}

function fromProjText(given: string, where: Place): CoordinateSystem | CrsFinding {
  const proj = readProjText(given);
  const init = /^epsg:(\d+)$/i.exec(proj.parameters.get('init') ?? '');
  if (init) return fromCode(`EPSG:${init[1]}`, given, where);
  if (proj.datum !== undefined && needsGrid(proj.datum)) return datumRefused(given, where, proj.datum);
  if (proj.unreadable) return unknown(given, where, 'not-supported', proj.unreadable);
  const datum = projDatum(proj.datum, proj.towgs84);
  if (!datum) return datumRefused(given, where, String(proj.datum));
  return coordinateSystem({ code: given, name: given }, proj.definition, datum);
}

function projDatum(name: string | undefined, towgs84: string | undefined): DatumReading | undefined {
  if (towgs84) return { name: name ?? 'not stated', reading: 'helmert', towgs84 };
  return name === undefined ? { name: 'not stated', reading: 'taken-as-wgs84' } : datumReading(name);
}

function fromStated(stated: StatedCrs, where: Place): CoordinateSystem | CrsFinding {
  const byCode = stated.code?.startsWith('EPSG:') ? fromCode(stated.code, stated.name, where) : undefined;
  if (byCode && !(isCrsFinding(byCode) && byCode.code === 'crs-unknown')) return byCode;
  if (stated.datum === undefined) return unknown(stated.name, where, 'no-datum');
  if (needsGrid(stated.datum)) return datumRefused(stated.name, where, stated.datum);
  if (stated.unreadable) return unknown(stated.name, where, 'not-supported', stated.unreadable);
  const datum = statedDatum(stated);
  if (!datum) return datumRefused(stated.name, where, stated.datum);
  return coordinateSystem({ code: stated.code ?? stated.name, name: stated.name }, stated.definition, datum);
}

function statedDatum(stated: StatedCrs): DatumReading | undefined {
  const known = datumReading(stated.datum ?? '');
  const shifts = stated.towgs84?.split(',').some((value) => Number(value) !== 0);
  if (known || !stated.towgs84) return known;
  const name = stated.datum ?? '';
  return shifts ? { name, reading: 'helmert', towgs84: stated.towgs84 } : { name, reading: 'taken-as-wgs84' };
}

function datumRefused(given: string, where: Place, datum: string): CrsFinding {
  const reason = needsGrid(datum) ? 'needs-grid' : 'shift-unknown';
  return refusal('crs-datum-refused', where, { given: shortened(given), datum, reason });
}

function unknown(given: string, where: Place, reason: string, detail = ''): CrsFinding {
  return refusal('crs-unknown', where, {
    given: shortened(given),
    reason,
    ...(detail && { detail: shortened(detail) }),
  });
}

function refusal(code: CrsFinding['code'], where: Place, facts: CrsFinding['facts']): CrsFinding {
  return { code, severity: 'error', effect: 'stops', where, facts };
}

function shortened(text: string): string {
  return text.length > 120 ? `${text.slice(0, 117)}…` : text;
}
