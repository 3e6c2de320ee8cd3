/** Crowns as results, and who stains which block. */
import { crownFiguresAt, unranged } from '@crownfall/stain';
import type { Ground } from '../ground/ground.ts';
import type { BlameRow, TreeResult } from '../result.ts';
import type { Stain } from '../stain-stage.ts';
import type { Stages } from './stages.ts';
import { withRanges } from './with-ranges.ts';

/** One result for each crown on the ground, in the order of the crowns layer. */
export function treeResults({ ground, stain, drawn }: Pick<Stages, 'ground' | 'stain' | 'drawn'>): TreeResult[] {
  return ground.crowns.map(({ tree, crownM2, spreadM, block, geometry }, zone): TreeResult => {
    const severity = stain.severities[zone];
    return {
      // Of a tree of which nothing is known no range can be drawn.
      ...withRanges(
        crownFiguresAt(stain.ledgers.crowns, zone),
        severity.from === 'none' ? undefined : drawn?.ofCrown(zone),
      ),
      treeId: tree.treeId,
      host: tree.host ?? null,
      blockId: block < 0 ? null : ground.blocks[block].blockId,
      at: tree.at,
      crownM2,
      spreadM,
      severityPct: severity.from === 'none' ? null : 100 * severity.share,
      severityFrom: severity.from,
      cause: severity.cause,
      dose: stain.ledgers.field.dose[zone],
      geometry,
      extra: tree.extra,
    };
  });
}

/** Attribution by block, blocks in the order given, those outside last; within a block the greatest first, then by id. */
export function blameRows(ground: Ground, { ledgers: { blame } }: Stain, blockOrder: readonly number[]): BlameRow[] {
  const place = new Int32Array(ground.blocks.length + 1);
  blockOrder.forEach((block, position) => {
    place[block] = position;
  });
  place[ground.blocks.length] = blockOrder.length;
  const placeOf = (row: number) => place[blame.block[row] < 0 ? ground.blocks.length : blame.block[row]];
  const idOf = (row: number) => ground.crowns[blame.zone[row]].tree.treeId;
  return [...blame.zone.keys()]
    .sort((a, b) => placeOf(a) - placeOf(b) || blame.stainedM2[b] - blame.stainedM2[a] || (idOf(a) < idOf(b) ? -1 : 1))
    .map((row) => ({
      blockId: blame.block[row] < 0 ? null : ground.blocks[blame.block[row]].blockId,
      treeId: idOf(row),
      stainedM2: unranged(blame.stainedM2[row]),
    }));
}
