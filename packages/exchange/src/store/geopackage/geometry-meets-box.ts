import type { LonLatGeometry } from '@crownfall/geometry';
import type { LonLatBox } from '../project-store.ts';

type PlainBox = readonly [west: number, south: number, east: number, north: number];

/**
 * Whether a geometry and a box share at least one position, edges included, both taken as straight in longitude and
 * latitude (RFC 7946, section 3.1.1); a box may lie across the 180th meridian. Exact comparisons but for the clipping of
 * slanted edges, which rounds. An area is read by the even-odd rule, so that holes count whichever way they are wound.
 *
 * @example geometryMeetsBox({ kind: 'point', points: Float64Array.of(1, 2) }, [0, 0, 1, 2]) // true
 */
export function geometryMeetsBox(geometry: LonLatGeometry, [west, south, east, north]: LonLatBox): boolean {
  if (west <= east) return meets(geometry, [west, south, east, north]);
  return meets(geometry, [west, south, 180, north]) || meets(geometry, [-180, south, east, north]);
}

function meets(geometry: LonLatGeometry, box: PlainBox): boolean {
  switch (geometry.kind) {
    case 'none':
      return false;
    case 'point':
      return anyInside(geometry.points, box);
    case 'line':
      return geometry.lines.some((line) => pathMeets(line, box, false));
    case 'area':
      return geometry.polygons.some(
        (rings) => rings.some((ring) => pathMeets(ring, box, true)) || contains(rings, box[0], box[1]),
      );
  }
}

function anyInside(points: Float64Array, [west, south, east, north]: PlainBox): boolean {
  for (let i = 0; i < points.length; i += 2) {
    if (points[i] >= west && points[i] <= east && points[i + 1] >= south && points[i + 1] <= north) return true;
  }
  return false;
}

function pathMeets(flat: Float64Array, box: PlainBox, closed: boolean): boolean {
  if (anyInside(flat, box)) return true;
  const n = flat.length;
  for (let i = closed ? 0 : 2; i < n; i += 2) {
    const from = i === 0 ? n - 2 : i - 2;
    if (segmentMeets(flat[from], flat[from + 1], flat[i], flat[i + 1], box)) return true;
  }
  return false;
}

/** Clipping of a segment, parameter by parameter (Liang and Barsky 1984). */
function segmentMeets(x0: number, y0: number, x1: number, y1: number, [west, south, east, north]: PlainBox): boolean {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const edges = [
    [-dx, x0 - west],
    [dx, east - x0],
    [-dy, y0 - south],
    [dy, north - y0],
  ];
  let enter = 0;
  let leave = 1;
  for (const [towards, distance] of edges) {
    if (towards === 0 && !(distance >= 0)) return false;
    if (towards < 0) enter = Math.max(enter, distance / towards);
    if (towards > 0) leave = Math.min(leave, distance / towards);
  }
  return enter <= leave;
}

function contains(rings: readonly Float64Array[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const above = ring[i + 1] > y;
      if (above === ring[j + 1] > y) continue;
      const crossing = ring[i] + ((y - ring[i + 1]) / (ring[j + 1] - ring[i + 1])) * (ring[j] - ring[i]);
      if (x < crossing) inside = !inside;
    }
  }
  return inside;
}
