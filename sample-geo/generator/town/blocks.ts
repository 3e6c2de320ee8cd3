/** A block: its face, the loop of its property line, and how wide its sidewalks and planting strips are. */
import { randomFor } from '../random.ts';
import { type Face, faces, type Use } from './faces.ts';
import { type Corner, inset, type Loop, type Point, roundedLoop, straightNearCorners } from './loop.ts';
import { PROMENADE, STREETS } from './streets.ts';

export interface TownBlock {
  readonly id: string;
  readonly use: Use;
  /** To the middle of the streets, to the far kerb at the town's edge, to the seawall at the water. */
  readonly face: readonly Corner[];
  /** The face without the promenade. */
  readonly roadFace: readonly Corner[];
  /** The property line; sidewalk from 0 to `sidewalk` outside it, planting strip from there to the kerb. */
  readonly loop: Loop;
  readonly sidewalk: number;
  readonly verge: number;
  readonly kerb: number;
}

/** Streets at the town's edge belong whole to the blocks along them. */
const EDGE_STREETS: readonly string[] = ['R0', 'R5', 'C0', 'C8'];
const PROPERTY_CORNER_RADIUS = 2.5;

export function townBlocks(): readonly TownBlock[] {
  const random = randomFor('blocks');
  return faces().map((face, i) => townBlock(face, `B${String(i + 1).padStart(2, '0')}`, random.between(0, 1)));
}

function townBlock({ corners, use }: Face, id: string, width: number): TownBlock {
  const busy = use === 'shops' || use === 'plaza';
  const sidewalk = busy ? 3.2 + width * 1.4 : 1.7 + width * 0.7;
  const verge = busy ? 0 : 1.6 + width * 0.8;
  const kerb = sidewalk + verge;
  // The sharp corners at the diagonal reach far into the block.
  const reach = corners.some((corner) => corner.street === 'D') ? 70 : 26;
  const line = inset(straightNearCorners(corners, reach), (street) => middleToKerb(street) + kerb);
  return {
    id,
    use,
    face: corners,
    roadFace: inset(seawallStraightNearCorners(corners), (street) => (street === 'R0' ? PROMENADE : 0)),
    loop: roundedLoop(line, PROPERTY_CORNER_RADIUS),
    sidewalk,
    verge,
    kerb,
  };
}

/** Other edges keep every bend: the neighbour shares them. */
function seawallStraightNearCorners(face: readonly Corner[]): readonly Corner[] {
  const kept = straightNearCorners(face, PROMENADE + 2);
  return face.filter((corner) => corner.street !== 'R0' || kept.includes(corner));
}

/** From the face's edge to the kerb. */
function middleToKerb(street: string): number {
  const { width } = STREETS[street];
  return (EDGE_STREETS.includes(street) ? width : width / 2) + (street === 'R0' ? PROMENADE : 0);
}

/** The corners of a face where one street ends and the next begins, and the chain of vertices from each to the next. */
export function chains(
  face: readonly Corner[],
): readonly { readonly street: string; readonly points: readonly Point[] }[] {
  const starts = face.flatMap((corner, i) =>
    face[(i + face.length - 1) % face.length].street === corner.street ? [] : [i],
  );
  return starts.map((start, k) => {
    const end = starts[(k + 1) % starts.length];
    const count = ((end - start + face.length) % face.length) + 1;
    const points = Array.from({ length: count }, (_, i) => face[(start + i) % face.length].at);
    return { street: face[start].street, points };
  });
}
