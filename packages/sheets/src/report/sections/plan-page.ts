/** What the first page says of the plan: what is done where and when, and what it leaves undone. */
import { actionName, describeReason, treatmentCautions } from '@crownfall/survey';
import { areaText, areaUnit, dayText, grouped, withDays } from '../../quantities.ts';
import type { PlannedBlock } from '../any-plan.ts';
import type { Inline, Notice, Part, Run, Table } from '../content.ts';
import {
  isTreated,
  leftOf,
  moneyText,
  PLAN_FILE,
  PLAN_TABLE,
  type PlanReading,
  planAvoids,
  planCost,
  planHours,
  takenAvoids,
  takenCost,
  takenRange,
  workOf,
} from '../plan-reading.ts';
import { blockName } from './ranking-section.ts';

/** What goes on after the lead: effect, cost, crew hours. */
export function planLead({ plan, planWords: { lead }, units }: PlanReading): Run {
  return [lead.before, planAvoids(plan, units), lead.of, planCost(plan), lead.hours, planHours(plan), lead.end];
}

export function planPage(reading: PlanReading, rows: number): readonly Part[] {
  const { planWords, plan, language } = reading;
  const work = workOf(plan);
  return [
    ...(work.length === 0 ? [] : [firstTable(reading, work, rows)]),
    { part: 'heading', level: 2, small: true, text: planWords.undoneTitle },
    { part: 'list', items: undoneLines(reading), tone: 'quiet' },
    ...(work.some(isTreated) ? [shortCaution(planWords.cautions, treatmentCautions(language))] : []),
  ];
}

/** All cautions in one paragraph: where treatment is named, they stand beside it. */
function shortCaution(title: string, cautions: readonly string[]): Notice {
  return { part: 'notice', title, lines: [[cautions.join(' ')]] };
}

function firstTable(reading: PlanReading, work: readonly PlannedBlock[], most: number): Table {
  const { planWords, words, units, plan, language } = reading;
  const { columns } = planWords;
  const unit = areaUnit(units);
  const drawn = plan.draws > 0;
  const shown = work.slice(0, most);
  const more = work.length - shown.length;
  const right = (title: string, weight: number) => ({ title, align: 'right', weight }) as const;
  const rows = shown.map((block): readonly Run[] => [
    [blockName(block)],
    [actionName(block.action, language)],
    [block.weekOf === null ? '–' : dayText(block.weekOf, language)],
    [takenAvoids(block, units)],
    ...(drawn ? [[takenRange(block, units) ?? '–']] : []),
    [takenCost(block)],
  ]);
  return {
    part: 'table',
    caption: planWords.firstTitle(plan.limits.weeks),
    columns: [
      { title: words.columns.block, align: 'left', weight: 4 },
      { title: columns.action, align: 'left', weight: 2.8 },
      { title: columns.week, align: 'left', weight: 2.1 },
      right(`${columns.avoids}, ${unit}`, 1.1),
      ...(drawn ? [right(`${words.range80}, ${unit}`, 1.4)] : []),
      right(`${columns.cost}, ${plan.currency}`, 1.1),
    ],
    rows,
    ...(more > 0 ? { note: [`… ${planWords.more(more)}.`] } : {}),
  };
}

/** Blocks left alone and their outlook, the foremost of them and why, what one more unit would bring. */
function undoneLines(reading: PlanReading): readonly Run[] {
  const { plan, planWords } = reading;
  const left = leftOf(plan).filter(({ leave }) => leave.stainedM2.value > 0);
  return [
    ...(left.length === 0 ? [] : [leftLine(reading, left), foremostLine(reading, left[0])]),
    ...plan.next.map(({ of, step, avoidedM2 }): Run => {
      const unit = of === 'money' ? moneyText(step, plan.currency) : planWords.undone.crewDay(grouped(step));
      if (avoidedM2 < LEAST_M2) return [planWords.undone.nothing(unit)];
      const figure = {
        figure: areaText(avoidedM2, reading.units),
        from: [{ file: PLAN_FILE, row: of, column: 'next.avoided_m2' }],
      };
      return [planWords.undone.next(unit), figure, planWords.undone.nextEnd];
    }),
  ];
}

/** Less than this shows as nothing, m². */
const LEAST_M2 = 0.05;

function leftLine({ planWords: { undone }, units, language }: PlanReading, left: readonly PlannedBlock[]): Run {
  const sum = (of: (block: PlannedBlock) => number) => left.reduce((area, block) => area + of(block), 0);
  const row = left.map(({ blockId }) => blockId);
  const figure = (value: number, column: string): Inline => ({
    figure: areaText(value, units),
    from: [{ file: column === 'left_alone_m2' ? PLAN_TABLE : PLAN_FILE, row, column }],
  });
  return [
    undone.blocks(left.length),
    figure(
      sum(({ leave }) => leave.stainedM2.value),
      'left_alone_m2',
    ),
    undone.stained,
    figure(
      sum(({ leave }) => leave.fadedM2),
      'leave.faded_m2',
    ),
    undone.fades,
    undone.after(dayText(left[0].leave.onDay, language)),
  ];
}

/** Why the foremost of the blocks left alone is left: what forbids its actions, or that others bring more. */
function foremostLine({ planWords: { undone }, language }: PlanReading, block: PlannedBlock): Run {
  const helping = block.offers.filter(({ action }) => action !== 'leave' && action !== 'inspect');
  const allowed = helping.some(({ forbidden }) => forbidden.length === 0);
  const name = undone.worst(blockName(block), block.rank);
  if (allowed) return [name, undone.notBought];
  const reasons = new Set(
    helping.flatMap(({ forbidden }) => forbidden.map((one) => withDays(describeReason(one, language).what, language))),
  );
  return [name, `${[...reasons].slice(0, 2).join('. ')}.`];
}
