/** The plan of ratings in words, as JSON, as a chart and as one page. */
import type { RatingPlan, TotalRanges } from '@crownfall/assessment';
import { scatterChart } from '@crownfall/sheets';
import { reasonInWords } from '@crownfall/statistics';
import { type Column, layOut } from '../terminal/table.ts';
import { grouped } from './quantities.ts';
import { plain } from './raters-report.ts';
import { summaryPage } from './summary-page.ts';

const WIDTH = 120;
const TREES_SHOWN = 15;

const COLUMNS: readonly Column[] = [
  { title: 'order', align: 'right' },
  { title: 'tree', align: 'left' },
  { title: 'block', align: 'left' },
  { title: 'host', align: 'left' },
];

export function sampleReport(plan: RatingPlan, out: string | undefined): string {
  const { list } = plan;
  const shown = list.slice(0, TREES_SHOWN);
  const where = out === undefined ? 'use --out DIR for the whole list' : `all in ${out}/sample.csv`;
  return [
    `${plan.title} – what to rate next – as of ${plan.asOf}`,
    '',
    ...sentences(plan),
    ...(shown.length === 0 ? [] : ['', ...layOut(COLUMNS, shown.map(row), WIDTH)]),
    ...(list.length > shown.length ? [`… and ${list.length - shown.length} more; ${where}`] : []),
  ].join('\n');
}

/** What is known now, what to do, what it brings. */
function sentences(plan: RatingPlan): string[] {
  const { trees, rated, halfWidthNow, halfWidthAfterwards, list, strata, seed } = plan;
  const assumed = strata.filter(({ from }) => from === 'assumed').reduce((sum, one) => sum + one.trees, 0);
  const now = halfWidthNow.defined
    ? `the town's mean severity is known to ±${points(halfWidthNow.value)} points (95 %)`
    : `how well the town's mean severity is known cannot be told, as ${reasonInWords(halfWidthNow.reason)}`;
  return [
    `${grouped(rated, 0)} of ${grouped(trees, 0)} trees are rated; ${now}, raters' biases aside: those do not shrink with more trees.`,
    doWhat(plan),
    ...(list.length > 0 && halfWidthAfterwards.defined
      ? [`Then it would be known to ±${points(halfWidthAfterwards.value)} points.`]
      : []),
    ...totalSentences(plan),
    ...(assumed > 0
      ? [`Nobody rated enough trees to tell how much severities vary; a scatter of 25 points is assumed.`]
      : []),
    ...(list.length > 0
      ? [`The trees were drawn at random with seed ${seed}: rate these, not easier ones beside them.`]
      : []),
  ];
}

function doWhat({ goal, list, halfWidthAfterwards, trees, rated }: RatingPlan): string {
  if (!halfWidthAfterwards.defined)
    return `No number of trees can be given, as ${reasonInWords(halfWidthAfterwards.reason)}.`;
  if (list.length > 0) {
    const blocks = new Set(list.map(({ blockId }) => blockId)).size;
    return `Rate ${list.length} more ${list.length === 1 ? 'tree' : 'trees'} in ${blocks} ${blocks === 1 ? 'block' : 'blocks'}.`;
  }
  if (rated === trees) return 'Every tree is rated.';
  return 'halfWidth' in goal
    ? `No more trees are needed to know it to ±${points(goal.halfWidth)} points; ask for more with --within, or give a number with --trees.`
    : 'No tree is left that would add to what is known.';
}

function totalSentences({ total }: RatingPlan): string[] {
  if (total === null) return [];
  const { before, after } = total;
  const width = ({ range80 }: TotalRanges['all']) => (range80 === null ? 0 : range80[1] - range80[0]);
  const gain = 1 - width(after.all) / width(before.all);
  const limit = width(before.givenCoefficient) < 0.5 * width(before.all);
  return [
    `The 80 % range of the town's stained area would go from ${rangeText(before.all)} to about ${rangeText(after.all)} m² ` +
      `(${shrinks(gain)}); were the dose coefficient known, from ${rangeText(before.givenCoefficient)} to ${rangeText(after.givenCoefficient)} m².`,
    ...(limit
      ? ['Most of the range comes from the dose coefficient: measuring quadrats would do more than rating trees.']
      : []),
  ];
}

