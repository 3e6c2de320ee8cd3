/** What the map's colours, hatches and lines mean. */
import { element } from '../element.ts';
import { CLEAN_BELOW_PCT, STAIN_CLASSES } from '../map/stain-ramp.ts';

export function legend(): HTMLElement {
  const classes = STAIN_CLASSES.map((each, i) =>
    element('li', {}, element('span', { class: `swatch stain-${i}`, 'aria-hidden': 'true' }), each.label),
  );
  const details = element(
    'details',
    { class: 'legend' },
    element('summary', {}, 'Legend'),
    element('p', {}, 'Pavement by share of its area expected to show stain'),
    element(
      'ul',
      { class: 'classes' },
      element(
        'li',
        {},
        element('span', { class: 'swatch clean', 'aria-hidden': 'true' }),
        `clean (under ${CLEAN_BELOW_PCT} %)`,
      ),
      ...classes,
    ),
    element(
      'ul',
      { class: 'marks' },
      mark('crown staining', 'Crown with a staining cause; % affected'),
      mark('crown', 'Crown without one'),
      mark('drift', 'Edge of its fallout (drip line plus drift)'),
      mark('block-first', 'Block of the first five ranks'),
    ),
  );
  details.open = matchMedia('(min-width: 60rem)').matches;
  return details;
}

function mark(kind: string, words: string): HTMLElement {
  return element('li', {}, element('span', { class: `mark ${kind}`, 'aria-hidden': 'true' }), words);
}
