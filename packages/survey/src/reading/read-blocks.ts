/** Blocks: areas with an id; several rows of one id are parts of one block. */
import type { Finding } from '@crownfall/geometry';
import { finding } from '../findings/finding-codes.ts';
import type { RawLayer } from '../project-input.ts';
import type { Block } from '../records.ts';
import { geometryHash } from './geometry-hash.ts';
import type { LayerReading } from './layer-reader.ts';
import { readLayer } from './layer-reader.ts';
import { hasGeometry } from './positions.ts';
import { present } from './present-fields.ts';

/**
 * Reads the blocks. Rows that share a block_id are joined into one block (the same outline twice counts once); a row
 * without an id is named after its outline.
 */
export function readBlocks(layer: RawLayer | undefined): LayerReading<Block> {
  const seen = new Set<string>();
  const reading = readLayer('blocks', layer, (row): Block | undefined => {
    if (!hasGeometry(row, ['area']) || row.feature.geometry.kind !== 'area') return undefined;
    const shape = geometryHash(row.feature.geometry);
    const given = row.text('block_id');
    if (given === undefined) row.tally('id-made-up', 'note/assumed', {}, 'block_id');
    const blockId = given ?? `block-${shape}`;
    if (seen.has(`${blockId} ${shape}`)) {
      row.spoil('feature-repeated', {}, 'block_id');
      return undefined;
    }
    seen.add(`${blockId} ${shape}`);
    const { polygons } = row.feature.geometry;
    return { blockId, ...present({ name: row.text('name') }), polygons, extra: row.extra() };
  });
  return joined(reading, layer?.file);
}

function joined(reading: LayerReading<Block>, file: string | undefined): LayerReading<Block> {
  const blocks = new Map<string, Block>();
  const parts = new Map<string, number>();
  for (const block of reading.records) {
    const known = blocks.get(block.blockId);
    const whole = known === undefined ? block : { ...known, polygons: [...known.polygons, ...block.polygons] };
    blocks.set(block.blockId, whole);
    parts.set(block.blockId, (parts.get(block.blockId) ?? 0) + 1);
  }
  const findings: Finding[] = [...reading.findings];
  for (const [blockId, count] of parts) {
    if (count === 1) continue;
    const where = { layer: 'blocks', ...present({ file }), feature: blockId, field: 'block_id' };
    findings.push(finding('block-parts-joined', 'note/mended', where, { parts: count }));
  }
  return { records: [...blocks.values()], findings };
}
