/** Many regions in three flat arrays, so that threads can share them and files can hold them without copying. */
import type { Region } from '../ring.ts';

export interface FlatRegions {
  /** All vertices, x and y interleaved. */
  readonly coordinates: Float64Array;
  /** Ring `r` owns `coordinates[ringStart[r]] … coordinates[ringStart[r + 1] − 1]`. */
  readonly ringStart: Int32Array;
  /** Region `i` owns rings `regionStart[i] … regionStart[i + 1] − 1`. */
  readonly regionStart: Int32Array;
}

/** Copies regions into flat arrays; `shared` puts them where several threads can read them. */
export function flatRegions(regions: readonly Region[], shared = false): FlatRegions {
  let ringCount = 0;
  let length = 0;
  for (const region of regions) {
    ringCount += region.length;
    for (const ring of region) {
      length += ring.length;
    }
  }
  const flat = {
    coordinates: new Float64Array(room(8 * length, shared)),
    ringStart: new Int32Array(room(4 * (ringCount + 1), shared)),
    regionStart: new Int32Array(room(4 * (regions.length + 1), shared)),
  };
  let ring = 0;
  for (let i = 0; i < regions.length; i++) {
    for (const coordinates of regions[i]) {
      flat.coordinates.set(coordinates, flat.ringStart[ring]);
      flat.ringStart[ring + 1] = flat.ringStart[ring] + coordinates.length;
      ring++;
    }
    flat.regionStart[i + 1] = ring;
  }
  return flat;
}

/** Region `i`, as views into the flat arrays. */
export function regionAt({ coordinates, ringStart, regionStart }: FlatRegions, i: number): Region {
  const region: Float64Array[] = [];
  for (let ring = regionStart[i]; ring < regionStart[i + 1]; ring++) {
    region.push(coordinates.subarray(ringStart[ring], ringStart[ring + 1]));
  }
  return region;
}

/** All regions, as views. */
export function regionsOf(flat: FlatRegions): Region[] {
  return Array.from({ length: flat.regionStart.length - 1 }, (_, i) => regionAt(flat, i));
}

function room(bytes: number, shared: boolean): ArrayBuffer | SharedArrayBuffer {
  return shared ? new SharedArrayBuffer(bytes) : new ArrayBuffer(bytes);
}