function shrinks(gain: number): string {
  return gain > 0.005 ? `${grouped(100 * gain, 0)} % narrower` : 'no narrower';
}

function rangeText({ range80 }: TotalRanges['all']): string {
  return range80 === null ? 'unknown' : `${grouped(range80[0], 0)}–${grouped(range80[1], 0)}`;
}

function row({ treeId, blockId, host }: RatingPlan['list'][number], i: number): string[] {
  return [String(i + 1), treeId, blockId ?? 'in no block', host ?? 'host not stated'];
}

const points = (share: number): string => grouped(100 * share, share < 0.0995 ? 2 : 1);

/** Precision against further trees, as SVG text. */
export function sampleChart({ title, curve, list, halfWidthAfterwards, asOf }: RatingPlan): string {
  const line = curve.map(({ trees, halfWidth }) => [trees, 100 * halfWidth] as const);
  const plan =
    list.length > 0 && halfWidthAfterwards.defined
      ? [{ x: list.length, y: 100 * halfWidthAfterwards.value, label: 'this plan' }]
      : [];
  return scatterChart({
    title: 'What more ratings would tell',
    description: `Half the 95 % interval of the mean severity against the number of further trees rated in ${title}.`,
    note: `${title}, as of ${asOf}. The dot is this plan. Biases of raters are not in it: they do not shrink.`,
    across: 'further trees rated',
    up: 'mean severity known to ±, points',
    points: plan,
    lines: line.length > 0 ? [{ points: line }] : [],
    within: { from: 0 },
  });
}

/** One page for whoever sends people out. */
export function samplePage(plan: RatingPlan): string {
  return summaryPage({
    title: `What to rate next: ${plan.title}`,
    about: `As of ${plan.asOf}`,
    sentences: sentences(plan),
    charts: [{ caption: 'The curve flattens: the first trees tell most.', svg: sampleChart(plan) }],
    table: { columns: ['order', 'tree', 'block', 'host'], rows: plan.list.map(row) },
    cautions: [
      'Severity here is the share of the crown affected, counted where a staining cause is present.',
      'The range after rating is one imagined future, in which each listed tree turns out like a random rated one of its host.',
    ],
  });
}

/** The plan for machines; shares 0–1, areas m². */
export function sampleJson(plan: RatingPlan): unknown {
  const ranges = ({ all, givenCoefficient }: TotalRanges) => ({
    stained_m2: all.value,
    range80_m2: all.range80,
    range95_m2: all.range95,
    range80_given_coefficient_m2: givenCoefficient.range80,
    range95_given_coefficient_m2: givenCoefficient.range95,
  });
  return {
    title: plan.title,
    as_of: plan.asOf,
    goal: 'trees' in plan.goal ? { trees: plan.goal.trees } : { half_width: plan.goal.halfWidth },
    seed: plan.seed,
    trees: plan.trees,
    rated: plan.rated,
    half_width_now: plain(plan.halfWidthNow),
    half_width_after: plain(plan.halfWidthAfterwards),
    strata: plan.strata.map(({ host, blockId, trees, rated, add, standardDeviation, from }) => ({
      host,
      block_id: blockId,
      trees,
      rated,
      add,
      standard_deviation: standardDeviation,
      standard_deviation_from: from,
    })),
    list: plan.list.map(({ treeId, host, blockId, at }, i) => ({
      order: i + 1,
      tree_id: treeId,
      host,
      block_id: blockId,
      lon: at.lon,
      lat: at.lat,
    })),
    total: plan.total && { before: ranges(plan.total.before), after: ranges(plan.total.after) },
  };
}
