/**
 * Crowns over pavement in a real neighbourhood, against GEOS (by way of GDAL/OGR) in the UTM 33N plane.
 *
 * The reference figures: crowns as circles of `diameter_crown` with 16 segments to a quadrant, footway lines widened by 1.5 m on
 * each side with round caps and joins of the same segments, EPSG:25833. Data © OpenStreetMap contributors, ODbL.
 *
 * Why the equal-area plane gives other figures: UTM's scale here is 0.99974, so its areas are 0.99974² = 0.99948 of the
 * ground's. A crown's measured diameter is a length on the ground, hence in UTM the same circle covers more of the shrunken
 * pavement. Crown areas themselves do not change: both planes draw the circle from the diameter in metres. In the equal-area
 * plane the four figures are 2709.39, 2323.80, 359.08 and 237.34 m² (our own, no outside reference).
 */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Region } from '@crownfall/geometry';
import {
  crownOutline,
  equalAreaPlane,
  isCrsFinding,
  type LocalPlane,
  planeOf,
  reckonOverlay,
  regionArea,
  resolveCrs,
  widenLine,
} from '@crownfall/geometry';
import type { Feature, FeatureCollection } from 'geojson';
import { describe, expect, test } from 'vitest';

const SHARED = process.env.CROWNFALL_SHARED ?? fileURLToPath(new URL('../../../shared', import.meta.url));
const present = existsSync(`${SHARED}/data/city-osm/neukolln.trees.geojson`);
if (!present) {
  console.warn(`skipped: the Neukölln data is not at ${SHARED}/data/city-osm`);
}

/** Printed to one decimal; half of that, for the reference's own rounding. */
const PRINTED_M2 = 0.05;

function layer(name: string): Feature[] {
  const text = readFileSync(`${SHARED}/data/city-osm/neukolln.${name}.geojson`, 'utf8');
  return (JSON.parse(text) as FeatureCollection).features;
}

/** Flat open ring of GeoJSON positions, in the plane. */
function ringIn(plane: LocalPlane, positions: number[][]): Float64Array {
  return plane.forward(positions.slice(0, -1).flat());
}

function crowns(plane: LocalPlane): Region[] {
  return layer('trees').flatMap(({ geometry, properties }) => {
    const spreadM = Number.parseFloat(properties?.diameter_crown);
    if (geometry.type !== 'Point' || !(spreadM > 0)) {
      return [];
    }
    const [x, y] = plane.forward(geometry.coordinates);
    return [crownOutline({ from: 'spread', x, y, spreadM }, { segments: 64 }).region];
  });
}

function sidewalks(plane: LocalPlane): Region[] {
  return layer('footways').flatMap(({ geometry, properties }) => {
    if (geometry.type !== 'LineString' || properties?.footway !== 'sidewalk') {
      return [];
    }
    return [widenLine(plane.forward(geometry.coordinates.flat()), 3, { segmentsPerQuadrant: 16 })];
  });
}

function streetAreas(plane: LocalPlane): Region[] {
  return layer('pavement_areas').flatMap(({ geometry }) => {
    const polygons =
      geometry.type === 'Polygon'
        ? [geometry.coordinates]
        : geometry.type === 'MultiPolygon'
          ? geometry.coordinates
          : [];
    return polygons.map((rings) => rings.map((ring) => ringIn(plane, ring)));
  });
}

/** Area of the pieces under any crown, overlaps of crowns and of pieces once, m². */
function areaUnderCrowns(zones: Region[], pieces: Region[]): number {
  const ledger = reckonOverlay({ zones: zones.map((crown) => ({ layers: [crown] })), pieces, blocks: [] });
  return ledger.areaM2.reduce(
    (sum, area, i) => (ledger.coverStart[i + 1] > ledger.coverStart[i] ? sum + area : sum),
    0,
  );
}

function figuresIn(plane: LocalPlane) {
  const outlines = crowns(plane);
  const [x, y] = outlines[0][0];
  const everything: Region = [Float64Array.of(x - 999, y - 999, x + 999, y - 999, x + 999, y + 999, x - 999, y + 999)];
  return {
    crowns: outlines.length,
    sumM2: outlines.reduce((sum, crown) => sum + regionArea(crown), 0),
    unionM2: areaUnderCrowns(outlines, [everything]),
    overSidewalksM2: areaUnderCrowns(outlines, sidewalks(plane)),
    overStreetAreasM2: areaUnderCrowns(outlines, streetAreas(plane)),
  };
}

describe.skipIf(!present)('Neukölln', () => {
  test('in the UTM 33N plane, as GEOS has it', () => {
    const utm = resolveCrs('EPSG:25833');
    if (isCrsFinding(utm)) {
      throw new Error(utm.code);
    }
    const figures = figuresIn(planeOf(utm));
    expect(figures.crowns).toBe(42);
    expect(Math.abs(figures.sumM2 - 2709.4)).toBeLessThan(PRINTED_M2);
    expect(Math.abs(figures.unionM2 - 2323.6)).toBeLessThan(PRINTED_M2);
    expect(Math.abs(figures.overSidewalksM2 - 359.2)).toBeLessThan(PRINTED_M2);
    expect(Math.abs(figures.overStreetAreasM2 - 237.4)).toBeLessThan(PRINTED_M2);
  });

  test('in the equal-area plane: the same crowns, and pavement at its true size', () => {
    const trees = layer('trees').flatMap(({ geometry }) => (geometry.type === 'Point' ? geometry.coordinates : []));
    const figures = figuresIn(equalAreaPlane(trees));
    expect(Math.abs(figures.sumM2 - 2709.4)).toBeLessThan(PRINTED_M2);
    expect(Math.abs(figures.overSidewalksM2 - 359.08)).toBeLessThan(PRINTED_M2);
    expect(Math.abs(figures.overStreetAreasM2 - 237.34)).toBeLessThan(PRINTED_M2);
    // Trees stand further apart on the ground than in UTM, so crowns overlap less: the union grows, but by less than the
    // scale of areas, 0.052 %.
    expect(figures.unionM2).toBeGreaterThan(2323.6);
    expect(figures.unionM2).toBeLessThan(2323.6 * 1.00052 + PRINTED_M2);
  });
});
