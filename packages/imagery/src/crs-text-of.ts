/**
 * The coordinate system that GeoKeys describe (OGC 19-008r4, GeoTIFF 1.1, clause 7.5 and annex B), as a text that the geometry
 * room reads: `EPSG:2236`, well-known text from a citation, or a PROJ string made from its parts.
 *
 * Lengths among the parts (false easting and northing) are in the system's own unit and are turned into metres here, once; the
 * string then says the unit (`+to_meter`), so coordinates are scaled there, once. A code carries its unit, nothing is scaled.
 */
import { isCrsFinding, resolveCrs } from '@crownfall/geometry';

export type GeoKeys = Readonly<Record<string, unknown>>;

const USER_DEFINED = 32767;
/** EPSG units of measure: metre, foot, US survey foot and the older feet of annex B. */
const METRES_PER_UNIT: Readonly<Record<number, number>> = {
  9001: 1,
  9002: 0.3048,
  9003: 1200 / 3937,
  9036: 1000,
};
const DEGREES_PER_UNIT: Readonly<Record<number, number>> = { 9101: 180 / Math.PI, 9102: 1, 9105: 0.9, 9122: 1 };
/** Clarke's ellipsoids: in North America they mean NAD27, which needs a grid. */
const CLARKE_1866_A = 6378206.4;

/** The text; empty when the keys name no system at all. */
export function crsTextOf(keys: GeoKeys | null): string {
  if (keys === null) return '';
  const geographic = code(keys, 'GeographicTypeGeoKey');
  const projected = code(keys, 'ProjectedCSTypeGeoKey');
  if (projected !== undefined) return `EPSG:${projected}`;
  const stated = wellKnownText(keys);
  if (stated !== undefined) return stated;
  if (number(keys, 'GTModelTypeGeoKey') === 2 && geographic !== undefined) return `EPSG:${geographic}`;
  return projText(keys, geographic) ?? '';
}

function number(keys: GeoKeys, name: string): number | undefined {
  const value = Number(keys[name] ?? Number.NaN);
  return Number.isFinite(value) ? value : undefined;
}

function code(keys: GeoKeys, name: string): number | undefined {
  const value = number(keys, name);
  return value !== undefined && value > 0 && value < USER_DEFINED ? value : undefined;
}

/** Some programs put a system without keys of its own into a citation. */
function wellKnownText(keys: GeoKeys): string | undefined {
  for (const name of ['PCSCitationGeoKey', 'GTCitationGeoKey', 'GeogCitationGeoKey']) {
    const text = String(keys[name] ?? '').replaceAll('\0', '');
    const found = /ESRI PE String = (\w+\[.*\])/s.exec(text)?.[1];
    if (found) return found;
  }
  return undefined;
}

function projText(keys: GeoKeys, geographic: number | undefined): string | undefined {
  const base = datumText(keys, geographic);
  if (base === undefined) return undefined;
  if (number(keys, 'GTModelTypeGeoKey') === 2) return degreesOf(keys) === 1 ? `+proj=longlat ${base}` : undefined;
  const projection = zoneText(keys) ?? methodText(keys);
  const unit = linearUnit(keys);
  return projection === undefined || unit === undefined ? undefined : `${projection} ${base} ${unit.text}`;
}

/** Ellipsoid and datum: from the base system's code when there is one, else from its parts. */
function datumText(keys: GeoKeys, geographic: number | undefined): string | undefined {
  const datumCode = code(keys, 'GeogGeodeticDatumGeoKey');
  const known = geographic ?? (datumCode !== undefined && datumCode >= 6001 ? datumCode - 2000 : undefined);
  if (known !== undefined) {
    const crs = resolveCrs(`EPSG:${known}`);
    if (isCrsFinding(crs)) return crs.code === 'crs-datum-refused' ? `+datum=${crs.facts.datum}` : undefined;
    const ellipsoid = /\+(?:ellps=\S+|a=\S+ \+(?:b|rf)=\S+|R=\S+)/.exec(crs.definition)?.[0] ?? '+ellps=WGS84';
    return crs.datum.towgs84 === undefined ? ellipsoid : `${ellipsoid} +towgs84=${crs.datum.towgs84}`;
  }
  return `${ellipsoidText(keys)}${shiftText(keys)}`;
}

function ellipsoidText(keys: GeoKeys): string {
  const a = number(keys, 'GeogSemiMajorAxisGeoKey');
  const rf = number(keys, 'GeogInvFlatteningGeoKey');
  const b = number(keys, 'GeogSemiMinorAxisGeoKey');
  const named = `${keys.GeogCitationGeoKey ?? ''} ${keys.GTCitationGeoKey ?? ''}`;
  if (/nad ?_?(19)?27|north_?american_?(datum_?)?1927/i.test(named) || a === CLARKE_1866_A) return '+datum=NAD27';
  const ellipsoid = code(keys, 'GeogEllipsoidGeoKey');
  if (ellipsoid === 7019) return '+ellps=GRS80';
  if (ellipsoid === 7030) return '+ellps=WGS84';
  if (a === undefined) return /nad ?_?(19)?83|grs/i.test(named) ? '+ellps=GRS80' : '+ellps=WGS84';
  if (rf === undefined || rf === 0) return `+a=${a} +b=${b ?? a}`;
  return `+a=${a} +rf=${rf}`;
}

