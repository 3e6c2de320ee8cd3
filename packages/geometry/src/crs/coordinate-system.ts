/**
 * A coordinate system as a file states it, with the way to WGS 84 longitude and latitude and back.
 *
 * Axis order is always x (east, longitude) first, as in files; the order in the EPSG registry (latitude first for
 * EPSG:4326, northing first for EPSG:31467) is not followed.
 */
import proj4 from 'proj4';
import type { Coordinates } from '../ring.ts';

/** What proj4 puts on a projection besides its declared type. */
type Projection = InstanceType<typeof proj4.Proj> & {
  projName: string;
  to_meter?: number;
  from_greenwich?: number;
  x0?: number;
  y0?: number;
};

export interface CoordinateSystem {
  /** `EPSG:2236`, `OGC:CRS84`; for a definition without a registered code the definition's own name. */
  readonly code: string;
  readonly name: string;
  readonly kind: 'geographic' | 'projected';
  readonly unit: 'degree' | 'metre' | 'us-survey-foot' | 'foot' | 'other';
  /** Metres in one unit of the coordinates; NaN for degrees. */
  readonly metresPerUnit: number;
  readonly datum: DatumReading;
  /** The PROJ string, WKT or PROJJSON that is computed with. */
  readonly definition: string;
  /**
   * Flat `[x0, y0, …]` in this system → flat `[lon0, lat0, …]`, WGS 84 degrees. A position that is not finite or lies
   * outside the projection gives NaN, NaN.
   */
  toLonLat(xy: ArrayLike<number>): Coordinates<'lonlat'>;
  /** The way back: flat `[lon0, lat0, …]` → flat `[x0, y0, …]`. */
  fromLonLat(lonLat: ArrayLike<number>): Float64Array;
}

/** How the datum was read. `taken-as-wgs84`: no shift applied, at most about two metres off WGS 84. */
export interface DatumReading {
  readonly name: string;
  readonly reading: 'wgs84' | 'taken-as-wgs84' | 'helmert';
  /** Seven (or three) parameters to WGS 84: metres, arc-seconds (position vector), parts per million. */
  readonly towgs84?: string;
  /** Stated accuracy of the shift in metres, and the EPSG code of the transformation. */
  readonly accuracyM?: number;
  readonly operation?: string;
}

const DEGREE = Math.PI / 180;
const FOOT_M = 0.3048;
const US_SURVEY_FOOT_M = 1200 / 3937;
/** Files round the foot to 10 or more digits; the two feet differ by 6e-7 m. */
const FOOT_TOLERANCE_M = 1e-8;

/** Builds a coordinate system on a projection of proj4; throws what proj4 throws when it cannot read the definition. */
export function coordinateSystem(
  identity: { readonly code: string; readonly name: string },
  definition: string,
  datum: DatumReading,
): CoordinateSystem {
  const projection = projectionOf(definition);
  const geographic = projection.projName === 'longlat';
  projection.datum = shiftOf(projection, datum.towgs84);
  const metresPerUnit = geographic ? Number.NaN : (projection.to_meter ?? 1);
  return {
    ...identity,
    kind: geographic ? 'geographic' : 'projected',
    unit: geographic ? 'degree' : unitOf(metresPerUnit),
    metresPerUnit,
    datum,
    definition,
    ...(datum.towgs84 ? throughShift(projection) : withoutShift(projection)),
  };
}

/** proj4 leaves false origins it was not given undefined, and some of its projections then answer NaN. */
function projectionOf(definition: string): Projection {
  const projection = new proj4.Proj(definition.startsWith('{') ? JSON.parse(definition) : definition) as Projection;
  projection.x0 ??= 0;
  projection.y0 ??= 0;
  return projection;
}

/** proj4's own guess at the datum is never used: it applies nothing, without a word, where it has no grid. */
function shiftOf(projection: Projection, towgs84: string | undefined): Projection['datum'] {
  const shift = towgs84 ? ` +towgs84=${towgs84}` : '';
  return new proj4.Proj(`+proj=longlat +a=${projection.a} +b=${projection.b}${shift}`).datum;
}

function unitOf(metresPerUnit: number): CoordinateSystem['unit'] {
  if (metresPerUnit === 1) return 'metre';
  if (Math.abs(metresPerUnit - FOOT_M) < FOOT_TOLERANCE_M) return 'foot';
  if (Math.abs(metresPerUnit - US_SURVEY_FOOT_M) < FOOT_TOLERANCE_M) return 'us-survey-foot';
  return 'other';
}

type Ways = Pick<CoordinateSystem, 'toLonLat' | 'fromLonLat'>;

function withoutShift(projection: Projection): Ways {
  const geographic = projection.projName === 'longlat';
  const meridian = projection.from_greenwich ?? 0;
  const scale = geographic ? DEGREE : (projection.to_meter ?? 1);
  return {
    toLonLat: (xy) =>
      mapped(xy, (at) => {
        at.x *= scale;
        at.y *= scale;
        const to = geographic ? at : projection.inverse(at);
        if (to) placed(at, (to.x + meridian) / DEGREE, to.y / DEGREE);
        return to !== null && to !== undefined;
      }),
    fromLonLat: (lonLat) =>
      mapped(lonLat, (at) => {
        if (!(Math.abs(at.y) <= 90)) return false;
        placed(at, at.x * DEGREE - meridian, at.y * DEGREE);
        const to = geographic ? at : projection.forward(at);
        if (to) placed(at, to.x / scale, to.y / scale);
        return to !== null && to !== undefined;
      }),
  };
}

function throughShift(projection: Projection): Ways {
  const way = proj4(new proj4.Proj('WGS84'), projection);
  return {
    toLonLat: (xy) =>
      mapped(xy, (at) => {
        const to = way.inverse({ x: at.x, y: at.y });
        placed(at, to.x, to.y);
        return true;
      }),
    fromLonLat: (lonLat) =>
      mapped(lonLat, (at) => {
        const to = way.forward({ x: at.x, y: at.y });
        placed(at, to.x, to.y);
        return true;
      }),
  };
}

interface Position {
  x: number;
  y: number;
}

function placed(at: Position, x: number, y: number): void {
  at.x = x;
  at.y = y;
}

/** One scratch position for the whole array; a position that cannot be mapped becomes NaN, NaN. */
function mapped(from: ArrayLike<number>, move: (at: Position) => boolean): Float64Array {
  const out = new Float64Array(from.length - (from.length % 2)).fill(Number.NaN);
  const at: Position = { x: 0, y: 0 };
  for (let i = 0; i < out.length; i += 2) {
    placed(at, from[i], from[i + 1]);
    if (!Number.isFinite(at.x) || !Number.isFinite(at.y)) continue;
    if (moved(move, at) && Number.isFinite(at.x) && Number.isFinite(at.y)) {
      out[i] = at.x;
      out[i + 1] = at.y;
    }
  }
  return out;
}

/** A few projections of proj4 throw for positions beyond their reach. */
function moved(move: (at: Position) => boolean, at: Position): boolean {
  try {
    return move(at);
  } catch {
    return false;
  }
}
