/** The whole invented town, the same each time. */
import { type TownBlock, townBlocks } from './blocks.ts';
import { type Grounds, groundsOf } from './grounds.ts';
import { type PavementPiece, townPavement } from './pavement.ts';
import { type TownTree, townTrees } from './trees.ts';

export interface Town {
  readonly blocks: readonly TownBlock[];
  readonly grounds: readonly Grounds[];
  readonly pavement: readonly PavementPiece[];
  readonly trees: readonly TownTree[];
}

export function builtTown(): Town {
  const blocks = townBlocks();
  const grounds = blocks.map(groundsOf);
  const built = blocks.map((block, i) => [block, grounds[i]] as const);
  return { blocks, grounds, pavement: townPavement(built), trees: townTrees(built) };
}
