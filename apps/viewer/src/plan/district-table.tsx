/** What each district gets of the plan. */
import type { WorkPlan } from '@crownfall/priority';
import { area, grouped } from '../language/quantities.ts';
import { useUnits } from '../session/session.ts';
import { money, rangeText } from './amounts.ts';
import { usePlanWords } from './use-plan-words.ts';

export function DistrictTable({ plan: { districts, currency } }: { readonly plan: WorkPlan }) {
  const units = useUnits();
  const words = usePlanWords();
  if (districts.length === 0) return null;
  return (
    <>
      <h3>{words.districts}</h3>
      <table className="figures-table">
        <thead>
          <tr>
            <td />
            <th scope="col">{words.stainedHead}</th>
            <th scope="col">{words.effect}</th>
            <th scope="col">{words.cost}</th>
            <th scope="col">{words.blocksHead}</th>
          </tr>
        </thead>
        <tbody>
          {districts.map(({ name, stainedM2, avoidedM2, avoidedRange80M2, cost, blocks }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{area(stainedM2, units)}</td>
              <td>
                {area(avoidedM2, units)}
                <small>{rangeText(avoidedRange80M2, units)}</small>
              </td>
              <td>{money(cost, currency)}</td>
              <td>{grouped(blocks, 0)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
