/** All blocks in order of need, and the stained pavement by kind. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import type { PavementKind } from '@crownfall/survey';
import { areaText, areaUnit, grouped, percentText } from '../../quantities.ts';
import type { Column, Part, Run, Table } from '../content.ts';
import { blockRangeNumbers, blockShare, blockStainedNumber, kindArea, topShare } from '../figures.ts';
import type { Reading } from '../reading.ts';
import { blockReason } from './block-reason.ts';

/** Blocks that a report lists; the files hold all of them. */
const MOST_ROWS = 60;

export function rankingSection(reading: Reading): readonly Part[] {
  const { assessment, words, units } = reading;
  const { run, blocks, ledger } = assessment;
  const topN = run.settings.priority.top_n;
  const outside = ledger.filter(({ blockId }) => blockId === null);
  const outsideM2 = outside.reduce((sum, { stainedM2 }) => sum + stainedM2.value, 0);
  const intro = run.draws > 0 ? words.ranking.intro(topN, grouped(run.draws)) : words.ranking.introNoDraws;
  const more = blocks.length > MOST_ROWS ? words.ranking.more(grouped(blocks.length - MOST_ROWS)) : '';
  const missed = outsideM2 > 0 ? words.ranking.outside(areaText(outsideM2, units)) : '';
  const notes = [more, missed].filter((text) => text !== '');
  return [
    { part: 'heading', level: 2, text: words.ranking.title, newPage: true },
    { part: 'paragraph', text: [intro] },
    { ...blockTable(reading, blocks.slice(0, MOST_ROWS)), captionHidden: true },
    ...notes.map((text): Part => ({ part: 'paragraph', text: [text] })),
    ...shiftParts(reading),
    kindTable(reading, assessment),
  ];
}

function blockTable(reading: Reading, blocks: readonly BlockResult[]): Table {
  const { assessment, words, units } = reading;
  const { draws, settings } = assessment.run;
  const unit = areaUnit(units);
  const drawn = draws > 0;
  const columns: readonly (Column | null)[] = [
    { title: words.columns.rank, align: 'right', weight: 0.7 },
    { title: words.columns.block, align: 'left', weight: 3 },
    { title: `${words.columns.stained}, ${unit}`, align: 'right', weight: 1.1 },
    drawn ? { title: `${words.range80}, ${unit}`, align: 'right', weight: 1.5 } : null,
    { title: words.columns.share, align: 'right', weight: 1.15 },
    { title: words.columns.rated, align: 'right', weight: 1.2 },
    drawn ? { title: words.columns.top(settings.priority.top_n), align: 'right', weight: 1 } : null,
    { title: words.columns.why, align: 'left', weight: 4.4 },
  ];
  const rows = blocks.map((block): readonly (Run | null)[] => {
    const range = blockRangeNumbers(block, units);
    const firm = topShare(block);
    return [
      [String(block.rank)],
      [blockName(block)],
      [blockStainedNumber(block, units)],
      drawn ? [range ?? '–'] : null,
      [blockShare(block)],
      [`${grouped(block.treesRated)} / ${grouped(block.trees)}`],
      drawn ? [firm ?? '–'] : null,
      [blockReason(block, reading)],
    ];
  });
  return { part: 'table', caption: words.ranking.title, columns: present(columns), rows: rows.map(present) };
}

/** A block by its id and, where it has one, its name. */
export function blockName({ blockId, name }: Pick<BlockResult, 'blockId' | 'name'>): string {
  return name === null ? blockId : `${blockId} ${name}`;
}

function kindTable(reading: Reading, { ledger }: Assessment): Table {
  const { words, units } = reading;
  const kinds = [...new Set(ledger.map(({ kind }) => kind))];
  const unit = areaUnit(units);
  const column = (title: string): Column => ({ title: `${title}, ${unit}`, align: 'right', weight: 1 });
  const cells = ['pavement_m2', 'dripline_m2', 'fallout_m2', 'stained_m2'] as const;
  return {
    part: 'table',
    caption: words.ranking.kinds,
    columns: [
      { title: words.ranking.kind, align: 'left', weight: 1.4 },
      column(words.ranking.pavement),
      column(words.ranking.under),
      column(words.ranking.fallout),
      column(words.columns.stained),
    ],
    rows: kinds.map((kind: PavementKind) => [
      [words.kindNames[kind]],
      ...cells.map((name): Run => [kindArea(reading.assessment, kind, name, units)]),
    ]),
  };
}

/** How firm the first places are against the weights, each moved alone, the others in proportion. */
function shiftParts({ shifts = [], words, assessment }: Reading): readonly Part[] {
  if (shifts.length === 0) return [];
  const { shift } = words.ranking;
  const at = (crossing: (typeof shifts)[number]['down']): Run =>
    crossing === null ? ['–'] : [`${percentText(crossing.weight)} (${crossing.rival})`];
  return [
    {
      part: 'table',
      caption: shift.title(assessment.run.settings.priority.top_n),
      columns: [
        { title: shift.criterion, align: 'left', weight: 3 },
        { title: shift.now, align: 'right', weight: 1 },
        { title: shift.below, align: 'right', weight: 1.6 },
        { title: shift.above, align: 'right', weight: 1.6 },
      ],
      rows: shifts.map(({ criterion, weight, down, up }) => [
        [words.criteria[criterion]],
        [percentText(weight)],
        at(down),
        at(up),
      ]),
      note: [shift.note],
    },
  ];
}

function present<Each>(list: readonly (Each | null)[]): readonly Each[] {
  return list.filter((one) => one !== null);
}
