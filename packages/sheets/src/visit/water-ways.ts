/** From each tree that a treatment could be meant for, the shortest way to the water, drain or well that leaves it least room. */
import type { Assessment } from '@crownfall/assessment';
import {
  type Chains,
  chainsOf,
  closedChains,
  type LocalPlane,
  type NearestPair,
  nearestPair,
  type Region,
} from '@crownfall/geometry';
import type { WaterFeature } from '@crownfall/survey';
import type { Drawing, GroundMark } from '../drawing.ts';
import { type Bounds, boundsOf } from '../map-frame.ts';
import { MAP } from '../palette.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { lengthText } from '../quantities.ts';
import type { LabelRoom } from './label-room.ts';
import { isWithin, type Stop, type VisitRecords } from './visit-stops.ts';

export interface WaterWay {
  readonly stop: Stop;
  readonly kind: WaterFeature['kind'];
  readonly pair: NearestPair;
  /** Distance to keep by label and local code; null: not stated. */
  readonly keepM: number | null;
}

/** What lies farther from a block is no matter of its sheet, m. (A) */
const REACH_M = 100;

interface Ground {
  readonly assessment: Assessment;
  readonly records: VisitRecords;
  readonly plane: LocalPlane;
  readonly stops: readonly Stop[];
}

/** One way for each tree in which a person found a cause that treatment acts on; none where nothing is mapped nearby. */
export function waterWays({ assessment, records, plane, stops }: Ground): readonly WaterWay[] {
  const { keep_off_m, treat_causes } = assessment.run.settings.plan;
  const treatable = stops.filter(
    ({ tree }) => tree.severityFrom === 'rating' && tree.dose > 0 && treat_causes.includes(tree.cause),
  );
  if (treatable.length === 0) return [];
  const about = grown(boundsOf(treatable.map(({ region }) => region)), REACH_M);
  const near = records.water
    .map(({ kind, geometry }) => ({ kind, chains: chainsOf(geometry, plane.forward) }))
    .filter(({ chains }) => chains.some((chain) => touches(chain, about)));
  return treatable.flatMap((stop): WaterWay[] => {
    const crown = closedChains(stop.region);
    const ways = near.flatMap(({ kind, chains }): WaterWay[] => {
      const pair = meeting(stop.region, chains, kind) ?? nearestPair(crown, chains);
      return pair === null ? [] : [{ stop, kind, pair, keepM: keep_off_m[kind] }];
    });
    return ways.sort((a, b) => roomOf(a) - roomOf(b)).slice(0, 1);
  });
}

/** A drain beneath the crown, or a crown over open water: no way at all. */
function meeting(crown: Region, chains: Chains, kind: WaterFeature['kind']): NearestPair | null {
  const [[x, y]] = chains;
  if (isWithin(crown, x, y)) return { from: [x, y], to: [x, y], distanceM: 0 };
  const [[u, v]] = crown;
  const isOver = kind === 'water' && isWithin(chains, u, v);
  return isOver ? { from: [u, v], to: [u, v], distanceM: 0 } : null;
}

/** What is left when the distance to keep is taken off. */
export function roomOf({ pair, keepM }: WaterWay): number {
  return pair.distanceM - (keepM ?? 0);
}

/** Length of a number's line on paper, mm. */
const LABEL_MM = 2.3;

/** The ways as lines; their lengths where the map has room for them. */
export function wayMarks(
  ways: readonly WaterWay[],
  drawing: Drawing,
  { room, fonts, units }: { readonly room: LabelRoom; readonly fonts: SheetFonts; readonly units: 'metric' | 'us' },
): readonly GroundMark[] {
  const style = { sizeMm: LABEL_MM, weight: 'bold', colour: MAP.ink, anchor: 'middle', halo: '#ffffff' } as const;
  const lines = ways.map(
    ({ pair: { from, to } }): GroundMark => ({
      mark: 'line',
      line: Float64Array.of(...from, ...to),
      style: { stroke: { colour: '#000000', widthMm: 0.3, dashMm: [1.4, 0.6] } },
    }),
  );
  const lengths = ways.flatMap(({ pair }): GroundMark[] => {
    const text = lengthText(pair.distanceM, units);
    const widthMm = fonts.widthMm(text, style);
    for (const [x, y] of besides(pair, drawing.scale)) {
      const corners = cornersAbout(x, y, widthMm, drawing);
      if (!room.isFree(corners)) continue;
      room.take(corners);
      return [{ mark: 'label', x, y, text, style }];
    }
    return [];
  });
  return [...lines, ...lengths];
}

/** Where a length may stand: on the middle of its line, else beside it, nearest first; mm. */
const BESIDE_MM = [0, 2.6, -2.6, 4.2, -4.2, 6, -6];

function besides({ from, to, distanceM }: NearestPair, scale: number): readonly (readonly [number, number])[] {
  const [dx, dy] = distanceM > 0 ? [(to[0] - from[0]) / distanceM, (to[1] - from[1]) / distanceM] : [1, 0];
  return BESIDE_MM.map((mm) => {
    const metres = (mm * scale) / 1000;
    return [(from[0] + to[0]) / 2 - dy * metres, (from[1] + to[1]) / 2 + dx * metres] as const;
  });
}

/** The room of a word whose middle stands at a place of the ground; corners in mm of the map. */
function cornersAbout(x: number, y: number, widthMm: number, { frame, centre, scale }: Drawing): Float64Array {
  const across = frame.widthMm / 2 + ((x - centre.x) * 1000) / scale;
  const down = frame.heightMm / 2 - ((y - centre.y) * 1000) / scale;
  const [l, r] = [across - widthMm / 2 - 0.3, across + widthMm / 2 + 0.3];
  const [t, b] = [down - LABEL_MM, down + LABEL_MM];
  return Float64Array.of(l, t, r, t, r, b, l, b);
}

function grown({ minX, minY, maxX, maxY }: Bounds, by: number): Bounds {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}

/** Whether the box of a chain meets another. */
function touches(chain: Float64Array, { minX, minY, maxX, maxY }: Bounds): boolean {
  const own = boundsOf([[chain]]);
  return own.maxX >= minX && own.minX <= maxX && own.maxY >= minY && own.minY <= maxY;
}
