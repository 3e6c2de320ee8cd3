/** The follow-up of a season in words and as JSON. */
import type { BlockChange, Efficacy, EfficacyRow, NoEfficacy, SeasonReview } from '@crownfall/assessment';
import type { UndefinedReason } from '@crownfall/statistics';
import { type Language, treatmentCautions } from '@crownfall/survey';
import { type Column, layOut } from '../terminal/table.ts';
import { areaText, grouped, percentText } from './quantities.ts';
import { plain } from './raters-report.ts';
import { undefinedWords } from './reason-words.ts';
import { METHOD_NAMES, SEASON_WORDS, type SeasonWords } from './season-words.ts';

const WIDTH = 140;
const BLOCKS_SHOWN = 12;

/** Why a formula gives nothing, in words. */
export function whyNot(because: NoEfficacy, language: Language): string {
  return SEASON_WORDS[language].whyNot[because] ?? undefinedWords(because as UndefinedReason, language);
}

export function seasonReport(review: SeasonReview, units: 'metric' | 'us', language: Language): string {
  const { blocks } = review;
  const words = SEASON_WORDS[language];
  const shown = [...blocks]
    .sort((a, b) => Math.abs(b.changeM2.value) - Math.abs(a.changeM2.value))
    .slice(0, BLOCKS_SHOWN);
  return [
    words.title(review.title, review.before, review.after),
    '',
    ...mainSentences(review, units, language),
    '',
    ...layOut(
      columns(review, words),
      shown.map((block) => row(block, words)),
      WIDTH,
    ),
    ...(blocks.length > shown.length ? [words.more(blocks.length - shown.length)] : []),
    '',
    ...efficacyLines(review, language),
    ...(review.efficacy === null ? [] : ['', ...treatmentCautions(language)]),
  ].join('\n');
}

/** What changed in all, how sure that is, and where severe crowns gather. */
export function mainSentences(review: SeasonReview, units: 'metric' | 'us', language: Language): string[] {
  const { total, spots, treesFollowed, calibrated } = review;
  const words = SEASON_WORDS[language];
  const [before, after] = [areaText(total.stainedBeforeM2, units), areaText(total.stainedAfterM2, units)];
  return [
    words.stained(total.changeM2.value < 0, before, after, changeRange(total, words)),
    severitySentence(total, treesFollowed, words),
    spotSentence(spots, review.reachM, language),
    ...(calibrated ? [] : [words.uncalibrated]),
  ];
}

function changeRange({ changeM2: { range80 } }: BlockChange, words: SeasonWords): string {
  if (range80 === null) return '';
  return words.range(signed(range80[0]), signed(range80[1]), range80[0] > 0 || range80[1] < 0);
}

function severitySentence({ severityBefore, severityAfter }: BlockChange, trees: number, words: SeasonWords): string {
  if (severityBefore === null || severityAfter === null) return words.noSeverity;
  return words.severity(grouped(trees, 0), percentText(severityBefore), percentText(severityAfter));
}

function spotSentence(spots: SeasonReview['spots'], reachM: number, language: Language): string {
  const words = SEASON_WORDS[language];
  if (!spots.defined) return words.spotsUntold(undefinedWords(spots.reason, language));
  const count = (which: 'hot' | 'cold') => spots.value.filter(({ spot }) => spot.spot === which).length;
  const [hot, cold] = [count('hot'), count('cold')];
  return hot + cold === 0 ? words.spotsNone(grouped(reachM, 0)) : words.spots(hot, cold, grouped(reachM, 0));
}

function columns({ draws }: SeasonReview, { columns: titles }: SeasonWords): Column[] {
  return [
    { title: titles.block, align: 'left' },
    { title: titles.before, align: 'right' },
    { title: titles.after, align: 'right' },
    { title: titles.change, align: 'right' },
    ...(draws > 0 ? [{ title: titles.range, align: 'right' } as const] : []),
    { title: titles.trees, align: 'right' },
    { title: titles.severity, align: 'right' },
  ];
}

function row(block: BlockChange, words: SeasonWords): string[] {
  const { changeM2, severityBefore, severityAfter } = block;
  const severities =
    severityBefore === null || severityAfter === null
      ? '–'
      : `${percentText(severityBefore)} → ${percentText(severityAfter)}`;
  return [
    blockLabel(block, words),
    grouped(block.stainedBeforeM2, 1),
    grouped(block.stainedAfterM2, 1),
    signed(changeM2.value),
    ...(changeM2.range80 === null ? [] : [`${signed(changeM2.range80[0])} ${words.to} ${signed(changeM2.range80[1])}`]),
    String(block.treesFollowed),
    severities,
  ];
}

/** A block by its id and name. */
export function blockLabel({ blockId, name }: Pick<BlockChange, 'blockId' | 'name'>, words: SeasonWords): string {
  if (blockId === null) return words.noBlock;
  return name === null ? blockId : `${blockId} ${name}`;
}

/** The efficacies, one line each, after what they compare. */
export function efficacyLines({ efficacy, notFollowed }: SeasonReview, language: Language): string[] {
  const words = SEASON_WORDS[language];
  if (efficacy === null) return [words.noTreated];
  const { resampled, rows } = efficacy;
  return [
    ...groupLines(efficacy, words),
    ...rows.map((one) => `  ${METHOD_NAMES[one.method]}: ${resultText(one, language)}`),
    `  ${words.resampled(words.resampledOf[resampled])}`,
    ...(notFollowed.length > 0 ? [`  ${words.notFollowed(notFollowed.join(', '))}`] : []),
  ];
}

function groupLines({ treated, untreated }: Efficacy, words: SeasonWords): string[] {
  const line = (label: string, means: Efficacy['treated']): string =>
    words.group(
      label,
      means.trees,
      `${percentText(means.before)} → ${percentText(means.after)}`,
      `${percentText(means.affectedBefore)} → ${percentText(means.affectedAfter)}`,
    );
  return [line(words.treated, treated), line(words.untreated, untreated)];
}

function resultText(one: EfficacyRow, language: Language): string {
  const words = SEASON_WORDS[language];
  if ('because' in one) return words.notGiven(whyNot(one.because, language));
  const { estimate, interval } = one.result;
  return words.efficacy(pct(estimate), pct(interval.lower), pct(interval.upper), interval.lower > 0);
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
          ? { method: one.method, undefined_because: one.because, in_words: whyNot(one.because, 'en') }
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
