/** The criteria of a rank in the words and tones of this screen. */
import type { ScorePart } from '@crownfall/priority';
import type { Criterion } from '@crownfall/survey';
import { area, grouped, percent, type Units } from '../language/quantities.ts';
import type { Words } from '../language/words.ts';
import type { BlockSummary } from '../project/project.ts';

/** CSS custom property that holds a criterion's tone. */
export const TONES: Readonly<Record<Criterion, string>> = {
  stained: 'var(--part-stained)',
  foot_traffic: 'var(--part-traffic)',
  complaints: 'var(--part-complaints)',
  worst_severity: 'var(--part-severity)',
  sensitive_sites: 'var(--part-sites)',
  bloom_window: 'var(--part-bloom)',
};

/** The measured amount behind a part, as a person says it. */
export function amountOf(part: ScorePart, block: BlockSummary, units: Units, words: Words): string {
  const { amount } = words;
  switch (part.criterion) {
    case 'stained':
      return area(part.amount, units);
    case 'foot_traffic':
      if (part.amount === 0) return amount.notRecorded;
      return part.amount >= 0.8 ? amount.busy : part.amount >= 0.4 ? amount.moderate : amount.quiet;
    case 'complaints':
      return grouped(block.complaintsOpen, 0);
    case 'worst_severity':
      return block.worstSeverityPct === null ? amount.noCrownRated : percent(part.amount / 100);
    case 'sensitive_sites':
      return grouped(part.amount, 0);
    case 'bloom_window':
      return words.bloom[block.bloomState];
  }
}

/** Points of a score, out of 100. */
export const points = (share: number): string => grouped(share * 100, share * 100 < 9.95 ? 1 : 0);
