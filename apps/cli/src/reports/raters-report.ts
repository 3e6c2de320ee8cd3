/** The rater check in words, as JSON, as charts and as one page. */
import type { RaterBias, RaterCheck, RaterPair } from '@crownfall/assessment';
import { scatterChart } from '@crownfall/sheets';
import type { Defined } from '@crownfall/statistics';
import type { Language } from '@crownfall/survey';
import { closeness, kappaWords, pairSentence } from './agreement-words.ts';
import { grouped } from './quantities.ts';
import { RATER_WORDS, type RaterWords } from './rater-words.ts';
import { undefinedWords } from './reason-words.ts';
import { summaryPage } from './summary-page.ts';

/** The whole report as text. */
export function ratersReport(check: RaterCheck, kept: string | null, language: Language): string {
  const words = RATER_WORDS[language];
  return [
    words.title(check.title, check.season, check.asOf),
    '',
    ...overview(check, words),
    '',
    ...check.pairs.flatMap((pair) => [
      pairSentence(pair, language),
      ...kappaLines(pair, language).map((line) => `  ${line}`),
    ]),
    ...togetherLines(check, language),
    '',
    biasHeading(check, words),
    ...check.biases.map((bias) => `  ${biasSentence(bias, language)}`),
    ...(kept === null ? [] : ['', words.kept(kept)]),
  ].join('\n');
}

function overview({ raters, treesRated, treesRatedBySeveral }: RaterCheck, words: RaterWords): string[] {
  if (raters.length === 0) return [words.nobody];
  const each = raters.map(({ rater, trees }) => `${rater} ${trees}`).join(', ');
  const lines = [words.rated(treesRated, each, treesRatedBySeveral)];
  if (raters.length === 1) lines.push(words.oneRater);
  else if (treesRatedBySeveral === 0) lines.push(words.noneShared);
  return lines;
}

function kappaLines({ kappa }: RaterPair, language: Language): string[] {
  if (kappa === null) return [];
  const words = RATER_WORDS[language];
  const { linear, quadratic } = kappa;
  if (!quadratic.defined) return [words.classUntold(undefinedWords(quadratic.reason, language))];
  const linearText = linear.defined ? grouped(linear.value.kappa, 2) : null;
  const { kappa: value } = quadratic.value;
  return [words.classes(kappaWords(value, language), grouped(value, 2), linearText)];
}

function togetherLines({ raters: { length: raters }, together }: RaterCheck, language: Language): string[] {
  if (raters < 3) return [];
  const words = RATER_WORDS[language];
  const { reliability, trees } = together;
  if (trees < 2) return [words.togetherFew(raters, trees)];
  if (!reliability.defined) return [words.togetherUntold(raters, undefinedWords(reliability.reason, language))];
  const { coefficient } = reliability.value.forms['2,1'];
  return coefficient.defined
    ? [words.together(raters, trees, closeness(coefficient.value, language), grouped(coefficient.value, 2))]
    : [];
}

function biasHeading({ biasesAgainst }: RaterCheck, words: RaterWords): string {
  return biasesAgainst === 'known-answers' ? words.againstKnown : words.againstMean;
}

function biasSentence({ rater, readings, reading }: RaterBias, language: Language): string {
  const words = RATER_WORDS[language];
  if (!reading.defined) return words.biasUntold(rater, undefinedWords(reading.reason, language), readings);
  const { bias_pct: bias, bias_se_pct: se, error_sd_pct: error } = reading.value;
  const way = Math.abs(bias) < 2 * se ? 'right' : bias > 0 ? 'high' : 'low';
  const signed = `${bias > 0 ? '+' : ''}${grouped(bias, 1)}`;
  return words.bias(rater, way, signed, grouped(se, 1), grouped(error, 1), readings);
}

/** Differences against means of each pair with limits of agreement; only pairs whose difference is defined. */
export function raterCharts(
  check: RaterCheck,
  language: Language,
): { readonly name: string; readonly caption: string; readonly svg: string }[] {
  const { chart } = RATER_WORDS[language];
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
      title: chart.title(second, first, scale),
      description: chart.about(readings.length, grouped(bias, 1)),
      note: chart.note(check.title, check.season),
      across: chart.across,
      up: chart.up,
      points,
      lines: [
        level(bias, chart.mean(grouped(bias, 1)), false),
        level(limits.lower, grouped(limits.lower, 1), true),
        level(limits.upper, grouped(limits.upper, 1), true),
      ],
    });
    return [{ name: `raters-${i + 1}.svg`, caption: pairSentence(pair, language), svg }];
  });
}

/** One page for someone who was not there. */
export function ratersPage(check: RaterCheck, language: Language): string {
  const words = RATER_WORDS[language];
  const { page } = words;
  return summaryPage({
    language,
    title: page.title(check.title),
    about: page.about(check.season, check.asOf),
    sentences: [
      ...overview(check, words),
      ...check.pairs.map((pair) => pairSentence(pair, language)),
      ...togetherLines(check, language),
    ],
    charts: raterCharts(check, language),
    table: {
      columns: page.columns,
      rows: check.biases.map(({ rater, readings, reading }) =>
        reading.defined
          ? [
              rater,
              grouped(reading.value.bias_pct, 1),
              grouped(reading.value.bias_se_pct, 1),
              grouped(reading.value.error_sd_pct, 1),
              String(readings),
            ]
          : [rater, page.untold, '–', '–', String(readings)],
      ),
    },
    cautions: [biasHeading(check, words), page.points],
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
      in_words: pairSentence(pair, 'en'),
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
