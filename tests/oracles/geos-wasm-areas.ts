/** GEOS as WebAssembly (geos-wasm 3.1.1, GEOS 3.13.0): areas of intersections, unions and offsets of regions. */
import type { Region } from '@crownfall/geometry';
import initGeos from 'geos-wasm';
import type { OverlayCase } from './overlay-case.ts';
import { nearOrigin } from './overlay-case.ts';

const geos = await initGeos();

/** A pointer into the memory of GEOS; freed by the function that says so. */
type Geometry = number;

/** For each crown its area on the pavement, then that of all together, m², about the local origin; NaN when not valid. */
export function geosAreas({ pavement, crowns }: OverlayCase): Float64Array {
  const ground = polygon(nearOrigin(pavement));
  const covers = crowns.map((crown) => polygon(nearOrigin(crown)));
  const areas = new Float64Array(crowns.length + 1).fill(Number.NaN);
  if ([ground, ...covers].every((geometry) => geos.GEOSisValid(geometry) === 1)) {
    covers.forEach((cover, i) => {
      areas[i] = freedArea(geos.GEOSIntersection(ground, cover));
    });
    const all = joined(covers);
    areas[crowns.length] = freedArea(geos.GEOSIntersection(ground, all));
    free(all);
  } else covers.forEach(free);
  free(ground);
  return areas;
}

/**
 * Area within a distance of a polygon (shell, then holes) on a pavement, m²: the polygon joined with the offset of each of
 * its edges. GEOS's own offset of whole polygons smooths inlets shallower than a hundredth of the distance; that of one edge does not.
 * Arcs are chords, `quadrantSegments` to a quarter turn: the area is never above the true one.
 */
export function geosOffsetArea(pavement: Region, shape: Region, distanceM: number, quadrantSegments: number): number {
  const parts = [polygon(shape)];
  for (const ring of shape) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const edge = geos.GEOSGeom_createLineString(sequence([ring[j], ring[j + 1], ring[i], ring[i + 1]]));
      parts.push(geos.GEOSBuffer(edge, distanceM, quadrantSegments));
      free(edge);
    }
  }
  const [ground, offset] = [polygon(pavement), joined(parts)];
  const area = freedArea(geos.GEOSIntersection(ground, offset));
  free(ground);
  free(offset);
  return area;
}

function polygon([shell, ...holes]: Region): Geometry {
  const inner = geos.Module._malloc(4 * Math.max(1, holes.length));
  holes.forEach((hole, i) => {
    geos.Module.HEAP32[(inner >> 2) + i] = linearRing(hole);
  });
  const made = geos.GEOSGeom_createPolygon(linearRing(shell), inner, holes.length);
  geos.Module._free(inner);
  return made;
}

function linearRing(ring: Float64Array): Geometry {
  return geos.GEOSGeom_createLinearRing(sequence([...ring, ring[0], ring[1]]));
}

function sequence(xy: readonly number[]): number {
  const at = geos.Module._malloc(8 * xy.length);
  geos.Module.HEAPF64.set(xy, at >> 3);
  const made = geos.GEOSCoordSeq_copyFromBuffer(at, xy.length / 2, 0, 0);
  geos.Module._free(at);
  return made;
}

/** The union; takes the geometries over. */
function joined(geometries: readonly Geometry[]): Geometry {
  const at = geos.Module._malloc(4 * geometries.length);
  geos.Module.HEAP32.set(geometries, at >> 2);
  const all = geos.GEOSGeom_createCollection(GEOMETRY_COLLECTION, at, geometries.length);
  geos.Module._free(at);
  const union = geos.GEOSUnaryUnion(all);
  free(all);
  return union;
}

const GEOMETRY_COLLECTION = 7;

function freedArea(geometry: Geometry): number {
  const at = geos.Module._malloc(8);
  geos.GEOSArea(geometry, at);
  const area = geos.Module.HEAPF64[at >> 3];
  geos.Module._free(at);
  free(geometry);
  return area;
}

function free(geometry: Geometry): void {
  geos.GEOSGeom_destroy(geometry);
}
