/** The follow-up between two days: what changed, where, and whether a treatment had to do with it. */
import type { BlockChange, EfficacyRow, SeasonReview } from '@crownfall/assessment';
import { METRES_PER_FOOT } from '@crownfall/geometry';
import { intervalDrawing } from '../../charts/interval-chart.ts';
import { pointDrawing } from '../../charts/point-map.ts';
import { areaText, areaUnit, dayText, grouped, percentText, rangeNumbers, type Units } from '../../quantities.ts';
import type { Figure, Inline, Part, Picture, Run, Table } from '../content.ts';
import { signed } from '../figures.ts';
import type { Reading } from '../reading.ts';
import { blockName } from './ranking-section.ts';

const SEASON_FILE = 'season --json';
const BLOCKS_DRAWN = 14;
const CHART_MM = 168;

/** Proper names of the formulas. */
const METHODS = {
  'henderson-tilton': 'Henderson–Tilton',
  abbott: 'Abbott',
  'sun-shepard': 'Sun–Shepard',
  'schneider-orelli': 'Schneider-Orelli',
} as const;

export function seasonSection(reading: Reading): readonly Part[] {
  const { words, season } = reading;
  const heading: Part = { part: 'heading', level: 2, text: words.follow.title };
  if (season === undefined) return [heading, { part: 'paragraph', text: [words.follow.none] }];
  const { before, after } = daysOf(season, reading);
  return [
    heading,
    { part: 'paragraph', text: [{ strong: `${words.follow.days(before, after)}. ` }, ...changeRun(reading, season)] },
    { part: 'paragraph', text: [severityLine(season, reading)] },
    changeTable(reading, season),
    changeChart(reading, season),
    ...efficacyParts(reading, season),
    ...spotParts(reading, season),
    { part: 'paragraph', text: [words.follow.caution], tone: 'quiet' },
  ];
}

function daysOf({ before, after }: SeasonReview, { language }: Reading) {
  return { before: dayText(before, language), after: dayText(after, language) };
}

/** The change of the town's stained area with its range, and what the range says of its direction. */
function changeRun({ words, units }: Reading, { total }: SeasonReview): Run {
  const { sentence } = words.follow;
  const change = changeFigure(total, units);
  const range = changeRange(total, units);
  const end: readonly Inline[] =
    range === null ? ['.'] : [sentence.range, range, sentence.close, spansZero(total) ? sentence.unsure : '', '.'];
  return [
    total.changeM2.value < 0 ? sentence.fell : sentence.rose,
    dayFigure(total, 'before', units),
    sentence.to,
    dayFigure(total, 'after', units),
    sentence.change,
    change,
    ...end,
  ];
}

const rowOf = ({ blockId }: BlockChange): string => blockId ?? 'total';

function dayFigure(change: BlockChange, day: 'before' | 'after', units: Units): Figure {
  const value = day === 'before' ? change.stainedBeforeM2 : change.stainedAfterM2;
  return {
    figure: areaText(value, units),
    from: [{ file: SEASON_FILE, row: rowOf(change), column: `stained_${day}_m2` }],
  };
}

/** The change with its sign and unit. */
export function changeFigure(change: BlockChange, units: Units): Figure {
  const { value } = change.changeM2;
  return {
    figure: `${value > 0 ? '+' : ''}${areaText(value, units)}`,
    from: [{ file: SEASON_FILE, row: rowOf(change), column: 'change_m2' }],
  };
}

export function changeRange(change: BlockChange, units: Units): Figure | null {
  const range = change.changeM2.range80;
  if (range === null) return null;
  return {
    figure: `${rangeNumbers(range, units)}\u00a0${areaUnit(units)}`,
    from: [0, 1].map((end) => ({ file: SEASON_FILE, row: rowOf(change), column: `change_range80_m2.${end}` })),
  };
}

function spansZero({ changeM2: { range80 } }: BlockChange): boolean {
  return range80 !== null && range80[0] <= 0 && range80[1] >= 0;
}

function severityLine({ total, treesFollowed }: SeasonReview, { words }: Reading): string {
  const { severityBefore, severityAfter } = total;
  if (severityBefore === null || severityAfter === null) return words.follow.noTrees;
  return words.follow.severity(grouped(treesFollowed), percentText(severityBefore), percentText(severityAfter));
}

function mostChanged({ blocks }: SeasonReview): readonly BlockChange[] {
  return blocks
    .toSorted((a, b) => Math.abs(b.changeM2.value) - Math.abs(a.changeM2.value))
    .slice(0, BLOCKS_DRAWN)
    .toSorted((a, b) => a.changeM2.value - b.changeM2.value);
}

