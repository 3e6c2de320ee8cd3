/** The rater check in words, as JSON, as charts and as one page. */
import type { RaterBias, RaterCheck, RaterPair } from '@crownfall/assessment';
import { scatterChart } from '@crownfall/sheets';
import { type Defined, reasonInWords } from '@crownfall/statistics';
import { closeness, kappaWords, pairSentence } from './agreement-words.ts';
import { grouped } from './quantities.ts';
import { summaryPage } from './summary-page.ts';

/** The whole report as text. */
export function ratersReport(check: RaterCheck, kept: string | null): string {
  return [
    `${check.title} – rater check – season ${check.season}, as of ${check.asOf}`,
    '',
    ...overview(check),
    '',
    ...check.pairs.flatMap((pair) => [pairSentence(pair), ...kappaLines(pair).map((line) => `  ${line}`)]),
    ...togetherLines(check),
    '',
    biasHeading(check),
    ...check.biases.map((bias) => `  ${biasSentence(bias)}`),
    ...(kept === null ? [] : ['', `Kept in ${kept} beside the project; every command now takes these biases off.`]),
  ].join('\n');
}

function overview({ raters, treesRated, treesRatedBySeveral }: RaterCheck): string[] {
  if (raters.length === 0) return ['Nobody rated a tree this season.'];
  const each = raters.map(({ rater, trees }) => `${rater} ${trees}`).join(', ');
  const lines = [`${treesRated} trees rated (${each}); ${treesRatedBySeveral} of them by more than one rater.`];
  if (raters.length === 1)
    lines.push('With one rater there is nothing to agree with: let a second one rate some of the same trees.');
  else if (treesRatedBySeveral === 0)
    lines.push('No tree was rated by two raters within one visit, so agreement cannot be told.');
  return lines;
}

function kappaLines({ kappa }: RaterPair): string[] {
  if (kappa === null) return [];
  const { linear, quadratic } = kappa;
  if (!quadratic.defined) return [`Choice of class: not told, as ${reasonInWords(quadratic.reason)}.`];
  const linearText = linear.defined ? `, linear ${grouped(linear.value.kappa, 2)}` : '';
  return [
    `Choice of class: ${kappaWords(quadratic.value.kappa)} (weighted kappa, quadratic ${grouped(quadratic.value.kappa, 2)}${linearText}).`,
  ];
}

function togetherLines({ raters, together }: RaterCheck): string[] {
  if (raters.length < 3) return [];
  const { reliability, trees } = together;
  if (trees < 2)
    return [
      `All ${raters.length} together: not told, as ${trees === 0 ? 'no tree' : 'only one tree'} was rated by all of them.`,
    ];
  if (!reliability.defined)
    return [`All ${raters.length} together: reliability not told, as ${reasonInWords(reliability.reason)}.`];
  const { coefficient } = reliability.value.forms['2,1'];
  return coefficient.defined
    ? [
        `All ${raters.length} together on ${trees} trees agree ${closeness(coefficient.value)} (intraclass correlation, form 2,1: ${grouped(coefficient.value, 2)}).`,
      ]
    : [];
}

function biasHeading({ biasesAgainst }: RaterCheck): string {
  return biasesAgainst === 'known-answers'
    ? 'Against known answers, in points at half severity (less towards 0 and 100 %):'
    : 'Against the mean of the raters, in points at half severity (less towards 0 and 100 %); what all share cannot be seen:';
}

function biasSentence({ rater, readings, reading }: RaterBias): string {
  if (!reading.defined) return `${rater}: not told, as ${reasonInWords(reading.reason)} (${readings} readings).`;
  const { bias_pct: bias, bias_se_pct: se, error_sd_pct: error } = reading.value;
  const way = Math.abs(bias) < 2 * se ? 'about right' : bias > 0 ? 'high' : 'low';
  return `${rater} reads ${way}: ${bias > 0 ? '+' : ''}${grouped(bias, 1)} ± ${grouped(se, 1)}, single ratings scatter by ${grouped(error, 1)} (${readings} readings).`;
}

