/** Bloom observations: dated BBCH stages of a tree or a block. */
import type { RawLayer } from '../project-input.ts';
import type { BloomObservation, YesNoUnknown } from '../records.ts';
import type { KnownIds } from './known-ids.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { present } from './present-fields.ts';
import type { RowReader } from './row-reader.ts';

type Row = RowReader<'bloom'>;

/**
 * Reads the bloom observations. A row names a tree or a block; when both, it is of the tree. `blocks` is `undefined` when
 * the project has no block layer: block ids are then taken on trust.
 */
export function readBloom(
  layer: RawLayer | undefined,
  trees: KnownIds,
  blocks: KnownIds | undefined,
): LayerReading<BloomObservation> {
  return readLayer('bloom', layer, (row) => {
    const subject = subjectOf(row, trees, blocks);
    const observedOn = row.date('observed_on', 'needed');
    const bbch = row.number('bbch', 'needed');
    const larvaeInGalls = row.word<YesNoUnknown>('larvae_in_galls', 'unknown') ?? 'unknown';
    const beesAtFlowers = row.word<YesNoUnknown>('bees_at_flowers', 'unknown') ?? 'unknown';
    if (subject === undefined || observedOn === undefined || bbch === undefined) return undefined;
    return { ...subject, observedOn, bbch, larvaeInGalls, beesAtFlowers, extra: row.extra() };
  });
}

function subjectOf(row: Row, trees: KnownIds, blocks: KnownIds | undefined) {
  const treeId = row.text('tree_id');
  const blockId = treeId === undefined ? row.text('block_id') : undefined;
  if (treeId === undefined && blockId === undefined) {
    row.spoil('field-missing', {}, 'tree_id');
    return undefined;
  }
  checkKnown(row, 'tree_id', treeId, trees);
  checkKnown(row, 'block_id', blockId, blocks);
  return present({ treeId, blockId });
}

function checkKnown(row: Row, field: 'tree_id' | 'block_id', id: string | undefined, ids: KnownIds | undefined): void {
  if (id === undefined || ids === undefined || ids.has(id)) return;
  row.spoil('observation-of-unknown-place', { got: id, similar: ids.similar(id) }, field);
}