const labelOf = (block: BlockChange, { words }: Reading): string =>
  block.blockId === null ? words.follow.noBlock : blockName({ blockId: block.blockId, name: block.name });

function changeTable(reading: Reading, season: SeasonReview): Table {
  const { words, units } = reading;
  const unit = areaUnit(units);
  const { follow } = words;
  const days = daysOf(season, reading);
  const perUnit = units === 'us' ? METRES_PER_FOOT ** 2 : 1;
  const number = (value: number, column: string, block: BlockChange, sign = false): Run => [
    {
      figure: sign ? signed(value / perUnit, 1) : grouped(value / perUnit, 1),
      from: [{ file: SEASON_FILE, row: rowOf(block), column }],
    },
  ];
  const rows = mostChanged(season).map((block): readonly Run[] => {
    const range = block.changeM2.range80;
    const traces = [0, 1].map((end) => ({ file: SEASON_FILE, row: rowOf(block), column: `change_range80_m2.${end}` }));
    return [
      [labelOf(block, reading)],
      number(block.stainedBeforeM2, 'stained_before_m2', block),
      number(block.stainedAfterM2, 'stained_after_m2', block),
      number(block.changeM2.value, 'change_m2', block, true),
      range === null ? ['–'] : [{ figure: rangeNumbers(range, units), from: traces }],
      [grouped(block.treesFollowed)],
    ];
  });
  const right = (title: string, weight = 1.2) => ({ title, align: 'right', weight }) as const;
  return {
    part: 'table',
    caption: follow.tableCaption(BLOCKS_DRAWN),
    columns: [
      { title: words.columns.block, align: 'left', weight: 3 },
      right(`${days.before}, ${unit}`),
      right(`${days.after}, ${unit}`),
      right(`${follow.change}, ${unit}`),
      right(`${words.range80}, ${unit}`, 1.5),
      right(follow.trees, 1),
    ],
    rows,
  };
}

function changeChart(reading: Reading, season: SeasonReview): Picture {
  const { words, units } = reading;
  const perUnit = units === 'us' ? METRES_PER_FOOT ** 2 : 1;
  const drawing = intervalDrawing(
    {
      title: words.follow.blocksCaption,
      description: `${words.follow.blocksCaption} ${season.title}, ${season.before}, ${season.after}.`,
      across: words.follow.blocksAcross(areaUnit(units)),
      anchor: 0,
      rows: mostChanged(season).map((block) => ({
        label: labelOf(block, reading),
        value: block.stainedAfterM2 / perUnit,
        before: block.stainedBeforeM2 / perUnit,
      })),
    },
    CHART_MM,
  );
  return { part: 'picture', drawing, caption: words.follow.blocksCaption };
}

function efficacyParts({ words }: Reading, { efficacy, title }: SeasonReview): readonly Part[] {
  const { follow } = words;
  if (efficacy === null) return [{ part: 'paragraph', text: [follow.efficacyNone] }];
  const { treated, untreated } = efficacy;
  const drawing = intervalDrawing(
    {
      title: follow.efficacyCaption,
      description: `${follow.efficacyCaption} ${title}.`,
      across: follow.efficacyAcross,
      anchor: 0,
      rows: efficacy.rows.map((row) => efficacyRow(row, follow.whyNot)),
    },
    CHART_MM,
  );
  const groups = follow.groups(
    grouped(treated.trees),
    [percentText(treated.before), percentText(treated.after)],
    grouped(untreated.trees),
    [percentText(untreated.before), percentText(untreated.after)],
  );
  return [
    { part: 'paragraph', text: [groups] },
    { part: 'picture', drawing, caption: follow.efficacyCaption },
  ];
}

function efficacyRow(row: EfficacyRow, whyNot: Readonly<Record<string, string>>) {
  const label = METHODS[row.method];
  if ('because' in row) return { label, value: null, instead: whyNot[row.because] ?? whyNot.other };
  const { estimate, interval } = row.result;
  return { label, value: 100 * estimate, outer: [100 * interval.lower, 100 * interval.upper] as const };
}

function spotParts({ words }: Reading, { spots, title, after }: SeasonReview): readonly Part[] {
  const { follow } = words;
  if (!spots.defined) return [{ part: 'paragraph', text: [follow.spotsNone] }];
  const map = {
    title: follow.spotsCaption,
    description: `${follow.spotsCaption} ${title}, ${after}.`,
    points: spots.value.map(({ x, y, spot }) => ({ x, y, spot: spot.spot })),
    words: follow.spotWords,
  };
  return [{ part: 'picture', drawing: pointDrawing(map, CHART_MM), caption: follow.spotsCaption }];
}
