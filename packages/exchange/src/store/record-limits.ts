/** What may be asked of a layer, the same of every store. */
import type { LonLatBox } from './project-store.ts';

const MOST_PER_PAGE = 10_000;
const USUAL_PER_PAGE = 1000;

/** The page size asked for, else 1,000. Throws a RangeError for one that is none of 1 to 10,000. */
export function pageLimit(limit: number | undefined): number {
  if (limit === undefined) return USUAL_PER_PAGE;
  if (!Number.isInteger(limit) || limit < 1 || limit > MOST_PER_PAGE) {
    throw new RangeError(`expected a limit from 1 to ${MOST_PER_PAGE}, got ${limit}`);
  }
  return limit;
}

/** The box as it is. Throws a RangeError when south lies above north, or an edge is no number. */
export function checkedBox(bbox: LonLatBox): LonLatBox {
  const [, south, , north] = bbox;
  if (bbox.length !== 4 || !bbox.every(Number.isFinite) || south > north) {
    throw new RangeError(`expected west, south, east, north with south not above north, got ${bbox.join(', ')}`);
  }
  return bbox;
}
