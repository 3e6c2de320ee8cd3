/**
 * Every code a finding may carry, and the facts each brings along, so that the words of a message can never ask for a
 * fact that is not there. A name ending in `?` is a fact that may be absent. The place (layer, file, feature, row, field,
 * vertex, lon, lat) is never repeated among the facts.
 */
import type { Finding, GeometryFindingCode, Place } from '@crownfall/geometry';

/** Found while opening files, before there are records. */
const READER_FACTS = {
  'not-json': ['problem?', 'line?'],
  'file-truncated': ['problem?', 'bytes?'],
  'file-missing': ['problem?'],
  'file-too-large': ['megabytes?', 'limit_megabytes?'],
  'format-unknown': ['got?', 'valid?'],
  'project-invalid': ['problem?', 'expected?', 'got?'],
  'layer-unknown': ['got', 'valid', 'nearest?'],
  'mapping-field-missing': ['got', 'valid?', 'nearest?'],
  'unit-unknown': ['got', 'valid?', 'nearest?'],
  'encoding-guessed': ['encoding'],
  'csv-ragged-row': ['got', 'expected'],
  'csv-delimiter-guessed': ['delimiter'],
  'csv-quote-unclosed': [],
  'csv-header-repeated': ['got', 'read_as'],
  'geojson-invalid': ['problem'],
  'file-damaged': ['format', 'problem'],
  'file-refused': ['format', 'problem'],
  'sidecar-missing': ['got', 'read_as?'],
  'values-left-out': ['got', 'count'],
  'spread-estimated': ['count', 'basis', 'sd_pct'],
  'inventory-rows-refused': ['count', 'reason'],
  'inventory-values-mended': ['count', 'reason'],
  'imagery-does-not-meet': ['extent?', 'other_extent?'],
  'store-newer': ['got', 'known'],
  'store-migrated': ['from', 'to', 'copy'],
  'store-columns-adopted': ['layers'],
  'history-outdated': [],
  'imagery-encoding-unsupported': ['problem'],
  'imagery-not-placed': [],
  'imagery-block-damaged': ['count', 'level?', 'column', 'row', 'problem'],
  'imagery-alpha-is-infrared': ['band'],
  'imagery-roles-assumed': ['read_as'],
  'imagery-slow-to-stream': ['reason'],
  'stored-figures-unreadable': [],
  'stored-figures-overridden': ['setting'],
  'calibration-stale': ['changed'],
} as const;

/** Found while turning features and rows into records. */
const RECORD_FACTS = {
  'field-missing': ['count?', 'read_as?'],
  'field-not-a-number': ['got', 'unit?'],
  'number-mended': ['got', 'read_as', 'count'],
  'value-out-of-range': ['got', 'expected'],
  'date-unreadable': ['got'],
  'date-impossible': ['got'],
  'date-ambiguous': ['got', 'either', 'or'],
  'date-order-inferred': ['got', 'read_as', 'proof', 'count'],
  'unknown-word': ['got', 'valid', 'nearest?', 'read_as?', 'count?'],
  'layer-missing': [],
  'layer-empty': ['rows'],
  'layers-do-not-meet': ['extent', 'other', 'other_extent'],
  'feature-without-geometry': [],
  'geometry-unexpected': ['got', 'expected'],
  'crown-without-size': [],
  'tree-id-made-up': ['count'],
  'tree-id-duplicate': ['renamed_to'],
  'tree-repeated': [],
  'id-made-up': ['count'],
  'id-duplicate': ['renamed_to'],
  'feature-repeated': [],
  'block-parts-joined': ['parts'],
  'width-defaulted': ['kind', 'count', 'width_m'],
  'area-from-outline': ['area_m2'],
  'rating-of-unknown-tree': ['got', 'similar?'],
  'observation-of-unknown-place': ['got', 'similar?'],
  'rating-contradiction': ['cause', 'gall_load'],
  'rating-without-figure': [],
  'rating-unconfirmed': ['count'],
  'class-and-percent-disagree': ['got', 'class', 'scale', 'expected'],
  'cause-without-evidence': ['cause'],
  'galls-without-cause': ['gall_load'],
  'visit-tree-not-found': ['by', 'on'],
  'visit-other-host': ['by', 'on', 'got'],
  'visit-new-tree': ['by', 'on'],
} as const;

/** Found while settings are read and severities reckoned. */
const RECKONING_FACTS = {
  'setting-unknown': ['valid', 'nearest?'],
  'setting-out-of-range': ['got', 'expected', 'used'],
  'raters-disagree': ['raters', 'taken'],
  'streets-enclose-little': ['enclosed_pct', 'least_pct'],
  'host-without-ratings': ['host?', 'count'],
} as const;

/** Found by the geometry package. */
const GEOMETRY_FACTS = {
  'crs-unknown': ['given?', 'reason?', 'detail?'],
  'crs-datum-refused': ['given?', 'datum?', 'reason?'],
  'crs-missing': [],
  'lonlat-out-of-range': ['got?'],
  'lonlat-maybe-swapped': ['got?'],
  'coordinates-not-finite': ['got?'],
  'ring-too-short': ['got?', 'vertices?'],
  'ring-unclosed': ['gap_m?'],
  'ring-self-crosses': ['crossings?'],
  'ring-zero-area': [],
  'outline-zero-size': ['got?'],
  'outline-radii-too-few': ['got?'],
  'line-too-short': ['got?', 'length_m?'],
  'streets-enclose-nothing': ['streets?'],
} as const satisfies Record<GeometryFindingCode, readonly string[]>;

export const FINDING_FACTS = { ...READER_FACTS, ...RECORD_FACTS, ...RECKONING_FACTS, ...GEOMETRY_FACTS };

export type ReaderFindingCode = keyof typeof READER_FACTS;
export type SurveyFindingCode = keyof typeof RECORD_FACTS | keyof typeof RECKONING_FACTS;
export type FindingCode = keyof typeof FINDING_FACTS;

type FactName<Code extends FindingCode> = (typeof FINDING_FACTS)[Code][number];
type Needed<Code extends FindingCode> = Exclude<FactName<Code>, `${string}?`>;
type Possible<Code extends FindingCode> =
  FactName<Code> extends infer Name ? (Name extends `${infer Bare}?` ? Bare : never) : never;
export type Fact = string | number | boolean;
export type FactsOf<Code extends FindingCode> = Readonly<
  Record<Needed<Code>, Fact> & Partial<Record<Possible<Code>, Fact | undefined>>
>;

/** How grave a finding is and what the totals did with it: `warning/left_out`. */
export type Grade = `${Finding['severity']}/${Finding['effect']}`;

/**
 * A finding with its facts checked against its code at compile time; facts that are `undefined` are omitted.
 * @example finding('rating-of-unknown-tree', 'warning/left_out', { layer: 'ratings', row: 7 }, { got: 'T-9' })
 */
export function finding<Code extends FindingCode>(
  code: Code,
  grade: Grade,
  where: Place,
  facts: FactsOf<Code>,
): Finding<Code> {
  const [severity, effect] = grade.split('/') as [Finding['severity'], Finding['effect']];
  const known = Object.entries(facts).filter((entry): entry is [string, Fact] => entry[1] !== undefined);
  return { code, severity, effect, where, facts: Object.fromEntries(known) };
}
