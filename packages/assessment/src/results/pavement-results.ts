/** Pieces of pavement as results. */
import { figuresAt } from '@crownfall/stain';
import type { Ground } from '../ground/ground.ts';
import type { PavementResult } from '../result.ts';
import type { Stain } from '../stain-stage.ts';
import { saysTheSame } from './kept.ts';

/** One result for each piece on the ground, in the order of the pavement layer; those as they were `before` are the same objects. */
export function pavementResults(
  ground: Ground,
  stain: Stain,
  before: readonly PavementResult[] = [],
): PavementResult[] {
  const home = homeBlocks(ground, stain);
  return ground.pavement.map(({ pavement, geometry }, piece): PavementResult => {
    const { pavementM2, driplineM2, falloutM2, stainedM2 } = figuresAt(stain.ledgers.byPiece, piece);
    const fresh = {
      pavementM2,
      driplineM2,
      falloutM2,
      stainedM2,
      pavementId: pavement.pavementId,
      kind: pavement.kind,
      surface: pavement.surface,
      blockId: home[piece] < 0 ? null : ground.blocks[home[piece]].blockId,
      geometry,
      extra: pavement.extra,
    };
    return saysTheSame(before[piece], fresh) ? before[piece] : fresh;
  });
}

/** The block that holds most of each piece (the first listed of equals), −1 when none holds any of it. */
function homeBlocks({ pavement }: Ground, { ledgers: { runs } }: Stain): Int32Array {
  const home = new Int32Array(pavement.length).fill(-1);
  const most = new Float64Array(pavement.length);
  runs.piece.forEach((piece, run) => {
    const areaM2 = runs.areas.pavementM2[run];
    if (runs.block[run] < 0 || areaM2 <= most[piece]) return;
    most[piece] = areaM2;
    home[piece] = runs.block[run];
  });
  return home;
}
