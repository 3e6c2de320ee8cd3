/** One pavement piece from its neighbours to its cells. Holds the working memory, which is reused from piece to piece. */
import { CoverStates } from './cover-states.ts';
import { Neighbourhood } from './neighbourhood.ts';
import { cellsOfPiece, NO_CELLS, type PieceCells } from './piece-cells.ts';
import type { Scene } from './scene.ts';
import { areaByStateInSlabs } from './slabs.ts';
import { Sweep } from './sweep.ts';

/** When the sweep itself cannot vouch for a piece to this bound, the plain twin decides it. */
const DOUBT_LIMIT_M2 = 1e-10;

export class PieceReckoner {
  private readonly states = new CoverStates();
  private readonly neighbourhood = new Neighbourhood();
  private readonly sweep = new Sweep();

  cells(scene: Scene, piece: number): PieceCells {
    const { states, neighbourhood, sweep } = this;
    if (!scene.gather(piece, neighbourhood)) {
      return NO_CELLS;
    }
    states.reset();
    sweep.run(neighbourhood, states);
    const vouched = sweep.doubtM2 <= DOUBT_LIMIT_M2;
    const areas = vouched ? sweep.areas.subarray(0, states.count) : areaByStateInSlabs(neighbourhood, states);
    return cellsOfPiece(neighbourhood.layers, states, areas);
  }
}
