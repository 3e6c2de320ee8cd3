/** The season's plan in words. */
import type { NoPlan, PlannedBlock, WorkPlan } from '@crownfall/priority';
import type { Ranged } from '@crownfall/stain';
import {
  actionName,
  describeConstraint,
  describeReason,
  rotationReminders,
  treatmentCautions,
} from '@crownfall/survey';
import { type Column, layOut } from '../terminal/table.ts';
import { areaText, grouped, percentText } from './quantities.ts';

const WIDTH = 140;
const TREES_SHOWN = 8;

const COLUMNS: readonly Column[] = [
  { title: 'rank', align: 'right' },
  { title: 'block', align: 'left' },
  { title: 'do', align: 'left' },
  { title: 'avoids m²', align: 'right' },
  { title: '80 % range', align: 'right' },
  { title: 'cost', align: 'right' },
  { title: 'crew h', align: 'right' },
  { title: 'week of', align: 'left' },
  { title: 'firm', align: 'right' },
];

export function planReport(plan: WorkPlan, { rows, out }: { readonly rows: number; readonly out?: string }): string {
  const acted = plan.blocks.filter(({ action }) => action !== 'leave');
  const shown = [...acted, ...plan.blocks.filter(({ action }) => action === 'leave')].slice(0, rows);
  const more = plan.blocks.length - shown.length;
  return [
    `${plan.title} – plan for ${plan.limits.weeks} weeks from ${plan.asOf}`,
    '',
    ...mainSentences(plan),
    '',
    ...layOut(COLUMNS, shown.map(row), WIDTH),
    ...(more > 0
      ? [`… and ${more} more blocks; --rows ${plan.blocks.length} prints them, --out DIR writes them all`]
      : []),
    '',
    ...furtherLines(plan),
    ...(out === undefined ? [] : ['', `Written to ${out}: plan.csv, plan.json, plan.geojson, notices.csv.`]),
  ].join('\n');
}

function mainSentences(plan: WorkPlan): string[] {
  const { avoidedM2, stainedM2, units, cost, currency, limits, crewHours, settings } = plan;
  const budget = limits.budget === null ? '' : ` of ${money(limits.budget, currency)}`;
  const days = crewHours / settings.crew_hours_per_day;
  const crew =
    limits.crewHoursPerWeek === null
      ? ''
      : ` of ${grouped((limits.crewHoursPerWeek * limits.weeks) / settings.crew_hours_per_day, 0)}`;
  return [
    `Avoids ${areaText(avoidedM2.value, units)}${rangeText(avoidedM2)} of ${areaText(stainedM2.value, units)} of pavement expected to show stain.`,
    `Spends ${money(cost, currency)}${budget} and ${grouped(days, 1)}${crew} crew days.`,
    proofSentence(plan),
    ...plan.next.map((unit) => nextSentence(unit, currency)),
    ...(plan.calibrated ? [] : ['Uncalibrated: compare plans; do not quote single figures.']),
  ];
}

function proofSentence({ proof: { gap, greedyM2, avoidedM2 } }: WorkPlan): string {
  const best =
    gap <= 1e-6
      ? 'No plan within these limits avoids more (proved).'
      : `At most ${percentText(gap)} more could be found.`;
  const gain = greedyM2 === null ? 0 : avoidedM2 - greedyM2;
  return gain > 0.05 ? `${best} Taking the best ratio first would avoid ${grouped(gain, 1)} m² less.` : best;
}

function nextSentence({ of, step, avoidedM2 }: WorkPlan['next'][number], currency: string): string {
  const unit = of === 'money' ? `${money(step, currency)} more` : `${step} more crew day each week`;
  return `${unit} would avoid ${avoidedM2 < 0.05 ? 'nothing more' : `${grouped(avoidedM2, 1)} m² more`}.`;
}

function row(block: PlannedBlock): string[] {
  const { taken, keeps, action, rank, weekOf } = block;
  const { range80 } = taken.avoidedM2;
  const left = action === 'leave';
  return [
    String(rank),
    block.name === null ? block.blockId : `${block.blockId} ${block.name}`,
    `${actionName(action, 'en')}${block.mustDo ? ' (must do)' : ''}`,
    left ? '–' : grouped(taken.avoidedM2.value, 1),
    left || range80 === null ? '–' : `${grouped(range80[0], 0)}–${grouped(range80[1], 0)}`,
    left ? '–' : grouped(taken.cost ?? 0, 0),
    left ? '–' : grouped(taken.crewHours ?? 0, 1),
    weekOf ?? '–',
    keeps === null ? '–' : percentText(keeps),
  ];
}

