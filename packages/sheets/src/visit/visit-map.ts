/** The map of a visit sheet: true to scale, readable in black and white, no word over another. */
import type { Assessment, BlockResult } from '@crownfall/assessment';
import { falloutZone, type LocalPlane, type LonLatGeometry, type Region } from '@crownfall/geometry';
import type { Drawing, GroundMark, Hatch, PaperMark, Style } from '../drawing.ts';
import { northArrow } from '../furniture.ts';
import { type Bounds, boundsOf, fittingScale, meets, middleOf, shownBounds } from '../map-frame.ts';
import { blockOutline, pavementMarks, regionOf } from '../map-marks.ts';
import { MAP } from '../palette.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';
import { type LabelRoom, labelRoom } from './label-room.ts';
import { numberMarks } from './number-marks.ts';
import { streetNameMarks } from './street-name-marks.ts';
import type { Stop, VisitRecords } from './visit-stops.ts';
import type { VisitWords } from './visit-words.ts';
import { waterWays, wayMarks } from './water-ways.ts';

export interface VisitMapInput {
  readonly assessment: Assessment;
  readonly records: VisitRecords;
  readonly plane: LocalPlane;
  readonly block: BlockResult;
  readonly stops: readonly Stop[];
  readonly fonts: SheetFonts;
  readonly words: VisitWords;
  readonly units: 'metric' | 'us';
  /** A picture of the ground below the map. */
  readonly imagery?: Extract<GroundMark, { mark: 'image' }> | undefined;
}

/** Street beyond the block's outline that is shown, m. */
const AROUND_M = 3;
/** Chord tolerance of the fallout's edge, m. */
const CHORD_M = 0.05;

/** What of the ground a map of the given size shows, in the plane: where imagery is wanted. */
export function visitMapView(block: BlockResult, plane: LocalPlane, size: Size): { scale: number; bounds: Bounds } {
  const bounds = boundsOf([regionOf(block.geometry, plane)]);
  const scale = fittingScale(bounds, { leftMm: 0, topMm: 0, ...size }, AROUND_M);
  return { scale, bounds: shownBounds(middleOf(bounds), size, scale) };
}

export interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** The drawing of the block's map, `size` large, its paper no larger than its frame. */
export function visitMap(input: VisitMapInput, size: Size): Drawing {
  const { block, plane, stops, words } = input;
  const { scale, bounds } = visitMapView(block, plane, size);
  const drawing: Drawing = {
    title: words.map(block.blockId, `1 : ${scale}`),
    description: words.mapAbout(stops.length),
    paper: size,
    frame: { leftMm: 0, topMm: 0, ...size },
    land: '#ffffff',
    scale,
    centre: middleOf(bounds),
    ground: [],
    onPaper: [],
  };
  const room = labelRoom(size.widthMm, size.heightMm);
  const arrow = northCorner(size);
  room.take(cornersOf(arrow.box));
  const ground = groundMarks(input, bounds);
  const drains = drainMarks(input, drawing, bounds, room);
  const crowns = stops.map(({ region }) => boundsOf([region]));
  const ways = wayMarks(waterWays(input), drawing, { room, fonts: input.fonts, units: input.units });
  const names = streetNameMarks(input, drawing, { shown: bounds, avoid: crowns }, room);
  const numbers = numberMarks(stops, drawing, { room, fonts: input.fonts });
  const edge: PaperMark = {
    mark: 'box',
    box: drawing.frame,
    style: { stroke: { colour: MAP.ink, widthMm: 0.4 } },
  };
  return {
    ...drawing,
    ground: [...ground, ...ways, ...drains, ...names, ...numbers],
    onPaper: [...arrow.marks, edge],
  };
}

