/**
 * The project store as its users see it: records with versions, edits that two people may make at once, a journal that
 * forgets nothing. One file on a laptop and a PostGIS database of a department answer alike. Every method is
 * asynchronous; what is wrong with the data comes back as a value, what is wrong with disk or network is thrown as an
 * outage. The clock is an argument (`Writer.at`).
 */
import type { Finding, LonLatGeometry } from '@crownfall/geometry';
import type { LayerName, RawFeature, Visit } from '@crownfall/survey';

export type { Visit } from '@crownfall/survey';

export type Properties = Readonly<Record<string, unknown>>;

/** Who writes, and when: a name or account as the project's people know it, and an ISO 8601 instant in UTC. */
export interface Writer {
  readonly author: string;
  /** `2026-05-20T14:03:00.000Z` */
  readonly at: string;
}

/** A record as it stands. Its number is never used again in its layer, not even after it was deleted. */
export interface StoredRecord {
  readonly layer: LayerName;
  readonly recordId: number;
  /** Counts the writings, from 1. A record brought back after deletion goes on counting. */
  readonly version: number;
  readonly geometry: LonLatGeometry;
  /** Values as they were given, checked by nobody; fields of the contract first in their own order, then the others. */
  readonly properties: Properties;
}

/** West, south, east, north in degrees; west greater than east means across the 180th meridian (RFC 7946, section 5.2). */
export type LonLatBox = readonly [west: number, south: number, east: number, north: number];

/** What to read of a layer; all conditions hold together, in order of record number. */
export interface RecordQuery {
  /** Records whose geometry meets the box, edges included. Records without geometry are left out. */
  readonly bbox?: LonLatBox;
  /** With `bbox`: records without geometry too, as OGC API – Features asks. */
  readonly placeless?: boolean;
  readonly ids?: readonly number[];
  /** Records whose field holds exactly this text or number: a tree's ratings by `tree_id`. */
  readonly where?: Readonly<Record<string, string | number>>;
  /** Records whose day lies in the range, ends included, or that have no day. */
  readonly days?: { readonly field: string; readonly from?: string; readonly to?: string };
  /** Only records with a greater number: the `next` of the page before. */
  readonly after?: number;
  /** At most so many; 1 to 10,000, else 1,000. */
  readonly limit?: number;
}

export interface RecordPage {
  readonly records: readonly StoredRecord[];
  /** Give it as `after` for the next page; null when this is the last one. */
  readonly next: number | null;
}

export interface LayerSummary {
  readonly layer: LayerName;
  /** How the layer came in; absent where the store does not remember. */
  readonly shape?: 'features' | 'table';
  /** False for a layer that nobody has given: it has a table to write to, yet the project counts as without it. */
  readonly given: boolean;
  readonly count: number;
  /** Null without geometries. */
  readonly extent: LonLatBox | null;
  readonly fields: readonly { readonly name: string; readonly type: FieldType }[];
}

export type FieldType = 'text' | 'number' | 'integer' | 'boolean' | 'day' | 'numbers';

/** One change a person makes to one record. */
export type Edit =
  | {
      readonly action: 'insert';
      readonly layer: LayerName;
      readonly geometry: LonLatGeometry;
      readonly properties: Properties;
    }
  | {
      readonly action: 'update';
      readonly layer: LayerName;
      readonly recordId: number;
      /** The version the person saw. */
      readonly expectedVersion: number;
      /** Absent: stays. */
      readonly geometry?: LonLatGeometry;
      /** Only the fields that change; null empties one. */
      readonly properties?: Properties;
    }
  | {
      readonly action: 'delete';
      readonly layer: LayerName;
      readonly recordId: number;
      readonly expectedVersion: number;
    };

/** A name that the client made for this request (a UUID): repeating the request changes nothing and answers the same. */
export interface EditRequest extends Writer {
  readonly requestId?: string;
}

