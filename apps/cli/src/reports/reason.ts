/** Why a block stands where it stands, in words: the strongest parts of its score. */
import type { BlockResult } from '@crownfall/assessment';
import type { ScorePart } from '@crownfall/priority';
import { areaText, percentText } from './quantities.ts';

const STRONGEST = 3;

/** Up to three parts, the one with most points first; a block without points says so. */
export function reasonFor(block: BlockResult, units: 'metric' | 'us'): string {
  const parts = block.scoreParts.filter((part) => part.points > 0).sort((a, b) => b.points - a.points);
  if (parts.length === 0) return 'nothing speaks for it';
  return parts
    .slice(0, STRONGEST)
    .map((part) => words(part, block, units))
    .join(', ');
}

function words(part: ScorePart, block: BlockResult, units: 'metric' | 'us'): string {
  switch (part.criterion) {
    case 'stained':
      return `${areaText(part.amount, units)} in plain sight`;
    case 'foot_traffic':
      return `${part.amount >= 0.8 ? 'busy' : part.amount >= 0.4 ? 'well used' : 'quiet'} pavement`;
    case 'complaints':
      return block.complaintsOpen === 1 ? '1 open complaint' : `${block.complaintsOpen} open complaints`;
    case 'worst_severity':
      return `worst crown ${percentText(part.amount / 100)} affected`;
    case 'sensitive_sites':
      return part.amount === 1 ? '1 sensitive site near' : `${part.amount} sensitive sites near`;
    case 'bloom_window':
      return `bloom ${block.bloomState}`;
  }
}
