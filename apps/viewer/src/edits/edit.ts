/** Everything that a person can change, as plain values with what was there before: so each can be undone. */
import type { PrioritySettings } from '@crownfall/survey';

/** A crown as the crowns layer holds it. */
export interface CrownRecord {
  readonly geometry: GeoJSON.Polygon | GeoJSON.MultiPolygon | GeoJSON.Point;
  readonly properties: Readonly<Record<string, unknown>>;
  /** What it is in the server's store, as it was seen. */
  readonly stored?: StoredAs;
}

/** A record of the store at a version. */
export interface StoredAs {
  readonly recordId: number;
  readonly version: number;
}

/** A row of the ratings table. */
export type RatingRecord = Readonly<Record<string, string | number>>;

/** Weights and reference levels: what the weigh bench moves. */
export type Weighing = Pick<PrioritySettings, 'weights' | 'levels'>;

export interface Scenario {
  readonly id: string;
  readonly name: string;
  readonly weighing: Weighing;
}

export type Edit =
  /** `before` null: a new crown; `after` null: a crown taken away. */
  | {
      readonly kind: 'crown';
      readonly treeId: string;
      readonly before: CrownRecord | null;
      readonly after: CrownRecord | null;
    }
  /** Ratings are only ever added; undoing takes the newest away. */
  | { readonly kind: 'rating'; readonly treeId: string; readonly after: RatingRecord }
  | { readonly kind: 'weighing'; readonly before: Weighing | null; readonly after: Weighing | null }
  | { readonly kind: 'scenario'; readonly before: Scenario | null; readonly after: Scenario | null };

/** What changes the records that are reckoned with. The last kind takes away a rating that the store holds. */
export type RecordEdit =
  | Extract<Edit, { readonly kind: 'crown' | 'rating' }>
  | { readonly kind: 'rating-gone'; readonly recordId: number };
