/** Crowns on the ground: outlines in the plane, areas, and the fallout zones made from them when the overlay asks. */
import {
  crownOutline,
  crownShapeInPlane,
  type FalloutRecipe,
  type Finding,
  type LocalPlane,
  meanSpread,
  type Region,
  regionArea,
  type ZoneSource,
  zonesFromCrowns,
} from '@crownfall/geometry';
import type { Settings, Tree } from '@crownfall/survey';
import { lonLatArea } from '../lonlat-area.ts';
import { counted, type Progress } from '../progress.ts';
import { boundsOf } from '../region-lookup.ts';
import { drawnArea, tidied } from './drawn-area.ts';
import type { GroundCrown } from './ground.ts';

/** A crown before its block is known, with its outline in the plane. */
export interface PlacedCrown extends Omit<GroundCrown, 'block'> {
  readonly outline: Region;
}

export interface PlacedCrowns {
  readonly crowns: readonly PlacedCrown[];
  readonly findings: readonly Finding[];
}

/** Outlines all crowns, m in the plane. A crown without a usable outline is left out, with a finding. */
export function placeCrowns(
  trees: readonly Tree[],
  plane: LocalPlane,
  settings: Pick<Settings, 'chord_tolerance_m'>,
  progress: Progress,
): PlacedCrowns {
  const crowns: PlacedCrown[] = [];
  const findings: Finding[] = [];
  for (const [, tree] of counted('crowns', trees, progress)) {
    const where = { layer: 'crowns', feature: tree.treeId };
    const { crown } = tree;
    const drawn = crown.from === 'polygon' ? drawnArea(crown.polygons, plane, where) : null;
    const shape = drawn ? { from: 'polygon' as const, region: drawn.region } : crownShapeInPlane(crown, plane);
    const read = drawn ?? crownOutline(shape, { chordToleranceM: settings.chord_tolerance_m });
    for (const finding of read.findings) findings.push({ ...finding, where: { ...where, ...finding.where } });
    const outline = tidied(read.region);
    if (outline.length === 0) continue;
    const crownM2 = regionArea(outline);
    crowns.push({
      tree,
      crownM2,
      spreadM: drawn ? 2 * Math.sqrt(crownM2 / Math.PI) : meanSpread(shape),
      geometry: drawn?.geometry ?? lonLatArea(outline, plane.inverse),
      box: boundsOf(outline),
      outline,
    });
  }
  return { crowns, findings };
}

/** Fallout zones by crown, made anew each time one is asked for, so that they are never all in memory. */
export function zonesOf(crowns: readonly PlacedCrown[], settings: FalloutSettings): ZoneSource {
  return zonesFromCrowns(crowns.length, (i) => crowns[i].outline, falloutRecipe(settings));
}

type FalloutSettings = Pick<Settings, 'drift_rings' | 'wind' | 'chord_tolerance_m'>;

/** How the settings make fallout zones of outlines. */
export function falloutRecipe({ drift_rings, wind, chord_tolerance_m }: FalloutSettings): FalloutRecipe {
  return { driftRings: drift_rings, wind, chordToleranceM: chord_tolerance_m };
}
