/** What would change plan and order: one more rating, another weight. */
import { type WeightShift, type WorkPlan, weightShiftToChangeTop } from '@crownfall/priority';
import { Button } from 'react-aria-components';
import { area, percent } from '../language/quantities.ts';
import { chooseTree } from '../session/drawing.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import type { AppState } from '../state/app-state.ts';
import { rankedBlocks } from '../state/derived-state.ts';
import { derived } from '../state/store.ts';
import { usePlanWords } from './use-plan-words.ts';

const TREES_SHOWN = 5;

export function WhatCouldChange({ plan }: { readonly plan: WorkPlan }) {
  const words = usePlanWords();
  return (
    <section className="what-could-change" aria-labelledby="change-title">
      <h2 id="change-title">{words.couldChange}</h2>
      <WorthRating plan={plan} />
      <WeightShifts />
    </section>
  );
}

function WorthRating({ plan: { worthRating, draws } }: { readonly plan: WorkPlan }) {
  const session = useSession();
  const units = useUnits();
  const words = usePlanWords();
  if (draws === 0) return null;
  return (
    <>
      <h3>{words.worth}</h3>
      {worthRating.length === 0 ? <p className="lead">{words.worthNone}</p> : <p className="lead">{words.worthLead}</p>}
      <ol className="worth">
        {worthRating.slice(0, TREES_SHOWN).map(({ treeId, blockId, valueM2 }) => (
          <li key={treeId}>
            <Button className="button quiet" onPress={() => void chooseTree(session, treeId)}>
              {treeId}
            </Button>{' '}
            {blockId} · {area(valueM2, units)}
          </li>
        ))}
      </ol>
    </>
  );
}

const shifts = derived(
  (state: AppState) => [rankedBlocks(state), state.project?.run.settings.priority.top_n ?? 1] as const,
  (ranked, places): readonly WeightShift[] => weightShiftToChangeTop(ranked, places),
);

function WeightShifts() {
  const rows = useApp(shifts);
  const places = useApp((state) => state.project?.run.settings.priority.top_n ?? 1);
  const words = usePlanWords();
  const { criteria } = useWords();
  return (
    <>
      <h3>{words.weights(places)}</h3>
      <table className="figures-table">
        <thead>
          <tr>
            <td />
            <th scope="col">{words.weightNow}</th>
            <th scope="col">{words.weightBelow}</th>
            <th scope="col">{words.weightAbove}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ criterion, weight, down, up }) => (
            <tr key={criterion}>
              <th scope="row">{criteria[criterion]}</th>
              <td>{percent(weight)}</td>
              <td>{crossing(down)}</td>
              <td>{crossing(up)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );

  function crossing(at: WeightShift['down']) {
    if (at === null) return '–';
    return (
      <>
        {percent(at.weight)}
        <small>{words.comesIn(at.rival)}</small>
      </>
    );
  }
}
