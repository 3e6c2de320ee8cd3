/** The plan in detail: by block, by week, what is left alone, what is forbidden, what more would buy. */
import { actionName, describeConstraint, describeReason, treatmentCautions } from '@crownfall/survey';
import { areaNumber, areaText, areaUnit, dayText, grouped, percentText, rangeNumbers } from '../../quantities.ts';
import type { NoPlan, PlannedBlock } from '../any-plan.ts';
import type { Column, Part, Run, Table } from '../content.ts';
import { totalStained } from '../figures.ts';
import {
  leftOf,
  moneyText,
  PLAN_FILE,
  PLAN_TABLE,
  PLAN_WORDS,
  type PlanReading,
  planAvoids,
  planAvoidsRange,
  planCost,
  planHours,
  takenAvoids,
  takenCost,
  takenFirm,
  takenHours,
  takenRange,
  takenWork,
  workOf,
} from '../plan-reading.ts';
import type { Reading } from '../reading.ts';
import { bansOf } from './plan-bans.ts';
import { blockName } from './ranking-section.ts';

/** Rows of the longer tables; the plan's own files hold all of them. */
const MOST_ROWS = 60;
const MOST_NAMED = 14;
const MOST_WORTH = 10;

export function planSection(reading: PlanReading): readonly Part[] {
  const { planWords, plan } = reading;
  const work = workOf(plan);
  const left = leftOf(plan).filter(({ leave }) => leave.stainedM2.value > 0);
  return [
    { part: 'heading', level: 2, text: planWords.title, newPage: true },
    { part: 'paragraph', text: summaryRun(reading) },
    ...(work.length === 0 ? [] : [blockTable(reading, work), weekTable(reading, work)]),
    ...(left.length === 0 ? [] : [leftHeading(reading), leftTable(reading, left)].flat()),
    ...forbiddenParts(reading),
    ...buysParts(reading),
    ...districtParts(reading),
    ...worthParts(reading),
  ];
}

function summaryRun(reading: PlanReading): Run {
  const { planWords, plan, units, assessment } = reading;
  const { summary } = planWords;
  const { budget, crewHoursPerWeek } = plan.limits;
  const range = planAvoidsRange(plan, units);
  return [
    summary.costs,
    planCost(plan),
    budget === null ? summary.noBudget : summary.budget(moneyText(budget, plan.currency)),
    summary.hours,
    planHours(plan),
    summary.hoursEnd(crewHoursPerWeek === null ? null : grouped(crewHoursPerWeek)),
    summary.avoids,
    planAvoids(plan, units),
    ...(range === null ? [summary.ofNoRange] : [summary.range, range, summary.of]),
    totalStained(assessment, units),
    summary.end,
    plan.proof.gap <= PROVED ? summary.proved : summary.gap(percentText(plan.proof.gap)),
  ];
}

/** A gap of rounding is none. */
const PROVED = 1e-9;

const right = (title: string, weight: number): Column => ({ title, align: 'right', weight });
const leftColumn = (title: string, weight: number): Column => ({ title, align: 'left', weight });

function blockTable(reading: PlanReading, work: readonly PlannedBlock[]): Table {
  const { planWords, words, units, plan, language } = reading;
  const { columns } = planWords;
  const drawn = plan.draws > 0;
  const unit = areaUnit(units);
  const only = <Each>(one: Each): readonly Each[] => (drawn ? [one] : []);
  const rows = work
    .slice(0, MOST_ROWS)
    .map((block): readonly Run[] => [
      [String(block.rank)],
      [blockName(block)],
      [actionName(block.action, language)],
      [takenWork(block, reading)],
      [takenAvoids(block, units)],
      ...only<Run>([takenRange(block, units) ?? '–']),
      [takenCost(block)],
      [takenHours(block)],
      ...only<Run>([takenFirm(block) ?? '–']),
    ]);
  return {
    part: 'table',
    caption: planWords.byBlock,
    columns: [
      right(words.columns.rank, 0.75),
      leftColumn(words.columns.block, 2.8),
      leftColumn(columns.action, 1.9),
      leftColumn(columns.what, 1.5),
      right(`${columns.avoids}, ${unit}`, 1),
      ...only(right(`${words.range80}, ${unit}`, 1.3)),
      right(`${columns.cost}, ${plan.currency}`, 1),
      right(columns.hours, 1.1),
      ...only(right(columns.firm, 0.8)),
    ],
    rows,
    note: [drawn ? planWords.firmNote(grouped(plan.draws)) : planWords.noFirmNote],
  };
}

