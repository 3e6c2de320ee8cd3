/** Fallout zones made from crown outlines whenever the overlay asks for one, so that a city's drift rings are never all held. */
import { type DriftRing, falloutZone, type Wind } from '../offset/fallout-zone.ts';
import type { Region } from '../ring.ts';
import { boxOf } from './box-index.ts';
import type { Box, ZoneSource } from './ledger.ts';

/** What makes a fallout zone of an outline. */
export interface FalloutRecipe {
  readonly driftRings: readonly DriftRing[];
  readonly chordToleranceM: number;
  readonly wind: Wind;
}

/** Zones of `count` crowns; `outline(i)` must give the same coordinates each time. */
export function zonesFromCrowns(count: number, outline: (i: number) => Region, recipe: FalloutRecipe): ZoneSource {
  const { driftRings, chordToleranceM, wind } = recipe;
  // An arc's tangent polygon reaches beyond the arc by its tolerance, or at the very most by half the distance (a square).
  const reachM = 1.5 * (driftRings.at(-1)?.to_m ?? 0) + wind.distance_m + chordToleranceM;
  const known = new Float64Array(4 * count).fill(Number.NaN);
  return {
    count,
    box: (i) => boxKnown(known, i) ?? learnBox(known, i, boxOf(outline(i)), reachM),
    layers: (i) => falloutZone(outline(i), driftRings, chordToleranceM, wind).layers,
  };
}

function boxKnown(known: Float64Array, i: number): Box | null {
  const minX = known[4 * i];
  return Number.isNaN(minX) ? null : { minX, minY: known[4 * i + 1], maxX: known[4 * i + 2], maxY: known[4 * i + 3] };
}

function learnBox(known: Float64Array, i: number, outline: Box, reachM: number): Box {
  const box = {
    minX: outline.minX - reachM,
    minY: outline.minY - reachM,
    maxX: outline.maxX + reachM,
    maxY: outline.maxY + reachM,
  };
  known.set([box.minX, box.minY, box.maxX, box.maxY], 4 * i);
  return box;
}
