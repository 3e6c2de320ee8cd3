/** What is known to be wrong, mended or assumed in the data; it belongs beside the figures, not in a log. */
import { element } from '../element.ts';
import type { SpokenFinding } from '../project.ts';

const SEVERITIES = ['error', 'warning', 'note'] as const;
const HEADINGS = { error: 'Errors', warning: 'Warnings', note: 'Notes' } as const;
/** Longer lists are cut on screen; `crownfall check` prints them whole. */
const SHOWN = 50;

export function findingsList(findings: readonly SpokenFinding[]): HTMLElement {
  const groups = SEVERITIES.map((severity) => findings.filter((each) => each.severity === severity));
  const summary = groups
    .map((group, i) => (group.length === 0 ? '' : `${group.length} ${HEADINGS[SEVERITIES[i]].toLowerCase()}`))
    .filter((words) => words !== '')
    .join(', ');
  return element(
    'details',
    { class: 'findings' },
    element('summary', {}, `Findings about the data: ${summary || 'none'}`),
    ...groups.map((group, i) => findingGroup(HEADINGS[SEVERITIES[i]], group)),
  );
}

function findingGroup(heading: string, group: readonly SpokenFinding[]): HTMLElement | null {
  if (group.length === 0) return null;
  const items = group.slice(0, SHOWN).map((each) => element('li', {}, each.words));
  const more = group.length - items.length;
  return element(
    'section',
    {},
    element('h3', {}, heading),
    element('ul', {}, ...items),
    more > 0 ? element('p', {}, `and ${more} more; crownfall check prints them all.`) : null,
  );
}
