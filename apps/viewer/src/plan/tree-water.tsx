/** How far water, drains and wells lie from each tree of a block that a treatment could be meant for; drawn on the map too. */
import type { BlockWater, WaterLine } from '@crownfall/assessment';
import { length } from '../language/quantities.ts';
import { useApp, useUnits } from '../session/session.ts';
import { usePlanWords } from './use-plan-words.ts';

const KINDS = ['water', 'drain', 'well'] as const;

export function TreeWater({ blockId }: { readonly blockId: string }) {
  const water = useApp((state) => state.blockWater);
  const words = usePlanWords();
  if (water?.blockId !== blockId || water.trees.length === 0) return null;
  const kinds = KINDS.filter((kind) => water.trees[0].lines.some((line) => line.kind === kind));
  if (kinds.length === 0) return null;
  return (
    <table className="figures-table tree-water">
      <caption>{words.waterCaption}</caption>
      <thead>
        <tr>
          <th scope="col">{words.tree}</th>
          {kinds.map((kind) => (
            <th key={kind} scope="col">
              {words.waterKinds[kind]}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {water.trees.map((tree) => (
          <TreeRow key={tree.treeId} tree={tree} kinds={kinds} />
        ))}
      </tbody>
    </table>
  );
}

interface RowProps {
  readonly tree: BlockWater['trees'][number];
  readonly kinds: readonly WaterLine['kind'][];
}

function TreeRow({ tree: { treeId, lines }, kinds }: RowProps) {
  const units = useUnits();
  const words = usePlanWords();
  return (
    <tr>
      <th scope="row">{treeId}</th>
      {kinds.map((kind) => {
        const line = lines.find((each) => each.kind === kind);
        const near = line !== undefined && line.keepOffM !== null && line.distanceM < line.keepOffM;
        return (
          <td key={kind} data-near={near || undefined}>
            {line ? length(line.distanceM, units) : '–'}
            {near ? <small>{words.keep(length(line.keepOffM ?? 0, units))}</small> : null}
          </td>
        );
      })}
    </tr>
  );
}
