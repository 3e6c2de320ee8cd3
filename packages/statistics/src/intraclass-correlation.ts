/** Reliability of several raters who all judged the same subjects. */

import { CompensatedSum } from './compensated-sum.ts';
import { type Defined, defined, undefinedBecause } from './defined.ts';
import { expectFinite, expectOpenFraction, expectSameLength } from './expectations.ts';
import { fQuantile } from './f-distribution.ts';
import type { Interval } from './interval.ts';

/**
 * Shrout and Fleiss's six forms. First figure 1: other raters for each subject; 2: the same raters, a random sample of such
 * raters; 3: the same raters, who are all that matter. Second 1: reliability of one rating; k: of the mean of the k ratings.
 */
export type IntraclassForm = '1,1' | '2,1' | '3,1' | '1,k' | '2,k' | '3,k';

/** One form: the coefficient (at most 1, possibly negative) and its interval. */
export type IntraclassEstimate = { readonly coefficient: Defined<number>; readonly interval: Defined<Interval> };

/** The six forms and the mean squares of the analysis of variance they come from. */
export type IntraclassResult = {
  readonly forms: Readonly<Record<IntraclassForm, IntraclassEstimate>>;
  readonly meanSquares: MeanSquares;
  readonly subjects: number;
  readonly raters: number;
};

/** Mean squares between subjects, within subjects, between raters, and of the rest; in squared units of the ratings. */
export type MeanSquares = {
  readonly subjects: number;
  readonly within: number;
  readonly raters: number;
  readonly rest: number;
};

/** Share of the larger part below which a sum of mean squares counts as 0. */
const ROUNDING = 1e-12;

type Layout = { readonly n: number; readonly k: number; readonly confidence: number };

/**
 * Intraclass correlations of a complete table: one row per subject, one column per rater.
 *
 * Intervals come from the F distribution; those of forms 2 use Satterthwaite's degrees of freedom. Accuracy tested: 1e-9.
 * Undefined with one rater, one subject, no subject, or when all ratings are equal; a form alone is undefined where its total
 * variance is estimated as zero or less, and its interval also where the raters differ by nothing but a constant.
 * RangeError for ragged rows.
 * Source: Shrout and Fleiss (1979), Psychological Bulletin 86, 420–428.
 *
 * Example: for the 6 × 4 table of that paper, form '2,1' gives 0.2898, 95 % interval 0.0188 to 0.7611.
 */
export function intraclassCorrelation(
  ratings: readonly (readonly number[])[],
  confidence = 0.95,
): Defined<IntraclassResult> {
  expectOpenFraction(confidence, 'confidence');
  const first = ratings[0];
  if (!first) return undefinedBecause('no-observations');
  for (const row of ratings) {
    expectSameLength(row, first, 'rows of ratings');
    expectFinite(row, 'ratings');
  }
  if (first.length < 2) return undefinedBecause('one-rater');
  if (ratings.length < 2) return undefinedBecause('one-subject');
  const layout = { n: ratings.length, k: first.length, confidence };
  const ms = meanSquares(ratings);
  if (ms.subjects === 0 && ms.within === 0) return undefinedBecause('no-variation');
  return defined({ forms: sixForms(ms, layout), meanSquares: ms, subjects: layout.n, raters: layout.k });
}

function meanSquares(ratings: readonly (readonly number[])[]): MeanSquares {
  const n = ratings.length;
  const k = (ratings[0] as readonly number[]).length;
  const rowMeans = ratings.map((row) => row.reduce((sum, x) => sum + x, 0) / k);
  const columnMeans = Array.from(
    { length: k },
    (_, j) => ratings.reduce((sum, row) => sum + (row[j] as number), 0) / n,
  );
  const grand = rowMeans.reduce((sum, x) => sum + x, 0) / n;
  const within = new CompensatedSum();
  const rest = new CompensatedSum();
  for (const [i, row] of ratings.entries()) {
    for (const [j, x] of row.entries()) {
      within.add((x - (rowMeans[i] as number)) ** 2);
      rest.add((x - (rowMeans[i] as number) - (columnMeans[j] as number) + grand) ** 2);
    }
  }
  const squares = (means: number[]): number => means.reduce((sum, x) => sum + (x - grand) ** 2, 0);
  return {
    subjects: (k * squares(rowMeans)) / (n - 1),
    within: within.total / (n * (k - 1)),
    raters: (n * squares(columnMeans)) / (k - 1),
    rest: rest.total / ((n - 1) * (k - 1)),
  };
}

