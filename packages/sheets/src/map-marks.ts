/** What town map and block map have in common: results of an assessment as marks in the plane. */
import type { Assessment, BlockResult, PavementResult, TreeResult } from '@crownfall/assessment';
import { equalAreaPlane, type LocalPlane, type LonLatGeometry, type Region } from '@crownfall/geometry';
import type { GroundMark, Style } from './drawing.ts';
import type { Bounds } from './map-frame.ts';
import { MAP } from './palette.ts';

/** What else the project knows of the town; drawn below and between, never counted. */
export interface Surroundings {
  readonly water?: readonly LonLatGeometry[];
  readonly streets?: readonly { readonly name?: string; readonly lines: readonly Float64Array[] }[];
}

/** The plane of a map: equal-area, centred on the blocks. */
export function mapPlane(assessment: Assessment): LocalPlane {
  const rings = assessment.blocks.flatMap((block) => ringsOf(block.geometry));
  const trees = assessment.trees.map((tree) => Float64Array.of(tree.at.lon, tree.at.lat));
  const all = rings.length > 0 ? rings : trees;
  if (all.length === 0) throw new RangeError('map: expected blocks or trees to draw, got none');
  return equalAreaPlane(all);
}

export function regionOf(geometry: LonLatGeometry, plane: LocalPlane): Region {
  return ringsOf(geometry).map((ring) => plane.forward(ring));
}

/** A crown's fouling shows by darkness and rim, not by hue alone; a crown nobody rated has a dashed rim. */
function crownMark(tree: TreeResult, plane: LocalPlane, rimMm: number): GroundMark {
  const foul = tree.dose > 0;
  const dashed = tree.severityFrom === 'rating' ? {} : { dashMm: [rimMm * 4, rimMm * 3] };
  const style: Style = {
    fill: foul ? MAP.foulCrown : MAP.cleanCrown,
    opacity: foul ? 0.82 : 0.55,
    stroke: { colour: foul ? MAP.foulCrownRim : MAP.cleanCrownRim, widthMm: foul ? rimMm * 1.6 : rimMm, ...dashed },
  };
  return { mark: 'region', region: regionOf(tree.geometry, plane), style };
}

/** Fouling crowns last, so that none is hidden below a clean one. */
export function crownMarks(trees: readonly TreeResult[], plane: LocalPlane, rimMm: number): readonly GroundMark[] {
  const kind = (tree: TreeResult) => (tree.dose > 0 ? 2 : 0) + (tree.severityFrom === 'rating' ? 1 : 0);
  return trees.toSorted((a, b) => kind(a) - kind(b)).map((tree) => crownMark(tree, plane, rimMm));
}

const PAVEMENT_FILL: Readonly<Record<PavementResult['kind'], string>> = {
  carriageway: MAP.carriageway,
  parking: MAP.parking,
  driveway: MAP.walk,
  sidewalk: MAP.walk,
  path: MAP.walk,
  plaza: MAP.plaza,
  other: MAP.walk,
};

export function pavementMarks(
  pieces: readonly PavementResult[],
  plane: LocalPlane,
  rimMm: number,
): readonly GroundMark[] {
  const order = (piece: PavementResult) => PAVEMENT_FILL[piece.kind];
  return pieces
    .toSorted((a, b) => (order(a) < order(b) ? -1 : order(a) > order(b) ? 1 : 0))
    .map((piece) => ({
      mark: 'region',
      region: regionOf(piece.geometry, plane),
      style: {
        fill: PAVEMENT_FILL[piece.kind],
        opacity: piece.kind === 'plaza' ? 0.55 : 1,
        stroke: { colour: rimOf(piece), widthMm: rimMm },
      },
    }));
}

/** The seams between pieces of a street are no kerbs. */
function rimOf(piece: PavementResult): string {
  return piece.kind === 'carriageway' ? MAP.carriageway : MAP.kerb;
}

export function waterMarks(surroundings: Surroundings, plane: LocalPlane): readonly GroundMark[] {
  return (surroundings.water ?? [])
    .filter((geometry) => geometry.kind === 'area')
    .map((geometry) => ({ mark: 'region', region: regionOf(geometry, plane), style: { fill: MAP.water } }));
}

/** Where on the map names may stand: near `x`, `y`, and inside the bounds. */
export interface LabelRoom extends Bounds {
  readonly x: number;
  readonly y: number;
  /** Metres on the ground to a millimetre of paper. */
  readonly metresPerMm: number;
}

/** Each street's name once, along the piece of it that is nearest the middle of the room and clear of other names. */
export function streetNames(
  surroundings: Surroundings,
  plane: LocalPlane,
  room: LabelRoom,
  sizeMm: number,
): readonly GroundMark[] {
  const candidates = new Map<string, LabelPlace[]>();
  for (const { name, lines } of surroundings.streets ?? []) {
    if (name === undefined) continue;
    const places = lines.flatMap((line) => labelPlaces(plane.forward(line), room));
    candidates.set(name, [...(candidates.get(name) ?? []), ...places]);
  }
  const named = new Map<string, LabelPlace>();
  for (const [name, places] of candidates) {
    const free = (place: LabelPlace) =>
      [...named.entries()].every(([other, at]) => {
        // A letter is some 0.6 of its size wide; two turned names may meet at any angle.
        const apartM = (Math.max(name.length, other.length) / 2) * 0.6 * sizeMm * room.metresPerMm;
        return Math.hypot(at.x - place.x, at.y - place.y) > apartM;
      });
    const best = places.toSorted((p, q) => p.away - q.away).find(free);
    if (best !== undefined) named.set(name, best);
  }
  return [...named.entries()].map(([text, { x, y, turnDeg }]) => ({
    mark: 'label',
    x,
    y,
    text,
    style: { sizeMm, colour: MAP.quiet, anchor: 'middle', halo: '#ffffff', turnDeg, spread: 0.04 },
  }));
}

export interface LabelPlace {
  readonly x: number;
  readonly y: number;
  readonly turnDeg: number;
  /** From the middle of the room, m. */
  readonly away: number;
}

/** Name places lie this far apart along a street, m. */
const PLACE_STEP_M = 10;

/** Places along a line where a name may stand, all inside the room. */
export function labelPlaces(line: Float64Array, room: LabelRoom): readonly LabelPlace[] {
  const places: LabelPlace[] = [];
  for (let i = 0; i + 3 < line.length; i += 2) {
    const [dx, dy] = [line[i + 2] - line[i], line[i + 3] - line[i + 1]];
    const turnDeg = (Math.atan2(dy, dx) * 180) / Math.PI;
    const upright = turnDeg > 90 ? turnDeg - 180 : turnDeg <= -90 ? turnDeg + 180 : turnDeg;
    const steps = Math.max(1, Math.round(Math.hypot(dx, dy) / PLACE_STEP_M));
    for (let k = 0; k < steps; k++) {
      const t = (k + 0.5) / steps;
      const [x, y] = [line[i] + t * dx, line[i + 1] + t * dy];
      const inside = x > room.minX && x < room.maxX && y > room.minY && y < room.maxY;
      if (inside) places.push({ x, y, turnDeg: upright, away: Math.hypot(x - room.x, y - room.y) });
    }
  }
  return places;
}

export function blockOutline(block: BlockResult, plane: LocalPlane, widthMm: number): GroundMark {
  return {
    mark: 'region',
    region: regionOf(block.geometry, plane),
    style: { stroke: { colour: MAP.ink, widthMm } },
  };
}

function ringsOf(geometry: LonLatGeometry): readonly Float64Array[] {
  return geometry.kind === 'area' ? geometry.polygons.flat() : [];
}
