/** The map of a block to be treated: its treated crowns, water, drains and wells, the distances between and those to keep. */
import type { TreeResult } from '@crownfall/assessment';
import {
  chainsOf,
  closedChains,
  groundWithin,
  type LocalPlane,
  type NearestPair,
  nearestPair,
  type Region,
} from '@crownfall/geometry';
import type { WaterFeature } from '@crownfall/survey';
import type { Drawing, Frame, GroundMark, PaperMark, Style } from '../../drawing.ts';
import { northArrow, scaleBar } from '../../furniture.ts';
import { boundsOf, closeScale, meets, middleOf, shownBounds } from '../../map-frame.ts';
import { blockOutline, mapPlane, pavementMarks, regionOf } from '../../map-marks.ts';
import { MAP } from '../../palette.ts';
import { lengthText } from '../../quantities.ts';
import type { PlanReading } from '../plan-reading.ts';
import { blockName } from '../sections/ranking-section.ts';

const FOOT_MM = 11;
/** Ground about the treated crowns that is shown: at least the distances to keep must be seen. */
const AROUND_M = 12;
/** Lines with a distance on them; the table has all. */
const MOST_LINES = 8;
const CHORD_M = 0.05;
const SIGN_MM = 1.1;

const STYLES = {
  keep: { fill: '#d9b7a0', opacity: 0.4, stroke: { colour: MAP.ink, widthMm: 0.2, dashMm: [1, 0.8] } },
  water: { fill: MAP.water, stroke: { colour: MAP.waterInk, widthMm: 0.25 } },
  drain: { fill: '#ffffff', stroke: { colour: MAP.ink, widthMm: 0.45 } },
  well: { fill: MAP.ink, stroke: { colour: '#ffffff', widthMm: 0.2 } },
  treated: { fill: MAP.foulCrown, opacity: 0.82, stroke: { colour: MAP.foulCrownRim, widthMm: 0.3 } },
  other: { fill: MAP.cleanCrown, opacity: 0.35, stroke: { colour: MAP.cleanCrownRim, widthMm: 0.15 } },
  line: { stroke: { colour: MAP.ink, widthMm: 0.35 } },
} as const satisfies Readonly<Record<string, Style>>;

/** The drawing list; null when the block has no treated tree. */
export function waterMap(
  reading: PlanReading,
  blockId: string,
  { widthMm, heightMm }: { readonly widthMm: number; readonly heightMm: number },
): Drawing | null {
  const { assessment, plan, planWords, units } = reading;
  const block = assessment.blocks.find((each) => each.blockId === blockId);
  const ids = new Set(plan.treated.filter((tree) => tree.blockId === blockId).map(({ treeId }) => treeId));
  if (block === undefined || ids.size === 0) return null;
  const plane = mapPlane(assessment);
  const treated = assessment.trees.filter(({ treeId }) => ids.has(treeId));
  const around = boundsOf([regionOf(block.geometry, plane), ...treated.map((tree) => regionOf(tree.geometry, plane))]);
  const bounds = {
    minX: around.minX - AROUND_M,
    minY: around.minY - AROUND_M,
    maxX: around.maxX + AROUND_M,
    maxY: around.maxY + AROUND_M,
  };
  const frame: Frame = { leftMm: 0, topMm: 0, widthMm, heightMm: heightMm - FOOT_MM };
  const scale = closeScale(bounds, frame);
  const shown = shownBounds(middleOf(bounds), frame, scale);
  const inView = (mark: GroundMark) => mark.mark !== 'region' || meets(mark.region, shown);
  const lines = waterLines(reading, treated, plane);
  return {
    title: planWords.waterMap(blockName(block)),
    description: lines
      .map(({ tree, kind, pair }) => `${tree}: ${planWords.kinds[kind]} ${lengthText(pair.distanceM, units)}`)
      .join('; '),
    paper: { widthMm, heightMm },
    frame,
    land: MAP.land,
    scale,
    centre: middleOf(bounds),
    ground: [
      ...pavementMarks(assessment.pavement, plane, 0.1),
      ...keepMarks(reading, plane),
      ...featureMarks(reading, plane, scale),
      ...crownsOf(assessment.trees, ids, plane),
      blockOutline(block, plane, 0.6),
      ...lines.map(({ pair }) => lineMark(pair)),
      ...labelMarks(lines, scale, units),
    ].filter(inView),
    onPaper: margin(frame, scale, units),
  };
}

