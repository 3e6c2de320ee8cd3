/**
 * A crown's recorded shape carried from longitude and latitude into the plane of analysis.
 */
import type { CrownShape, LonLat } from '../crown-shape.ts';
import type { Coordinates, Region, Ring } from '../ring.ts';

/** As {@link CrownShape}, in the metres of a plane whose y axis points north. */
export type PlaneCrownShape =
  | { readonly from: 'polygon'; readonly region: Region }
  | { readonly from: 'spread'; readonly x: number; readonly y: number; readonly spreadM: number }
  | {
      readonly from: 'diameters';
      readonly x: number;
      readonly y: number;
      readonly aM: number;
      readonly bM: number;
      /** Bearing of diameter a, clockwise from north. */
      readonly bearingDeg: number;
    }
  | {
      readonly from: 'radii';
      /** The trunk. */
      readonly x: number;
      readonly y: number;
      /** At equal steps clockwise from north. */
      readonly radiiM: readonly number[];
      /** Bearing of the first radius in the plane; 0 when left out. */
      readonly firstBearingDeg?: number;
    };

/** What of a plane is needed here: flat longitude–latitude pairs to flat metres. */
export interface ForwardPlane {
  forward(lonlat: Coordinates<'lonlat'>): Ring;
}

/** A step north long enough to lose no digits, short enough to be straight: about 11 m. */
const NORTH_STEP_DEG = 1e-4;

/**
 * A crown shape in a plane. Bearings are turned by the meridian convergence at the trunk (true north against the plane's
 * y axis; 0.6° at 50 km east of the centre at latitude 52°), measured by projecting a short step north. Measured lengths
 * are taken as plane lengths. Coordinates that are not finite come out not finite; {@link crownOutline} reports them.
 */
export function crownShapeInPlane(shape: CrownShape, plane: ForwardPlane): PlaneCrownShape {
  if (shape.from === 'polygon') {
    return { from: 'polygon', region: shape.polygons.flatMap((rings) => rings.map((ring) => plane.forward(ring))) };
  }
  const { x, y, northDeg } = placed(shape.at, plane);
  if (shape.from === 'spread') return { from: 'spread', x, y, spreadM: shape.spreadM };
  if (shape.from === 'radii') return { from: 'radii', x, y, radiiM: shape.radiiM, firstBearingDeg: northDeg };
  return { from: 'diameters', x, y, aM: shape.aM, bM: shape.bM, bearingDeg: shape.bearingDeg + northDeg };
}

function placed(at: LonLat, plane: ForwardPlane): { x: number; y: number; northDeg: number } {
  const step = at.lat < 0 ? NORTH_STEP_DEG : -NORTH_STEP_DEG;
  const [x, y, x1, y1] = plane.forward(Float64Array.of(at.lon, at.lat, at.lon, at.lat + step));
  const sign = Math.sign(step);
  return { x, y, northDeg: (Math.atan2(sign * (x1 - x), sign * (y1 - y)) * 180) / Math.PI };
}