/** One outcome per edit, in order. */
export type EditOutcome =
  /** `record` is as stored, with the identifiers the store gave; null after a deletion. */
  | {
      readonly outcome: 'applied';
      readonly recordId: number;
      readonly version: number;
      readonly record: StoredRecord | null;
    }
  /** Somebody else wrote first: nothing was changed, both are kept until a person decides. */
  | { readonly outcome: 'conflict'; readonly conflict: Conflict }
  /** There never was such a record. */
  | { readonly outcome: 'unknown'; readonly layer: LayerName; readonly recordId: number };

export interface EditAnswer {
  /** The step that `undo` takes back; null when no edit was applied. */
  readonly step: number | null;
  readonly outcomes: readonly EditOutcome[];
  /** True when this request had been answered before. */
  readonly repeated: boolean;
}

export interface Conflict {
  readonly conflictId: number;
  readonly layer: LayerName;
  readonly recordId: number;
  /** What the person wanted. */
  readonly given: Edit;
  readonly givenBy: Writer;
  /** The record as it stands now; null when it was deleted. */
  readonly current: StoredRecord | null;
  readonly state: 'open' | 'taken' | 'dropped';
  readonly decidedBy?: Writer;
}

export type UndoOutcome =
  | {
      readonly outcome: 'done';
      readonly step: number;
      readonly reverted: number;
      readonly records: readonly RecordKey[];
    }
  | { readonly outcome: 'nothing' }
  /** Somebody has since written to these records what undoing would destroy: nothing was changed. */
  | { readonly outcome: 'blocked'; readonly step: number; readonly records: readonly RecordKey[] };

export interface RecordKey {
  readonly layer: string;
  readonly recordId: number;
}

/** One entry of the journal. `author` is `outside` when another program wrote to the file. */
export interface Change extends Writer {
  /** Position in the journal, from 1, without order of layers. */
  readonly change: number;
  /** Changes of one step were made, and are undone, together; changes of other programs stand alone (null). */
  readonly step: number | null;
  readonly kind: StepKind;
  /** A layer, or `visits`, `project`, `results`, `conflicts`. */
  readonly layer: string;
  /** 0 where the change is none of a single record: an import, results. */
  readonly recordId: number;
  readonly action: 'insert' | 'update' | 'delete' | 'import' | 'replace';
  /** The version the record had afterwards. */
  readonly version: number;
}

/** `note`: what no undoing takes back (visits, results, conflicts). `outside`: another program wrote. */
export type StepKind = 'edit' | 'undo' | 'redo' | 'import' | 'note' | 'outside';

/** A change with what was there before and after, field by field; `geometry` is a field as well. */
export interface ChangeInFull extends Change {
  readonly fields: Readonly<Record<string, { readonly before: unknown; readonly after: unknown }>>;
}

/** Who last wrote a figure. */
export interface Blame extends Writer {
  readonly change: number;
  readonly value: unknown;
}

export interface VisitOutcome {
  readonly visitId: string;
  /** `differs`: the id is known with another content; what was stored first stands. */
  readonly outcome: 'added' | 'known' | 'differs';
}

export interface ProjectFacts {
  readonly title: string;
  readonly season: number;
  readonly units: 'metric' | 'us';
  /** Paths relative to the project. */
  readonly imagery: readonly string[];
  readonly settings: Properties;
}

/** Figures of a run, one table per kind of output: `blocks`, `trees`, `pavement`, `ledger`. */
export interface ResultTable {
  /** Lower-case letters, digits and underscores. */
  readonly name: string;
  readonly rows: Iterable<{ readonly geometry: LonLatGeometry; readonly properties: Properties }>;
}

export interface ResultPage {
  readonly rows: readonly {
    readonly resultId: number;
    readonly geometry: LonLatGeometry;
    readonly properties: Properties;
  }[];
  readonly next: number | null;
}

