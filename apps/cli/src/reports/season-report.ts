/** The follow-up of a season in words and as JSON. */
import type {
  BlockChange,
  Efficacy,
  EfficacyMethod,
  EfficacyRow,
  NoEfficacy,
  SeasonReview,
} from '@crownfall/assessment';
import { reasonInWords, type UndefinedReason } from '@crownfall/statistics';
import { type Column, layOut } from '../terminal/table.ts';
import { areaText, grouped, percentText } from './quantities.ts';
import { plain } from './raters-report.ts';

const WIDTH = 140;
const BLOCKS_SHOWN = 12;

export const METHOD_NAMES: Readonly<Record<EfficacyMethod, string>> = {
  'henderson-tilton': 'Henderson–Tilton',
  abbott: 'Abbott',
  'sun-shepard': 'Sun–Shepard',
  'schneider-orelli': 'Schneider-Orelli',
};

const OWN_REASONS: Readonly<Partial<Record<NoEfficacy, string>>> = {
  'no-treated': 'no treated tree was rated on both days',
  'no-untreated': 'no untreated tree was rated on both days',
  'unlike-before': 'the groups were unlike before the treatment, which this formula does not allow for',
  'untreated-grew': 'severity rose in the untreated group, and this formula needs a decline',
  'treated-grew': 'severity rose in the treated group, and this formula needs a decline',
};

/** Why a formula gives nothing, in words. */
export function whyNot(because: NoEfficacy): string {
  return OWN_REASONS[because] ?? reasonInWords(because as UndefinedReason);
}

export function seasonReport(review: SeasonReview, units: 'metric' | 'us'): string {
  const { blocks } = review;
  const shown = [...blocks]
    .sort((a, b) => Math.abs(b.changeM2.value) - Math.abs(a.changeM2.value))
    .slice(0, BLOCKS_SHOWN);
  return [
    `${review.title} – ${review.before} to ${review.after}`,
    '',
    ...mainSentences(review, units),
    '',
    ...layOut(
      columns(review),
      shown.map((block) => row(block)),
      WIDTH,
    ),
    ...(blocks.length > shown.length ? [`… and ${blocks.length - shown.length} more blocks that changed less`] : []),
    '',
    ...efficacyLines(review),
  ].join('\n');
}

/** What changed in all, how sure that is, and where severe crowns gather. */
export function mainSentences(review: SeasonReview, units: 'metric' | 'us'): string[] {
  const { total, spots, treesFollowed, calibrated } = review;
  const way = total.changeM2.value < 0 ? 'fell' : 'rose';
  const first =
    `Pavement expected to show stain ${way} from ${areaText(total.stainedBeforeM2, units)} to ` +
    `${areaText(total.stainedAfterM2, units)}${changeRange(total)}.`;
  return [
    first,
    severitySentence(total, treesFollowed),
    spotSentence(spots, review.reachM),
    ...(calibrated ? [] : ['Uncalibrated: compare the days and the blocks; do not quote single figures.']),
  ];
}

function changeRange({ changeM2: { range80 } }: BlockChange): string {
  if (range80 === null) return '';
  const sure = range80[0] > 0 || range80[1] < 0 ? '' : ', so the direction is not sure';
  return ` (80 % range of the change ${signed(range80[0])} to ${signed(range80[1])} m²${sure})`;
}

function severitySentence({ severityBefore, severityAfter }: BlockChange, trees: number): string {
  if (severityBefore === null || severityAfter === null)
    return 'No tree was rated on both days, so crowns cannot be compared one by one.';
  return `On ${grouped(trees, 0)} trees rated on both days the mean severity with a staining cause went from ${percentText(severityBefore)} to ${percentText(severityAfter)}.`;
}

function spotSentence(spots: SeasonReview['spots'], reachM: number): string {
  if (!spots.defined) return `Hot spots cannot be told, as ${reasonInWords(spots.reason)}.`;
  const count = (which: 'hot' | 'cold') => spots.value.filter(({ spot }) => spot.spot === which).length;
  const [hot, cold] = [count('hot'), count('cold')];
  if (hot + cold === 0)
    return `Severe crowns gather nowhere more than chance would have it (neighbours within ${grouped(reachM, 0)} m).`;
  return `${hot} trees stand where severe crowns gather, ${cold} where sound ones do (neighbours within ${grouped(reachM, 0)} m, at most 5 % of them by chance).`;
}

