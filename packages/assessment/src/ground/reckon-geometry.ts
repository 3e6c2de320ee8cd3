/** The geometry stage: everything placed on one plane and overlaid once. Nothing after it asks for a coordinate again. */
import {
  type CrownScene,
  equalAreaPlane,
  type Finding,
  type LocalPlane,
  type OverlayInput,
  type OverlayLedger,
  reckonOverlay,
  sceneInput,
} from '@crownfall/geometry';
import type { Settings, Survey } from '@crownfall/survey';
import { noProgress, type Progress } from '../progress.ts';
import { RegionLookup } from '../region-lookup.ts';
import { allPositions } from './all-positions.ts';
import type { Ground } from './ground.ts';
import { derived, type PlacedBlocks, placeBlocks } from './place-blocks.ts';
import { crownBoxes, falloutRecipe, type PlacedCrown, placeCrowns } from './place-crowns.ts';
import { type PlacedPavement, placePavement } from './place-pavement.ts';

/** Everything with its outline in the plane, before the overlay. */
export interface PlacedGround {
  readonly plane: LocalPlane;
  readonly crowns: readonly PlacedCrown[];
  readonly pieces: PlacedPavement;
  /** Square cells among them that hold no pavement are dropped once the overlay is known. */
  readonly candidates: PlacedBlocks;
  readonly findings: readonly Finding[];
}

/**
 * Places crowns, pavement and blocks on the survey's own equal-area plane and reckons the overlay ledger. Depends on the
 * settings of geometry (drift rings' reach, wind, tolerance, cells), not on ratings or weights. A survey without
 * crowns or pavement gives an empty ledger.
 */
export function reckonGeometry(survey: Survey, settings: Settings, progress: Progress = noProgress): Ground {
  const placed = placeGround(survey, settings, progress);
  progress('overlay', 0, 1);
  const overlay = reckonOverlay(overlayInput(placed, settings), (done, total) => progress('overlay', done, total));
  return groundOf(placed, overlay);
}

/** The first half of {@link reckonGeometry}: all outlines. */
export function placeGround(survey: Survey, settings: Settings, progress: Progress = noProgress): PlacedGround {
  const plane = equalAreaPlane(allPositions(survey));
  const { crowns, findings } = placeCrowns(survey.trees, plane, settings, progress);
  const pieces = placePavement(survey.pavement, plane, settings, progress);
  progress('blocks', 0, 1);
  const candidates = placeBlocks(survey, pieces.regions, plane, settings);
  progress('blocks', 1, 1);
  return { plane, crowns, pieces, candidates, findings };
}

export function overlayInput(placed: PlacedGround, settings: Settings): OverlayInput {
  return sceneInput(crownScene(placed, settings));
}

/** What the overlay is reckoned from, as plain regions that can be shared out among threads. */
export function crownScene({ crowns, pieces, candidates }: PlacedGround, settings: Settings): CrownScene {
  return {
    crowns: crowns.map(({ outline }) => outline),
    recipe: falloutRecipe(settings),
    pieces: pieces.regions,
    blocks: candidates.regions,
  };
}

/** The second half of {@link reckonGeometry}: what the later stages read. */
export function groundOf(placed: PlacedGround, overlay: OverlayLedger): Ground {
  const { plane, crowns, pieces, candidates } = placed;
  const { blocks, ledger } = withoutBareCells(candidates, overlay, plane);
  const lookup = new RegionLookup(blocks.regions);
  return {
    plane: plane.definition,
    crowns: crowns.map(({ outline: _outline, ...crown }) => ({ ...crown, block: holding(crown.tree.at) })),
    pavement: pieces.pavement,
    blocks: blocks.blocks,
    blocksFrom: blocks.from,
    ledger,
    near: { blocks: lookup, crownBoxes: crownBoxes(crowns), forward: plane.forward },
    findings: [...placed.findings, ...pieces.findings, ...candidates.findings],
  };

  function holding({ lon, lat }: { readonly lon: number; readonly lat: number }): number {
    const [x, y] = plane.forward([lon, lat]);
    return lookup.holding(x, y);
  }
}

/** Square cells are laid by boxes; those that turn out to hold no pavement are dropped and the rest numbered anew. */
function withoutBareCells(
  candidates: PlacedBlocks,
  overlay: OverlayLedger,
  plane: LocalPlane,
): { readonly blocks: PlacedBlocks; readonly ledger: OverlayLedger } {
  if (candidates.from !== 'cells') return { blocks: candidates, ledger: overlay };
  const number = new Int32Array(candidates.regions.length).fill(-1);
  for (const block of overlay.block) if (block >= 0) number[block] = 0;
  const kept = candidates.regions.filter((_, block) => number[block] === 0);
  let next = 0;
  for (let block = 0; block < number.length; block++) if (number[block] === 0) number[block] = next++;
  const block = overlay.block.map((was) => (was < 0 ? -1 : number[was]));
  return {
    blocks: { ...derived('cells', kept, plane), findings: candidates.findings },
    ledger: { ...overlay, block },
  };
}
