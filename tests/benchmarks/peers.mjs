/**
 * The outside libraries, each with one way to do the three tasks. Shapes are made once, before the clock runs.
 *
 * A peer: `shape(ring)` → its own form; `pair(piece, crown)` → shared area, m²; `union(piece, crowns)` → area of the piece
 * under any of the crowns, m²; `offset(crown, distanceM)`, where it can, → area of the offset.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** Chords to a quarter turn in offsets; at 1 m they lie 1.2 mm inside the arc. */
const QUADRANT_SEGMENTS = 16;
/** Steps per metre of the fixed-point grid that clipper2 works on. */
const GRID = 1e6;
const SAGITTA = 1 - Math.cos(Math.PI / 4 / QUADRANT_SEGMENTS);

export async function peers() {
  return [
    await geosWasm(),
    await clipper2Wasm(),
    await clipper2(),
    await martinez(),
    await jsts(),
    await polygonClipping(),
    await turf(),
  ];
}

const versionOf = (name) =>
  JSON.parse(readFileSync(new URL(`node_modules/${name}/package.json`, import.meta.url), 'utf8')).version;

function ringArea(ring) {
  let twice = 0;
  const [x0, y0] = ring[0];
  for (let i = 1; i + 1 < ring.length; i++) {
    twice += (ring[i][0] - x0) * (ring[i + 1][1] - y0) - (ring[i + 1][0] - x0) * (ring[i][1] - y0);
  }
  return Math.abs(twice) / 2;
}

const polygonArea = ([shell, ...holes]) => holes.reduce((sum, hole) => sum - ringArea(hole), ringArea(shell));
const multiPolygonArea = (polygons) => (polygons ?? []).reduce((sum, polygon) => sum + polygonArea(polygon), 0);

function closedRing(flat) {
  const ring = [];
  for (let i = 0; i < flat.length; i += 2) ring.push([flat[i], flat[i + 1]]);
  ring.push(ring[0]);
  return ring;
}

async function turf() {
  const { intersect, union, featureCollection, polygon } = await import('@turf/turf');
  const areaOf = (feature) => {
    if (!feature) return 0;
    const { type, coordinates } = feature.geometry;
    return multiPolygonArea(type === 'Polygon' ? [coordinates] : coordinates);
  };
  return {
    name: `@turf/turf ${versionOf('@turf/turf')}`,
    samplePieces: 42,
    shape: (ring) => polygon([closedRing(ring)]),
    pair: (piece, crown) => areaOf(intersect(featureCollection([piece, crown]))),
    union: (piece, crowns) => {
      const all = crowns.length > 1 ? union(featureCollection(crowns)) : crowns[0];
      return areaOf(intersect(featureCollection([piece, all])));
    },
  };
}

async function polygonClipping() {
  const { default: library } = await import('polygon-clipping');
  return {
    name: `polygon-clipping ${versionOf('polygon-clipping')}`,
    samplePieces: 210,
    shape: (ring) => [closedRing(ring)],
    pair: (piece, crown) => multiPolygonArea(library.intersection(piece, crown)),
    union: (piece, [first, ...more]) => multiPolygonArea(library.intersection(piece, library.union(first, ...more))),
  };
}

async function martinez() {
  const { intersection, union } = await import('martinez-polygon-clipping');
  return {
    name: `martinez-polygon-clipping ${versionOf('martinez-polygon-clipping')}`,
    samplePieces: 210,
    shape: (ring) => [closedRing(ring)],
    pair: (piece, crown) => multiPolygonArea(intersection(piece, crown)),
    union: (piece, [first, ...more]) => {
      const all = more.reduce((joined, crown) => union(joined, crown), first);
      return multiPolygonArea(intersection(piece, all));
    },
  };
}

async function jsts() {
  const jts = 'jsts/org/locationtech/jts';
  const load = async (path) => (await import(`${jts}/${path}.js`)).default;
  const [Coordinate, GeometryFactory, Overlay, UnaryUnionOp, ArrayList, BufferOp] = await Promise.all([
    load('geom/Coordinate'),
    load('geom/GeometryFactory'),
    load('operation/overlay/snap/SnapIfNeededOverlayOp'),
    load('operation/union/UnaryUnionOp'),
    import('jsts/java/util/ArrayList.js').then((module) => module.default),
    load('operation/buffer/BufferOp'),
  ]);
  const factory = new GeometryFactory();
  return {
    name: `jsts ${versionOf('jsts')}`,
    samplePieces: 210,
    shape: (ring) => factory.createPolygon(closedRing(ring).map(([x, y]) => new Coordinate(x, y))),
    pair: (piece, crown) => Overlay.intersection(piece, crown).getArea(),
    union: (piece, crowns) => {
      const list = new ArrayList();
      for (const crown of crowns) list.add(crown);
      return Overlay.intersection(piece, UnaryUnionOp.union(list)).getArea();
    },
    offset: (crown, distanceM) => BufferOp.bufferOp(crown, distanceM, QUADRANT_SEGMENTS).getArea(),
  };
}

