/** The ratings of a season that count on a day, by tree, kept while ratings come and go and days pass. */
import type { Rating, Survey } from '../records.ts';

const NONE: readonly Rating[] = [];

export class RatingsByTree {
  readonly #byTree = new Map<string, readonly Rating[]>();
  #ratings: readonly Rating[] = [];
  #season = '';
  #asOf = '';

  of(treeId: string): readonly Rating[] {
    return this.#byTree.get(treeId) ?? NONE;
  }

  /** Takes these ratings, and this season and day, instead; answers the trees of which others count now. */
  become({ season, ratings }: Pick<Survey, 'season' | 'ratings'>, asOf: string): ReadonlySet<string> {
    const [was, now] = [countsIn(this.#season, this.#asOf), countsIn(`${season}-`, asOf)];
    const sameDay = this.#season === `${season}-` && this.#asOf === asOf;
    const before = this.#ratings;
    this.#ratings = ratings;
    this.#season = `${season}-`;
    this.#asOf = asOf;
    const same = commonEnds(before, ratings);
    const gone = new Set(before.slice(same.first, before.length - same.last));
    const come = ratings.slice(same.first, ratings.length - same.last).filter((rating) => !gone.delete(rating));
    const trees = new Set<string>();
    for (const rating of gone) if (was(rating)) this.#remove(rating, trees);
    if (!sameDay)
      for (const rating of before) {
        if (gone.has(rating) || was(rating) === now(rating)) continue;
        if (now(rating)) this.#add(rating, trees);
        else this.#remove(rating, trees);
      }
    for (const rating of come) if (now(rating)) this.#add(rating, trees);
    return trees;
  }

  #add(rating: Rating, trees: Set<string>): void {
    trees.add(rating.treeId);
    this.#byTree.set(rating.treeId, [...this.of(rating.treeId), rating]);
  }

  #remove(rating: Rating, trees: Set<string>): void {
    trees.add(rating.treeId);
    const left = this.of(rating.treeId).filter((each) => each !== rating);
    this.#byTree.set(rating.treeId, left);
  }
}

function countsIn(season: string, asOf: string): (rating: Rating) => boolean {
  return ({ ratedOn }) => ratedOn.startsWith(season) && ratedOn <= asOf;
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
