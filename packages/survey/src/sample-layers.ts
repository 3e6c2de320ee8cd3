/** Small hand-made layers, for tests of this room. Places are invented. */
import type { Finding, LonLatGeometry } from '@crownfall/geometry';
import type { LayerName, ProjectInput, RawLayer } from './project-input.ts';
import type { Rating, Survey, Tree } from './records.ts';
import { severityOfPercent } from './scales/class-scale.ts';

type Properties = Readonly<Record<string, unknown>>;

export function point(lon: number, lat: number): LonLatGeometry {
  return { kind: 'point', points: Float64Array.of(lon, lat) };
}

export function line(...positions: number[]): LonLatGeometry {
  return { kind: 'line', lines: [Float64Array.from(positions)] };
}

export function area(...ring: number[]): LonLatGeometry {
  return { kind: 'area', polygons: [[Float64Array.from(ring)]] };
}

/** A rectangle with its lower left corner at (lon, lat), sides in degrees. */
export function box(lon: number, lat: number, width: number, height = width): LonLatGeometry {
  return area(lon, lat, lon + width, lat, lon + width, lat + height, lon, lat + height);
}

/** A layer of features, rows counted from 1. */
export function features(file: string, ...list: readonly [LonLatGeometry, Properties][]): RawLayer {
  const rows = list.map(([geometry, properties], i) => ({ row: i + 1, geometry, properties }));
  return { file, shape: 'features', crs: 'OGC:CRS84', features: rows };
}

/** A table, rows counted as a spreadsheet does: the first row of data is 2. */
export function table(file: string, ...rows: readonly Properties[]): RawLayer {
  const list = rows.map((properties, i) => ({ row: i + 2, geometry: { kind: 'none' } as const, properties }));
  return { file, shape: 'table', crs: 'OGC:CRS84', features: list };
}

export function projectInput(layers: Partial<Record<LayerName, RawLayer>>, settings: Properties = {}): ProjectInput {
  const rest = { imagery: [], sources: [], findings: [] };
  return { title: 'Invented', season: 2026, units: 'metric', layers, settings, ...rest };
}

/** Findings as `code severity/effect place`, which is what tests judge them by. */
export function told(findings: readonly Finding[]): string[] {
  return findings.map(({ code, severity, effect, where }) => {
    const parts = [where.row === undefined ? where.feature : `row ${where.row}`, where.field];
    return [code, `${severity}/${effect}`, ...parts.filter((part) => part !== undefined)].join(' ');
  });
}

export function tree(treeId: string, host?: string): Tree {
  const at = { lon: 0, lat: 0 };
  const crown = { from: 'spread', at, spreadM: 8 } as const;
  return { treeId, at, crown, ...(host === undefined ? {} : { host }), extra: {} };
}

/** A rating of a galled crown; `change` overrides what the case is about. */
export function rating(treeId: string, brownedPct: number, change: Partial<Rating> = {}): Rating {
  return {
    treeId,
    ratedOn: '2026-06-10',
    rater: 'A',
    browned: severityOfPercent(brownedPct),
    cause: 'frass',
    gallLoad: 'moderate',
    extra: {},
    ...change,
  };
}

export function survey(trees: readonly Tree[], ratings: readonly Rating[]): Survey {
  const none = { pavement: [], blocks: [], quadrats: [], complaints: [], bloom: [], sites: [], water: [], streets: [] };
  return { title: 'Invented', season: 2026, units: 'metric', trees, ratings, ...none };
}
