/**
 * A real neighbourhood (OpenStreetMap, ODbL, © OpenStreetMap contributors), against figures computed with GEOS 3.11.1 in the
 * EPSG:25833 plane with 16 segments to a quadrant. The data lie outside the repository; without them the tests are skipped.
 */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  blocksFromStreets,
  cleanRegion,
  crownOutline,
  equalAreaPlane,
  falloutZone,
  type Region,
  regionArea,
  widenLine,
} from '@crownfall/geometry';
import { area as geodesicArea, polygonize } from '@turf/turf';
import type { Feature, FeatureCollection, LineString, Point, Polygon } from 'geojson';
import proj4 from 'proj4';
import { describe, expect, test } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const folder = join(process.env.CROWNFALL_SHARED ?? join(root, '..', 'shared'), 'data', 'city-osm');
const isPresent = existsSync(join(folder, 'neukolln.trees.geojson'));
if (!isPresent)
  console.warn(`skipped: no city data at ${folder} (set CROWNFALL_SHARED to the folder that holds data/)`);

const read = <G extends Point | LineString | Polygon>(name: string): Feature<G>[] =>
  (JSON.parse(readFileSync(join(folder, `neukolln.${name}.geojson`), 'utf8')) as FeatureCollection<G>).features;

type Project = (position: number[]) => number[];
const utm33 = proj4('+proj=utm +zone=33 +ellps=GRS80 +units=m');
const inUtm: Project = (position) => utm33.forward(position.slice(0, 2));
const flat = (positions: number[][], project: Project) => Float64Array.from(positions.flatMap(project));

function crownsOf(project: Project, segments?: number): Region[] {
  return read<Point>('trees').flatMap((tree) => {
    const spreadM = Number(tree.properties?.diameter_crown);
    if (!(spreadM > 0)) return [];
    const [x, y] = project(tree.geometry.coordinates);
    return [crownOutline({ from: 'spread', x, y, spreadM }, segments === undefined ? {} : { segments }).region];
  });
}

const sidewalksOf = (project: Project): Region[] =>
  read<LineString>('footways')
    .filter((footway) => footway.properties?.footway === 'sidewalk')
    .map((footway) => widenLine(flat(footway.geometry.coordinates, project), 3, { segmentsPerQuadrant: 16 }));

/** Closed rings come with their first vertex repeated; orientation as in the file, mended by the resolving. */
const streetAreasOf = (project: Project): Region[] =>
  read<Polygon>('pavement_areas').map(({ geometry }) =>
    cleanRegion(geometry.coordinates.map((ring) => flat(ring.slice(0, -1), project))),
  );

const union = (regions: readonly Region[]) => cleanRegion(regions.flat());
/** |A ∩ B| = |A| + |B| − |A ∪ B|. */
const shared = (a: Region, b: Region) => regionArea(a) + regionArea(b) - regionArea(union([a, b]));

/** Half of the last digit in which the figures are given. */
const PUBLISHED_TO_M2 = 0.05;

describe.skipIf(!isPresent)('crowns over pavement in Neukölln', () => {
  test('in the EPSG:25833 plane with 64-gons', () => {
    const crowns = crownsOf(inUtm, 64);
    expect(crowns).toHaveLength(42);
    const crownUnion = union(crowns);
    const within = (figure: number, published: number) =>
      expect(Math.abs(figure - published)).toBeLessThan(PUBLISHED_TO_M2);
    within(
      crowns.reduce((sum, crown) => sum + regionArea(crown), 0),
      2709.4,
    );
    within(regionArea(crownUnion), 2323.6);
    within(shared(crownUnion, union(sidewalksOf(inUtm))), 359.2);
    within(shared(crownUnion, union(streetAreasOf(inUtm))), 237.4);
  });

  test('fallout zones of all crowns hold their crowns', () => {
    const rings = [
      { to_m: 0.5, share: 0.5 },
      { to_m: 1, share: 0.25 },
    ];
    const zones = crownsOf(inUtm).map((crown) => falloutZone(crown, rings, 0.01));
    for (const { layers } of zones) expect(layers.map((layer) => layer.length)).toEqual([1, 1, 1]);
    const areas = [0, 1, 2].map((layer) => regionArea(union(zones.map(({ layers }) => layers[layer]))));
    expect(areas[0]).toBeLessThan(areas[1]);
    expect(areas[1]).toBeLessThan(areas[2]);
  });
});

describe.skipIf(!isPresent)('blocks from the street lines of Neukölln', () => {
  const roads = isPresent ? read<LineString>('roads') : [];
  const positions = roads.flatMap(({ geometry }) => geometry.coordinates);
  const plane = equalAreaPlane(positions);
  const lines = roads.map(({ geometry }) => plane.forward(geometry.coordinates.flatMap((p) => p.slice(0, 2))));

  test('tile what the streets enclose', () => {
    const { blocks, network, findings } = blocksFromStreets(lines, { minAreaM2: 200 });
    expect(findings).toEqual([]);
    expect(blocks.length).toBeGreaterThan(0);
    expect(network.nodes - network.edges + network.faces + 1).toBe(1 + network.parts);
    expect(Math.abs(network.facesM2 / network.enclosedM2 - 1)).toBeLessThan(1e-9);
    for (const block of blocks) expect(regionArea(block)).toBeGreaterThanOrEqual(200);
  });

  test('are the faces that turf polygonize finds where streets share their vertices', () => {
    const ours = blocksFromStreets(lines, { minAreaM2: 0, gapM: 0 });
    const theirs = polygonize({ type: 'FeatureCollection', features: roads });
    const areas = (values: number[]) => values.sort((a, b) => a - b);
    const expected = areas(theirs.features.map((face) => geodesicArea(face)));
    const found = areas(ours.blocks.map(regionArea));
    expect(found).toHaveLength(expected.length);
    // turf's area is that of a sphere: up to 0.6 % off the ellipsoid.
    for (let i = 0; i < found.length; i++) expect(Math.abs(found[i] / expected[i] - 1)).toBeLessThan(0.006);
  });
});
