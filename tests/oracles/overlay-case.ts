/** Random cases of pavement and crowns far from the origin, and what the overlay says about them. */
import { type Region, reckonOverlay } from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';
import { logUniform, randomPolygon } from './random-regions.ts';

/** 500 km from the origin of coordinates. */
const FAR_M = { x: 400_000.25, y: 300_000.5 };
const SMALLEST_M = 1e-3;
const LARGEST_M = 1e5;

export interface OverlayCase {
  readonly pavement: Region;
  readonly crowns: readonly Region[];
}

/** Pavement and one crown of sizes apart by up to a hundred times. Equal numbers give equal cases. */
export function randomPair(number: number): OverlayCase {
  const random = new RandomStream(3, number, 1);
  const radius = logUniform(random, SMALLEST_M, LARGEST_M);
  const other = Math.min(LARGEST_M, Math.max(SMALLEST_M, radius * logUniform(random, 0.01, 100)));
  const reach = 1.1 * Math.max(radius, other);
  const crown = randomPolygon(random, random.between(-reach, reach), random.between(-reach, reach), other);
  return { pavement: farAway(randomPolygon(random, 0, 0, radius)), crowns: [farAway(crown)] };
}

/** Pavement and 3–15 crowns about it, now and then one of them twice. */
export function randomNeighbourhood(number: number): OverlayCase {
  const random = new RandomStream(3, number, 2);
  const radius = logUniform(random, SMALLEST_M * 20, LARGEST_M / 2);
  const place = () => random.between(-1.2 * radius, 1.2 * radius);
  const crowns = Array.from({ length: 3 + random.wholeBelow(13) }, () =>
    farAway(randomPolygon(random, place(), place(), radius * logUniform(random, 0.05, 2))),
  );
  if (random.wholeBelow(4) === 0) crowns.push(crowns[0]);
  return { pavement: farAway(randomPolygon(random, 0, 0, radius)), crowns };
}

/** The same places about the local origin: subtraction is exact here, so nothing is lost. */
export function nearOrigin(region: Region): Region {
  return region.map((ring) => ring.map((value, i) => value - (i % 2 === 0 ? FAR_M.x : FAR_M.y)));
}

function farAway(region: Region): Region {
  return region.map((ring) => ring.map((value, i) => value + (i % 2 === 0 ? FAR_M.x : FAR_M.y)));
}

/** By the overlay: for each crown its area on the pavement, then that of all together, m². */
export function overlayAreas({ pavement, crowns }: OverlayCase): Float64Array {
  const ledger = reckonOverlay({ zones: crowns.map((crown) => ({ layers: [crown] })), pieces: [pavement], blocks: [] });
  const areas = new Float64Array(crowns.length + 1);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const area = ledger.areaM2[cell];
    const [from, to] = [ledger.coverStart[cell], ledger.coverStart[cell + 1]];
    for (let j = from; j < to; j++) areas[ledger.zone[j]] += area;
    if (from < to) areas[crowns.length] += area;
  }
  return areas;
}

/** The case as geos-areas.c reads it, about the local origin. */
export function asDoubles({ pavement, crowns }: OverlayCase): number[] {
  return geosInput({ pavement: nearOrigin(pavement), crowns: crowns.map(nearOrigin) });
}

/** A case as geos-areas.c reads it, coordinates as they are. */
export function geosInput({ pavement, crowns }: OverlayCase): number[] {
  const out = [1 + crowns.length];
  for (const region of [pavement, ...crowns]) {
    out.push(region.length);
    for (const ring of region) {
      out.push(ring.length / 2);
      for (const value of ring) out.push(value);
    }
  }
  return out;
}
