/**
 * From rings as they came to a region that can be reckoned with, and findings about what was wrong with them.
 */
import type { Finding, GeometryFindingCode, Place } from '../finding.ts';
import type { LocalPlane } from '../plane/local-plane.ts';
import { type Region, reversed, signedArea } from '../ring.ts';
import { type Polygon, polygonRegion } from './polygon-region.ts';
import type { Contact } from './ring-contacts.ts';
import { type TidyRing, tidyRing } from './tidy-ring.ts';

export interface ReadRegionOptions {
  /** Layer, file, feature: repeated in every finding. */
  readonly where?: Place;
  /** `plane` (metres, the default) or `lonlat` (degrees). */
  readonly frame?: 'plane' | 'lonlat';
  /** The plane of the coordinates, so that findings can say longitude and latitude. */
  readonly plane?: LocalPlane;
  /** Formats that repeat a ring's first vertex at its end: then a ring that does not is told. */
  readonly closing?: 'expected' | 'either';
}

export interface ReadRegion {
  readonly region: Region;
  readonly findings: readonly Finding<GeometryFindingCode>[];
}

/** Rings thinner than this have no area worth the name: a micrometre, and about as much in degrees. */
const THINNEST = { plane: 1e-6, lonlat: 1e-11 } as const;

/**
 * Reads polygons (each a list of flat rings, shell first, closed or open, wound either way) into one region: shells
 * counter-clockwise, holes clockwise, open, without repeated vertices and spikes.
 *
 * Findings, each with the vertex (number in the ring as it came) and place: `coordinates-not-finite` (vertices skipped),
 * `ring-unclosed` (closed), `ring-too-short` and `ring-zero-area` (ring left out; with a shell its holes),
 * `ring-self-crosses` (kept: everything it winds around counts, so both lobes of a figure of eight). Facts: `polygon` and
 * `number` (ring in its polygon) from 1, `ring` shell or hole, and counts. A self-crossing polygon comes back as simple rings,
 * its vertices within 0.7 µm, unless it crosses itself a thousand times or more; then as it is. Holes cut from their
 * own shell only, overlapping ones once. Polygons without rings give nothing and no finding. Never throws.
 * Example: the bow-tie `[0,0, 2,2, 2,0, 0,2]` → two triangles of 1 m² each, `ring-self-crosses` at (1, 1).
 */
export function readRegion(
  polygons: readonly (readonly ArrayLike<number>[])[],
  options: ReadRegionOptions = {},
): ReadRegion {
  const findings: Finding<GeometryFindingCode>[] = [];
  const region: Float64Array[] = [];
  const list = Array.isArray(polygons) ? polygons : [];
  list.forEach((rings, p) => {
    const reader = { options, findings, polygon: p + 1 };
    const polygon = readPolygon(reader, Array.isArray(rings) ? rings : []);
    if (!polygon) return;
    const resolved = polygonRegion(polygon, options.frame ?? 'plane');
    region.push(...resolved.region);
    if (resolved.crossing) tellCrossing(reader, polygon, resolved.crossing, resolved.crossings);
  });
  return { region, findings };
}

interface Reader {
  readonly options: ReadRegionOptions;
  readonly findings: Finding<GeometryFindingCode>[];
  readonly polygon: number;
}

/** Shell and holes that are usable, wound as they should be. */
function readPolygon(reader: Reader, rings: readonly ArrayLike<number>[]): Polygon | undefined {
  const usable: Polygon['rings'][number][] = [];
  for (let r = 0; r < rings.length; r++) {
    const tidy = tidyRing(rings[r]);
    if (tellRing(reader, tidy, r, rings)) usable.push(wound(tidy, r));
    else if (r === 0) return undefined;
  }
  return usable.length > 0 ? { rings: usable } : undefined;
}

function wound(tidy: TidyRing, number: number): Polygon['rings'][number] {
  const right = signedArea(tidy.ring) >= 0 === (number === 0);
  if (right) return { ring: tidy.ring, vertexNumbers: tidy.vertexNumbers, number };
  return { ring: reversed(tidy.ring), vertexNumbers: tidy.vertexNumbers.slice().reverse(), number };
}

