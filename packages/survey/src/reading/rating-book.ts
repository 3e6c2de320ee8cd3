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
    const fresh = this.#read(layer, (row) => !before.has(row));
    this.#known = new Map(layer.features.map((row) => [row, before.get(row) ?? fresh.get(row) ?? null]));
    return [...this.#known.values()].filter((rating) => rating !== null);
  }

  #read(layer: RawLayer, isWanted: (row: RawFeature) => boolean): ReadonlyMap<RawFeature, Rating> {
    const wanted = { ...layer, features: layer.features.filter(isWanted) };
    const { records } = readLayer('ratings', wanted, pairsOf(this.#reader()), layer);
    return new Map(records);
  }

  /** Takes ratings of any tree: which trees there are changes more often than the ratings. */
  #reader() {
    return ratingReader(this.#settings, { has: () => true, similar: () => undefined });
  }
}

function pairsOf(read: ReturnType<typeof ratingReader>) {
  return (row: Parameters<typeof read>[0]): readonly [RawFeature, Rating] | undefined => {
    const rating = read(row);
    return rating && [row.feature, rating];
  };
}