function shiftText(keys: GeoKeys): string {
  const given = keys.GeogTOWGS84GeoKey;
  const shift = given === undefined || given === null ? [] : Array.from(Object.values(given as object), Number);
  return shift.some((one) => one !== 0) ? ` +towgs84=${shift.join(',')}` : '';
}

function degreesOf(keys: GeoKeys): number {
  return DEGREES_PER_UNIT[code(keys, 'GeogAngularUnitsGeoKey') ?? 9102] ?? Number.NaN;
}

function linearUnit(keys: GeoKeys): { readonly metres: number; readonly text: string } | undefined {
  const unit = code(keys, 'ProjLinearUnitsGeoKey');
  const metres = unit === undefined ? (number(keys, 'ProjLinearUnitSizeGeoKey') ?? 1) : METRES_PER_UNIT[unit];
  if (metres === undefined || !(metres > 0)) return undefined;
  return { metres, text: metres === 1 ? '+units=m' : `+to_meter=${metres}` };
}

/** `ProjectionGeoKey` 16001–16060 and 16101–16160 are the zones of UTM. */
function zoneText(keys: GeoKeys): string | undefined {
  const zone = code(keys, 'ProjectionGeoKey');
  if (zone === undefined) return undefined;
  if (zone >= 16001 && zone <= 16060) return `+proj=utm +zone=${zone - 16000}`;
  return zone >= 16101 && zone <= 16160 ? `+proj=utm +zone=${zone - 16100} +south` : undefined;
}

type Parameters = Readonly<Record<string, readonly string[]>>;

/** PROJ's parameter ← the GeoKeys that may hold it, in order. */
const LATITUDE = { lat_0: ['ProjNatOriginLatGeoKey', 'ProjFalseOriginLatGeoKey', 'ProjCenterLatGeoKey'] };
const LONGITUDE = {
  lon_0: [
    'ProjNatOriginLongGeoKey',
    'ProjFalseOriginLongGeoKey',
    'ProjCenterLongGeoKey',
    'ProjStraightVertPoleLongGeoKey',
  ],
};
const ORIGIN = { ...LATITUDE, ...LONGITUDE };
const SCALE = { k: ['ProjScaleAtNatOriginGeoKey', 'ProjScaleAtCenterGeoKey'] };
const PARALLELS = { lat_1: ['ProjStdParallel1GeoKey'], lat_2: ['ProjStdParallel2GeoKey'] };
const CENTRE = { lat_0: ['ProjCenterLatGeoKey', 'ProjNatOriginLatGeoKey'] };

/** `ProjCoordTransGeoKey` (annex B, table of coordinate transformation codes) → PROJ's name and parameters. */
const METHODS: Readonly<Record<number, readonly [string, Parameters]>> = {
  1: ['tmerc', { ...ORIGIN, ...SCALE }],
  7: ['merc', { ...LONGITUDE, ...SCALE, lat_ts: ['ProjStdParallel1GeoKey'] }],
  8: ['lcc', { ...ORIGIN, ...PARALLELS }],
  9: ['lcc', { ...ORIGIN, lat_1: LATITUDE.lat_0, ...SCALE }],
  10: ['laea', { ...CENTRE, ...LONGITUDE }],
  11: ['aea', { ...ORIGIN, ...PARALLELS }],
  12: ['aeqd', { ...CENTRE, ...LONGITUDE }],
  16: ['sterea', { ...ORIGIN, ...SCALE }],
  18: ['cass', ORIGIN],
  22: ['poly', ORIGIN],
  24: ['sinu', LONGITUDE],
};

function methodText(keys: GeoKeys): string | undefined {
  const method = METHODS[code(keys, 'ProjCoordTransGeoKey') ?? 0];
  const unit = linearUnit(keys);
  const degrees = degreesOf(keys);
  if (!method || !unit || !(degrees > 0)) return undefined;
  const [name, parameters] = method;
  const parts = Object.entries(parameters).flatMap(([parameter, names]) => {
    const given = first(keys, names);
    if (given === undefined) return [];
    return [`+${parameter}=${parameter.startsWith('k') ? given : plain(given * degrees)}`];
  });
  const easting = first(keys, ['ProjFalseEastingGeoKey', 'ProjFalseOriginEastingGeoKey', 'ProjCenterEastingGeoKey']);
  const northing = first(keys, [
    'ProjFalseNorthingGeoKey',
    'ProjFalseOriginNorthingGeoKey',
    'ProjCenterNorthingGeoKey',
  ]);
  const origin = `+x_0=${plain((easting ?? 0) * unit.metres)} +y_0=${plain((northing ?? 0) * unit.metres)}`;
  return `+proj=${name} ${parts.join(' ')} ${origin}`;
}

function first(keys: GeoKeys, names: readonly string[]): number | undefined {
  for (const name of names) {
    const value = number(keys, name);
    if (value !== undefined) return value;
  }
  return undefined;
}

/** Without an exponent. */
function plain(value: number): string {
  return Math.abs(value) < 1e-6 ? '0' : String(value);
}
