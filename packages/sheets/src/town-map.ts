/** The map of the whole project: blocks coloured by stained pavement and numbered by rank, with crowns and pavement. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import { type LocalPlane, regionCentroid } from '@crownfall/geometry';
import type { Drawing, Frame, GroundMark, PaperMark, Style } from './drawing.ts';
import { crownLegend, grouped, northArrow, QUIET, SMALL, scaleBar, stainLegend } from './furniture.ts';
import { type Bounds, boundsOf, closeScale, fittingScale, middleOf } from './map-frame.ts';
import {
  blockOutline,
  crownMarks,
  mapPlane,
  pavementMarks,
  regionOf,
  type Surroundings,
  streetNames,
  waterMarks,
} from './map-marks.ts';
import { MAP, STAIN_RAMP, stainClass, stainHatch } from './palette.ts';

export interface TownMapOptions extends Surroundings {
  readonly widthMm?: number;
  readonly heightMm?: number;
  /** Blocks that get a rank number; all that are stained when absent. */
  readonly numbered?: number;
}

const HEAD_MM = 15;
const FOOT_MM = 23;
const MARGIN_MM = 5;

/**
 * The drawing list of the town map, to the largest round scale that fits the paper (240 × 170 mm when not given).
 * @throws RangeError when the assessment has neither blocks nor trees.
 */
export function townMap(assessment: Assessment, options: TownMapOptions = {}): Drawing {
  const { widthMm = 240, heightMm = 170 } = options;
  const frame = {
    leftMm: MARGIN_MM,
    topMm: HEAD_MM,
    widthMm: widthMm - 2 * MARGIN_MM,
    heightMm: heightMm - HEAD_MM - FOOT_MM,
  };
  const shown = shownTown(assessment, frame);
  const { bounds, scale } = shown;
  return {
    title: `${assessment.title}: blocks by stained pavement, season ${assessment.season}`,
    description: describe(assessment),
    paper: { widthMm, heightMm },
    frame,
    land: MAP.land,
    scale,
    centre: middleOf(bounds),
    ground: townGround(assessment, shown, options),
    onPaper: margin(assessment, frame, scale),
  };
}

/** Everything of the town that a map shows, in metres of the plane. */
export interface ShownTown {
  readonly plane: LocalPlane;
  readonly bounds: Bounds;
  readonly scale: number;
}

/** Where the town lies in its plane, and the scale at which it fits the frame: the largest round one, or any to 100. */
export function shownTown(assessment: Assessment, frame: Frame, scales: 'round' | 'any' = 'round'): ShownTown {
  const plane = mapPlane(assessment);
  const bounds = boundsOf([...assessment.blocks, ...assessment.trees].map((each) => regionOf(each.geometry, plane)));
  return { plane, bounds, scale: scales === 'round' ? fittingScale(bounds, frame, 0) : closeScale(bounds, frame) };
}

/** Blocks by stain, pavement, crowns, street names and the ranks of `numbered` blocks; the first ranks heavy and on top. */
export function townGround(
  assessment: Assessment,
  { plane, bounds, scale }: ShownTown,
  options: TownMapOptions,
): readonly GroundMark[] {
  const topN = assessment.run.settings.priority.top_n;
  const numbered = assessment.blocks.filter((block) => block.stainedM2.value > 0).slice(0, options.numbered);
  // From the last rank to the first, so that the foremost outlines and numbers lie on top.
  const lastFirst = assessment.blocks.toReversed();
  return [
    ...waterMarks(options, plane),
    ...lastFirst.map((block) => blockFill(block, plane)),
    ...pavementMarks(assessment.pavement, plane, 0.05),
    ...crownMarks(assessment.trees, plane, 0.08),
    ...lastFirst.map((block) => blockOutline(block, plane, block.rank <= topN ? 0.75 : 0.22)),
    ...streetNames(options, plane, { ...bounds, ...middleOf(bounds), metresPerMm: scale / 1000 }, 2.3),
    ...numbered.toReversed().map((block) => rankBadge(block, plane, topN)),
  ];
}

