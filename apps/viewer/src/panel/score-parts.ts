/** A block's rank explained: each criterion with its measured amount, its weight and the points it gives. */
import { element } from '../element.ts';
import type { BlockSummary } from '../project.ts';
import { area, percent, type Units } from '../quantities.ts';
import { amountOf, CRITERION_LOOKS, points } from './criteria.ts';

export function scoreParts(block: BlockSummary, units: Units): HTMLElement {
  const rows = block.scoreParts.map((part) => {
    const look = CRITERION_LOOKS[part.criterion];
    const bar = element('span', { class: `bar ${part.criterion}` });
    // A full bar is all the points that the criterion's weight allows.
    bar.style.width = `${part.value * 100}%`;
    bar.style.background = `var(${look.tone})`;
    return element(
      'tr',
      {},
      element('th', { scope: 'row' }, look.label),
      element('td', { class: 'amount' }, amountOf(part, block, units)),
      element('td', { class: 'track-cell' }, element('span', { class: 'track', 'aria-hidden': 'true' }, bar)),
      element('td', { class: 'points' }, points(part.points), element('small', {}, ` of ${points(part.weight)}`)),
    );
  });
  return element(
    'div',
    {},
    element('p', { class: 'areas' }, areasSentence(block, units)),
    element(
      'table',
      { class: 'parts' },
      element('caption', {}, `Why rank ${block.rank}: ${points(block.score)} of 100 points`),
      element('tbody', {}, ...rows),
    ),
  );
}

function areasSentence(block: BlockSummary, units: Units): string {
  const range = block.stainedM2.range80;
  const spread = range ? ` (80 % range ${area(range[0], units)} to ${area(range[1], units)})` : '';
  const worst =
    block.worstSeverityPct === null ? '' : ` Worst crown ${percent(block.worstSeverityPct / 100)} affected.`;
  return (
    `${area(block.stainedM2.value, units)} stained${spread}; ${area(block.driplineM2, units)} under crowns, ` +
    `${area(block.falloutM2, units)} with their drift.${worst}`
  );
}
