/** The trees of a block as a visitor meets them: numbered in walking order, with what was found last time. */
import type { Assessment, BlockResult, PavementResult, TreeResult } from '@crownfall/assessment';
import { type LocalPlane, type Region, regionCentroid, walkingOrder } from '@crownfall/geometry';
import type { BloomObservation, Rating, Site, Street, WaterFeature } from '@crownfall/survey';
import { regionOf } from '../map-marks.ts';
import type { LookFor } from './visit-words.ts';

/** What a sheet needs to know beside the assessment; a survey has all of it. */
export interface VisitRecords {
  readonly ratings: readonly Rating[];
  readonly bloom: readonly BloomObservation[];
  readonly water: readonly WaterFeature[];
  readonly streets: readonly Street[];
  readonly sites: readonly Site[];
}

export interface Stop {
  /** From 1. */
  readonly number: number;
  readonly tree: TreeResult;
  /** Middle of the crown in the plane, m. */
  readonly x: number;
  readonly y: number;
  readonly region: Region;
  readonly last: Rating | null;
  readonly look: LookFor;
}

/** (A) A rating older than this is asked for again, days. */
const OLD_RATING_DAYS = 45;
/** (A) A crown this bare is looked at for new leaves, share. */
const BARE_SHARE = 0.25;

/**
 * The block's trees in walking order: along the streets' sides, straight over plazas and car parks; without streets along the
 * block's outline. On the way from one place to another where they are given (plane, m).
 */
export function stopsOf(
  block: BlockResult,
  { assessment, records, plane }: { assessment: Assessment; records: VisitRecords; plane: LocalPlane },
  ends: { readonly from?: Point; readonly to?: Point } = {},
): readonly Stop[] {
  const trees = assessment.trees.filter(({ blockId }) => blockId === block.blockId);
  const open = assessment.pavement.filter(isOpenGround).map((piece) => ({
    id: piece.pavementId,
    region: regionOf(piece.geometry, plane),
  }));
  const placed = trees.map((tree) => {
    const region = regionOf(tree.geometry, plane);
    const [x, y] =
      region.length > 0 ? regionCentroid(region) : plane.forward(Float64Array.of(tree.at.lon, tree.at.lat));
    const ground = open.find((piece) => isWithin(piece.region, x, y));
    return { tree, region, x, y, ...(ground === undefined ? {} : { open: ground.id }) };
  });
  const order = walkingOrder(placed, { streets: streetLines(block, records, plane), ...ends });
  const asOf = assessment.run.asOf;
  return order.map((i, k) => {
    const { tree, region, x, y } = placed[i];
    const last = lastRating(tree.treeId, records.ratings, asOf);
    return { number: k + 1, tree, region, x, y, last, look: lookFor(last, block, asOf) };
  });
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** The streets about a block, or its outline where none are known. */
function streetLines(block: BlockResult, { streets }: VisitRecords, plane: LocalPlane): readonly Float64Array[] {
  const known = streets.flatMap(({ lines }) => lines.map((line) => plane.forward(line)));
  if (known.length > 0) return known;
  return regionOf(block.geometry, plane).map((ring) => Float64Array.of(...ring, ring[0], ring[1]));
}

function isOpenGround({ kind }: PavementResult): boolean {
  return kind === 'plaza' || kind === 'parking';
}

/** Inside a shell; trees in the pits of a plaza stand on it. */
export function isWithin(region: Region, x: number, y: number): boolean {
  return region.slice(0, 1).some((ring) => {
    let inside = false;
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const crosses = ring[i + 1] > y !== ring[j + 1] > y;
      if (crosses && x < ((ring[j] - ring[i]) * (y - ring[i + 1])) / (ring[j + 1] - ring[i + 1]) + ring[i])
        inside = !inside;
    }
    return inside;
  });
}

function lastRating(treeId: string, ratings: readonly Rating[], asOf: string | null): Rating | null {
  const own = ratings.filter((rating) => rating.treeId === treeId && (asOf === null || rating.ratedOn <= asOf));
  return own.reduce<Rating | null>(
    (best, rating) => (best === null || rating.ratedOn >= best.ratedOn ? rating : best),
    null,
  );
}

/** What is asked of the visitor; the first rule that fits. Trade habit, no source. */
function lookFor(last: Rating | null, { bloomState }: BlockResult, asOf: string | null): LookFor {
  if (last === null) return 'rate';
  if (last.cause === 'unknown') return 'cause';
  if (asOf !== null && daysApart(last.ratedOn, asOf) > OLD_RATING_DAYS) return 'again';
  const larvae = last.cause === 'frass' || (last.gallLoad !== undefined && last.gallLoad !== 'none');
  if (larvae && bloomState === 'open') return 'open';
  if (larvae && bloomState === 'closing') return 'closing';
  if (larvae) return 'inside';
  if ((last.defoliated?.share ?? 0) >= BARE_SHARE) return 'leaves';
  return last.cause === 'none' ? 'clean' : 'falling';
}

function daysApart(from: string, to: string): number {
  return (Date.parse(to) - Date.parse(from)) / 86_400_000;
}
