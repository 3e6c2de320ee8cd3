/** The bloom windows in words, as JSON, and as spans for a calendar. */
import type { BloomCalendar } from '@crownfall/assessment';
import type { CalendarEntry, CalendarSpan, DayRange, NoForecast } from '@crownfall/priority';
import { treatmentCautions } from '@crownfall/survey';
import { type Column, layOut } from '../terminal/table.ts';
import { grouped } from './quantities.ts';

const WIDTH = 130;

const COLUMNS: readonly Column[] = [
  { title: 'when', align: 'left' },
  { title: 'block', align: 'left' },
  { title: 'last seen', align: 'left' },
  { title: 'BBCH', align: 'right' },
  { title: 'opens', align: 'left' },
  { title: 'ends', align: 'left' },
  { title: 'days left', align: 'right' },
];

const GROUPS: Readonly<Record<CalendarEntry['group'], string>> = {
  'closing-soon': 'closing soon',
  open: 'open',
  opening: 'opening',
  'not-known': 'not known',
  over: 'over',
};

const REFUSALS: Readonly<Record<NoForecast['because'], string>> = {
  'no-temperatures': 'no file of daily temperatures is given',
  'too-few-seasons':
    'fewer than three earlier seasons have both an opening that two visits enclose and temperatures up to it',
  'temperatures-missing': 'this year’s temperatures are missing',
  'heat-not-reached': 'the heat needed is not reached within the temperatures known',
};

export function bloomReport(calendar: BloomCalendar, file: string | undefined): string {
  return [
    `${calendar.title} – bloom windows on ${calendar.asOf}`,
    '',
    forecastSentence(calendar),
    '',
    ...layOut(COLUMNS, calendar.entries.map(row), WIDTH),
    '',
    'Windows are expectations. Look at the flowers before anything is done.',
    ...treatmentCautions('en'),
    ...(file === undefined ? [] : [`Written to ${file}.`]),
  ].join('\n');
}

function forecastSentence({ forecast }: BloomCalendar): string {
  if (!forecast.possible) {
    const seasons = forecast.seasons.length === 0 ? '' : ` (usable: ${forecast.seasons.join(', ')})`;
    return `No forecast: ${REFUSALS[forecast.because]}${seasons}.`;
  }
  const { opening, seasons, needed, errorDays, knownTo } = forecast;
  return (
    `Flowers of the middle block open on ${spanText(opening)} (8 seasons of 10), after ${grouped(needed, 0)} degree days (°C), as in ` +
    `${seasons.length} earlier seasons; each of those forecast from the others was off by ${grouped(errorDays, 1)} days (root mean square). ` +
    `Temperatures known to ${knownTo}.`
  );
}

function row({ group, blockId, name, window, daysLeft }: CalendarEntry): string[] {
  return [
    GROUPS[group],
    name === null ? blockId : `${blockId} ${name}`,
    window.seenOn ?? '–',
    window.bbch === null ? '–' : String(window.bbch),
    window.opens === null ? '–' : spanText(window.opens),
    window.closes === null ? '–' : spanText(window.closes),
    daysLeft === null || daysLeft < 0 ? '–' : String(daysLeft),
  ];
}

/** `2026-05-12 (05-09 to 05-15, forecast)`. */
function spanText({ day, earliest, latest, from }: DayRange): string {
  const within = earliest === latest ? '' : `${earliest.slice(5)} to ${latest.slice(5)}, `;
  return `${day} (${within}${from})`;
}

/** One span for each block whose window is known and not over. */
export function calendarSpans({ entries, season, title }: BloomCalendar): CalendarSpan[] {
  return entries.flatMap(({ blockId, name, window, group }) => {
    const { opens, closes } = window;
    if (group === 'over' || opens === null || closes === null) return [];
    const range = `Opens ${spanText(opens)}. Ends ${spanText(closes)}.`;
    return [
      {
        uid: `bloom-${season}-${mark(`${title} ${blockId}`)}@crownfall.invalid`,
        first: opens.day,
        last: [opens.day, closes.day].sort()[1],
        summary: `Bloom window: ${name === null ? blockId : `${blockId} ${name}`}`,
        description: [
          range,
          'An expectation: look at the flowers before anything is done.',
          ...treatmentCautions('en'),
        ].join('\n'),
        tentative: opens.from !== 'seen' || closes.from !== 'seen',
      },
    ];
  });
}

/** A short mark of a text, the same each time (FNV-1a, 32 bits, over UTF-16 units; forwards and backwards). */
function mark(text: string): string {
  const of = (units: readonly string[]) =>
    units.reduce((hash, unit) => Math.imul(hash ^ unit.charCodeAt(0), 0x01000193), 0x811c9dc5) >>> 0;
  const units = text.split('');
  return [of(units), of(units.toReversed())].map((hash) => hash.toString(16).padStart(8, '0')).join('');
}

export function bloomJson({ title, season, asOf, forecast, entries }: BloomCalendar): unknown {
  const fitted = forecast.possible
    ? {
        opening: forecast.opening,
        needed_degree_days: forecast.needed,
        error_days: forecast.errorDays,
        known_to: forecast.knownTo,
        seasons: forecast.seasons,
      }
    : { refused_because: forecast.because, in_words: REFUSALS[forecast.because], seasons: forecast.seasons };
  return {
    title,
    season,
    as_of: asOf,
    forecast: fitted,
    blocks: entries.map(({ blockId, name, group, window, daysLeft }) => ({
      block_id: blockId,
      name,
      group,
      bloom_state: window.state,
      seen_on: window.seenOn,
      bbch: window.bbch,
      opens: window.opens,
      closes: window.closes,
      days_left: daysLeft,
    })),
  };
}
