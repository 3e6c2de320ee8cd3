/**
 * Plain words for coefficients of agreement. Sources: kappa by Landis and Koch (1977) Biometrics 33:159–174; reliability and
 * concordance by Koo and Li (2016) J. Chiropr. Med. 15:155–163, whose limits were given for the intraclass correlation (both
 * from memory). They are conventions, not laws.
 */
import type { RaterPair } from '@crownfall/assessment';
import { reasonInWords } from '@crownfall/statistics';
import { grouped } from './quantities.ts';

/** How two raters agree by a concordance or an intraclass correlation: poorly, moderately, well, very closely. */
export function closeness(coefficient: number): string {
  if (coefficient < 0.5) return 'poorly';
  if (coefficient < 0.75) return 'moderately';
  return coefficient < 0.9 ? 'well' : 'very closely';
}

/** How two raters choose classes by kappa. */
export function kappaWords(kappa: number): string {
  if (kappa < 0) return 'less often than by chance';
  const steps = ['slight', 'fair', 'moderate', 'substantial', 'almost perfect'];
  return `${steps[Math.min(4, Math.floor(kappa * 5 - 1e-9))] ?? steps[0]} agreement`;
}

/** One pair in a sentence: `R3 rates 3.8 points higher than R1 (95 % interval 1.3 to 6.3); on 31 trees they agree well.` */
export function pairSentence({ first, second, scale, trees, difference, concordance }: RaterPair): string {
  const on = `on ${trees} ${trees === 1 ? 'tree' : 'trees'} (${scale})`;
  if (!difference.defined)
    return `${first} and ${second} ${on}: no difference can be told, as ${reasonInWords(difference.reason)}.`;
  const agree = concordance.defined
    ? `${on} they agree ${closeness(concordance.value.concordance)}`
    : `${on} agreement cannot be told, as ${reasonInWords(concordance.reason)}`;
  return `${biasWords(first, second, difference.value)}; ${agree}.`;
}

function biasWords(
  first: string,
  second: string,
  { bias, biasInterval: { lower, upper } }: Extract<RaterPair['difference'], { defined: true }>['value'],
): string {
  if (Math.abs(bias) < 0.05 && upper - lower < 0.1) return `${second} and ${first} rate alike`;
  const way = bias >= 0 ? 'higher' : 'lower';
  const sure = lower <= 0 && upper >= 0 ? ', which may be chance' : '';
  return `${second} rates ${grouped(Math.abs(bias), 1)} points ${way} than ${first} (95 % interval of the difference ${signed(lower)} to ${signed(upper)}${sure})`;
}

function signed(value: number): string {
  return `${value > 0 ? '+' : ''}${grouped(value, 1)}`;
}
