/**
 * Plain words for coefficients of agreement. Sources: kappa by Landis and Koch (1977) Biometrics 33:159–174; reliability and
 * concordance by Koo and Li (2016) J. Chiropr. Med. 15:155–163, whose limits were given for the intraclass correlation (both
 * from memory). They are conventions, not laws.
 */
import type { RaterPair } from '@crownfall/assessment';
import type { Language } from '@crownfall/survey';
import { grouped } from './quantities.ts';
import { RATER_WORDS } from './rater-words.ts';
import { undefinedWords } from './reason-words.ts';

const CLOSE_FROM = [0.5, 0.75, 0.9];

/** How two raters agree by a concordance or an intraclass correlation: poorly, moderately, well, very closely. */
export function closeness(coefficient: number, language: Language): string {
  return RATER_WORDS[language].closeness[CLOSE_FROM.filter((from) => coefficient >= from).length];
}

/** How two raters choose classes by kappa. */
export function kappaWords(kappa: number, language: Language): string {
  const words = RATER_WORDS[language];
  if (kappa < 0) return words.kappaBelow;
  return words.kappa[Math.max(0, Math.min(4, Math.floor(kappa * 5 - 1e-9)))];
}

/** One pair in a sentence: `R3 rates 3.8 points higher than R1 (95 % interval 1.3 to 6.3); on 31 trees they agree well.` */
export function pairSentence(
  { first, second, scale, trees, difference, concordance }: RaterPair,
  language: Language,
): string {
  const { pair } = RATER_WORDS[language];
  const on = pair.on(trees, scale);
  if (!difference.defined) return pair.untold(first, second, on, undefinedWords(difference.reason, language));
  const agree = concordance.defined
    ? pair.agree(on, closeness(concordance.value.concordance, language))
    : pair.agreeUntold(on, undefinedWords(concordance.reason, language));
  return `${biasWords([second, first], difference.value, language)}; ${agree}.`;
}

function biasWords(
  [second, first]: readonly [string, string],
  { bias, biasInterval: { lower, upper } }: Extract<RaterPair['difference'], { defined: true }>['value'],
  language: Language,
): string {
  const { pair } = RATER_WORDS[language];
  if (Math.abs(bias) < 0.05 && upper - lower < 0.1) return pair.alike(second, first);
  const range = `${signed(lower)} ${pair.to} ${signed(upper)}`;
  return pair.differ([second, first], grouped(Math.abs(bias), 1), bias >= 0, range, lower <= 0 && upper >= 0);
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${grouped(value, 1)}`;
}