/** Tells what is wrong with one ring; whether it can be used. */
function tellRing(reader: Reader, tidy: TidyRing, number: number, rings: readonly ArrayLike<number>[]): boolean {
  const facts = ringFacts(reader, number);
  const raw = rings[number];
  if (tidy.unusable > 0) {
    tell(
      reader,
      'coordinates-not-finite',
      'mended',
      { vertex: tidy.firstUnusable },
      { ...facts, count: tidy.unusable },
    );
  }
  const lost = number === 0 && rings.length > 1 ? { ...facts, holes: rings.length - 1 } : facts;
  if (tidy.distinct < 3) {
    tell(reader, 'ring-too-short', 'left_out', placeOf(reader, raw, 1), { ...lost, vertices: tidy.distinct });
    return false;
  }
  if (thickness(tidy.ring) < THINNEST[reader.options.frame ?? 'plane']) {
    tell(reader, 'ring-zero-area', 'left_out', placeOf(reader, raw, 1), { ...lost, vertices: tidy.given });
    return false;
  }
  if (!tidy.closed && reader.options.closing === 'expected') {
    tell(reader, 'ring-unclosed', 'mended', placeOf(reader, raw, tidy.given), { ...facts, vertices: tidy.given });
  }
  return true;
}

function tellCrossing(reader: Reader, polygon: Polygon, at: Contact, crossings: number): void {
  const one = polygon.rings[at.ring];
  const other = polygon.rings[at.otherRing];
  const facts = {
    ...ringFacts(reader, one.number),
    with_number: other.number + 1,
    with_vertex: other.vertexNumbers[at.otherEdge],
    x: at.x,
    y: at.y,
    crossings,
  };
  const place = { vertex: one.vertexNumbers[at.edge], ...lonLatOf(reader, at.x, at.y) };
  tell(reader, 'ring-self-crosses', 'kept', place, facts);
}

function ringFacts(reader: Reader, number: number): Record<string, string | number> {
  return { polygon: reader.polygon, number: number + 1, ring: number === 0 ? 'shell' : 'hole' };
}

function tell(
  reader: Reader,
  code: GeometryFindingCode,
  effect: 'mended' | 'left_out' | 'kept',
  place: Place,
  facts: Finding['facts'],
): void {
  const where = { ...reader.options.where, ...place };
  reader.findings.push({ code, severity: 'warning', effect, where, facts });
}

function placeOf(reader: Reader, raw: ArrayLike<number> | undefined, vertex: number): Place {
  const x = raw?.[2 * vertex - 2];
  const y = raw?.[2 * vertex - 1];
  return { vertex, ...(typeof x === 'number' && typeof y === 'number' ? lonLatOf(reader, x, y) : {}) };
}

function lonLatOf(reader: Reader, x: number, y: number): { lon?: number; lat?: number } {
  const [lon, lat] = reader.options.frame === 'lonlat' ? [x, y] : (reader.options.plane?.inverse([x, y]) ?? []);
  return Number.isFinite(lon) && Number.isFinite(lat) ? { lon, lat } : {};
}

/** The greatest distance of a vertex from the line through the first vertex and the one farthest from it. */
function thickness(ring: Float64Array): number {
  let length = 0;
  let dx = 0;
  let dy = 0;
  for (let i = 2; i < ring.length; i += 2) {
    const away = Math.hypot(ring[i] - ring[0], ring[i + 1] - ring[1]);
    if (away > length) [length, dx, dy] = [away, ring[i] - ring[0], ring[i + 1] - ring[1]];
  }
  if (ring.length < 6 || length === 0) return 0;
  let most = 0;
  for (let i = 2; i < ring.length; i += 2) {
    most = Math.max(most, Math.abs(dx * (ring[i + 1] - ring[1]) - dy * (ring[i] - ring[0])));
  }
  return most / length;
}