/** Differences against means of each pair with limits of agreement; only pairs whose difference is defined. */
export function raterCharts(
  check: RaterCheck,
): { readonly name: string; readonly caption: string; readonly svg: string }[] {
  return check.pairs.flatMap((pair, i) => {
    const { first, second, scale, difference, readings } = pair;
    if (!difference.defined) return [];
    const { bias, limits } = difference.value;
    const points = readings.map(({ treeId, firstPct, secondPct }) => ({
      x: (firstPct + secondPct) / 2,
      y: secondPct - firstPct,
      label: treeId,
    }));
    const across = points.map(({ x }) => x);
    const level = (y: number, label: string, dashed: boolean) => ({
      points: [
        [Math.min(...across), y],
        [Math.max(...across), y],
      ] as const,
      label,
      dashed,
    });
    const svg = scatterChart({
      title: `${second} minus ${first}, ${scale}`,
      description: `${readings.length} trees rated by both; mean difference ${grouped(bias, 1)} points.`,
      note: `${check.title}, season ${check.season}. Lines: mean difference and limits that hold 95 % of differences.`,
      across: 'mean of the two ratings, %',
      up: 'difference, points',
      points,
      lines: [
        level(bias, `mean ${grouped(bias, 1)}`, false),
        level(limits.lower, grouped(limits.lower, 1), true),
        level(limits.upper, grouped(limits.upper, 1), true),
      ],
    });
    return [{ name: `raters-${i + 1}.svg`, caption: pairSentence(pair), svg }];
  });
}

/** One page for someone who was not there. */
export function ratersPage(check: RaterCheck): string {
  return summaryPage({
    title: `Do our raters mean the same? ${check.title}`,
    about: `Season ${check.season}, as of ${check.asOf}`,
    sentences: [...overview(check), ...check.pairs.map(pairSentence), ...togetherLines(check)],
    charts: raterCharts(check),
    table: {
      columns: ['rater', 'reads, points at half severity', '±', 'scatter of single ratings', 'readings'],
      rows: check.biases.map(({ rater, readings, reading }) =>
        reading.defined
          ? [
              rater,
              grouped(reading.value.bias_pct, 1),
              grouped(reading.value.bias_se_pct, 1),
              grouped(reading.value.error_sd_pct, 1),
              String(readings),
            ]
          : [rater, 'not told', '–', '–', String(readings)],
      ),
    },
    cautions: [
      biasHeading(check),
      'Points are percentage points of the crown. Words such as "well" and "moderately" are conventions for the coefficients of agreement, not laws.',
    ],
  });
}

/** The check for machines; figures in % of the crown; what is undefined says why. */
export function ratersJson(check: RaterCheck, kept: boolean): unknown {
  return {
    title: check.title,
    season: check.season,
    as_of: check.asOf,
    kept,
    raters: check.raters,
    trees_rated: check.treesRated,
    trees_rated_by_several: check.treesRatedBySeveral,
    pairs: check.pairs.map((pair) => ({
      first: pair.first,
      second: pair.second,
      scale: pair.scale,
      trees: pair.trees,
      in_words: pairSentence(pair),
      second_minus_first: plain(pair.difference),
      concordance: plain(pair.concordance),
      kappa: pair.kappa && { linear: plain(pair.kappa.linear), quadratic: plain(pair.kappa.quadratic) },
    })),
    together: { trees: check.together.trees, reliability: plain(check.together.reliability) },
    biases_against: check.biasesAgainst,
    biases: check.biases.map(({ rater, readings, reading }) => ({ rater, readings, ...(plain(reading) as object) })),
  };
}

/** A defined value as it is, the parts of it too; an undefined one as `{ undefined_because }`. */
export function plain(value: unknown): unknown {
  if (isDefined(value)) return value.defined ? plain(value.value) : { undefined_because: value.reason };
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, plain(one)]));
}

function isDefined(value: unknown): value is Defined<unknown> {
  return typeof value === 'object' && value !== null && 'defined' in value;
}