/** Where a layer's features come from and how the project calls their file. */
export interface LayerImport {
  readonly layer: LayerName;
  readonly shape: 'features' | 'table';
  /** In order; any number of them, in portions. */
  readonly features: AsyncIterable<readonly RawFeature[]> | Iterable<readonly RawFeature[]>;
}

export interface ProjectStore {
  /** What was found when it was opened: migrated, adopted columns of other programs. */
  readonly findings: readonly Finding[];
  readonly readOnly: boolean;

  project(): Promise<ProjectFacts>;
  /** Changes what is given and leaves the rest; journaled, and undone like an edit. */
  changeProject(facts: Partial<ProjectFacts>, writer: Writer): Promise<{ readonly step: number | null }>;

  layers(): Promise<readonly LayerSummary[]>;
  records(layer: LayerName, query?: RecordQuery): Promise<RecordPage>;
  /** Those that `records` would give over all pages. */
  count(layer: LayerName, query?: Omit<RecordQuery, 'after' | 'limit'>): Promise<number>;
  record(layer: LayerName, recordId: number): Promise<StoredRecord | null>;
  /** The whole layer as it stood at one moment, in portions; memory stays bounded. */
  wholeLayer(layer: LayerName): AsyncIterable<readonly StoredRecord[]>;

  /** All edits that can be applied are, in one transaction; when the promise is kept they are on the disk. */
  applyEdits(edits: readonly Edit[], request: EditRequest): Promise<EditAnswer>;
  /** Conflicts, open ones first. */
  conflicts(state?: Conflict['state']): Promise<readonly Conflict[]>;
  /** `take` applies the edit to the record as it stands now; `drop` leaves the record. Both are kept in the journal. */
  decideConflict(conflictId: number, decision: 'take' | 'drop', writer: Writer): Promise<EditOutcome | null>;
  /** Takes back the author's last step, or the step given. */
  undo(writer: Writer, step?: number): Promise<UndoOutcome>;
  /** Takes back the author's last undoing, unless an edit came after it. */
  redo(writer: Writer): Promise<UndoOutcome>;

  /** The journal after position `since`, at most `limit` (else 1,000) entries, oldest first: the change feed. */
  changes(since: number, limit?: number): Promise<readonly Change[]>;
  /** Position of the newest entry; 0 in an empty journal. Cheap enough to ask every second. */
  lastChange(): Promise<number>;
  /** All that happened to one record, oldest first. */
  history(layer: LayerName, recordId: number): Promise<readonly ChangeInFull[]>;
  /** All that happened to the records of a tree: its crown, ratings and bloom, oldest first. */
  treeHistory(treeId: string): Promise<readonly ChangeInFull[]>;
  /** Who last wrote each field that has a value. */
  blame(layer: LayerName, recordId: number): Promise<Readonly<Record<string, Blame>>>;

  addVisits(visits: readonly Visit[], writer: Writer): Promise<readonly VisitOutcome[]>;
  /** In the order they were added. */
  visits(query?: {
    readonly treeId?: string;
    readonly blockId?: string;
    readonly from?: string;
  }): Promise<readonly Visit[]>;

  /** Replaces the results of the last run, all or none. */
  saveResults(tables: readonly ResultTable[], writer: Writer): Promise<void>;
  resultTables(): Promise<readonly { readonly name: string; readonly count: number }[]>;
  results(name: string, query?: Pick<RecordQuery, 'bbox' | 'ids' | 'after' | 'limit'>): Promise<ResultPage>;

  /** Replaces a whole layer in one pass and one transaction; one entry in the journal. Returns how many came in. */
  importLayer(source: LayerImport, writer: Writer): Promise<number>;

  /** Further calls are misuse. */
  close(): Promise<void>;
}

/** What opening gives: a store, or the reason why there is none. */
export type StoreOpening =
  | { readonly store: ProjectStore; readonly findings: readonly Finding[] }
  | { readonly store: null; readonly findings: readonly Finding[] };
