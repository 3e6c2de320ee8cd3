/** Areas of intersection, pair by pair: the simplest question, answered without a sweep. */
import type { Region } from '../ring.ts';
import { BoxIndex, boxOf } from './box-index.ts';
import { Neighbourhood, ZONE } from './neighbourhood.ts';

/** Pairs that overlap, by piece, then crown. */
export interface PairAreas {
  readonly piece: readonly number[];
  readonly crown: readonly number[];
  readonly areaM2: readonly number[];
}

/**
 * Area of every crown over every pavement piece, m², overlaps of crowns not removed.
 *
 * Above a point of the x axis the inside of a region is Σ s·[y ≥ y_a] over its chains a with signs s, so the area common to two
 * regions is Σ Σ s_a s_b ∫ (T − max(y_a, y_b)) dx for any T above both. As Σ s_a = Σ s_b = 0 at each x, T falls out, and so
 * do all chains above the piece; of a chain below it only its sign matters. No topology, no order, continuous in the input.
 *
 * The regions must be proper: rings that do not cross or overlap, shells counter-clockwise, holes clockwise (as `cleanRegion`
 * makes them). Where a region winds twice, this area counts twice; {@link reckonOverlay} counts it once.
 *
 * @example
 * const square = [Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)];
 * pairAreas([square], [[Float64Array.of(1, 0, 3, 0, 3, 2, 1, 2)]]).areaM2; // [2]
 */
export function pairAreas(pieces: readonly Region[], crowns: readonly Region[]): PairAreas {
  const boxes = crowns.map(boxOf);
  const index = new BoxIndex(crowns.length, (i) => boxes[i]);
  const neighbourhood = new Neighbourhood();
  const pairs = { piece: [] as number[], crown: [] as number[], areaM2: [] as number[] };
  for (let piece = 0; piece < pieces.length; piece++) {
    if (!neighbourhood.begin(pieces[piece], piece)) {
      continue;
    }
    const own = neighbourhood.partCount;
    for (const crown of index.near(boxOf(pieces[piece]))) {
      if (neighbourhood.reaches(boxes[crown])) {
        neighbourhood.add(crowns[crown], { role: ZONE, number: crown, ring: 0 });
        const areaM2 = commonArea(neighbourhood, own);
        neighbourhood.forgetFrom(own);
        if (areaM2 > 0) {
          pairs.piece.push(piece);
          pairs.crown.push(crown);
          pairs.areaM2.push(areaM2);
        }
      }
    }
  }
  return pairs;
}

/** −Σ Σ s_a s_b ∫ max(y_a, y_b) dx over the first `own` parts and all others. */
function commonArea({ sign, partCount, firstVertex, xy }: Neighbourhood, own: number): number {
  let area = 0;
  for (let b = 0; b < own; b++) {
    for (let a = own; a < partCount; a++) {
      area -=
        sign[a] *
        sign[b] *
        integralOfUpper(xy, firstVertex[a], firstVertex[a + 1] - 1, firstVertex[b], firstVertex[b + 1] - 1);
    }
  }
  return area;
}

/** ∫ max of two chains over their common x, walking along both. Vertices `a … lastA` and `b … lastB` of `xy`. */
function integralOfUpper(xy: Float64Array, a: number, lastA: number, b: number, lastB: number): number {
  const end = Math.min(xy[2 * lastA], xy[2 * lastB]);
  let x = Math.max(xy[2 * a], xy[2 * b]);
  let integral = 0;
  while (x < end) {
    while (xy[2 * a + 2] <= x) a++;
    while (xy[2 * b + 2] <= x) b++;
    const slopeA = (xy[2 * a + 3] - xy[2 * a + 1]) / (xy[2 * a + 2] - xy[2 * a]);
    const slopeB = (xy[2 * b + 3] - xy[2 * b + 1]) / (xy[2 * b + 2] - xy[2 * b]);
    const until = Math.min(xy[2 * a + 2], xy[2 * b + 2], end);
    const startA = xy[2 * a + 1] + slopeA * (x - xy[2 * a]);
    const startB = xy[2 * b + 1] + slopeB * (x - xy[2 * b]);
    const endA = startA + slopeA * (until - x);
    const endB = startB + slopeB * (until - x);
    integral += (until - x) * meanOfUpper(startA, endA, startB, endB);
    x = until;
  }
  return integral;
}

/** Mean of the upper of two lines over a stretch, from their y at its start and end. */
function meanOfUpper(startA: number, endA: number, startB: number, endB: number): number {
  const before = startB - startA;
  const after = endB - endA;
  if (before <= 0 && after <= 0) {
    return (startA + endA) / 2;
  }
  if (before >= 0 && after >= 0) {
    return (startB + endB) / 2;
  }
  // They cross: the mean of A, and a triangle where B is above it.
  const most = Math.max(before, after);
  return (startA + endA) / 2 + (most * most) / (2 * Math.abs(after - before));
}