function weekTable(reading: PlanReading, work: readonly PlannedBlock[]): Table {
  const { planWords, plan, language } = reading;
  const weeks = [...new Set(work.map(({ week }) => week ?? 0))].sort((a, b) => a - b);
  return {
    part: 'table',
    caption: planWords.byWeek,
    columns: [
      leftColumn(planWords.weekColumn, 2),
      leftColumn(planWords.work, 6),
      right(planWords.columns.hours, 1),
      right(`${planWords.columns.cost}, ${plan.currency}`, 1.1),
    ],
    rows: weeks.map((week) => {
      const own = work.filter((block) => (block.week ?? 0) === week);
      const sum = (of: 'cost' | 'crewHours') => own.reduce((total, { taken }) => total + (taken[of] ?? 0), 0);
      const row = own.map(({ blockId }) => blockId);
      const figure = (text: string, column: string): Run => [
        { figure: text, from: [{ file: PLAN_TABLE, row, column }] },
      ];
      return [
        [own[0].weekOf === null ? '–' : planWords.week(week, dayText(own[0].weekOf, language))],
        [own.map((block) => `${block.blockId} ${actionName(block.action, language)}`).join('; ')],
        figure(grouped(sum('crewHours'), 1), 'crew_hours'),
        figure(grouped(sum('cost')), 'cost'),
      ];
    }),
  };
}

function leftHeading({ planWords }: PlanReading): readonly Part[] {
  return [
    { part: 'heading', level: 3, text: planWords.left },
    { part: 'paragraph', text: [planWords.leftIntro] },
  ];
}

function leftTable(reading: PlanReading, left: readonly PlannedBlock[]): Table {
  const { planWords, words, units, language } = reading;
  const { leftColumns } = planWords;
  const unit = areaUnit(units);
  const number = (value: number, row: string, column: string): Run => [
    {
      figure: areaNumber(value, units),
      from: [{ file: column === 'left_alone_m2' ? PLAN_TABLE : PLAN_FILE, row, column }],
    },
  ];
  return {
    part: 'table',
    caption: planWords.left,
    captionHidden: true,
    columns: [
      right(words.columns.rank, 0.6),
      leftColumn(words.columns.block, 4),
      right(`${leftColumns.now}, ${unit}`, 1.3),
      right(`${leftColumns.later(dayText(left[0].leave.onDay, language))}, ${unit}`, 2),
      leftColumn(leftColumns.leaves, 2),
    ],
    rows: left
      .slice(0, MOST_ROWS)
      .map((block) => [
        [String(block.rank)],
        [blockName(block)],
        number(block.leave.stainedM2.value, block.blockId, 'left_alone_m2'),
        number(block.leave.fadedM2, block.blockId, 'leave.faded_m2'),
        [block.leave.refoliatedBy === null ? '–' : dayText(block.leave.refoliatedBy, language)],
      ]),
  };
}

/** Each reason once, with the actions and blocks it forbids; those that concern most blocks first. */
function forbiddenParts({ planWords, plan, language }: PlanReading): readonly Part[] {
  const { forbiddenColumns: columns } = planWords;
  const bans = bansOf(plan);
  if (bans.length === 0) return [];
  return [
    { part: 'heading', level: 3, text: planWords.forbidden },
    {
      part: 'table',
      caption: planWords.forbidden,
      captionHidden: true,
      columns: [
        leftColumn(columns.action, 1.6),
        leftColumn(columns.why, 3),
        right(columns.count, 0.8),
        leftColumn(columns.blocks, 2.2),
        leftColumn(columns.remedy, 3),
      ],
      rows: bans.slice(0, MOST_ROWS).map(({ actions, reason, blocks }) => {
        const said = describeReason(reason, language);
        return [
          [actions.map((action) => actionName(action, language)).join('; ')],
          [said.what],
          [grouped(blocks.length)],
          [blocks.length > MOST_NAMED ? `${blocks.slice(0, MOST_NAMED).join(', ')} …` : blocks.join(', ')],
          [said.remedy],
        ];
      }),
    },
  ];
}