function sixForms(ms: MeanSquares, layout: Layout): Record<IntraclassForm, IntraclassEstimate> {
  const { n, k } = layout;
  const form2 = ratio(ms.subjects - ms.rest, ms.subjects + (k - 1) * ms.rest + (k * (ms.raters - ms.rest)) / n);
  const interval1 = ratioInterval(ms.subjects, ms.within, n * (k - 1), layout);
  const interval2 = form2.defined ? formTwoInterval(ms, form2.value, layout) : form2;
  const interval3 = ratioInterval(ms.subjects, ms.rest, (n - 1) * (k - 1), layout);
  return {
    '1,1': { coefficient: ratio(ms.subjects - ms.within, ms.subjects + (k - 1) * ms.within), interval: interval1 },
    '2,1': { coefficient: form2, interval: interval2 },
    '3,1': { coefficient: ratio(ms.subjects - ms.rest, ms.subjects + (k - 1) * ms.rest), interval: interval3 },
    '1,k': { coefficient: ratio(ms.subjects - ms.within, ms.subjects), interval: averaged(interval1, k) },
    '2,k': {
      coefficient: ratio(ms.subjects - ms.rest, ms.subjects + (ms.raters - ms.rest) / n),
      interval: averaged(interval2, k),
    },
    '3,k': { coefficient: ratio(ms.subjects - ms.rest, ms.subjects), interval: averaged(interval3, k) },
  };
}

function ratio(over: number, under: number): Defined<number> {
  // The parts of a sum that ought to be 0 leave rounding behind.
  return under > ROUNDING * Math.abs(over) ? defined(over / under) : undefinedBecause('no-variance');
}

/** Spearman and Brown: from the reliability of one rating to that of the mean of k. */
function averaged(interval: Defined<Interval>, k: number): Defined<Interval> {
  if (!interval.defined) return interval;
  const { lower, upper, confidence } = interval.value;
  if (1 + (k - 1) * lower < ROUNDING) return undefinedBecause('no-variance');
  const up = (r: number): number => (k * r) / (1 + (k - 1) * r);
  return defined({ lower: up(lower), upper: up(upper), confidence });
}

/** Interval of (F − 1)/(F + k − 1) for F = over/under; without error variance there is none. */
function ratioInterval(
  over: number,
  under: number,
  freedomUnder: number,
  { n, k, confidence }: Layout,
): Defined<Interval> {
  if (under === 0) return undefinedBecause('no-variation');
  const share = 1 - (1 - confidence) / 2;
  const low = over / under / fQuantile(share, n - 1, freedomUnder);
  const high = (over / under) * fQuantile(share, freedomUnder, n - 1);
  return defined({ lower: (low - 1) / (low + k - 1), upper: (high - 1) / (high + k - 1), confidence });
}

function formTwoInterval(ms: MeanSquares, single: number, { n, k, confidence }: Layout): Defined<Interval> {
  if (ms.rest === 0) return undefinedBecause('no-variation');
  const ratersRatio = ms.raters / ms.rest;
  const others = n * (1 + (k - 1) * single) - k * single;
  const over = (k - 1) * (n - 1) * (k * single * ratersRatio + others) ** 2;
  const under = (n - 1) * (k * single * ratersRatio) ** 2 + others ** 2;
  const freedom = over / under;
  const noise = k * ms.raters + (k * n - k - n) * ms.rest;
  if (!(freedom > ROUNDING && noise > 0)) return undefinedBecause('no-variance');
  const share = 1 - (1 - confidence) / 2;
  const fLow = fQuantile(share, n - 1, freedom);
  const fHigh = fQuantile(share, freedom, n - 1);
  return defined({
    lower: (n * (ms.subjects - fLow * ms.rest)) / (fLow * noise + n * ms.subjects),
    upper: (n * (fHigh * ms.subjects - ms.rest)) / (noise + n * fHigh * ms.subjects),
    confidence,
  });
}
