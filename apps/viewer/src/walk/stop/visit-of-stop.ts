/** A stop as the visit that is sent: once made it is never changed. */
import type { Visit } from '@crownfall/exchange';
import { type RatingDraft, ratingRecord } from '../../outline/rating-draft.ts';
import { type Evidence, isBloomSeen, isRated, ratingDraftOf, type Stop } from './stop.ts';

/** How signs of a cause are written into the records, the same in every language of the screen. */
const EVIDENCE_WRITTEN: Readonly<Record<Evidence, string>> = {
  'larvae-seen': 'larvae seen in galls',
  'galls-opened': 'galls opened',
  'frass-below': 'frass on the pavement below',
  'sticky-leaves': 'sticky leaves',
  'sooty-mould': 'sooty mould on leaves',
  'fruit-below': 'fruit on the pavement below',
  'litter-below': 'leaf litter on the pavement below',
};

export const draftOfStop = (stop: Stop, rater: string): RatingDraft =>
  ratingDraftOf(stop, rater, stop.evidence.map((each) => EVIDENCE_WRITTEN[each]).join('; '));

/**
 * The visit of a stop, with what was seen in its details under the layers' own field names. Nothing seen is a visit too:
 * `inspected`.
 * @example visitOfStop({ ...newStop(begun), gallLoad: 'none' }, 'R1').did // 'inspected + rated'
 */
export function visitOfStop(stop: Stop, visitor: string): Visit {
  const { stopId, treeId, blockId, startedAt, note } = stop;
  const rated = isRated(stop);
  const did = ['inspected', ...(rated ? ['rated'] : []), ...(stop.quadrats.length > 0 ? ['measured'] : [])];
  return {
    visitId: stopId,
    treeId,
    blockId,
    visitedOn: startedAt,
    visitor,
    did: did.join(' + '),
    ...(note.trim() === '' ? {} : { note: note.trim() }),
    details: {
      ...(rated && { ratings: [ratingOf(stop, visitor)] }),
      ...(isBloomSeen(stop) && { bloom: [bloomOf(stop)] }),
      ...(stop.quadrats.length > 0 && { quadrats: quadratsOf(stop, visitor) }),
      ...(stop.notFound && { not_found: true }),
      ...(stop.hostSeen !== null && { wrong_species: { host: stop.hostSeen } }),
      ...(stop.newTree && { new_tree: newTreeOf(stop, stop.newTree) }),
      ...(stop.photos.length > 0 && { photos: photosOf(stop) }),
    },
  };
}

function ratingOf(stop: Stop, visitor: string): object {
  const { tree_id: _, ...row } = ratingRecord(draftOfStop(stop, visitor));
  return row;
}

function bloomOf({ bbch, larvae, bees, day }: Stop): object {
  return {
    observed_on: day,
    ...(bbch === null ? {} : { bbch }),
    larvae_in_galls: larvae ?? 'unknown',
    bees_at_flowers: bees ?? 'unknown',
  };
}

function quadratsOf({ quadrats, day }: Stop, visitor: string): object[] {
  return quadrats.map(({ quadratId, areaM2, stainedPct, range, method, at }) => ({
    quadrat_id: quadratId,
    area_m2: areaM2,
    stained_pct: stainedPct,
    stained_lo_pct: range[0],
    stained_hi_pct: range[1],
    lon: at[0],
    lat: at[1],
    method,
    measured_on: day,
    by: visitor,
  }));
}

function newTreeOf({ treeId }: Stop, { at, host, spreadM }: NonNullable<Stop['newTree']>): object {
  return { tree_id: treeId, lon: at[0], lat: at[1], ...(host === '' ? {} : { host }), spread_m: spreadM };
}

function photosOf({ photos }: Stop): object[] {
  return photos.map(({ photoId, sha256, at }) => ({
    name: photoId,
    ...(sha256 === null ? {} : { sha256 }),
    ...(at === null ? {} : { lon: at[0], lat: at[1] }),
  }));
}
