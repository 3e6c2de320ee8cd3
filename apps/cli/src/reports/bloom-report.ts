/** The bloom windows in words and as JSON. */
import type { BloomCalendar } from '@crownfall/assessment';
import { type CalendarEntry, dayRangeText } from '@crownfall/priority';
import { BLOOM_WORDS, treatmentCautions } from '@crownfall/survey';
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

const WORDS = BLOOM_WORDS.en;

export function bloomReport(calendar: BloomCalendar, file: string | undefined): string {
  return [
    `${calendar.title} – bloom windows on ${calendar.asOf}`,
    '',
    forecastSentence(calendar),
    '',
    ...layOut(COLUMNS, calendar.entries.map(row), WIDTH),
    ...treeLines(calendar),
    '',
    'Windows are expectations. Look at the flowers before anything is done.',
    ...treatmentCautions('en'),
    ...(file === undefined ? [] : [`Written to ${file}.`]),
  ].join('\n');
}

function forecastSentence({ forecast }: BloomCalendar): string {
  if (!forecast.possible) {
    const seasons = forecast.seasons.length === 0 ? '' : ` (usable: ${forecast.seasons.join(', ')})`;
    return `No forecast: ${WORDS.refusals[forecast.because]}${seasons}.`;
  }
  const { opening, seasons, needed, errorDays, knownTo } = forecast;
  return (
    `Flowers of the middle block open on ${dayRangeText(opening, WORDS)} (8 seasons of 10), after ${grouped(needed, 0)} degree days (°C), as in ` +
    `${seasons.length} earlier seasons; each of those forecast from the others was off by ${grouped(errorDays, 1)} days (root mean square). ` +
    `Temperatures known to ${knownTo}.`
  );
}

function row({ group, blockId, name, window, daysLeft }: CalendarEntry): string[] {
  return [
    WORDS.groups[group],
    name === null ? blockId : `${blockId} ${name}`,
    window.seenOn ?? '–',
    window.bbch === null ? '–' : String(window.bbch),
    window.opens === null ? '–' : dayRangeText(window.opens, WORDS),
    window.closes === null ? '–' : dayRangeText(window.closes, WORDS),
    daysLeft === null || daysLeft < 0 ? '–' : String(daysLeft),
  ];
}

const TREES_SHOWN = 12;

/** Trees that were looked at by themselves. */
function treeLines({ trees }: BloomCalendar): string[] {
  if (trees.length === 0) return [];
  const shown = trees.slice(0, TREES_SHOWN).map(({ treeId, blockId, state, bbch, seenOn }) => {
    return `${treeId}${blockId === null ? '' : ` (${blockId})`} ${state}, BBCH ${bbch} on ${seenOn}`;
  });
  const more = trees.length - shown.length;
  return ['', `Tree by tree: ${shown.join('; ')}${more > 0 ? `; and ${more} more, in --json` : ''}.`];
}

export function bloomJson({ title, season, asOf, forecast, entries, trees }: BloomCalendar): unknown {
  const fitted = forecast.possible
    ? {
        opening: forecast.opening,
        needed_degree_days: forecast.needed,
        error_days: forecast.errorDays,
        known_to: forecast.knownTo,
        seasons: forecast.seasons,
      }
    : { refused_because: forecast.because, in_words: WORDS.refusals[forecast.because], seasons: forecast.seasons };
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
    trees: trees.map(({ treeId, blockId, state, seenOn, bbch }) => ({
      tree_id: treeId,
      block_id: blockId,
      bloom_state: state,
      seen_on: seenOn,
      bbch,
    })),
  };
}
