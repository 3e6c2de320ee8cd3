/**
 * A name for a shape, made from the shape alone: the same outline always gets the same name, whichever vertex it starts
 * from, whichever way round it runs, and in whatever order its parts or its neighbours are listed.
 *
 * Method: coordinates in whole 1e-7 degrees (about 1 cm), each ring turned to its canonical start and direction, rings and
 * polygons sorted, then 64-bit FNV-1a (Fowler, Noll and Vo) over the bytes of their text.
 */
import type { CrownShape, LonLatGeometry } from '@crownfall/geometry';

const STEPS_PER_DEGREE = 1e7;

/** FNV-1a, 64 bits, over ASCII text, as 16 hexadecimal digits. `fnv1a64('a')` is `af63dc4c8601ec8c`. */
export function fnv1a64(text: string): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (let i = 0; i < text.length; i++) {
    low = (low ^ (text.charCodeAt(i) & 0xff)) >>> 0;
    // The prime is 2^40 + 0x1b3: a shift of the low word into the high one, plus a small product.
    const product = low * 0x1b3;
    high = (Math.imul(high, 0x1b3) + Math.floor(product / 0x100000000) + (low << 8)) >>> 0;
    low = product >>> 0;
  }
  return high.toString(16).padStart(8, '0') + low.toString(16).padStart(8, '0');
}

/** Hash of a geometry; equal for equal shapes. */
export function geometryHash(geometry: LonLatGeometry): string {
  return fnv1a64(geometryText(geometry));
}

/** Hash of a crown as recorded: its outline, or its trunk with its spreads. */
export function crownHash(crown: CrownShape): string {
  if (crown.from === 'polygon') return geometryHash({ kind: 'area', polygons: crown.polygons });
  const at = `${steps(crown.at.lon)},${steps(crown.at.lat)}`;
  if (crown.from === 'spread') return fnv1a64(`spread ${at} ${crown.spreadM}`);
  if (crown.from === 'radii') return fnv1a64(`radii ${at} ${crown.radiiM.join(';')}`);
  return fnv1a64(`diameters ${at} ${crown.aM} ${crown.bM} ${crown.bearingDeg}`);
}

function geometryText(geometry: LonLatGeometry): string {
  if (geometry.kind === 'none') return 'none';
  if (geometry.kind === 'point') return `point ${vertices(geometry.points).sort().join(' ')}`;
  if (geometry.kind === 'line') {
    const lines = geometry.lines.map((line) => smaller(vertices(line)));
    return `line ${lines.sort().join('|')}`;
  }
  const polygons = geometry.polygons.map(([shell, ...holes]) =>
    [ringText(shell), ...holes.map(ringText).sort()].join('/'),
  );
  return `area ${polygons.sort().join('|')}`;
}

function ringText(ring: Float64Array): string {
  const points = vertices(ring);
  const last = points.length - 1;
  if (last > 0 && points[0] === points[last]) points.pop();
  let start = 0;
  for (let i = 1; i < points.length; i++) if (points[i] < points[start]) start = i;
  const turned = [...points.slice(start), ...points.slice(0, start)];
  return smaller(turned, [turned[0], ...turned.slice(1).reverse()]);
}

function smaller(points: string[], other: string[] = [...points].reverse()): string {
  return [points.join(' '), other.join(' ')].sort()[0];
}

function vertices(coordinates: Float64Array): string[] {
  const out: string[] = [];
  for (let i = 0; i + 1 < coordinates.length; i += 2) {
    out.push(`${steps(coordinates[i])},${steps(coordinates[i + 1])}`);
  }
  return out;
}

function steps(degrees: number): number {
  return Math.round(degrees * STEPS_PER_DEGREE);
}