/** Why treatment in bloom is not offered, block by block gathered under the reason; the facts of one block are in --block. */
function reasonLines({ blocks }: WorkPlan): string[] {
  const groups = new Map<string, { readonly what: string; readonly blocks: string[] }>();
  for (const { blockId, offers } of blocks) {
    for (const { code, facts } of offers.find(({ action }) => action === 'treat')?.forbidden ?? []) {
      const shared = Object.fromEntries(Object.entries(facts).filter(([name]) => name !== 'seen_on'));
      const single = code === 'water-near' || code === 'bees-seen' ? facts : shared;
      const { what } = describeReason({ code, facts: single }, 'en');
      const group = groups.get(what);
      if (group) group.blocks.push(blockId);
      else groups.set(what, { what, blocks: [blockId] });
    }
  }
  const lines = [...groups.values()].sort((a, b) => b.blocks.length - a.blocks.length);
  const offered = blocks.filter(({ offers }) =>
    offers.some((each) => each.action === 'treat' && each.forbidden.length === 0),
  );
  return [
    `Treatment in bloom may be done in ${offered.length} blocks${offered.length === 0 ? '' : `: ${offered.map(({ blockId }) => blockId).join(', ')}`}. Not elsewhere, for these reasons (--block ID tells all of one block):`,
    ...lines.map(({ what, blocks: ids }) => `  ${what}: ${ids.join(', ')}`),
  ];
}

function furtherLines(plan: WorkPlan): string[] {
  const { districts, worthRating, rotation, notices, treated, currency } = plan;
  return [
    'Budget against stain avoided: ' +
      plan.frontier.map((point) => `${grouped(point.budget, 0)} → ${grouped(point.avoidedM2, 0)} m²`).join(', ') +
      ` (${currency}).`,
    ...districts.map(
      (each) =>
        `District ${each.name}: ${each.blocks} blocks, ${money(each.cost, currency)}, ${grouped(each.avoidedM2, 1)} m²${rangeText({ range80: each.avoidedRange80M2 })} of ${grouped(each.stainedM2, 1)} m².`,
    ),
    leaveSentence(plan),
    ...reasonLines(plan),
    ...(worthRating.length === 0
      ? []
      : [
          `Worth rating first: ${worthRating
            .slice(0, TREES_SHOWN)
            .map((tree) => `${tree.treeId} (${tree.blockId}, ${grouped(tree.valueM2, 1)} m²)`)
            .join(', ')}.`,
        ]),
    ...(treated.length === 0
      ? []
      : [`Trees to treat: ${treated.length}; distances to water are in plan.json and with --block.`]),
    ...rotationReminders(rotation, 'en').map((note) => `Rotation: ${note}`),
    ...(notices.length === 0
      ? []
      : [`Notices: ${notices.length} addresses within ${plan.settings.notice_m} m of treated crowns.`]),
    ...treatmentCautions('en'),
  ];
}

function leaveSentence({ blocks, settings, limits }: WorkPlan): string {
  const left = blocks.filter(({ action }) => action === 'leave');
  const sum = (of: (block: PlannedBlock) => number) => left.reduce((total, block) => total + of(block), 0);
  return (
    `Left alone: ${left.length} blocks with ${grouped(
      sum(({ leave }) => leave.stainedM2.value),
      0,
    )} m². Their crowns refoliate, within about ` +
    `${grouped(settings.refoliate_days, 0)} days by your setting; of the stain ${grouped(
      sum(({ leave }) => leave.fadedM2),
      0,
    )} m² would still show ` +
    `in ${limits.weeks} weeks if nothing more falls (half fades in ${grouped(settings.fade_half_life_days, 0)} days by your setting).`
  );
}

/** Why there is no plan. */
export function clashReport({ title, clash, currency, asOf }: NoPlan): string {
  return [
    `${title} – no plan from ${asOf}`,
    '',
    clash.length === 1
      ? 'This cannot be met:'
      : 'These cannot be met together; without any one of them there would be a plan:',
    ...clash.map((constraint) => `  ${describeConstraint(constraint, currency, 'en')}`),
    '',
    'See with --json why actions are not offered in a block, or change the limits.',
  ].join('\n');
}

/** `12,000 USD`. */
export function money(amount: number, currency: string): string {
  return `${grouped(amount, 0)} ${currency}`;
}

/** ` (80 % range 401–1,092 m²)`; nothing without draws. */
export function rangeText({ range80 }: Pick<Ranged, 'range80'>): string {
  return range80 === null ? '' : ` (80 % range ${grouped(range80[0], 0)}–${grouped(range80[1], 0)} m²)`;
}
