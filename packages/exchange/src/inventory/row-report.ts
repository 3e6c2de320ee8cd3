/** The account of an inventory: a table row by row, counts, and findings. */
import type { Finding, Place } from '@crownfall/geometry';
import { finding } from '@crownfall/survey';
import { type CsvRecord, writeCsv } from '../csv/write-csv.ts';
import { degree } from '../round.ts';
import { type AdoptedRow, type Adoption, isEstimate } from './adopt-rows.ts';

const COLUMNS = ['row', 'tree_id', 'action', 'lon', 'lat', 'field', 'as_it_stood', 'taken_as', 'why'];

/** The row report as delimited text: a line for each thing told of a row, at least one for each row. */
export function rowReport({ rows }: Adoption): Generator<string> {
  return writeCsv(COLUMNS, linesOf(rows));
}

function* linesOf(rows: readonly AdoptedRow[]): Generator<CsvRecord> {
  for (const { row, treeId, action, refusal, notes, geometry } of rows) {
    const [lon, lat] = geometry.kind === 'point' ? [...geometry.points].map(degree) : [];
    const base = { row, tree_id: treeId, action, lon, lat };
    if (refusal !== undefined) yield { ...base, why: refusal };
    for (const { field, from, to, why } of notes) yield { ...base, field, as_it_stood: from, taken_as: to, why };
    if (refusal === undefined && notes.length === 0) yield base;
  }
}

/** Counts of an adoption, for people and for scripts. */
export interface AdoptionSummary {
  readonly rows: number;
  readonly taken: number;
  readonly mended: number;
  readonly refused: number;
  readonly refusals: Readonly<Record<string, number>>;
  /** By field and reason: `host: spelling`. */
  readonly mends: Readonly<Record<string, number>>;
  readonly spreads: { readonly measured: number; readonly estimated: number; readonly outlined: number };
  /** By what they were estimated from. */
  readonly estimatedFrom: Readonly<Record<string, number>>;
  /** Crowns that stand on one point with others: positions of addresses rather than of trees. */
  readonly sharedPositions: number;
}

export function adoptionSummary({ rows }: Adoption): AdoptionSummary {
  const refusals = new Map<string, number>();
  const mends = new Map<string, number>();
  const estimatedFrom = new Map<string, number>();
  const spreads = { measured: 0, estimated: 0, outlined: 0 };
  const actions = { taken: 0, mended: 0, refused: 0 };
  let sharedPositions = 0;
  const tally = (map: Map<string, number>, key: string): void => void map.set(key, (map.get(key) ?? 0) + 1);
  for (const { action, refusal, notes, crown } of rows) {
    actions[action]++;
    if (refusal !== undefined) tally(refusals, refusal);
    if (!crown) continue;
    for (const note of notes) if (!isEstimate(note)) tally(mends, `${note.field}: ${reasonOf(note.why)}`);
    const from = crown.properties.spread_from;
    if (from === 'estimated') tally(estimatedFrom, String(crown.properties.spread_basis));
    spreads[from === 'measured' || from === 'estimated' ? from : 'outlined']++;
    if (crown.properties.position_shared_by !== undefined) sharedPositions++;
  }
  return {
    rows: rows.length,
    ...actions,
    refusals: Object.fromEntries(refusals),
    mends: Object.fromEntries(mends),
    spreads,
    estimatedFrom: Object.fromEntries(estimatedFrom),
    sharedPositions,
  };
}

/** Reasons that carry a figure of their own row are counted as one. */
function reasonOf(why: string): string {
  return why.includes('is not possible') ? 'not possible' : why;
}

/** What the project is told of an inventory that was taken in. */
export function adoptionFindings(adoption: Adoption, place: Place): Finding[] {
  const { refusals, mends, estimatedFrom } = adoptionSummary(adoption);
  const estimated = adoption.rows.flatMap(({ crown }) =>
    crown?.properties.spread_from === 'estimated' ? [crown.properties] : [],
  );
  return [
    ...Object.entries(refusals).map(([reason, count]) =>
      finding('inventory-rows-refused', 'warning/left_out', place, { count, reason }),
    ),
    ...Object.entries(mends).map(([reason, count]) =>
      finding('inventory-values-mended', 'note/mended', place, { count, reason }),
    ),
    ...Object.entries(estimatedFrom).map(([basis, count]) => {
      const its = estimated.filter(({ spread_basis }) => spread_basis === basis);
      const shares = its.map(({ outline_sd_m, spread_m }) => (200 * Number(outline_sd_m)) / Number(spread_m));
      const sd_pct = Math.round(shares.reduce((sum, share) => sum + share, 0) / shares.length);
      return finding('spread-estimated', 'warning/assumed', place, { count, basis, sd_pct });
    }),
  ];
}
