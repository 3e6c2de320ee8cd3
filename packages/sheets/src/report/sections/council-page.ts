/** The first page, for those who have a minute: three figures with their ranges, the map, what is planned, what is left. */
import type { BlockResult } from '@crownfall/assessment';
import { areaUnit, dayText, grouped } from '../../quantities.ts';
import type { KeyFigure, KeyFigures, Part, Run, Table } from '../content.ts';
import {
  blockRange,
  blockRangeNumbers,
  blockStained,
  blockStainedNumber,
  shareOfBlocks,
  totalPavement,
  totalRange,
  totalShare,
  totalShareRange,
  totalStained,
} from '../figures.ts';
import { councilMap } from '../maps/council-map.ts';
import { PLAN_WORDS, planAvoids, planAvoidsRange, planReading } from '../plan-reading.ts';
import type { Reading } from '../reading.ts';
import { blockReason } from './block-reason.ts';
import { planLead, planPage } from './plan-page.ts';
import { blockName } from './ranking-section.ts';
import { changeFigure, changeRange } from './season-section.ts';

/** Blocks that the first page lists when no plan says what to do. */
const FIRST_BLOCKS = 5;
/** Of the text's width, the map; the three figures stand beside it. */
const MAP_SHARE = 0.64;

export interface PageRoom {
  readonly widthMm: number;
  readonly mapHeightMm: number;
  /** Blocks with work that the page names; the rest stand further on. */
  readonly rows: number;
}

export function councilPage(reading: Reading, room: PageRoom): readonly Part[] {
  const { words, assessment } = reading;
  const first = assessment.blocks.slice(0, FIRST_BLOCKS);
  const topN = assessment.run.settings.priority.top_n;
  const planned = planReading(reading);
  const besideRoom = { ...room, widthMm: MAP_SHARE * room.widthMm };
  return [
    {
      part: 'paragraph',
      text: [...leadRun(reading, first, planned === null), ...(planned ? planLead(planned) : [])],
      tone: 'lead',
    },
    {
      ...keyFigures(reading),
      beside: { part: 'picture', drawing: councilMap(reading, besideRoom), caption: words.council.mapCaption(topN) },
    },
    ...(assessment.run.calibrated ? [] : [uncalibratedNotice(reading)]),
    ...whatNext(reading, first, room.rows),
  ];
}

/** The plan and what it leaves; without one the foremost blocks, and what it means that nobody planned. */
function whatNext(reading: Reading, first: readonly BlockResult[], rows: number): readonly Part[] {
  const planned = planReading(reading);
  if (planned !== null) return planPage(planned, rows);
  const why = reading.plan === undefined ? reading.words.council.noPlan : PLAN_WORDS[reading.language].none;
  return [firstBlocksTable(reading, first), { part: 'paragraph', text: [why], tone: 'quiet' }];
}

/** What is stained, and, unless a plan goes on from here, how it gathers in few blocks. */
function leadRun(reading: Reading, first: readonly BlockResult[], alone: boolean): Run {
  const { words, assessment, units } = reading;
  const { lead } = words.council;
  return [
    lead.before,
    totalStained(assessment, units),
    lead.of,
    totalShare(assessment, 'pavement'),
    lead.share,
    totalPavement(assessment, units),
    ...(alone ? [lead.after, grouped(first.length), lead.blocks, shareOfBlocks(assessment, first), lead.end] : ['.']),
  ];
}

/** The foremost blocks in few columns; the ranking further on has all. */
function firstBlocksTable(reading: Reading, blocks: readonly BlockResult[]): Table {
  const { words, units, assessment } = reading;
  const unit = areaUnit(units);
  const drawn = assessment.run.draws > 0;
  const range = drawn ? [{ title: `${words.range80}, ${unit}`, align: 'right', weight: 1.6 } as const] : [];
  return {
    part: 'table',
    caption: words.council.firstBlocks(blocks.length),
    columns: [
      { title: words.columns.rank, align: 'right', weight: 0.7 },
      { title: words.columns.block, align: 'left', weight: 4.6 },
      { title: `${words.columns.stained}, ${unit}`, align: 'right', weight: 1.2 },
      ...range,
      { title: words.columns.why, align: 'left', weight: 4.6 },
    ],
    rows: blocks.map((block): readonly Run[] => [
      [String(block.rank)],
      [blockName(block)],
      [blockStainedNumber(block, units)],
      ...(drawn ? [[blockRangeNumbers(block, units) ?? '–']] : []),
      [blockReason(block, reading)],
    ]),
  };
}

function uncalibratedNotice({ words, assessment }: Reading): Part {
  const k = grouped(assessment.run.settings.dose_coefficient, 2);
  return { part: 'notice', title: words.uncalibratedTitle, lines: [[words.uncalibratedLine(k)]] };
}

function keyFigures(reading: Reading): KeyFigures {
  const { assessment, words, units } = reading;
  const planned = planReading(reading);
  const withRange = (range: KeyFigure['range']) => ({ range, rangeLabel: range ? words.range80 : words.noRange });
  return {
    part: 'key-figures',
    figures: [
      {
        label: words.council.stained,
        figure: totalStained(assessment, units),
        ...withRange(totalRange(assessment, units)),
      },
      planned === null
        ? {
            label: words.council.shareOfFallout,
            figure: totalShare(assessment, 'fallout'),
            ...withRange(totalShareRange(assessment)),
          }
        : {
            label: planned.planWords.avoids,
            figure: planAvoids(planned.plan, units),
            ...withRange(planAvoidsRange(planned.plan, units)),
          },
      thirdFigure(reading, withRange),
    ],
  };
}

/** The change since the earlier day where a follow-up is given, else the first block. */
function thirdFigure(
  { assessment, season, words, units, language }: Reading,
  withRange: (range: KeyFigure['range']) => Pick<KeyFigure, 'range' | 'rangeLabel'>,
): KeyFigure {
  if (season !== undefined) {
    return {
      label: words.council.changed(dayText(season.before, language)),
      figure: changeFigure(season.total, units),
      ...withRange(changeRange(season.total, units)),
    };
  }
  const [first] = assessment.blocks;
  return {
    label: words.council.firstBlock(first.blockId),
    figure: blockStained(first, units),
    ...withRange(blockRange(first, units)),
  };
}
