import type { BlockResult, LedgerRow, PavementResult, TreeResult } from '@crownfall/assessment';
import type { OutFeature } from '../geojson/write-geojson.ts';
import { m2, metre, pct, share } from '../round.ts';
import { areaColumns, stainedColumns, withExtra } from './figure-columns.ts';

/** A block as a feature of `blocks.geojson`; its properties are those of the outside contract, in its order. */
export function blockFeature(block: BlockResult): OutFeature {
  const parts = block.scoreParts.map((part) => [
    part.criterion,
    { amount: share(part.amount), value: share(part.value), weight: share(part.weight), points: share(part.points) },
  ]);
  const properties = {
    block_id: block.blockId,
    name: block.name,
    rank: block.rank,
    score: share(block.score),
    score_parts: Object.fromEntries(parts),
    ...areaColumns(block),
    ...stainedColumns(block.stainedM2),
    top_share: block.topShare === null ? null : share(block.topShare),
    trees: block.trees,
    trees_rated: block.treesRated,
    worst_severity_pct: block.worstSeverityPct === null ? null : pct(block.worstSeverityPct),
    complaints_open: block.complaintsOpen,
    bloom_state: block.bloomState,
    calibrated: block.calibrated,
  };
  return { geometry: block.geometry, properties: withExtra(properties, block.extra) };
}

/** A crown as a feature of `trees.geojson`. Drip line and fallout are this crown's alone; the stained area is its part. */
export function treeFeature(tree: TreeResult): OutFeature {
  const properties = {
    tree_id: tree.treeId,
    host: tree.host,
    block_id: tree.blockId,
    crown_m2: m2(tree.crownM2),
    spread_m: metre(tree.spreadM),
    severity_pct: tree.severityPct === null ? null : pct(tree.severityPct),
    severity_from: tree.severityFrom,
    cause: tree.cause,
    dose: share(tree.dose),
    dripline_m2: m2(tree.driplineM2),
    fallout_m2: m2(tree.falloutM2),
    ...stainedColumns(tree.stainedM2),
  };
  return { geometry: tree.geometry, properties: withExtra(properties, tree.extra) };
}

/** A piece of pavement as a feature of `pavement.geojson`. The stained share of a piece without area is null. */
export function pavementFeature(piece: PavementResult): OutFeature {
  const { pavement_m2, dripline_m2, fallout_m2 } = areaColumns(piece);
  const stained = piece.stainedM2.value / piece.pavementM2;
  const properties = {
    pavement_id: piece.pavementId,
    kind: piece.kind,
    surface: piece.surface,
    block_id: piece.blockId,
    area_m2: pavement_m2,
    dripline_m2,
    fallout_m2,
    stained_m2: m2(piece.stainedM2.value),
    stained_pct: pct(100 * stained),
  };
  return { geometry: piece.geometry, properties: withExtra(properties, piece.extra) };
}

export const LEDGER_COLUMNS = [
  'block_id',
  'kind',
  'pavement_m2',
  'dripline_m2',
  'fallout_m2',
  'stained_m2',
  'stained_lo80_m2',
  'stained_hi80_m2',
  'stained_lo95_m2',
  'stained_hi95_m2',
] as const;

/** A row of `ledger.csv`; an empty `block_id` gathers what lies in no block. */
export function ledgerRecord(row: LedgerRow): Readonly<Record<string, unknown>> {
  return { block_id: row.blockId, kind: row.kind, ...areaColumns(row), ...stainedColumns(row.stainedM2) };
}
