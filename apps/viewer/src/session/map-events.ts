/** What pointing at the map does. */
import type { MapEvents } from '../map/town-map.ts';
import {
  asksPicture,
  closedUp,
  type Position,
  placed,
  reshapedSince,
  type Shape,
  shapeOf,
  vertexInserted,
  vertexMoved,
  vertexRemoved,
} from '../outline/sketch.ts';
import { changeSketch, chooseBlock, chooseTree } from './drawing.ts';
import { proposeAt } from './proposing.ts';
import type { Session } from './session.ts';

export function mapEvents(session: Session): MapEvents {
  const { store } = session;
  let start: Shape | null = null;
  const sketch = () => store.get().sketch;
  return {
    drawing: () => sketch() !== null,
    placed: (at) => {
      const now = sketch();
      if (!now) return;
      if (asksPicture(now)) void proposeAt(session, at);
      else changeSketch(session, placed(now, at));
    },
    vertexTapped: (index) => {
      const now = sketch();
      if (!now) return;
      // The first point, tapped again, closes the outline.
      if (index === 0 && !now.closed && now.vertices.length >= 3) changeSketch(session, closedUp(now));
      else changeSketch(session, { ...now, vertex: index });
    },
    vertexRemoved: (index) => {
      const now = sketch();
      if (now) changeSketch(session, vertexRemoved(now, index));
    },
    dragStarted: () => {
      const now = sketch();
      start = now && shapeOf(now);
    },
    dragged: (index, to) => {
      const now = sketch();
      if (!now || !start) return;
      const part = index === null ? { trunk: to } : vertexMoved(now, index, to);
      changeSketch(session, reshapedSince(now, start, part));
    },
    dropped: () => {
      start = null;
    },
    inserted: (after: number, at: Position) => {
      const now = sketch();
      if (now) changeSketch(session, vertexInserted(now, after, at));
      return after + 1;
    },
    blockClicked: (blockId) => chooseBlock(session, blockId),
    treeClicked: (treeId) => void chooseTree(session, treeId),
    viewMoved: (mapView) => store.change({ mapView }),
    viewMoving: (view) => session.beside?.jumpTo(view),
  };
}
