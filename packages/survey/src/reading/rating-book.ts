/** Ratings that follow their rows: a row is read anew only when it changed. What is wrong with rows is told by `readSurvey`. */
import type { ProjectInput, RawFeature, RawLayer } from '../project-input.ts';
import type { Rating } from '../records.ts';
import type { Settings } from '../settings.ts';
import { visitLayers } from '../visits/visit-layers.ts';
import { surveyDates } from './date-text.ts';
import { readLayer } from './layer-reader.ts';
import { ratingReader } from './read-ratings.ts';

/** Whether a tree of this id is in the project. */
interface Trees {
  has(treeId: string): boolean;
}

export class RatingBook {
  readonly #settings: Settings;
  /** By row as it was read; null where it gave no rating. */
  #known = new Map<RawFeature, Rating | null>();
  /** What the column shows about its dates; with another order every row may read differently. */
  #dates = '';

  constructor(settings: Settings) {
    this.#settings = settings;
  }

  /** The ratings that `readSurvey` gives, and of unchanged rows the very objects given before. */
  read({ layers, visits = [] }: Pick<ProjectInput, 'layers' | 'visits'>, trees: Trees): readonly Rating[] {
    const own = layers.ratings ? this.#ofRows(layers.ratings) : [];
    const visited = visits.length > 0 ? visitLayers(visits, layers).ratings : undefined;
    const ofVisits = visited ? readLayer('ratings', visited, this.#reader()).records : [];
    return [...own, ...ofVisits].filter(({ treeId }) => trees.has(treeId));
  }

  #ofRows(layer: RawLayer): Rating[] {
    const dates = JSON.stringify(surveyDates(layer.features.map(({ properties }) => properties.rated_on)));
    const before = dates === this.#dates ? this.#known : new Map<RawFeature, Rating | null>();
    this.#dates = dates;
    this.#known = new Map();
    const ratings: Rating[] = [];
    for (const row of layer.features) {
      const rating = before.get(row) ?? (before.has(row) ? null : this.#row(row, layer));
      this.#known.set(row, rating);
      if (rating) ratings.push(rating);
    }
    return ratings;
  }

  #row(row: RawFeature, layer: RawLayer): Rating | null {
    return readLayer('ratings', { ...layer, features: [row] }, this.#reader(), layer).records[0] ?? null;
  }

  /** Takes ratings of any tree: which trees there are changes more often than the ratings. */
  #reader() {
    return ratingReader(this.#settings, { has: () => true, similar: () => undefined });
  }
}
