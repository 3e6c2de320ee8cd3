/** One block of the plan: what is done, when and why; opened, everything else that could be done and what forbids it. */
import type { ActionOffer, PlannedBlock, WorkPlan } from '@crownfall/priority';
import { actionName, describeReason } from '@crownfall/survey';
import { area, grouped, percent } from '../language/quantities.ts';
import { chooseBlock } from '../session/drawing.ts';
import { useApp, useSession, useUnits } from '../session/session.ts';
import { money, rangeText } from './amounts.ts';
import { MustDo, TodayCheck } from './block-wishes.tsx';
import { TreeWater } from './tree-water.tsx';
import { usePlanWords } from './use-plan-words.ts';

interface Props {
  readonly block: PlannedBlock;
  readonly plan: WorkPlan;
}

export function PlannedRow({ block, plan }: Props) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const units = useUnits();
  const words = usePlanWords();
  const { taken, weekOf, keeps, action } = block;
  return (
    <li className="planned-block" data-action={action}>
      <details
        onToggle={(event) => {
          if (event.currentTarget.open) chooseBlock(session, block.blockId);
        }}
      >
        <summary>
          <span className="planned-name">
            <small>{block.rank}</small> {block.name ?? block.blockId}
          </span>
          <span className="planned-action">{actionName(action, language)}</span>
          <span className="planned-facts">
            {action === 'leave'
              ? words.stained(area(block.leave.stainedM2.value, units))
              : [
                  words.avoids(area(taken.avoidedM2.value, units)),
                  taken.cost === null ? '' : money(taken.cost, plan.currency),
                  weekOf === null ? '' : words.weekOf(weekOf),
                ]
                  .filter((part) => part !== '')
                  .join(' · ')}
          </span>
        </summary>
        {keeps === null ? null : <p className="lead">{words.keeps(percent(keeps))}</p>}
        <table className="offers">
          <thead>
            <tr>
              <th scope="col">{words.action}</th>
              <th scope="col">{words.effect}</th>
              <th scope="col">{words.cost}</th>
              <th scope="col">{words.hours}</th>
            </tr>
          </thead>
          <tbody>
            {block.offers.map((offer) => (
              <OfferRow key={offer.action} offer={offer} isTaken={offer.action === action} currency={plan.currency} />
            ))}
          </tbody>
        </table>
        <p className="lead">
          {words.leave(area(block.leave.fadedM2, units), block.leave.onDay)}
          {block.leave.refoliatedBy === null ? '' : ` ${words.refoliated(block.leave.refoliatedBy)}`}
        </p>
        <TreeWater blockId={block.blockId} />
        <TodayCheck block={block} asOf={plan.asOf} />
        <MustDo blockId={block.blockId} />
      </details>
    </li>
  );
}

interface OfferProps {
  readonly offer: ActionOffer;
  readonly isTaken: boolean;
  readonly currency: string;
}

function OfferRow({ offer, isTaken, currency }: OfferProps) {
  const language = useApp((state) => state.preferences.language);
  const units = useUnits();
  const words = usePlanWords();
  const { avoidedM2, cost, crewHours, lastDay, forbidden } = offer;
  const takesStainOff = offer.action !== 'leave' && offer.action !== 'inspect';
  return (
    <>
      <tr data-taken={isTaken || undefined}>
        <th scope="row">
          {actionName(offer.action, language)}
          {isTaken ? <strong> {words.taken}</strong> : null}
          {lastDay === null ? null : <small> {words.lastDay(lastDay)}</small>}
        </th>
        <td>
          {takesStainOff ? area(avoidedM2.value, units) : '–'}
          {takesStainOff ? <small>{rangeText(avoidedM2.range80, units)}</small> : null}
        </td>
        <td>{cost === null ? '–' : money(cost, currency)}</td>
        <td>{crewHours === null ? '–' : grouped(crewHours, 1)}</td>
      </tr>
      {forbidden.length === 0 ? null : (
        <tr className="forbidden">
          <td colSpan={4}>
            <ul className="reasons" aria-label={words.forbids}>
              {forbidden.map((reason) => {
                const { what, remedy } = describeReason(reason, language);
                return (
                  <li key={what}>
                    {what}. <em>{remedy}</em>
                  </li>
                );
              })}
            </ul>
          </td>
        </tr>
      )}
    </>
  );
}