function columns({ draws }: SeasonReview): Column[] {
  return [
    { title: 'block', align: 'left' },
    { title: 'stained before, m²', align: 'right' },
    { title: 'after', align: 'right' },
    { title: 'change', align: 'right' },
    ...(draws > 0 ? [{ title: '80 % range', align: 'right' } as const] : []),
    { title: 'trees followed', align: 'right' },
    { title: 'severity before → after', align: 'right' },
  ];
}

function row(block: BlockChange): string[] {
  const { changeM2, severityBefore, severityAfter } = block;
  const severities =
    severityBefore === null || severityAfter === null
      ? '–'
      : `${percentText(severityBefore)} → ${percentText(severityAfter)}`;
  return [
    blockLabel(block),
    grouped(block.stainedBeforeM2, 1),
    grouped(block.stainedAfterM2, 1),
    signed(changeM2.value),
    ...(changeM2.range80 === null ? [] : [`${signed(changeM2.range80[0])} to ${signed(changeM2.range80[1])}`]),
    String(block.treesFollowed),
    severities,
  ];
}

/** A block by its id and name. */
export function blockLabel({ blockId, name }: Pick<BlockChange, 'blockId' | 'name'>): string {
  if (blockId === null) return 'in no block';
  return name === null ? blockId : `${blockId} ${name}`;
}

/** The efficacies, one line each, after what they compare. */
export function efficacyLines({ efficacy, notFollowed }: SeasonReview): string[] {
  if (efficacy === null) return ['No trees were given as treated (--treated FILE.csv), so no efficacy is reckoned.'];
  return [
    ...groupLines(efficacy),
    ...efficacy.rows.map((one) => `  ${METHOD_NAMES[one.method]}: ${resultText(one)}`),
    `  Intervals over resampled ${efficacy.resampled}.`,
    ...(notFollowed.length > 0 ? [`  Not rated on both days, so left out: ${notFollowed.join(', ')}.`] : []),
  ];
}

function groupLines({ treated, untreated }: Efficacy): string[] {
  return (
    [
      ['Treated', treated],
      ['Untreated', untreated],
    ] as const
  ).map(
    ([label, means]) =>
      `${label}: ${means.trees} trees, severity ${percentText(means.before)} → ${percentText(means.after)}, ` +
      `affected ${percentText(means.affectedBefore)} → ${percentText(means.affectedAfter)}.`,
  );
}

function resultText(one: EfficacyRow): string {
  if ('because' in one) return `not given: ${whyNot(one.because)}.`;
  const { estimate, interval } = one.result;
  const sure = interval.lower > 0 ? '' : ', so no effect is proved';
  return `${pct(estimate)} less than untreated (95 % interval ${pct(interval.lower)} to ${pct(interval.upper)}${sure}).`;
}

const pct = (share: number): string => `${grouped(100 * share, 0)} %`;
const signed = (value: number): string => `${value > 0 ? '+' : ''}${grouped(value, 1)}`;

/** The review for machines; what is undefined says why. */
export function seasonJson(review: SeasonReview): unknown {
  const change = (block: BlockChange) => ({
    block_id: block.blockId,
    name: block.name,
    stained_before_m2: block.stainedBeforeM2,
    stained_after_m2: block.stainedAfterM2,
    change_m2: block.changeM2.value,
    change_range80_m2: block.changeM2.range80,
    change_range95_m2: block.changeM2.range95,
    trees_followed: block.treesFollowed,
    severity_before: block.severityBefore,
    severity_after: block.severityAfter,
  });
  const { efficacy, spots } = review;
  return {
    title: review.title,
    before: review.before,
    after: review.after,
    calibrated: review.calibrated,
    draws: review.draws,
    seed: review.seed,
    total: change(review.total),
    blocks: review.blocks.map(change),
    efficacy: efficacy && {
      treated: efficacy.treated,
      untreated: efficacy.untreated,
      resampled: efficacy.resampled,
      methods: efficacy.rows.map((one) =>
        'because' in one
          ? { method: one.method, undefined_because: one.because, in_words: whyNot(one.because) }
          : {
              method: one.method,
              efficacy: one.result.estimate,
              interval: [one.result.interval.lower, one.result.interval.upper],
              confidence: one.result.interval.confidence,
            },
      ),
    },
    not_followed: review.notFollowed,
    spots: spots.defined
      ? spots.value.map(({ treeId, severity, neighbours, spot }) => ({
          tree_id: treeId,
          severity,
          neighbours,
          z: plain(spot.z),
          p_value: spot.pValue,
          adjusted_p_value: spot.adjustedPValue,
          spot: spot.spot,
        }))
      : { undefined_because: spots.reason },
  };
}