async function geosWasm() {
  const { default: init } = await import('geos-wasm');
  const geos = await init();
  const { Module } = geos;
  const scratch = Module._malloc(8);
  const freedArea = (geometry) => {
    geos.GEOSArea(geometry, scratch);
    geos.GEOSGeom_destroy(geometry);
    return Module.HEAPF64[scratch >> 3];
  };
  return {
    name: `geos-wasm ${versionOf('geos-wasm')} (GEOS ${geos.GEOSversion().split('-')[0]})`,
    samplePieces: 210,
    shape: (flat) => {
      const at = Module._malloc(8 * (flat.length + 2));
      Module.HEAPF64.set([...flat, flat[0], flat[1]], at >> 3);
      const sequence = geos.GEOSCoordSeq_copyFromBuffer(at, flat.length / 2 + 1, 0, 0);
      Module._free(at);
      return geos.GEOSGeom_createPolygon(geos.GEOSGeom_createLinearRing(sequence), 0, 0);
    },
    pair: (piece, crown) => freedArea(geos.GEOSIntersection(piece, crown)),
    union: (piece, crowns) => {
      const at = Module._malloc(4 * crowns.length);
      Module.HEAP32.set(
        crowns.map((crown) => geos.GEOSGeom_clone(crown)),
        at >> 2,
      );
      const all = geos.GEOSGeom_createCollection(6, at, crowns.length);
      Module._free(at);
      const joined = geos.GEOSUnaryUnion(all);
      geos.GEOSGeom_destroy(all);
      const shared = geos.GEOSIntersection(piece, joined);
      geos.GEOSGeom_destroy(joined);
      return freedArea(shared);
    },
    offset: (crown, distanceM) => freedArea(geos.GEOSBuffer(crown, distanceM, QUADRANT_SEGMENTS)),
  };
}

async function clipper2() {
  const { Clipper, FillRule, JoinType, EndType } = await import('clipper2-ts');
  const metres2 = (paths) => Math.abs(Clipper.areaPaths(paths)) / GRID ** 2;
  return {
    name: `clipper2-ts ${versionOf('clipper2-ts')}`,
    samplePieces: 210,
    shape: (flat) => {
      const path = [];
      for (let i = 0; i < flat.length; i += 2) {
        path.push({ x: Math.round(flat[i] * GRID), y: Math.round(flat[i + 1] * GRID) });
      }
      return [path];
    },
    pair: (piece, crown) => metres2(Clipper.intersect(piece, crown, FillRule.NonZero)),
    // Clips are read together by the non-zero rule, so their union needs no step of its own.
    union: (piece, crowns) => metres2(Clipper.intersect(piece, crowns.flat(), FillRule.NonZero)),
    offset: (crown, distanceM) =>
      metres2(
        Clipper.inflatePaths(crown, distanceM * GRID, JoinType.Round, EndType.Polygon, 2, distanceM * GRID * SAGITTA),
      ),
  };
}

async function clipper2Wasm() {
  const require = createRequire(import.meta.url);
  const library = await require('clipper2-wasm/dist/umd/clipper2z.js')();
  const { FillRule, JoinType, EndType } = library;
  const metres2 = (paths) => {
    const area = Math.abs(library.AreaPaths64(paths)) / GRID ** 2;
    paths.delete();
    return area;
  };
  return {
    name: `clipper2-wasm ${versionOf('clipper2-wasm')}`,
    samplePieces: 210,
    shape: (flat) => {
      const path = library.MakePath64(Array.from(flat, (value) => Math.round(value * GRID)));
      const paths = new library.Paths64();
      paths.push_back(path);
      return { path, paths };
    },
    pair: (piece, crown) => metres2(library.Intersect64(piece.paths, crown.paths, FillRule.NonZero)),
    union: (piece, crowns) => {
      const all = new library.Paths64();
      for (const { path } of crowns) all.push_back(path);
      const area = metres2(library.Intersect64(piece.paths, all, FillRule.NonZero));
      all.delete();
      return area;
    },
    offset: (crown, distanceM) =>
      metres2(
        library.InflatePaths64(
          crown.paths,
          distanceM * GRID,
          JoinType.Round,
          EndType.Polygon,
          2,
          distanceM * GRID * SAGITTA,
        ),
      ),
  };
}