/** Samples for the legend, the same styles as on the map. */
export const VISIT_STYLES = {
  stains: {
    fill: '#b9aca2',
    opacity: 0.75,
    hatch: { colour: '#1e130d', widthMm: 0.18, gapMm: 1.1, crossed: true },
    stroke: { colour: '#000000', widthMm: 0.45 },
  },
  clean: { fill: '#dfe9dc', opacity: 0.6, stroke: { colour: '#3f5c40', widthMm: 0.25 } },
  unrated: { fill: '#ffffff', opacity: 0.6, stroke: { colour: '#000000', widthMm: 0.3, dashMm: [1.1, 0.8] } },
  fallout: { stroke: { colour: '#000000', widthMm: 0.2, dashMm: [0.25, 0.7] } },
  drain: {
    fill: '#ffffff',
    hatch: { colour: '#000000', widthMm: 0.2, gapMm: 0.7, crossed: false },
    stroke: { colour: '#000000', widthMm: 0.35 },
  },
  well: { fill: '#000000', stroke: { colour: '#ffffff', widthMm: 0.2 } },
  water: { fill: '#d8e6ee', hatch: { colour: '#4d7386', widthMm: 0.15, gapMm: 1.6, crossed: false } satisfies Hatch },
  edge: { stroke: { colour: '#000000', widthMm: 0.8 } },
} as const satisfies Readonly<Record<string, Style>>;

function groundMarks(
  { assessment, records, plane, block, stops, imagery }: VisitMapInput,
  shown: Bounds,
): readonly GroundMark[] {
  const inView = (mark: GroundMark) => mark.mark !== 'region' || meets(mark.region, shown);
  // Only what is near is projected: a map shows a hundredth of the town.
  const near = nearOf(shown, plane);
  const water = records.water
    .filter(({ kind }) => kind === 'water')
    .flatMap(({ geometry }) => areaMarks(geometry, plane));
  const pavement = pavementMarks(
    assessment.pavement.filter((piece) => near(piece) && !(imagery !== undefined && piece.kind === 'carriageway')),
    plane,
    0.12,
  ).map((mark) => onPicture(mark, imagery !== undefined));
  const own = new Set(stops.map(({ tree }) => tree.treeId));
  const others = assessment.trees
    .filter((tree) => !own.has(tree.treeId) && near(tree))
    .map(
      (tree): GroundMark => ({
        mark: 'region',
        region: regionOf(tree.geometry, plane),
        style: { stroke: { colour: '#8a837b', widthMm: 0.18 } },
      }),
    );
  const crowns = stops
    .toSorted((a, b) => Number(stains(a)) - Number(stains(b)))
    .map(
      (stop): GroundMark => ({
        mark: 'region',
        region: stop.region,
        style: VISIT_STYLES[stains(stop) ? 'stains' : stop.tree.severityFrom === 'rating' ? 'clean' : 'unrated'],
      }),
    );
  return [
    ...(imagery === undefined ? [] : [imagery, veil(shown)]),
    ...water.filter(inView),
    ...pavement.filter(inView),
    ...others.filter(inView),
    ...fallout(assessment, stops),
    ...crowns,
    ...assessment.blocks
      .filter((each) => each !== block && near(each))
      .map((each) => blockOutline(each, plane, 0.12))
      .filter(inView),
    blockOutline(block, plane, VISIT_STYLES.edge.stroke.widthMm),
  ];
}

/** Whether a geometry's box in degrees has anything in common with what is shown. */
function nearOf(
  { minX, minY, maxX, maxY }: Bounds,
  plane: LocalPlane,
): (each: { geometry: LonLatGeometry }) => boolean {
  const view = extentOf(plane.inverse(Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY)));
  return ({ geometry }) =>
    geometry.kind === 'area' &&
    geometry.polygons.some(([shell]) => {
      const own = extentOf(shell);
      return own.maxX > view.minX && own.minX < view.maxX && own.maxY > view.minY && own.minY < view.maxY;
    });
}

function extentOf(positions: Float64Array): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i + 1 < positions.length; i += 2) {
    minX = Math.min(minX, positions[i]);
    maxX = Math.max(maxX, positions[i]);
    minY = Math.min(minY, positions[i + 1]);
    maxY = Math.max(maxY, positions[i + 1]);
  }
  return { minX, minY, maxX, maxY };
}

