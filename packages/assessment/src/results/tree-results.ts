/** Crowns as results, and who stains which block. */
import { crownFiguresAt, unranged } from '@crownfall/stain';
import type { TreeSeverity } from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { BlameRow, TreeResult } from '../result.ts';
import type { Stain } from '../stain-stage.ts';
import { Earlier } from './kept.ts';
import type { Stages } from './stages.ts';
import { withRanges } from './with-ranges.ts';

type Told = Pick<Stages, 'ground' | 'stain' | 'drawn'>;

/** One result for each crown on the ground, in the order of the crowns layer; those as they were `before` are the same objects. */
export function treeResults(stages: Told, before: readonly TreeResult[] = []): TreeResult[] {
  const earlier = new Earlier(before, ({ treeId }) => treeId);
  return stages.ground.crowns.map(({ tree }, zone) => {
    const known = earlier.find(tree.treeId, zone);
    return known && isAsBefore(known, stages, zone) ? known : treeResult(stages, zone);
  });
}

function treeResult({ ground, stain, drawn }: Told, zone: number): TreeResult {
  const { tree, crownM2, spreadM, geometry } = ground.crowns[zone];
  const severity = stain.severities[zone];
  const { driplineM2, falloutM2, stainedM2 } = withRanges(
    crownFiguresAt(stain.ledgers.crowns, zone),
    // Of a tree of which nothing is known no range can be drawn.
    severity.from === 'none' ? undefined : drawn?.ofCrown(zone),
  );
  return {
    driplineM2,
    falloutM2,
    stainedM2,
    treeId: tree.treeId,
    host: tree.host ?? null,
    blockId: blockOf(ground, zone),
    at: tree.at,
    crownM2,
    spreadM,
    severityPct: severityPct(severity),
    severityFrom: severity.from,
    cause: severity.cause,
    dose: stain.ledgers.field.dose[zone],
    geometry,
    extra: tree.extra,
  };
}

/** A record read anew has a place, an outline and further fields of its own. */
function isAsBefore(known: TreeResult, { ground, stain, drawn }: Told, zone: number): boolean {
  const { tree, geometry } = ground.crowns[zone];
  const { crowns, field } = stain.ledgers;
  const severity = stain.severities[zone];
  return (
    drawn === undefined &&
    known.at === tree.at &&
    known.extra === tree.extra &&
    known.geometry === geometry &&
    known.host === (tree.host ?? null) &&
    known.blockId === blockOf(ground, zone) &&
    known.severityPct === severityPct(severity) &&
    known.severityFrom === severity.from &&
    known.cause === severity.cause &&
    known.dose === field.dose[zone] &&
    known.driplineM2 === crowns.driplineM2[zone] &&
    known.falloutM2 === crowns.falloutM2[zone] &&
    known.stainedM2.value === crowns.stainedM2[zone]
  );
}

const blockOf = ({ crowns, blocks }: Ground, zone: number): string | null =>
  crowns[zone].block < 0 ? null : blocks[crowns[zone].block].blockId;

const severityPct = ({ from, share }: TreeSeverity): number | null => (from === 'none' ? null : 100 * share);

/** Attribution by block, blocks in the order given, those outside last; within a block the greatest first, then by id. */
export function blameRows({ blocks, crowns }: Ground, { ledgers: { blame } }: Stain, blockOrder: readonly number[]) {
  const start = firstRows(blame.block, blocks.length);
  const idOf = (row: number) => crowns[blame.zone[row]].tree.treeId;
  const rows: BlameRow[] = [];
  for (const block of [...blockOrder, blocks.length]) {
    const blockId = block < blocks.length ? blocks[block].blockId : null;
    const own = Array.from({ length: start[block + 1] - start[block] }, (_, i) => start[block] + i);
    own.sort((a, b) => blame.stainedM2[b] - blame.stainedM2[a] || (idOf(a) < idOf(b) ? -1 : 1));
    for (const row of own) rows.push({ blockId, treeId: idOf(row), stainedM2: unranged(blame.stainedM2[row]) });
  }
  return rows;
}

/** Where the rows of each block begin; rows ascend by block, those outside come last. */
function firstRows(block: Int32Array, blockCount: number): Int32Array {
  const start = new Int32Array(blockCount + 2);
  for (const each of block) start[(each < 0 ? blockCount : each) + 1]++;
  for (let b = 0; b <= blockCount; b++) start[b + 1] += start[b];
  return start;
}
