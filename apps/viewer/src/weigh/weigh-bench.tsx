/** The planner's bench: weights, scenarios, filters and the ranking that follows from them. */
import { Charts } from './charts.tsx';
import { Exports } from './exports.tsx';
import { Filters } from './filters.tsx';
import { Ranking } from './ranking.tsx';
import { Scenarios } from './scenarios.tsx';
import { WeightsEditor } from './weights-editor.tsx';

export function WeighBench() {
  return (
    <>
      <WeightsEditor />
      <Scenarios />
      <Exports />
      <div className="button-row charts-row">
        <Charts />
      </div>
      <Filters />
      <Ranking />
    </>
  );
}
