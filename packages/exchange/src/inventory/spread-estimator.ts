import type { SpreadRules } from './inventory-mapping.ts';
import { PALMS } from './known-species.ts';
import { openGrownSpread, type SpreadEstimate } from './open-grown-spread.ts';
import { fitSpread, type MeasuredPair, type SpreadFit } from './spread-fit.ts';

/** Estimates the spread of trees of which only the trunk was measured. */
export interface SpreadEstimator {
  /** Null when there is no way to say: the rules forbid it, or the tree is a palm. */
  estimate(trunkCm: number, host: string | null): SpreadEstimate | null;
  /** The own fits that are used, by genus; `''` is that of all trees. */
  readonly fits: ReadonlyMap<string, SpreadFit>;
}

/**
 * The estimator a project's rules ask for: the fit of the tree's genus when enough pairs of it were measured, else that of
 * all trees, else the published open-grown relation.
 */
export function spreadEstimator(pairs: readonly MeasuredPair[], rules: SpreadRules): SpreadEstimator {
  const fits = rules.from === 'own' ? ownFits(pairs, rules.least_pairs) : new Map<string, SpreadFit>();
  return {
    fits,
    estimate(trunkCm, host) {
      if (rules.from === 'none') return null;
      const published = openGrownSpread(trunkCm, host, rules.site_sd_pct / 100);
      if (published === null) return null;
      const genus = genusOf(host);
      const fit = fits.get(genus) ?? fits.get('');
      if (!fit) return published;
      const of = fits.has(genus) && genus !== '' ? `${genus} trees` : 'trees';
      return { ...fit.predict(trunkCm), basis: `${fit.pairs} measured ${of} of this project` };
    },
  };
}

function ownFits(pairs: readonly MeasuredPair[], least: number): Map<string, SpreadFit> {
  const all: MeasuredPair[] = [];
  const byGenus = new Map<string, MeasuredPair[]>([['', all]]);
  for (const pair of pairs) {
    const genus = genusOf(pair.host ?? null);
    if (PALMS.has(genus)) continue;
    all.push(pair);
    if (genus === '') continue;
    const its = byGenus.get(genus);
    if (its) its.push(pair);
    else byGenus.set(genus, [pair]);
  }
  const fits = new Map<string, SpreadFit>();
  for (const [genus, its] of byGenus) {
    const fit = its.length >= least ? fitSpread(its) : null;
    if (fit) fits.set(genus, fit);
  }
  return fits;
}

function genusOf(host: string | null): string {
  return host?.split(' ')[0] ?? '';
}
