/** The criteria of a rank in the words and tones of this screen. */
import type { ScorePart } from '@crownfall/priority';
import type { BlockSummary } from '../project.ts';
import { area, grouped, percent, type Units } from '../quantities.ts';

type Criterion = ScorePart['criterion'];

export interface CriterionLook {
  readonly label: string;
  /** Name of the CSS custom property that holds its tone. */
  readonly tone: string;
}

export const CRITERION_LOOKS: Readonly<Record<Criterion, CriterionLook>> = {
  stained: { label: 'Stain in plain sight', tone: '--part-stained' },
  foot_traffic: { label: 'Foot traffic', tone: '--part-traffic' },
  complaints: { label: 'Open complaints', tone: '--part-complaints' },
  worst_severity: { label: 'Worst crown', tone: '--part-severity' },
  sensitive_sites: { label: 'Sensitive sites near', tone: '--part-sites' },
  bloom_window: { label: 'Bloom', tone: '--part-bloom' },
};

/** The measured amount behind a part, as a person says it. */
export function amountOf(part: ScorePart, block: BlockSummary, units: Units): string {
  switch (part.criterion) {
    case 'stained':
      return area(part.amount, units);
    case 'foot_traffic':
      return part.amount === 0
        ? 'not recorded'
        : part.amount >= 0.8
          ? 'busy'
          : part.amount >= 0.4
            ? 'moderate'
            : 'quiet';
    case 'complaints':
      return grouped(block.complaintsOpen, 0);
    case 'worst_severity':
      return block.worstSeverityPct === null ? 'no crown rated' : percent(part.amount / 100);
    case 'sensitive_sites':
      return grouped(part.amount, 0);
    case 'bloom_window':
      return block.bloomState;
  }
}

/** Points of a score, out of 100. */
export const points = (share: number): string => grouped(share * 100, share * 100 < 9.95 ? 1 : 0);
