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
    element('p', { id: 'legend-pavement' }, 'Share of pavement expected to show stain'),
    element(
      'ul',
      { class: 'classes', 'aria-labelledby': 'legend-pavement' },
      element(
        'li',
        {},
        element('span', { class: 'swatch clean', 'aria-hidden': 'true' }),
        `under ${CLEAN_BELOW_PCT} %`,
      ),
      ...classes,
    ),
    element(
      'ul',
      { class: 'marks' },
      mark('crown staining', 'crown with a staining cause'),
      mark('crown', 'crown without'),
      mark('drift', 'its fallout: drip line and drift'),
      mark('block-first', 'ranks 1 to 5'),
    ),
  );
  details.open = matchMedia('(min-width: 60rem)').matches;
  return details;
}

function mark(kind: string, words: string): HTMLElement {
  return element('li', {}, element('span', { class: `mark ${kind}`, 'aria-hidden': 'true' }), words);
}
