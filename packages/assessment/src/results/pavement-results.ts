/** Pieces of pavement as results. */
import { figuresAt } from '@crownfall/stain';
import type { Ground } from '../ground/ground.ts';
import type { PavementResult } from '../result.ts';
import type { Stain } from '../stain-stage.ts';

/** One result for each piece on the ground, in the order of the pavement layer. */
export function pavementResults(ground: Ground, stain: Stain): PavementResult[] {
  const home = homeBlocks(ground, stain);
  return ground.pavement.map(
    ({ pavement, geometry }, piece): PavementResult => ({
      ...figuresAt(stain.ledgers.byPiece, piece),
      pavementId: pavement.pavementId,
      kind: pavement.kind,
      surface: pavement.surface,
      blockId: home[piece] < 0 ? null : ground.blocks[home[piece]].blockId,
      geometry,
      extra: pavement.extra,
    }),
  );
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