function buysParts({ planWords, plan, units }: PlanReading): readonly Part[] {
  if (plan.frontier.length < 2) return [];
  const { buysColumns: columns } = planWords;
  const cell = (text: string, budget: number, column: string): Run => [
    { figure: text, from: [{ file: PLAN_FILE, row: String(budget), column: `frontier.${column}` }] },
  ];
  return [
    {
      part: 'table',
      caption: planWords.buys,
      columns: [
        right(`${columns.budget}, ${plan.currency}`, 1),
        right(`${columns.cost}, ${plan.currency}`, 1),
        right(`${columns.avoids}, ${areaUnit(units)}`, 1),
        right(columns.gap, 1),
      ],
      rows: plan.frontier.map(({ budget, cost, avoidedM2, gap }) => [
        [grouped(budget)],
        cell(grouped(cost), budget, 'cost'),
        cell(areaNumber(avoidedM2, units), budget, 'avoided_m2'),
        [gap <= PROVED ? '–' : percentText(gap)],
      ]),
    },
  ];
}

function districtParts({ planWords, words, plan, units }: PlanReading): readonly Part[] {
  if (plan.districts.length === 0) return [];
  const { districtColumns: columns } = planWords;
  const unit = areaUnit(units);
  const cell = (text: string, row: string, column: string): Run => [
    { figure: text, from: [{ file: PLAN_FILE, row, column: `districts.${column}` }] },
  ];
  const rangeCell = (text: string, row: string): Run => [
    {
      figure: text,
      from: [0, 1].map((end) => ({ file: PLAN_FILE, row, column: `districts.avoidedRange80M2.${end}` })),
    },
  ];
  return [
    {
      part: 'table',
      caption: planWords.districts,
      columns: [
        leftColumn(columns.name, 3),
        right(`${columns.stained}, ${unit}`, 1),
        right(`${columns.avoids}, ${unit}`, 1),
        ...(plan.draws > 0 ? [right(`${words.range80}, ${unit}`, 1.2)] : []),
        right(`${columns.cost}, ${plan.currency}`, 1),
        right(columns.blocks, 1),
      ],
      rows: plan.districts.map(({ name, stainedM2, avoidedM2, avoidedRange80M2: range, cost, blocks }) => [
        [name],
        cell(areaNumber(stainedM2, units), name, 'stainedM2'),
        cell(areaNumber(avoidedM2, units), name, 'avoidedM2'),
        ...(range === null ? [] : [rangeCell(rangeNumbers(range, units), name)]),
        cell(grouped(cost), name, 'cost'),
        [grouped(blocks)],
      ]),
    },
  ];
}

function worthParts({ planWords, plan, units }: PlanReading): readonly Part[] {
  const worth = plan.worthRating.filter(({ valueM2 }) => valueM2 > 0).slice(0, MOST_WORTH);
  if (worth.length === 0) return [];
  const { worthColumns: columns } = planWords;
  return [
    {
      part: 'table',
      caption: planWords.worth,
      columns: [leftColumn(columns.tree, 2), leftColumn(columns.block, 2), right(columns.value, 2)],
      rows: worth.map(({ treeId, blockId, valueM2 }) => [
        [treeId],
        [blockId],
        [
          {
            figure: areaText(valueM2, units),
            from: [{ file: PLAN_FILE, row: treeId, column: 'worth_rating.value_m2' }],
          },
        ],
      ]),
    },
  ];
}

/** Why there is no plan: the smallest set of limits that cannot be met together. */
export function noPlanSection({ language }: Reading, { clash, currency }: NoPlan): readonly Part[] {
  const planWords = PLAN_WORDS[language];
  return [
    { part: 'heading', level: 2, text: planWords.none, newPage: true },
    { part: 'paragraph', text: [planWords.clash] },
    { part: 'list', items: clash.map((constraint) => [describeConstraint(constraint, currency, language)]) },
    { part: 'notice', title: planWords.cautions, lines: treatmentCautions(language).map((line) => [line]) },
  ];
}