function stains({ tree }: Stop): boolean {
  return tree.dose > 0;
}

/** The edge of what falls from crowns that stain. */
function fallout({ run }: Assessment, stops: readonly Stop[]): readonly GroundMark[] {
  const { drift_rings, wind } = run.settings;
  return stops.filter(stains).map(({ region }) => {
    const layers = falloutZone(region, drift_rings, CHORD_M, wind).layers;
    return { mark: 'region', region: layers[layers.length - 1], style: VISIT_STYLES.fallout };
  });
}

function areaMarks(geometry: LonLatGeometry, plane: LocalPlane): readonly GroundMark[] {
  if (geometry.kind !== 'area') return [];
  return [{ mark: 'region', region: regionOf(geometry, plane), style: VISIT_STYLES.water }];
}

/** Over a picture pavement shows by its edges alone. */
function onPicture(mark: GroundMark, picture: boolean): GroundMark {
  if (!picture || mark.mark !== 'region') return mark;
  return { ...mark, style: { stroke: { colour: '#ffffff', widthMm: 0.25 } } };
}

/** Pales the picture, so that lines and numbers stand out in print. */
function veil({ minX, minY, maxX, maxY }: Bounds): GroundMark {
  const region: Region = [Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY)];
  return { mark: 'region', region, style: { fill: '#ffffff', opacity: 0.4 } };
}

/** Half the side of a drain's square, mm. */
const DRAIN_MM = 1.1;

function drainMarks(
  { records, plane }: VisitMapInput,
  drawing: Drawing,
  shown: Bounds,
  room: LabelRoom,
): readonly GroundMark[] {
  return drainsIn(records, plane, shown).map(({ x, y, kind }) => {
    const half = (DRAIN_MM * drawing.scale) / 1000;
    const [left, top] = [
      drawing.frame.widthMm / 2 + ((x - drawing.centre.x) * 1000) / drawing.scale - DRAIN_MM,
      drawing.frame.heightMm / 2 - ((y - drawing.centre.y) * 1000) / drawing.scale - DRAIN_MM,
    ];
    room.take(cornersOf({ leftMm: left, topMm: top, widthMm: 2 * DRAIN_MM, heightMm: 2 * DRAIN_MM }));
    const square = Float64Array.of(x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half);
    return { mark: 'region', region: [square], style: VISIT_STYLES[kind] };
  });
}

/** Drains and wells that a map shows. */
export function drainsIn(
  { water }: VisitRecords,
  plane: LocalPlane,
  shown: Bounds,
): readonly { readonly x: number; readonly y: number; readonly kind: 'drain' | 'well' }[] {
  return water.flatMap(({ kind, geometry }) => {
    if (kind === 'water' || geometry.kind !== 'point') return [];
    const points = plane.forward(geometry.points);
    return Array.from({ length: points.length / 2 }, (_, i) => ({
      x: points[2 * i],
      y: points[2 * i + 1],
      kind,
    })).filter(({ x, y }) => x > shown.minX && x < shown.maxX && y > shown.minY && y < shown.maxY);
  });
}

function northCorner({ widthMm }: Size): { readonly box: Box; readonly marks: readonly PaperMark[] } {
  const box = { leftMm: widthMm - 8.5, topMm: 0, widthMm: 8.5, heightMm: 14 };
  const back: PaperMark = { mark: 'box', box, style: { fill: '#ffffff', stroke: { colour: MAP.ink, widthMm: 0.2 } } };
  return { box, marks: [back, ...northArrow(widthMm - 4.25, 1.5)] };
}

interface Box extends Size {
  readonly leftMm: number;
  readonly topMm: number;
}

function cornersOf({ leftMm: l, topMm: t, widthMm: w, heightMm: h }: Box): Float64Array {
  return Float64Array.of(l, t, l + w, t, l + w, t + h, l, t + h);
}
