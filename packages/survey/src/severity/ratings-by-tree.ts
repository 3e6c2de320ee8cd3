/** The ratings that count on a day, by tree, kept while ratings come and go. */
import type { Rating, Survey } from '../records.ts';

const NONE: readonly Rating[] = [];

export class RatingsByTree {
  readonly #counts: (rating: Rating) => boolean;
  readonly #byTree = new Map<string, readonly Rating[]>();
  #ratings: readonly Rating[] = [];

  constructor({ season, ratings }: Pick<Survey, 'season' | 'ratings'>, asOf: string) {
    const year = `${season}-`;
    this.#counts = ({ ratedOn }) => ratedOn.startsWith(year) && ratedOn <= asOf;
    this.become(ratings);
  }

  of(treeId: string): readonly Rating[] {
    return this.#byTree.get(treeId) ?? NONE;
  }

  /** Takes these ratings instead; answers the trees of which others count now. */
  become(ratings: readonly Rating[]): ReadonlySet<string> {
    const before = this.#ratings;
    this.#ratings = ratings;
    const same = commonEnds(before, ratings);
    const gone = new Set(before.slice(same.first, before.length - same.last));
    const trees = new Set<string>();
    const come: Rating[] = [];
    for (const rating of ratings.slice(same.first, ratings.length - same.last))
      if (!gone.delete(rating) && this.#counts(rating)) come.push(rating);
    for (const rating of gone) {
      if (!this.#counts(rating)) continue;
      trees.add(rating.treeId);
      this.#byTree.set(
        rating.treeId,
        this.of(rating.treeId).filter((each) => each !== rating),
      );
    }
    for (const rating of come) {
      trees.add(rating.treeId);
      this.#byTree.set(rating.treeId, [...this.of(rating.treeId), rating]);
    }
    return trees;
  }
}

/** How many entries two lists have in common at their beginnings, and at their ends beyond those. */
function commonEnds<T>(a: readonly T[], b: readonly T[]): { readonly first: number; readonly last: number } {
  if (a === b) return { first: a.length, last: 0 };
  const most = Math.min(a.length, b.length);
  let first = 0;
  while (first < most && a[first] === b[first]) first++;
  let last = 0;
  while (last < most - first && a[a.length - 1 - last] === b[b.length - 1 - last]) last++;
  return { first, last };
}
