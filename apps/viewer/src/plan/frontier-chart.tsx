/** How much stain each budget could avoid: the best plan for each. */
import type { WorkPlan } from '@crownfall/priority';
import { scatterChart } from '@crownfall/sheets';
import { area, areaNumber, areaUnit } from '../language/quantities.ts';
import { useUnits } from '../session/session.ts';
import { Chart } from '../shell/chart.tsx';
import { money } from './amounts.ts';
import { usePlanWords } from './use-plan-words.ts';

export function FrontierChart({ plan }: { readonly plan: WorkPlan }) {
  const units = useUnits();
  const words = usePlanWords();
  if (plan.frontier.length < 2) return null;
  const unit = (areaM2: number): number => Number(areaNumber(areaM2, units).replaceAll(',', ''));
  const points = plan.frontier.map(({ cost, avoidedM2 }) => ({ x: cost, y: unit(avoidedM2) }));
  const svg = scatterChart({
    title: words.frontier,
    description: words.frontierAbout(points.length),
    across: `${words.cost}, ${plan.currency}`,
    up: `${words.avoidedShort}, ${areaUnit(units)}`,
    points,
    lines: [{ points: points.map(({ x, y }) => [x, y]) }],
    within: { from: 0 },
  });
  const rows = plan.frontier.map(({ cost, avoidedM2 }) => [money(cost, plan.currency), area(avoidedM2, units)]);
  return <Chart svg={svg} title={words.frontier} heads={[words.cost, words.avoidedShort]} rows={rows} />;
}
