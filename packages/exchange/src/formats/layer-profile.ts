import type { LonLatGeometry } from '@crownfall/geometry';
import type { OutFeature } from '../geojson/write-geojson.ts';

/** What all values of a column have in common; `text` also where numbers and texts are mixed, `json` with lists and objects. */
export type ColumnType = 'boolean' | 'integer' | 'wide-integer' | 'number' | 'text' | 'json';

export interface ProfiledColumn {
  readonly name: string;
  readonly type: ColumnType;
}

/** What a typed format must know before its first feature. */
export interface LayerProfile {
  readonly count: number;
  readonly columns: readonly ProfiledColumn[];
  /** The kinds of geometry, `none` not among them. */
  readonly kinds: ReadonlySet<Exclude<LonLatGeometry['kind'], 'none'>>;
  /** True when some feature has several points, lines or polygons. */
  readonly multi: boolean;
  /** West, south, east, north in degrees; null without any finite position. */
  readonly box: readonly [number, number, number, number] | null;
}

export interface LayerProfiler {
  add(features: Iterable<OutFeature>): void;
  profile(): LayerProfile;
}

const INT32 = 2 ** 31;

/** Looks features over, batch by batch; columns come in the order in which they are first seen. */
export function layerProfiler(): LayerProfiler {
  const types = new Map<string, ColumnType | null>();
  const kinds = new Set<Exclude<LonLatGeometry['kind'], 'none'>>();
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  let count = 0;
  let multi = false;

  return {
    add(features) {
      for (const { geometry, properties } of features) {
        count++;
        for (const name of Object.keys(properties)) {
          types.set(name, wider(types.get(name) ?? null, typeOf(properties[name])));
        }
        if (geometry.kind === 'none') continue;
        kinds.add(geometry.kind);
        multi ||= partCount(geometry) > 1;
        widen(box, geometry);
      }
    },
    profile: () => ({
      count,
      columns: [...types].map(([name, type]) => ({ name, type: type ?? 'text' })),
      kinds,
      multi,
      box: box[0] <= box[2] ? box : null,
    }),
  };
}

function typeOf(value: unknown): ColumnType | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'boolean') return 'boolean';
  if (typeof value === 'string') return 'text';
  if (typeof value !== 'number') return 'json';
  if (!Number.isFinite(value)) return null;
  if (!Number.isSafeInteger(value) || Object.is(value, -0)) return 'number';
  return value >= -INT32 && value < INT32 ? 'integer' : 'wide-integer';
}

const NUMERIC: readonly (ColumnType | null)[] = ['integer', 'wide-integer', 'number'];

function wider(a: ColumnType | null, b: ColumnType | null): ColumnType | null {
  if (a === null || b === null || a === b) return a ?? b;
  if (a === 'json' || b === 'json') return 'json';
  const [i, j] = [NUMERIC.indexOf(a), NUMERIC.indexOf(b)];
  return i >= 0 && j >= 0 ? NUMERIC[Math.max(i, j)] : 'text';
}

/** A value as its column holds it; null for none. */
export function valueAs(type: ColumnType, value: unknown): unknown {
  if (value === null || value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return null;
  if (type === 'text' && typeof value !== 'string') return String(value);
  return value;
}

function partCount(geometry: LonLatGeometry): number {
  if (geometry.kind === 'point') return geometry.points.length / 2;
  if (geometry.kind === 'line') return geometry.lines.length;
  return geometry.kind === 'area' ? geometry.polygons.length : 0;
}

function widen(box: [number, number, number, number], geometry: LonLatGeometry): void {
  const arrays =
    geometry.kind === 'point'
      ? [geometry.points]
      : geometry.kind === 'line'
        ? geometry.lines
        : geometry.kind === 'area'
          ? geometry.polygons.flat()
          : [];
  for (const flat of arrays) {
    for (let i = 0; i + 1 < flat.length; i += 2) {
      if (!Number.isFinite(flat[i] + flat[i + 1])) continue;
      box[0] = Math.min(box[0], flat[i]);
      box[1] = Math.min(box[1], flat[i + 1]);
      box[2] = Math.max(box[2], flat[i]);
      box[3] = Math.max(box[3], flat[i + 1]);
    }
  }
}
