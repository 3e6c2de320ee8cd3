/** The planner's second bench: what to do this season, under money, crew and bloom. */
import { treatmentCautions } from '@crownfall/survey';
import { useEffect } from 'react';
import { hideWater, lastOutcome, plan, showWater } from '../session/planning.ts';
import { useApp, useSession } from '../session/session.ts';
import { BloomCalendar } from './bloom-calendar.tsx';
import { PlanConditions } from './plan-conditions.tsx';
import { PlanLimits } from './plan-limits.tsx';
import { NoPlanMade, PlanMade } from './plan-outcome.tsx';
import { usePlanWords } from './use-plan-words.ts';

export function PlanBench() {
  const session = useSession();
  const can = useApp((state) => state.editing.can);
  const project = useApp((state) => state.project);
  const planning = useApp((state) => state.planning);
  const blockId = useApp((state) => state.blockId);
  const outcome = lastOutcome(planning);
  const words = usePlanWords();
  // biome-ignore lint/correctness/useExhaustiveDependencies: figures that changed ask for a new plan
  useEffect(() => {
    if (can === 'yes') void plan(session);
  }, [can, project, session]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another block or another plan asks for its surroundings
  useEffect(() => void showWater(session), [blockId, planning, session]);
  useEffect(() => () => hideWater(session), [session]);
  return (
    <>
      <Cautions />
      <PlanLimits />
      <PlanConditions />
      {can === 'no' ? <p className="editing-state">{words.noFiles}</p> : null}
      {planning.state === 'soon' || (can === 'soon' && planning.state === 'none') ? (
        <p className={outcome ? 'editing-state over-plan' : 'editing-state'} role="status">
          {words.soon}
        </p>
      ) : null}
      {planning.state === 'failed' ? (
        <p className="editing-state" role="alert">
          {words.failed(planning.why)}
        </p>
      ) : null}
      {outcome ? (
        <>
          {outcome.plan.feasible ? <PlanMade plan={outcome.plan} /> : <NoPlanMade plan={outcome.plan} />}
          {outcome.notRead.map((why) => (
            <p key={why} className="editing-state" role="alert">
              {words.notRead(why)}
            </p>
          ))}
          <BloomCalendar calendar={outcome.calendar} />
        </>
      ) : null}
    </>
  );
}

function Cautions() {
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  return (
    <section className="cautions" aria-labelledby="cautions-title">
      <h2 id="cautions-title">{words.cautions}</h2>
      <ul>
        {treatmentCautions(language).map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}
