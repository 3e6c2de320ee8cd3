/**
 * A finding: something about the data that a person should know. It is a value, never thrown and never dropped; it
 * travels with the data to the margin of the sheet. The words for each code live in the survey package's catalogue.
 */
export interface Finding<Code extends string = string> {
  readonly code: Code;
  /** `error` stops the job; `warning` leaves something out or changes it; `note` tells of an assumption. */
  readonly severity: 'error' | 'warning' | 'note';
  /** What the totals did with it. */
  readonly effect: 'stops' | 'left_out' | 'mended' | 'assumed' | 'kept';
  readonly where: Place;
  /** The figures and names that the words need: `{ got: 140, limit: 100 }`. */
  readonly facts: Readonly<Record<string, string | number | boolean>>;
}

/** Where a finding is, as the user knows it. Every part is optional; give all that are known. */
export interface Place {
  readonly layer?: string;
  readonly file?: string;
  /** The feature's own id (tree_id, block_id, …), else its position in the file as `#12` (counted from 1). */
  readonly feature?: string;
  /** Row of a table as a spreadsheet shows it: the header is row 1. */
  readonly row?: number;
  readonly field?: string;
  /** Vertex of a ring, counted from 1. */
  readonly vertex?: number;
  readonly lon?: number;
  readonly lat?: number;
}

/** What the geometry package itself finds. */
export type GeometryFindingCode =
  | 'crs-unknown'
  | 'crs-datum-refused'
  | 'crs-missing'
  | 'lonlat-out-of-range'
  | 'lonlat-maybe-swapped'
  | 'coordinates-not-finite'
  | 'ring-too-short'
  | 'ring-unclosed'
  | 'ring-self-crosses'
  | 'ring-zero-area'
  | 'outline-zero-size'
  | 'outline-radii-too-few'
  | 'line-too-short'
  | 'streets-enclose-nothing';
