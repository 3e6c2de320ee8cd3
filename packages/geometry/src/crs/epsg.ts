/**
 * The EPSG systems that can be read, by code: UTM zones by rule, the rest from the generated table.
 * Source: EPSG Dataset (IOGP); version and date stand in epsg-table.ts.
 */
import type { DatumReading } from './coordinate-system.ts';
import { REFUSED, SAME_AS_WGS84, WITH_HELMERT } from './epsg-table.ts';

export interface EpsgEntry {
  readonly name: string;
  /** PROJ string without a datum. */
  readonly definition: string;
  readonly datum: DatumReading;
}

const WGS84: DatumReading = { name: 'World Geodetic System 1984', reading: 'wgs84' };
const ETRS89 = takenAsWgs84('European Terrestrial Reference System 1989');
const NAD83 = takenAsWgs84('North American Datum 1983');

/** Name, PROJ string and datum of an EPSG code; undefined when it is not among those that can be read. */
export function epsgEntry(code: number): EpsgEntry | undefined {
  if (code === 3857) return { name: 'WGS 84 / Pseudo-Mercator', definition: PSEUDO_MERCATOR, datum: WGS84 };
  return utmEntry(code) ?? tableEntry(code);
}

/** The datum for which an EPSG code is refused; undefined when the code is readable, or unknown altogether. */
export function refusedDatum(code: number): string | undefined {
  for (const line of REFUSED.trim().split('\n')) {
    const [datum, codes] = line.split('|');
    if (codes.split(',').some((range) => contains(range, code))) return datum;
  }
  return undefined;
}

/** Datums of the table: name → reading. */
export function tableDatums(): ReadonlyMap<string, DatumReading> {
  const headers = `${SAME_AS_WGS84}${WITH_HELMERT}`.split('\n').filter((line) => line.startsWith('@'));
  return new Map(headers.map((line) => [line.slice(1).split('|')[0], datumOf(line)]));
}

/** Spherical formulas on the WGS 84 semi-axis: EPSG method 1024. */
const PSEUDO_MERCATOR = '+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m';

interface UtmFamily {
  readonly from: number;
  readonly firstZone: number;
  readonly zones: number;
  readonly hemisphere: 'N' | 'S';
  readonly prefix: string;
  readonly ellipsoid: 'WGS84' | 'GRS80';
  readonly datum: DatumReading;
}

const UTM: readonly UtmFamily[] = [
  { from: 32601, firstZone: 1, zones: 60, hemisphere: 'N', prefix: 'WGS 84', ellipsoid: 'WGS84', datum: WGS84 },
  { from: 32701, firstZone: 1, zones: 60, hemisphere: 'S', prefix: 'WGS 84', ellipsoid: 'WGS84', datum: WGS84 },
  { from: 26901, firstZone: 1, zones: 23, hemisphere: 'N', prefix: 'NAD83', ellipsoid: 'GRS80', datum: NAD83 },
  { from: 25828, firstZone: 28, zones: 11, hemisphere: 'N', prefix: 'ETRS89', ellipsoid: 'GRS80', datum: ETRS89 },
];

function utmEntry(code: number): EpsgEntry | undefined {
  const family = UTM.find((one) => code >= one.from && code < one.from + one.zones);
  if (!family) return undefined;
  const zone = family.firstZone + code - family.from;
  const south = family.hemisphere === 'S' ? ' +south' : '';
  return {
    name: `${family.prefix} / UTM zone ${zone}${family.hemisphere}`,
    definition: `+proj=utm +zone=${zone}${south} +ellps=${family.ellipsoid} +units=m`,
    datum: family.datum,
  };
}

function tableEntry(code: number): EpsgEntry | undefined {
  return tableLookup(SAME_AS_WGS84, code) ?? tableLookup(WITH_HELMERT, code);
}

function tableLookup(table: string, code: number): EpsgEntry | undefined {
  const at = table.indexOf(`\n${code}|`);
  if (at < 0) return undefined;
  const [, name, parameters] = lineAt(table, at + 1).split('|');
  const shared = parameters.startsWith('=') ? lineAt(table, table.indexOf(`\n${parameters.slice(1)}|`) + 1) : undefined;
  return {
    name,
    definition: projString(shared?.split('|')[2] ?? parameters),
    datum: datumOf(lineAt(table, table.lastIndexOf('\n@', at) + 1)),
  };
}

function lineAt(table: string, start: number): string {
  return table.slice(start, table.indexOf('\n', start));
}

function projString(parameters: string): string {
  const ellipsoid = /(^| )(ellps|a|R)=/.test(parameters) ? '' : ' +ellps=GRS80';
  return `+${parameters.replaceAll(' ', ' +')}${ellipsoid}`;
}

function datumOf(header: string): DatumReading {
  const [name, operation, accuracy, towgs84] = header.slice(1).split('|');
  if (towgs84) {
    return { name, reading: 'helmert', towgs84, accuracyM: Number(accuracy), operation: `EPSG:${operation}` };
  }
  return name.startsWith('World Geodetic System 1984') ? WGS84 : takenAsWgs84(name);
}

function takenAsWgs84(name: string): DatumReading {
  return { name, reading: 'taken-as-wgs84' };
}

function contains(range: string, code: number): boolean {
  const [from, to] = range.split('-').map(Number);
  return code >= from && code <= (to ?? from);
}