function blockFill(block: BlockResult, plane: LocalPlane): GroundMark {
  const index = stainClass(block.stainedM2.value);
  const hatch = stainHatch(index);
  const style: Style = { fill: STAIN_RAMP[index], ...(hatch === undefined ? {} : { hatch }) };
  return { mark: 'region', region: regionOf(block.geometry, plane), style };
}

function rankBadge(block: BlockResult, plane: LocalPlane, topN: number): GroundMark {
  const [x, y] = regionCentroid(regionOf(block.geometry, plane));
  const top = block.rank <= topN;
  return {
    mark: 'badge',
    x,
    y,
    radiusMm: top ? 3.4 : 2.4,
    text: String(block.rank),
    style: {
      fill: top ? MAP.ink : '#ffffff',
      opacity: top ? 1 : 0.9,
      stroke: { colour: MAP.ink, widthMm: top ? 0.3 : 0.2 },
    },
    textStyle: { sizeMm: top ? 4 : 2.7, weight: 'bold', colour: top ? '#ffffff' : MAP.ink },
  };
}

function margin(assessment: Assessment, frame: Frame, scale: number): readonly PaperMark[] {
  const { title, season, run, total, units } = assessment;
  const right = frame.leftMm + frame.widthMm;
  const foot = frame.topMm + frame.heightMm;
  const asOf = run.asOf === null ? '' : `, as of ${run.asOf}`;
  const sum = `${area(total.stainedM2.value, units)} of ${area(total.pavementM2, units)} pavement expected to show stain`;
  return [
    { mark: 'text', x: frame.leftMm, y: 6.4, text: title, style: { sizeMm: 4.8, weight: 'bold', colour: MAP.ink } },
    {
      mark: 'text',
      x: frame.leftMm,
      y: 11.6,
      text: `Blocks ranked by stained pavement · season ${season}${asOf}`,
      style: { ...SMALL, sizeMm: 3 },
    },
    { mark: 'text', x: right, y: 6.4, text: sum, style: { ...SMALL, sizeMm: 3, anchor: 'end' } },
    { mark: 'text', x: right, y: 11.6, text: calibrationWords(assessment), style: { ...QUIET, anchor: 'end' } },
    { mark: 'box', box: frame, style: { stroke: { colour: MAP.ink, widthMm: 0.3 } } },
    ...stainLegend(frame.leftMm, foot + 7, units),
    ...rankLegend(frame.leftMm, foot + 18.3, run.settings.priority.top_n),
    ...crownLegend(frame.leftMm + 92, foot + 5.4),
    ...scaleBar({ x: right - 74, y: foot + 8, roomMm: 56, scale, units }),
    ...northArrow(right - 5, foot + 4),
  ];
}

function rankLegend(x: number, y: number, topN: number): readonly PaperMark[] {
  const rim = { colour: MAP.ink, widthMm: 0.2 };
  return [
    { mark: 'disc', x: x + 1.8, y, radiusMm: 1.8, style: { fill: MAP.ink, stroke: rim } },
    { mark: 'text', x: x + 4.8, y: y + 0.9, text: `rank 1 to ${topN}, heavy outline`, style: SMALL },
    { mark: 'disc', x: x + 45, y, radiusMm: 1.6, style: { fill: '#ffffff', stroke: rim } },
    { mark: 'text', x: x + 47.8, y: y + 0.9, text: 'rank of other blocks', style: SMALL },
  ];
}

function calibrationWords({ run }: Assessment): string {
  const k = run.settings.dose_coefficient.toFixed(2);
  return run.calibrated
    ? `Dose coefficient fitted to quadrats (k = ${k})`
    : `Uncalibrated: dose coefficient assumed (k = ${k}); compare blocks, quote no single figure`;
}

function area(m2: number, units: 'metric' | 'us'): string {
  return units === 'metric' ? `${grouped(Math.round(m2))} m²` : `${grouped(Math.round(m2 / 0.3048 ** 2))} ft²`;
}

function describe(assessment: Assessment): string {
  const first = assessment.blocks.slice(0, 3).map((block) => `${block.rank}. ${block.name ?? block.blockId}`);
  return `Map of ${assessment.blocks.length} blocks and ${assessment.trees.length} crowns. First in rank: ${first.join('; ')}.`;
}
