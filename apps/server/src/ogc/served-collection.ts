/** A set of features opened for questions: by box and period, by page, by id. */
import Flatbush from 'flatbush';
import type { FeatureSet } from '../figures/feature-set.ts';
import type { Box, ItemQuery } from './item-query.ts';
import { type GeoJsonGeometry, meetsBox } from './meets-box.ts';
import { dayMeets, type Period } from './period.ts';

export interface Selection {
  /** How many features match in all. */
  readonly matched: number;
  /** Positions in the set of the page's features, ascending. */
  readonly page: readonly number[];
}

export class ServedCollection {
  readonly set: FeatureSet;
  /** First and last day of the features' observations; null when none has one. */
  readonly days: readonly [string, string] | null;
  readonly #index: Flatbush | null;
  readonly #positions: ReadonlyMap<string, number>;
  readonly #unplaced: readonly number[];

  constructor(set: FeatureSet) {
    this.set = set;
    this.#index = set.index === null ? null : Flatbush.from(set.index);
    this.#positions = new Map(set.ids.map((id, i) => [id, i]));
    this.#unplaced = set.ids.map((_, i) => i).filter((i) => Number.isNaN(set.boxes[4 * i]));
    this.days = firstAndLast(set.days);
  }

  /** West, south, east, north of all features, degrees; null when none has a place. */
  get bounds(): Box | null {
    return this.#index && [this.#index.minX, this.#index.minY, this.#index.maxX, this.#index.maxY];
  }

  /** Position of the feature with this id; undefined when there is none. */
  position(id: string): number | undefined {
    return this.#positions.get(id);
  }

  /** GeoJSON text of one feature, UTF-8. */
  text(position: number): Uint8Array {
    return this.set.text.subarray(this.set.starts[position], this.set.starts[position + 1]);
  }

  /**
   * Features without a place match any box, features without a day any period (requirements fc-bbox-response and
   * fc-time-response). Time grows with the matches and the period's features, not with the box's surroundings.
   */
  select({ bbox, period, offset, limit }: ItemQuery): Selection {
    const count = this.set.ids.length;
    if (bbox === null && period === null) {
      const size = Math.max(0, Math.min(limit, count - offset));
      return { matched: count, page: Array.from({ length: size }, (_, i) => offset + i) };
    }
    const near = bbox === null ? Array.from({ length: count }, (_, i) => i) : this.#meeting(bbox);
    const matches = period === null ? near : near.filter((i) => this.#inPeriod(i, period));
    return { matched: matches.length, page: matches.slice(offset, offset + limit) };
  }

  #inPeriod(position: number, period: Period): boolean {
    const day = this.set.days[position];
    return day === null || dayMeets(day, period);
  }

  #meeting(bbox: Box): number[] {
    const found = new Set(this.#unplaced);
    for (const half of halves(bbox)) {
      for (const k of this.#index?.search(...half) ?? []) {
        const position = this.set.placed[k];
        if (!found.has(position) && this.#meets(position, half)) found.add(position);
      }
    }
    return [...found].sort((a, b) => a - b);
  }

  /** A feature whose own box lies in the one asked for meets it; only those on its border are looked at closely. */
  #meets(position: number, box: Box): boolean {
    const [west, south, east, north] = this.set.boxes.subarray(4 * position, 4 * position + 4);
    if (west >= box[0] && south >= box[1] && east <= box[2] && north <= box[3]) return true;
    const { geometry } = JSON.parse(new TextDecoder().decode(this.text(position))) as { geometry: GeoJsonGeometry };
    return meetsBox(geometry, box);
  }
}

/** A box whose west lies east of its east crosses the 180th meridian (RFC 7946 section 5.2): two boxes. */
function halves([west, south, east, north]: Box): Box[] {
  if (west <= east) return [[west, south, east, north]];
  return [
    [west, south, 180, north],
    [-180, south, east, north],
  ];
}

function firstAndLast(days: FeatureSet['days']): readonly [string, string] | null {
  let [first, last] = ['', ''];
  for (const day of days) {
    if (day === null) continue;
    if (first === '' || day < first) first = day;
    if (day > last) last = day;
  }
  return first === '' ? null : [first, last];
}
