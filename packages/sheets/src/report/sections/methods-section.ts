/** How the figures come about, how far to trust them. */
import { grouped } from '../../quantities.ts';
import type { Part } from '../content.ts';
import type { Reading } from '../reading.ts';

export function methodsSection({ words }: Reading): readonly Part[] {
  return [
    { part: 'heading', level: 2, text: words.methods.title },
    ...words.methods.items.map(([term, text]): Part => ({ part: 'paragraph', text: [{ strong: term }, text] })),
  ];
}

export function accuracySection({ words, assessment }: Reading): readonly Part[] {
  const { settings, draws, seed, calibrated } = assessment.run;
  const k = grouped(settings.dose_coefficient, 2);
  const { accuracy } = words;
  return [
    { part: 'heading', level: 2, text: accuracy.title },
    {
      part: 'list',
      items: [
        [calibrated ? accuracy.calibrated(k) : accuracy.uncalibrated],
        [draws > 0 ? accuracy.draws(grouped(draws), String(seed)) : accuracy.noDraws],
        ...accuracy.items.map((item) => [item]),
      ],
    },
  ];
}
