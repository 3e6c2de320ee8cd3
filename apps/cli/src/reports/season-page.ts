/** The follow-up of a season as charts and as one page for a council. */
import type { SeasonReview } from '@crownfall/assessment';
import { intervalChart, pointMap } from '@crownfall/sheets';
import { type Language, treatmentCautions } from '@crownfall/survey';
import { grouped, percentText } from './quantities.ts';
import { blockLabel, efficacyLines, mainSentences, whyNot } from './season-report.ts';
import { METHOD_NAMES, SEASON_WORDS } from './season-words.ts';
import { summaryPage } from './summary-page.ts';

const BLOCKS_DRAWN = 16;

interface SeasonChart {
  readonly name: string;
  readonly caption: string;
  readonly svg: string;
}

/** Change by block, efficacy (when trees were treated), hot spots (when they can be told). */
export function seasonCharts(review: SeasonReview, language: Language): SeasonChart[] {
  return [changeChart(review, language), ...efficacyChart(review, language), ...spotMap(review, language)];
}

function changeChart({ title, before, after, blocks }: SeasonReview, language: Language): SeasonChart {
  const words = SEASON_WORDS[language];
  const { blocksChart: chart } = words;
  const drawn = [...blocks]
    .sort((a, b) => Math.abs(b.changeM2.value) - Math.abs(a.changeM2.value))
    .slice(0, BLOCKS_DRAWN)
    .sort((a, b) => a.changeM2.value - b.changeM2.value);
  const svg = intervalChart({
    title: chart.title,
    description: chart.about(drawn.length, title, before, after),
    note: chart.note(title, before, after),
    across: chart.across,
    anchor: 0,
    rows: drawn.map((block) => ({
      label: blockLabel(block, words),
      value: block.stainedAfterM2,
      before: block.stainedBeforeM2,
    })),
  });
  return { name: 'season-blocks.svg', caption: chart.caption, svg };
}

function efficacyChart({ title, efficacy }: SeasonReview, language: Language): SeasonChart[] {
  if (efficacy === null) return [];
  const { efficacyChart: chart } = SEASON_WORDS[language];
  const svg = intervalChart({
    title: chart.title,
    description: chart.about(efficacy.treated.trees, efficacy.untreated.trees),
    note: chart.note(title),
    across: chart.across,
    anchor: 0,
    rows: efficacy.rows.map((one) =>
      'because' in one
        ? { label: METHOD_NAMES[one.method], value: null, instead: whyNot(one.because, language) }
        : {
            label: METHOD_NAMES[one.method],
            value: 100 * one.result.estimate,
            outer: [100 * one.result.interval.lower, 100 * one.result.interval.upper] as const,
          },
    ),
  });
  return [{ name: 'season-efficacy.svg', caption: chart.caption, svg }];
}

function spotMap({ title, after, spots, reachM }: SeasonReview, language: Language): SeasonChart[] {
  if (!spots.defined) return [];
  const { spotMap: map } = SEASON_WORDS[language];
  const svg = pointMap({
    title: map.title,
    description: map.about(title, after),
    note: map.note(title, after, grouped(reachM, 0)),
    points: spots.value.map(({ treeId, x, y, severity, spot }) => ({
      x,
      y,
      spot: spot.spot,
      label: `${treeId}: ${percentText(severity)}`,
    })),
    words: map.words,
  });
  return [{ name: 'season-spots.svg', caption: map.caption, svg }];
}

/** One page a council member can read. */
export function seasonPage(review: SeasonReview, language: Language): string {
  const { title, before, after, efficacy, calibrated, draws } = review;
  const words = SEASON_WORDS[language];
  const { page } = words;
  return summaryPage({
    language,
    title: page.title(title),
    about: page.about(before, after),
    sentences: [
      ...mainSentences(review, 'metric', language),
      ...(efficacy === null ? [] : efficacyLines(review, language).map((line) => line.trim())),
    ],
    charts: seasonCharts(review, language),
    table: {
      columns: page.columns,
      rows: review.blocks.map((block) => [
        blockLabel(block, words),
        grouped(block.stainedBeforeM2, 1),
        grouped(block.stainedAfterM2, 1),
        grouped(block.changeM2.value, 1),
      ]),
    },
    cautions: [
      calibrated ? page.calibrated : page.uncalibrated,
      page.sameGround,
      ...(draws > 0 ? [page.draws(grouped(draws, 0))] : []),
      page.noLot,
      ...(efficacy === null ? [] : treatmentCautions(language)),
    ],
  });
}
