/**
 * Outward offset of a region: the Minkowski sum with a disc.
 */
import type { Region, Ring } from '../ring.ts';
import { signedArea } from '../ring.ts';
import { type ArcJoins, checkJoins } from './arc-joins.ts';
import { cleanRegion } from './clean-region.ts';
import { enclosingRadius } from './enclosing-circle.ts';
import { offsetRing } from './offset-ring.ts';
import { boxOf } from './ring-box.ts';
import { isProperRegion, trimmedRing } from './simple-rings.ts';

/** A hole fits into the disc when its smallest circle does, to this share of the distance. */
const FIT_SLACK = 1e-12;

/**
 * All points within `distanceM` of a region, as a region of the plane under the non-zero winding rule.
 *
 * The result R holds `S(δ) ⊆ R ⊆ S(δ + t)`, S being the exact sum and t the chord tolerance: arcs become polylines tangent
 * from outside, so the distance is never fallen short of, straight parts are exact, and the area is over by
 * `δ² Σ (tan αᵢ − αᵢ)` over the half turns αᵢ of the arc vertices. One ring comes out for each ring that goes in, save the
 * holes that close. Rings may cross themselves with winding 2 and more, never below 0; {@link cleanRegion} resolves them.
 *
 * Input rings that cross or touch themselves or are wrongly nested are resolved first by the non-zero rule; repeated
 * vertices and spikes of no width are dropped. An empty region and rings without area give nothing. Distance 0 gives the
 * tidied region itself. Against published values and a point-by-point oracle: tests/published/crown-geometry.test.ts,
 * tests/laws/offset.test.ts.
 *
 * @throws RangeError for a negative or non-finite distance, or a tolerance that is not positive
 * @example offsetRegion([Float64Array.of(0, 0, 10, 0, 10, 6, 0, 6)], 1, 0.01) // one ring of 24 vertices, 95.16 m²
 */
export function offsetRegion(region: Region, distanceM: number, chordToleranceM: number): Region {
  return offsetProperRegion(properRegion(region), distanceM, { kind: 'tangent', chordToleranceM });
}

/** The region itself when its rings are simple and well nested, else the same set so resolved. */
export function properRegion(region: Region): Region {
  const rings = region.map(trimmedRing).filter((ring) => ring.length > 0);
  return isProperRegion(rings) ? rings : cleanRegion(rings);
}

/** {@link offsetRegion} for a region that {@link properRegion} has passed, with any joins. */
export function offsetProperRegion(region: Region, distanceM: number, joins: ArcJoins): Region {
  checkJoins(joins, distanceM);
  if (distanceM === 0) return region;
  const out: Ring[] = [];
  for (const ring of region) {
    const isHole = signedArea(ring) < 0;
    if (isHole && closes(ring, distanceM)) continue;
    out.push(offsetRing(ring, { distanceM, joins, trims: !isHole }));
  }
  return out;
}

/** A region moved by `[dx, dy]` metres. */
export function translated(region: Region, dx: number, dy: number): Region {
  return region.map((ring) => ring.map((value, i) => value + (i % 2 === 0 ? dx : dy)));
}

/**
 * A hole that fits into the disc closes. Only such a hole could lie wholly in a disc about some point, which is where the
 * winding of the offset curve would no longer count the parts of the region near that point.
 */
function closes(hole: Ring, distanceM: number): boolean {
  const reach = 2 * distanceM * (1 + FIT_SLACK);
  const [minX, minY, maxX, maxY] = boxOf(hole);
  return maxX - minX <= reach && maxY - minY <= reach && enclosingRadius(hole) * 2 <= reach;
}
