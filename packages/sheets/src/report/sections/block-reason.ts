/** Why a block stands where it stands: the strongest parts of its score, in words. */
import type { BlockResult } from '@crownfall/assessment';
import { areaText, percentText } from '../../quantities.ts';
import type { Reading } from '../reading.ts';

const STRONGEST = 2;

/** Up to two parts, the one with most points first; a block without points says so. */
export function blockReason(block: BlockResult, reading: Reading): string {
  const parts = block.scoreParts.filter(({ points }) => points > 0).toSorted((a, b) => b.points - a.points);
  if (parts.length === 0) return reading.words.why.nothing;
  return parts
    .slice(0, STRONGEST)
    .map((part) => partWords(part, block, reading))
    .join(', ');
}

function partWords(
  { criterion, amount }: BlockResult['scoreParts'][number],
  block: BlockResult,
  { words, units }: Reading,
): string {
  const { why } = words;
  switch (criterion) {
    case 'stained':
      return why.stained(areaText(amount, units));
    case 'foot_traffic':
      return why.traffic[amount >= 0.8 ? 'high' : amount >= 0.4 ? 'medium' : 'low'];
    case 'complaints':
      return why.complaints(block.complaintsOpen);
    case 'worst_severity':
      return why.severity(percentText(amount / 100));
    case 'sensitive_sites':
      return why.sites(amount);
    case 'bloom_window':
      return why.bloom(words.bloomStates[block.bloomState]);
  }
}
