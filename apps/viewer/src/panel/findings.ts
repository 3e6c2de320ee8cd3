/** What is known to be wrong, mended or assumed in the data; it belongs beside the figures, not in a log. */
import { element } from '../element.ts';
import type { SpokenGroup } from '../project.ts';

const SEVERITIES = ['error', 'warning', 'note'] as const;

export function findingsList(groups: readonly SpokenGroup[]): HTMLElement {
  return element(
    'details',
    { class: 'findings' },
    element('summary', {}, `Findings about the data: ${counts(groups) || 'none'}`),
    ...groups.map(groupSection),
  );
}

function counts(groups: readonly SpokenGroup[]): string {
  return SEVERITIES.flatMap((severity) => {
    const count = groups.filter((group) => group.severity === severity).reduce((sum, each) => sum + each.findings, 0);
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  }).join(', ');
}

function groupSection({ severity, findings, effect, examples }: SpokenGroup): HTMLElement {
  const more = findings - examples.length;
  const items = examples.map(({ where, what }) =>
    element('li', {}, element('span', { class: 'place' }, where), element('span', { class: 'what' }, what)),
  );
  return element(
    'section',
    {},
    element('h3', {}, `${findings} ${severity}${findings === 1 ? '' : 's'}. ${effect}`),
    element('ul', {}, ...items),
    more > 0 ? element('p', {}, `and ${more} more like these, in findings.json`) : null,
    element('p', { class: 'remedy' }, examples[0].remedy),
  );
}
