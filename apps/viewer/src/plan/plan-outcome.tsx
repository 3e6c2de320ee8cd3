/** The plan that was made: what it brings, for how much, how sure; what more would buy; block by block. */
import type { NoPlan, WorkPlan } from '@crownfall/priority';
import { describeConstraint } from '@crownfall/survey';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { area, grouped, percent } from '../language/quantities.ts';
import { useApp, useUnits } from '../session/session.ts';
import { money, rangeText } from './amounts.ts';
import { BeforeTreating } from './before-treating.tsx';
import { MustDo } from './block-wishes.tsx';
import { DistrictTable } from './district-table.tsx';
import { FrontierChart } from './frontier-chart.tsx';
import { PlanExports } from './plan-exports.tsx';
import { PlannedRow } from './planned-row.tsx';
import { usePlanWords } from './use-plan-words.ts';
import { WhatCouldChange } from './what-could-change.tsx';

export function NoPlanMade({ plan }: { readonly plan: NoPlan }) {
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  return (
    <section className="plan-outcome" role="alert">
      <h2>{words.clash}</h2>
      <ul>
        {plan.clash.map((constraint) => {
          const text = describeConstraint(constraint, plan.currency, language);
          return (
            <li key={text}>
              {text}
              {constraint.kind === 'must-do' ? <MustDo blockId={constraint.blockId} /> : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** More are shown when asked for. */
const LEFT_ALONE_FIRST = 5;

export function PlanMade({ plan }: { readonly plan: WorkPlan }) {
  const units = useUnits();
  const words = usePlanWords();
  const [all, setAll] = useState(false);
  const done = plan.blocks.filter(({ action }) => action !== 'leave');
  const left = plan.blocks.filter(({ action }) => action === 'leave');
  return (
    <>
      <section className="plan-outcome" aria-labelledby="outcome-title">
        <h2 id="outcome-title">{words.outcome}</h2>
        <p className="total">
          <strong>{area(plan.avoidedM2.value, units)}</strong>
          {words.avoided(rangeText(plan.avoidedM2.range80, units), area(plan.stainedM2.value, units))}
        </p>
        <p>{words.costs(money(plan.cost, plan.currency), grouped(plan.crewHours, 1), done.length, left.length)}</p>
        <p className="lead">{plan.proof.gap === 0 ? words.proved : words.gap(percent(plan.proof.gap))}</p>
        {plan.calibrated ? null : <p className="caveat">{words.uncalibrated}</p>}
        <h3>{words.next}</h3>
        <ul>
          {plan.next.map(({ of, step, avoidedM2 }) => (
            <li key={of}>
              {words.nextUnit[of](
                of === 'money' ? money(step, plan.currency) : grouped(step, 0),
                avoidedM2 < 0.05 ? words.noMore : words.another(area(avoidedM2, units)),
              )}
            </li>
          ))}
        </ul>
        <FrontierChart plan={plan} />
        <DistrictTable plan={plan} />
        <PlanExports plan={plan} />
      </section>
      <BeforeTreating plan={plan} />
      <section className="planned" aria-labelledby="planned-title">
        <h2 id="planned-title">{words.blocks}</h2>
        {done.length === 0 ? <p className="lead">{words.nothingDone}</p> : null}
        <ol>
          {[...done, ...(all ? left : left.slice(0, LEFT_ALONE_FIRST))].map((block) => (
            <PlannedRow key={block.blockId} block={block} plan={plan} />
          ))}
        </ol>
        {!all && left.length > LEFT_ALONE_FIRST ? (
          <Button className="button" onPress={() => setAll(true)}>
            {words.moreLeft(left.length - LEFT_ALONE_FIRST)}
          </Button>
        ) : null}
      </section>
      <WhatCouldChange plan={plan} />
    </>
  );
}
