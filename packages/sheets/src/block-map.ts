/** The map of one block: its pavement, its crowns with their numbers, its neighbours greyed by their outline only. */
import type { Assessment, BlockResult, TreeResult } from '@crownfall/assessment';
import { type LocalPlane, regionCentroid } from '@crownfall/geometry';
import type { Drawing, Frame, GroundMark, PaperMark } from './drawing.ts';
import { crownLegend, northArrow, QUIET, SMALL, scaleBar } from './furniture.ts';
import { type Bounds, boundsOf, fittingScale, meets, middleOf, shownBounds } from './map-frame.ts';
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
import { MAP } from './palette.ts';

export interface BlockMapOptions extends Surroundings {
  readonly widthMm?: number;
  readonly heightMm?: number;
  /** The number printed on a crown; the last four characters of the tree's id when absent. */
  readonly numberOf?: (tree: TreeResult) => string;
}

const HEAD_MM = 14;
const FOOT_MM = 20;
const MARGIN_MM = 5;
/** Street beyond the block's outline that is shown, m. */
const AROUND_M = 8;

/**
 * The drawing list of one block's map, to the largest round scale that fits the paper (190 × 190 mm when not given).
 * @throws RangeError when no block has the id, with the ids that exist.
 */
export function blockMap(assessment: Assessment, blockId: string, options: BlockMapOptions = {}): Drawing {
  const block = assessment.blocks.find((each) => each.blockId === blockId);
  if (block === undefined) {
    const known = assessment.blocks.map((each) => each.blockId).join(', ');
    throw new RangeError(`blockMap: expected the id of a block (${known}), got ${blockId}`);
  }
  const { widthMm = 190, heightMm = 190 } = options;
  const plane = mapPlane(assessment);
  const frame = {
    leftMm: MARGIN_MM,
    topMm: HEAD_MM,
    widthMm: widthMm - 2 * MARGIN_MM,
    heightMm: heightMm - HEAD_MM - FOOT_MM,
  };
  const bounds = boundsOf([regionOf(block.geometry, plane)]);
  const scale = fittingScale(bounds, frame, AROUND_M);
  return {
    title: `Block ${block.name ?? block.blockId}, rank ${block.rank}`,
    description: `${block.trees} trees, ${block.treesRated} rated; ${block.stainedM2.value.toFixed(0)} m² of pavement expected to show stain.`,
    paper: { widthMm, heightMm },
    frame,
    land: MAP.land,
    scale,
    centre: middleOf(bounds),
    ground: groundMarks(
      assessment,
      { block, plane, scale, shown: shownBounds(middleOf(bounds), frame, scale) },
      options,
    ),
    onPaper: margin(assessment, block, frame, scale),
  };
}

interface Subject {
  readonly block: BlockResult;
  readonly plane: LocalPlane;
  readonly scale: number;
  readonly shown: Bounds;
}

function groundMarks(assessment: Assessment, subject: Subject, options: BlockMapOptions): readonly GroundMark[] {
  const { block, plane, scale, shown } = subject;
  const visible = (mark: GroundMark) => mark.mark !== 'region' || meets(mark.region, shown);
  const number = options.numberOf ?? ((tree: TreeResult) => tree.treeId.slice(-4));
  const numbers = assessment.trees
    .filter((tree) => tree.blockId === block.blockId)
    .map((tree) => crownNumber(tree, plane, number(tree)));
  return [
    ...waterMarks(options, plane),
    ...pavementMarks(assessment.pavement, plane, 0.1).filter(visible),
    ...crownMarks(assessment.trees, plane, 0.18).filter(visible),
    ...assessment.blocks
      .filter((each) => each !== block)
      .map((each) => blockOutline(each, plane, 0.15))
      .filter(visible),
    blockOutline(block, plane, 0.8),
    ...streetNames(options, plane, { ...shown, ...middleOf(shown), metresPerMm: scale / 1000 }, 3),
    ...numbers,
  ];
}

function crownNumber(tree: TreeResult, plane: LocalPlane, text: string): GroundMark {
  const [x, y] = regionCentroid(regionOf(tree.geometry, plane));
  const foul = tree.dose > 0;
  const colours = foul ? { colour: '#ffffff', halo: MAP.foulCrownRim } : { colour: MAP.ink, halo: '#ffffff' };
  return { mark: 'label', x, y, text, style: { sizeMm: 2.6, weight: 'bold', anchor: 'middle', ...colours } };
}

function margin(assessment: Assessment, block: BlockResult, frame: Frame, scale: number): readonly PaperMark[] {
  const right = frame.leftMm + frame.widthMm;
  const foot = frame.topMm + frame.heightMm;
  const heading = `${block.blockId} · ${block.name ?? ''}`.replace(/ · $/, '');
  const facts = `Rank ${block.rank} of ${assessment.blocks.length} · ${block.stainedM2.value.toFixed(0)} m² of ${block.pavementM2.toFixed(0)} m² pavement expected to show stain · ${block.treesRated} of ${block.trees} trees rated`;
  return [
    { mark: 'text', x: frame.leftMm, y: 6, text: heading, style: { sizeMm: 4.6, weight: 'bold', colour: MAP.ink } },
    { mark: 'text', x: frame.leftMm, y: 11, text: facts, style: SMALL },
    {
      mark: 'text',
      x: right,
      y: 6,
      text: `${assessment.title}, ${assessment.season}`,
      style: { ...QUIET, anchor: 'end' },
    },
    { mark: 'box', box: frame, style: { stroke: { colour: MAP.ink, widthMm: 0.3 } } },
    ...crownLegend(frame.leftMm, foot + 5),
    ...scaleBar({ x: right - 76, y: foot + 7, roomMm: 58, scale, units: assessment.units }),
    ...northArrow(right - 5, foot + 4),
  ];
}