interface WaterLine {
  readonly tree: string;
  readonly kind: WaterFeature['kind'];
  readonly pair: NearestPair;
}

/** From each treated crown to the nearest of what is mapped; the shortest lines. */
function waterLines({ records }: PlanReading, treated: readonly TreeResult[], plane: LocalPlane): readonly WaterLine[] {
  const features = (records?.water ?? []).map(({ kind, geometry }) => ({
    kind,
    chains: chainsOf(geometry, plane.forward),
  }));
  const lines = treated.flatMap((tree): WaterLine[] => {
    const crown = closedChains(regionOf(tree.geometry, plane));
    const near = features.flatMap(({ kind, chains }): WaterLine[] => {
      const pair = nearestPair(crown, chains);
      return pair === null ? [] : [{ tree: tree.treeId, kind, pair }];
    });
    return near.sort((a, b) => a.pair.distanceM - b.pair.distanceM).slice(0, 1);
  });
  return lines.sort((a, b) => a.pair.distanceM - b.pair.distanceM).slice(0, MOST_LINES);
}

/** The ground within the distance to keep of each feature, where one is stated for its kind. */
function keepMarks({ records, plan }: PlanReading, plane: LocalPlane): readonly GroundMark[] {
  return (records?.water ?? []).flatMap(({ kind, geometry }): readonly GroundMark[] => {
    const keepM = plan.settings.keep_off_m[kind] ?? 0;
    return groundWithin(geometry, keepM, plane, CHORD_M).map((region) => ({
      mark: 'region',
      region,
      style: STYLES.keep,
    }));
  });
}

/** Water as it lies; drains and wells as signs of one size on paper. */
function featureMarks({ records }: PlanReading, plane: LocalPlane, scale: number): readonly GroundMark[] {
  const half = (SIGN_MM * scale) / 1000;
  return (records?.water ?? []).flatMap(({ kind, geometry }): readonly GroundMark[] => {
    const style = STYLES[kind];
    if (geometry.kind === 'area') return [{ mark: 'region', region: regionOf(geometry, plane), style }];
    const chains = chainsOf(geometry, plane.forward);
    if (geometry.kind === 'line') return chains.map((line) => ({ mark: 'line', line: line, style }));
    return chains.map(([x, y]) => ({ mark: 'region', region: sign(x, y, half), style }));
  });
}

const sign = (x: number, y: number, half: number): Region => [
  Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half),
];

function crownsOf(
  trees: readonly TreeResult[],
  treated: ReadonlySet<string>,
  plane: LocalPlane,
): readonly GroundMark[] {
  return trees
    .toSorted((a, b) => Number(treated.has(a.treeId)) - Number(treated.has(b.treeId)))
    .map(({ treeId, geometry }) => ({
      mark: 'region',
      region: regionOf(geometry, plane),
      style: treated.has(treeId) ? STYLES.treated : STYLES.other,
    }));
}

function lineMark({ from, to }: NearestPair): GroundMark {
  return { mark: 'line', line: Float64Array.of(...from, ...to), style: STYLES.line };
}

/** Room that a distance takes on paper, mm. */
const LABEL_MM = { width: 11, height: 3.4 };

/** The distance in the middle of its line, the shortest first; none over another: the table has them all. */
function labelMarks(lines: readonly WaterLine[], scale: number, units: PlanReading['units']): readonly GroundMark[] {
  const placed: (readonly [number, number])[] = [];
  const mmOf = (metres: number) => (Math.abs(metres) * 1000) / scale;
  return lines.flatMap(({ pair: { from, to, distanceM } }): GroundMark[] => {
    const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const hidden = placed.some(([px, py]) => mmOf(px - x) < LABEL_MM.width && mmOf(py - y) < LABEL_MM.height);
    if (hidden) return [];
    placed.push([x, y]);
    const style = { sizeMm: 2.6, weight: 'bold', colour: MAP.ink, anchor: 'middle', halo: '#ffffff' } as const;
    return [{ mark: 'label', x, y, text: lengthText(distanceM, units), style }];
  });
}

function margin({ widthMm, heightMm }: Frame, scale: number, units: PlanReading['units']): readonly PaperMark[] {
  return [
    {
      mark: 'box',
      box: { leftMm: 0, topMm: 0, widthMm, heightMm },
      style: { stroke: { colour: MAP.ink, widthMm: 0.25 } },
    },
    ...scaleBar({ x: 1, y: heightMm + 5, roomMm: 46, scale, units }),
    ...northArrow(widthMm - 4, heightMm + 0.6),
  ];
}
