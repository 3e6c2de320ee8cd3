/** The head of the panel: which project, as of when, the total, and the choice of units. */
import { element } from '../element.ts';
import type { Project } from '../project.ts';
import { area, percent } from '../quantities.ts';
import type { ViewState } from '../view-state.ts';

export function masthead(project: Project, state: ViewState): HTMLElement {
  const total = element('p', { class: 'total' });
  const say = (): void => {
    const { stainedM2, pavementM2, falloutM2 } = project.total;
    const { units } = state.now();
    total.replaceChildren(
      element('strong', {}, area(stainedM2.value, units)),
      ` of pavement expected to show stain: ${percent(stainedM2.value / pavementM2)} of ${area(pavementM2, units)}, `,
      `of which ${area(falloutM2, units)} lies within crowns’ fallout.`,
    );
  };
  say();
  state.listen(say);
  return element(
    'header',
    { class: 'masthead' },
    element('div', { class: 'masthead-line' }, element('h1', {}, project.title), unitSwitch(state)),
    element('p', { class: 'dateline' }, dateline(project)),
    total,
    project.run.calibrated ? null : element('p', { class: 'caveat' }, UNCALIBRATED),
  );
}

const UNCALIBRATED =
  'Uncalibrated: no plots measured on the pavement stand behind these areas yet. Compare blocks; do not quote single figures.';

function dateline(project: Project): string {
  const asOf = project.run.asOf === null ? '' : `, as of ${project.run.asOf}`;
  return `Season ${project.season}${asOf} · ${project.trees} trees, ${project.treesRated} rated`;
}

function unitSwitch(state: ViewState): HTMLElement {
  const choose = (units: 'metric' | 'us', label: string, spoken: string): HTMLElement => {
    const input = element('input', { type: 'radio', name: 'units', value: units, 'aria-label': spoken });
    input.checked = state.now().units === units;
    input.addEventListener('change', () => state.change({ units }));
    return element('label', {}, input, element('span', { 'aria-hidden': 'true' }, label));
  };
  return element(
    'fieldset',
    { class: 'units' },
    element('legend', { class: 'spoken-only' }, 'Units'),
    choose('metric', 'm²', 'Square metres'),
    choose('us', 'ft²', 'Square feet'),
  );
}
