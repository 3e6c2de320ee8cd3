/** Bloom windows as the events of a calendar file, with the cautions that belong to any treatment. */
import { BLOOM_WORDS, type BloomWords, type Language, treatmentCautions } from '@crownfall/survey';
import type { CalendarEntry } from './bloom-calendar.ts';
import type { DayRange } from './bloom-window.ts';
import type { CalendarSpan } from './icalendar.ts';

interface TownCalendar {
  readonly title: string;
  readonly season: number;
  readonly entries: readonly CalendarEntry[];
}

/** One span for each block whose window is known and not over. */
export function calendarSpans({ title, season, entries }: TownCalendar, language: Language): CalendarSpan[] {
  const words = BLOOM_WORDS[language];
  return entries.flatMap(({ blockId, name, window, group }) => {
    const { opens, closes } = window;
    if (group === 'over' || opens === null || closes === null) return [];
    const said = words.span(dayRangeText(opens, words), dayRangeText(closes, words));
    return [
      {
        uid: `bloom-${season}-${mark(`${title} ${blockId}`)}@crownfall.invalid`,
        first: opens.day,
        last: [opens.day, closes.day].sort()[1],
        summary: words.window(name === null ? blockId : `${blockId} ${name}`),
        description: [said, words.expectation, ...treatmentCautions(language)].join('\n'),
        tentative: opens.from !== 'seen' || closes.from !== 'seen',
      },
    ];
  });
}

/** `2026-05-12 (05-09 to 05-15, forecast)`. */
export function dayRangeText({ day, earliest, latest, from }: DayRange, words: BloomWords): string {
  const within = earliest === latest ? '' : `${words.range(earliest.slice(5), latest.slice(5))}, `;
  return `${day} (${within}${words.from[from]})`;
}

/** A short mark of a text, the same each time (FNV-1a, 32 bits, over UTF-16 units; forwards and backwards). */
function mark(text: string): string {
  const of = (units: readonly string[]) =>
    units.reduce((hash, unit) => Math.imul(hash ^ unit.charCodeAt(0), 0x01000193), 0x811c9dc5) >>> 0;
  const units = text.split('');
  return [of(units), of(units.toReversed())].map((hash) => hash.toString(16).padStart(8, '0')).join('');
}
