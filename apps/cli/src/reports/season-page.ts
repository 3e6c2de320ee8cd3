/** The follow-up of a season as charts and as one page for a council. */
import type { SeasonReview } from '@crownfall/assessment';
import { intervalChart, pointMap } from '@crownfall/sheets';
import { grouped, percentText } from './quantities.ts';
import { blockLabel, efficacyLines, METHOD_NAMES, mainSentences, whyNot } from './season-report.ts';
import { summaryPage } from './summary-page.ts';

const BLOCKS_DRAWN = 16;

/** Change by block, efficacy (when trees were treated), hot spots (when they can be told). */
export function seasonCharts(
  review: SeasonReview,
): { readonly name: string; readonly caption: string; readonly svg: string }[] {
  return [changeChart(review), ...efficacyChart(review), ...spotMap(review)];
}

function changeChart({ title, before, after, blocks }: SeasonReview) {
  const drawn = [...blocks]
    .sort((a, b) => Math.abs(b.changeM2.value) - Math.abs(a.changeM2.value))
    .slice(0, BLOCKS_DRAWN)
    .sort((a, b) => a.changeM2.value - b.changeM2.value);
  const svg = intervalChart({
    title: 'Stained pavement by block, before and after',
    description: `${drawn.length} blocks of ${title} that changed most; hollow ${before}, filled ${after}.`,
    note: `${title}. Hollow: ${before}; filled: ${after}. Blocks that changed most.`,
    across: 'pavement expected to show stain, m²',
    anchor: 0,
    rows: drawn.map((block) => ({
      label: blockLabel(block),
      value: block.stainedAfterM2,
      before: block.stainedBeforeM2,
    })),
  });
  return {
    name: 'season-blocks.svg',
    caption: 'Blocks that changed most: the hollow dot is before, the filled one after.',
    svg,
  };
}

function efficacyChart({ title, efficacy }: SeasonReview) {
  if (efficacy === null) return [];
  const svg = intervalChart({
    title: 'How much less severe than untreated',
    description: `Efficacy by four formulas with 95 % intervals, ${efficacy.treated.trees} treated and ${efficacy.untreated.trees} untreated trees.`,
    note: `${title}. Bars: 95 % of resamples. 0: no effect; 100 %: nothing left.`,
    across: 'efficacy, %',
    anchor: 0,
    rows: efficacy.rows.map((one) =>
      'because' in one
        ? { label: METHOD_NAMES[one.method], value: null, instead: whyNot(one.because) }
        : {
            label: METHOD_NAMES[one.method],
            value: 100 * one.result.estimate,
            outer: [100 * one.result.interval.lower, 100 * one.result.interval.upper] as const,
          },
    ),
  });
  return [
    { name: 'season-efficacy.svg', caption: 'If a bar reaches 0, the trees followed do not prove an effect.', svg },
  ];
}

function spotMap({ title, after, spots, reachM }: SeasonReview) {
  if (!spots.defined) return [];
  const svg = pointMap({
    title: 'Where severe crowns gather',
    description: `Rated trees of ${title} on ${after}; hot spots round and red, cold spots square and blue.`,
    note: `${title}, ${after}. Neighbours within ${grouped(reachM, 0)} m; at most 5 % of the spots by chance.`,
    points: spots.value.map(({ treeId, x, y, severity, spot }) => ({
      x,
      y,
      spot: spot.spot,
      label: `${treeId}: ${percentText(severity)}`,
    })),
    words: { hot: 'hot spot', cold: 'cold spot', none: 'as by chance' },
  });
  return [
    {
      name: 'season-spots.svg',
      caption: 'Hot spots: trees whose surroundings are more severe than chance explains. North is up.',
      svg,
    },
  ];
}

/** One page a council member can read. */
export function seasonPage(review: SeasonReview): string {
  const { title, before, after, efficacy, calibrated, draws } = review;
  return summaryPage({
    title: `What changed: ${title}`,
    about: `${before} to ${after}`,
    sentences: [
      ...mainSentences(review, 'metric'),
      ...(efficacy === null ? [] : efficacyLines(review).map((line) => line.trim())),
    ],
    charts: seasonCharts(review),
    table: {
      columns: ['block', 'before, m²', 'after, m²', 'change, m²'],
      rows: review.blocks.map((block) => [
        blockLabel(block),
        grouped(block.stainedBeforeM2, 1),
        grouped(block.stainedAfterM2, 1),
        grouped(block.changeM2.value, 1),
      ]),
    },
    cautions: [
      calibrated
        ? 'Stained areas are expectations from rated crowns, calibrated on measured plots of pavement.'
        : 'Stained areas are expectations from rated crowns; they are not calibrated on measured plots, so compare them and do not quote single ones.',
      'Both days are reckoned over the crowns and the pavement as they are recorded today.',
      ...(draws > 0 ? [`Ranges of change come from ${grouped(draws, 0)} random draws over what is not known.`] : []),
      'Trees were not assigned to treatment by lot unless your records say so: what treated and untreated trees differ in besides the treatment is in these figures too.',
    ],
  });
}
