/**
 * The fallout zone of a crown: its drip line and, nested around it, the outer borders of its drift rings.
 */
import type { FalloutZone } from '../overlay/ledger.ts';
import type { Region } from '../ring.ts';
import { offsetProperRegion, properRegion, translated } from './offset-region.ts';

/** A ring beyond the drip line, as in the settings: it reaches to `to_m` and takes `share` of the crown's dose. */
export interface DriftRing {
  readonly to_m: number;
  readonly share: number;
}

/** Displacement of the drift rings by a prevailing wind: the bearing it blows towards, clockwise from north. */
export interface Wind {
  readonly towards_deg: number;
  readonly distance_m: number;
}

/**
 * Nested layers of a crown's fallout: `layers[0]` the crown itself (resolved where its rings cross), then for each drift ring
 * everything within `to_m` of the crown, moved down-wind by the wind's distance and joined with the crown. Each layer holds
 * the one before it: tangent arcs make every offset reach at least its distance. See {@link offsetRegion} for accuracy.
 *
 * A crown without area has empty layers. Without drift rings the drip line is the only layer.
 *
 * @throws RangeError for rings not in growing order of `to_m`, or sizes that are not finite
 * @example falloutZone(crown, [{ to_m: 0.5, share: 0.5 }, { to_m: 1, share: 0.25 }], 0.01).layers.length // 3
 */
export function falloutZone(
  crown: Region,
  driftRings: readonly DriftRing[],
  chordToleranceM: number,
  wind: Wind = { towards_deg: 0, distance_m: 0 },
): FalloutZone {
  if (!(Number.isFinite(wind.towards_deg) && wind.distance_m >= 0 && Number.isFinite(wind.distance_m))) {
    throw new RangeError(`expected a wind of finite bearing and distance, got ${JSON.stringify(wind)}`);
  }
  const dripLine = properRegion(crown);
  const layers = [dripLine];
  let reachM = 0;
  for (const ring of driftRings) {
    if (!(ring.to_m > reachM))
      throw new RangeError(`expected drift rings in growing order, got ${ring.to_m} m after ${reachM} m`);
    reachM = ring.to_m;
    const around = offsetProperRegion(dripLine, reachM, { kind: 'tangent', chordToleranceM });
    layers.push(downWind(around, dripLine, { wind, reachM }));
  }
  return { layers };
}

/** A displacement up to the ring's own reach leaves the crown inside; beyond it the crown is joined on. */
function downWind(around: Region, dripLine: Region, by: { wind: Wind; reachM: number }): Region {
  const { distance_m, towards_deg } = by.wind;
  if (distance_m === 0) return around;
  const bearing = (towards_deg * Math.PI) / 180;
  const moved = translated(around, distance_m * Math.sin(bearing), distance_m * Math.cos(bearing));
  return distance_m <= by.reachM ? moved : [...moved, ...dripLine];
}
