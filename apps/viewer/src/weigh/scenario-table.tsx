/** The same blocks ranked by several weightings, side by side. */
import { useMemo } from 'react';
import type { Scenario, Weighing } from '../edits/edit.ts';
import type { BlockSummary, Project } from '../project/project.ts';
import { useApp, useWords } from '../session/session.ts';
import { blocksRanked, isSameWeighing, ownWeighing, weighing } from '../state/derived-state.ts';
import { points } from './criteria.ts';

/** Rows beyond this are in the exports. */
const ROWS_MOST = 200;

interface Column {
  readonly name: string;
  readonly blocks: ReadonlyMap<string, BlockSummary>;
}

export function ScenarioTable({ scenarios }: { readonly scenarios: readonly Scenario[] }) {
  const project = useApp((state) => state.project);
  const own = useApp(ownWeighing);
  const present = useApp(weighing);
  const words = useWords();
  const columns = useMemo((): readonly Column[] => {
    if (!project || !own || !present) return [];
    const saved = scenarios.map(({ name, weighing }) => column(name, project, weighing));
    const isNew = ![own, ...scenarios.map((each) => each.weighing)].some((each) => isSameWeighing(each, present));
    return [
      column(words.scenarios.own, project, own),
      ...saved,
      ...(isNew ? [column(words.scenarios.present, project, present)] : []),
    ];
  }, [project, own, present, scenarios, words]);
  const [first] = columns;
  if (!first) return null;
  const rows = [...first.blocks.values()].slice(0, ROWS_MOST);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section className="table-scroll" tabIndex={0} aria-label={words.scenarios.compare}>
      <table className="compare">
        <thead>
          <tr>
            <th scope="col">{words.scenarios.block}</th>
            {columns.map(({ name }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two scenarios may bear one name
              <th scope="col" key={i}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.blockId}>
              <th scope="row">{row.name ?? row.blockId}</th>
              {columns.map(({ name, blocks }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: as above
                <td key={i + name}>
                  <RankCell block={blocks.get(row.blockId)} against={i === 0 ? null : row} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function column(name: string, project: Project, weights: Weighing): Column {
  return { name, blocks: new Map(blocksRanked(project, weights).map((block) => [block.blockId, block])) };
}

interface CellProps {
  readonly block: BlockSummary | undefined;
  readonly against: BlockSummary | null;
}

function RankCell({ block, against }: CellProps) {
  const words = useWords();
  if (!block) return null;
  const up = against ? against.rank - block.rank : 0;
  return (
    <>
      <strong>{block.rank}</strong>
      {up === 0 ? null : (
        <span className="moved" data-up={up > 0 || undefined}>
          {up > 0 ? `▲${up}` : `▼${-up}`}
        </span>
      )}
      <small>
        {points(block.score)} <span className="spoken-only">{words.scenarios.points}</span>
      </small>
    </>
  );
}
