/** The collected cases of a polygon clipping library, as regions in metres about their own size. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Region, reversed, signedArea } from '@crownfall/geometry';
import type { Feature, FeatureCollection, MultiPolygon, Polygon } from 'geojson';

const FOLDER = join(
  process.env.CROWNFALL_SHARED ?? new URL('../../../shared', import.meta.url).pathname,
  'data/geometry/polygon-clipping-cases',
);

export const hasClippingCases = existsSync(FOLDER);

/** One polygon as given: shell, then holes, whichever way they run. */
export type Rings = readonly Float64Array[];
export type Operation = 'intersection' | 'union' | 'difference' | 'xor';
const OPERATIONS: readonly Operation[] = ['intersection', 'union', 'difference', 'xor'];

export interface ClippingCase {
  readonly name: string;
  /** Each argument's polygons. */
  readonly args: readonly (readonly Rings[])[];
  /** Published results by operation, each as polygons. */
  readonly results: ReadonlyMap<Operation, readonly Rings[]>;
}

export function clippingCases(): ClippingCase[] {
  return readdirSync(FOLDER).sort().map(readCase);
}

/** All rings of an argument as one region for the non-zero rule: shells turned counter-clockwise, holes clockwise. */
export function asRegion(polygons: readonly Rings[]): Region {
  return polygons.flatMap((rings) =>
    rings.map((ring, i) => (signedArea(ring) > 0 === (i === 0) ? ring : reversed(ring))),
  );
}

function readCase(name: string): ClippingCase {
  const read = (file: string) => JSON.parse(readFileSync(join(FOLDER, name, file), 'utf8'));
  const collection = read('args.geojson') as
    | FeatureCollection<Polygon | MultiPolygon>
    | Feature<Polygon | MultiPolygon>;
  const features = 'features' in collection ? collection.features : [collection];
  const scale = powerOfTwoTo32(features);
  const results = new Map<Operation, readonly Rings[]>();
  for (const file of readdirSync(join(FOLDER, name))) {
    const operation = file.replace('.geojson', '');
    if (operation === 'args' || !file.endsWith('.geojson')) continue;
    const polygons = polygonsOf(read(file), scale);
    for (const each of operation === 'all' ? OPERATIONS : [operation as Operation]) results.set(each, polygons);
  }
  return { name, args: features.map((feature) => polygonsOf(feature, scale)), results };
}

function polygonsOf({ geometry }: Feature<Polygon | MultiPolygon>, scale: number): Rings[] {
  const polygons = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  return polygons.map((rings) => rings.map((ring) => Float64Array.from(openRing(ring), (value) => value * scale)));
}

function openRing(ring: readonly number[][]): number[] {
  const [first, last] = [ring[0], ring[ring.length - 1]];
  const isClosed = ring.length > 1 && first[0] === last[0] && first[1] === last[1];
  return (isClosed ? ring.slice(0, -1) : ring).flat();
}

/** What brings the case to an extent of 16–32 m; a power of two rounds no coordinate. */
function powerOfTwoTo32(features: readonly Feature<Polygon | MultiPolygon>[]): number {
  const rings = features.flatMap((feature) => polygonsOf(feature, 1).flat());
  const spread = (axis: number) => {
    const values = rings.flatMap((ring) => [...ring.filter((_, i) => i % 2 === axis)]);
    return Math.max(...values) - Math.min(...values);
  };
  const extent = Math.max(spread(0), spread(1));
  return extent > 0 && Number.isFinite(extent) ? 2 ** Math.floor(5 - Math.log2(extent)) : 1;
}
