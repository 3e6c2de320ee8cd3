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
import type { Settings, Survey, Tree } from '@crownfall/survey';
import { noProgress, type Progress } from '../progress.ts';
import { RegionLookup } from '../region-lookup.ts';
import { allPositions } from './all-positions.ts';
import type { FixedGround, Ground, GroundCrown, Nearness } from './ground.ts';
import { derived, type PlacedBlocks, placeBlocks } from './place-blocks.ts';
import { falloutRecipe, type PlacedCrown, placeCrowns } from './place-crowns.ts';
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
  return groundOf(placed, survey.trees, overlay);
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
export function groundOf(placed: PlacedGround, trees: readonly Tree[], overlay: OverlayLedger): Ground {
  const { fixed, blockOf } = fixedGround(placed, overlay.block);
  const block = blockOf ? overlay.block.map((was) => (was < 0 ? -1 : blockOf[was])) : overlay.block;
  const position = new Map(trees.map((tree, index) => [tree, index]));
  return {
    ...fixed,
    crowns: placed.crowns.map((crown) => groundCrown(crown, fixed.near)),
    treeIndex: Int32Array.from(placed.crowns, ({ tree }) => position.get(tree) as number),
    ledger: { ...overlay, block },
    cellCount: overlay.cellCount,
  };
}

/**
 * What stays while crowns change, and the number of each candidate among the blocks; null: it is its own. Square cells are laid by
 * boxes; those that hold no pavement, of which the ledger names no `block`, are dropped and the rest numbered anew.
 */
export function fixedGround(
  { plane, pieces, candidates, findings }: PlacedGround,
  block: Iterable<number>,
): { readonly fixed: FixedGround; readonly blockOf: Int32Array | null } {
  const blockOf = candidates.from === 'cells' ? numbersOf(block, candidates.regions.length) : null;
  const kept = candidates.regions.filter((_, candidate) => blockOf === null || blockOf[candidate] >= 0);
  const blocks = blockOf ? derived('cells', kept, plane) : candidates;
  const fixed = {
    plane: plane.definition,
    pavement: pieces.pavement,
    blocks: blocks.blocks,
    blocksFrom: blocks.from,
    near: { blocks: new RegionLookup(blocks.regions), forward: plane.forward },
    findings: [...findings, ...pieces.findings, ...candidates.findings],
  };
  return { fixed, blockOf };
}

/** A crown with the block that its trunk stands in, and without its outline in the plane. */
export function groundCrown({ tree, crownM2, spreadM, geometry, box }: PlacedCrown, near: Nearness): GroundCrown {
  const [x, y] = near.forward([tree.at.lon, tree.at.lat]);
  return { tree, crownM2, spreadM, geometry, box, block: near.blocks.holding(x, y) };
}

/** Numbers in ascending order for those that occur, −1 for the others. */
function numbersOf(block: Iterable<number>, count: number): Int32Array {
  const numbers = new Int32Array(count).fill(-1);
  for (const each of block) if (each >= 0) numbers[each] = 0;
  let next = 0;
  for (let each = 0; each < count; each++) if (numbers[each] === 0) numbers[each] = next++;
  return numbers;
}
