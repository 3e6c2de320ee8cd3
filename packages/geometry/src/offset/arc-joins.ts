/**
 * How an arc of an offset becomes vertices.
 */
export type ArcJoins =
  /** Tangent polyline outside the arc: the offset never falls short of the distance, and exceeds it by at most the tolerance. */
  | { readonly kind: 'tangent'; readonly chordToleranceM: number }
  /** Chords inside the arc, `segmentsPerQuadrant` to a quarter turn, both ends on the arc: as many other programs draw it. */
  | { readonly kind: 'inscribed'; readonly segmentsPerQuadrant: number };

/** Widest turn taken by one vertex, however coarse the tolerance: the mitre then reaches √2 times the distance. */
const WIDEST_TURN = Math.PI / 2;

/** Greatest turn (radians) that one chord or one mitre vertex may take at this distance. */
export function turnPerVertex(joins: ArcJoins, distanceM: number): number {
  if (joins.kind === 'inscribed') return Math.PI / 2 / joins.segmentsPerQuadrant;
  return Math.min(WIDEST_TURN, 2 * Math.acos(distanceM / (distanceM + joins.chordToleranceM)));
}

/** Checks a distance and its joins at a door. */
export function checkJoins(joins: ArcJoins, distanceM: number): void {
  if (!(distanceM >= 0 && Number.isFinite(distanceM))) {
    throw new RangeError(`expected a distance from 0 m upwards, got ${distanceM}`);
  }
  if (joins.kind === 'tangent' && !(joins.chordToleranceM > 0)) {
    throw new RangeError(`expected a chord tolerance above 0 m, got ${joins.chordToleranceM}`);
  }
  if (joins.kind === 'inscribed' && !(Number.isInteger(joins.segmentsPerQuadrant) && joins.segmentsPerQuadrant > 0)) {
    throw new RangeError(`expected a whole number of segments per quadrant, got ${joins.segmentsPerQuadrant}`);
  }
}
