import type { Place } from '@crownfall/geometry';
import type { FindingSink } from '../finding-sink.ts';

/** Takes in the features of one file, however they arrive. */
export interface FeatureTaker {
  readonly place: Place;
  readonly findings: FindingSink;
  /** How many features were taken in. */
  count(): number;
  /** `row` is the feature's position in the file, from 1; by default one more than the last. */
  addFeature(feature: unknown, row?: number): void;
  /** The value of the file's `crs` member (of GeoJSON before RFC 7946). */
  crsMember(member: unknown): void;
  /**
   * What the file says of its system, in any of the ways `resolveCrs` reads; null: it says nothing, and its format does
   * not say it for it.
   */
  statedCrs(text: string | null): void;
  /** Readers wait for this now and then, so that whoever takes the features can keep up. */
  ready(): Promise<void>;
}
