/** A street in metres as a project: a sidewalk along the x axis, crowns as circles, one rating each. Invented. */
import type { LonLatGeometry } from '@crownfall/geometry';
import type { ProjectInput, RawFeature, RawLayer } from '@crownfall/survey';

export interface StreetTree {
  readonly id: string;
  /** Trunk, m east and north of the sidewalk's middle. */
  readonly at: readonly [number, number];
  readonly spreadM: number;
  readonly browned: number;
  readonly galls: 'none' | 'light' | 'moderate' | 'heavy';
  readonly cause: 'frass' | 'honeydew' | 'none' | 'unknown';
}

export interface Street {
  readonly trees: readonly StreetTree[];
  readonly sidewalkM?: readonly [length: number, width: number];
  readonly layers?: Partial<Record<'blocks' | 'complaints' | 'bloom' | 'sites' | 'streets', readonly RawFeature[]>>;
  readonly settings?: Readonly<Record<string, unknown>>;
}

/** An invented place in the subtropics. */
const LON = -80.2;
const LAT = 25.77;
/** Degrees per metre there on the WGS 84 ellipsoid: meridian and prime vertical radii of curvature at the latitude. */
const [A, E2] = [6378137, 0.00669437999014];
const W2 = 1 - E2 * Math.sin((LAT * Math.PI) / 180) ** 2;
const DEG_NORTH = 180 / Math.PI / ((A * (1 - E2)) / W2 ** 1.5);
const DEG_EAST = 180 / Math.PI / ((A / Math.sqrt(W2)) * Math.cos((LAT * Math.PI) / 180));

const lonLat = (x: number, y: number): [number, number] => [LON + x * DEG_EAST, LAT + y * DEG_NORTH];
export const pointAt = (x: number, y: number): LonLatGeometry => ({
  kind: 'point',
  points: Float64Array.of(...lonLat(x, y)),
});
export const boxAt = (x0: number, y0: number, x1: number, y1: number): LonLatGeometry => ({
  kind: 'area',
  polygons: [[Float64Array.of(...lonLat(x0, y0), ...lonLat(x1, y0), ...lonLat(x1, y1), ...lonLat(x0, y1))]],
});
export const lineAt = (points: readonly (readonly [number, number])[]): LonLatGeometry => ({
  kind: 'line',
  lines: [Float64Array.from(points.flatMap(([x, y]) => lonLat(x, y)))],
});
export const feature = (row: number, geometry: LonLatGeometry, properties: Record<string, unknown>): RawFeature => ({
  row,
  geometry,
  properties,
});

export function streetProject({ trees, sidewalkM = [80, 2], layers = {}, settings = {} }: Street): ProjectInput {
  const [length, width] = sidewalkM;
  const sidewalk = boxAt(-length / 2, -width / 2, length / 2, width / 2);
  const table = (features: readonly RawFeature[], shape: RawLayer['shape'], file: string): RawLayer => ({
    file,
    shape,
    crs: 'OGC:CRS84',
    features,
  });
  const others = Object.entries(layers).map(([name, features]) => [
    name,
    table(features, name === 'bloom' ? 'table' : 'features', `${name}.geojson`),
  ]);
  return {
    title: 'Invented street',
    season: 2026,
    units: 'metric',
    imagery: [],
    sources: [],
    findings: [],
    settings,
    layers: {
      crowns: table(
        trees.map((tree, i) =>
          feature(i + 1, pointAt(...tree.at), { tree_id: tree.id, host: 'Terminalia buceras', spread_m: tree.spreadM }),
        ),
        'features',
        'crowns.geojson',
      ),
      pavement: table(
        [feature(1, sidewalk, { pavement_id: 'walk', kind: 'sidewalk', surface: 'concrete', foot_traffic: 'high' })],
        'features',
        'pavement.geojson',
      ),
      ratings: table(
        trees.map((tree, i) =>
          feature(
            i + 2,
            { kind: 'none' },
            {
              tree_id: tree.id,
              rated_on: '2026-05-10',
              rater: 'invented rater',
              browned_pct: tree.browned,
              gall_load: tree.galls,
              cause: tree.cause,
              evidence: tree.cause === 'none' || tree.cause === 'unknown' ? '' : 'seen on the flowers',
            },
          ),
        ),
        'table',
        'ratings.csv',
      ),
      ...Object.fromEntries(others),
    },
  };
}
