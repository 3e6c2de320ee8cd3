/** Drawing by keyboard alone: the map's middle is the cursor, or a chosen vertex moves. */
import type { KeyboardEvent } from 'react';
import {
  asksPicture,
  closable,
  closedUp,
  placed,
  reshaped,
  type Sketch,
  sketchUndone,
  vertexMoved,
  vertexRemoved,
} from '../outline/sketch.ts';
import { cancelDrawing, changeSketch, finishDrawing } from './drawing.ts';
import { hasPicture } from './picture.ts';
import { proposeAt } from './proposing.ts';
import type { Session } from './session.ts';

const STEP_PX = 12;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Takes the keys of drawing while there is a sketch; others pass. */
export function drawingKey(session: Session, event: KeyboardEvent): void {
  const { sketch } = session.store.get();
  if (!sketch || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.target instanceof HTMLInputElement || event.target instanceof HTMLButtonElement) return;
  const arrow = ARROWS[event.key];
  const done = arrow
    ? moved(session, sketch, arrow, event.shiftKey ? 1 : STEP_PX)
    : pressed(session, sketch, event.key);
  if (!done) return;
  event.preventDefault();
  event.stopPropagation();
}

function moved(session: Session, sketch: Sketch, [x, y]: readonly [number, number], stepPx: number): boolean {
  const { map } = session;
  if (!map) return false;
  const before = map.centre();
  map.panBy(x * stepPx, y * stepPx);
  if (sketch.vertex === null || sketch.tool !== 'polygon') return true;
  // A chosen vertex goes along with the map, so that it stays in sight.
  const after = map.centre();
  const at = sketch.vertices[sketch.vertex];
  const to = [at[0] + after[0] - before[0], at[1] + after[1] - before[1]] as const;
  changeSketch(session, reshaped(sketch, vertexMoved(sketch, sketch.vertex, to)));
  return true;
}

/** True when the key was one of drawing's. */
function pressed(session: Session, sketch: Sketch, key: string): boolean {
  const change = (next: Sketch): boolean => {
    changeSketch(session, next);
    return true;
  };
  switch (key) {
    case 'Enter':
      if (sketch.vertex !== null && sketch.closed) return change({ ...sketch, vertex: null });
      if (asksPicture(sketch)) return proposed(session);
      // Placed by keys, a vertex is not chosen: arrows move the cursor on.
      return session.map ? change({ ...placed(sketch, session.map.centre()), vertex: null }) : false;
    case 'Escape':
      if (sketch.vertex !== null) return change({ ...sketch, vertex: null });
      void cancelDrawing(session);
      return true;
    case 't':
    case 'T':
      return proposed(session);
    case 'f':
    case 'F':
      if (closable(sketch) && !sketch.closed) return change(closedUp(sketch));
      void finishDrawing(session);
      return true;
    case '[':
    case ']':
      return choose(session, sketch, key === ']' ? 1 : -1);
    case 'Backspace':
    case 'Delete':
      if (sketch.vertex !== null) return change(vertexRemoved(sketch, sketch.vertex));
      return sketch.closed ? false : change(sketchUndone(sketch));
    default:
      return false;
  }
}

/** Asks the picture at the cross. */
function proposed(session: Session): boolean {
  if (!session.map || !hasPicture(session.store.get())) return false;
  void proposeAt(session, session.map.centre());
  return true;
}

function choose(session: Session, sketch: Sketch, step: 1 | -1): boolean {
  const count = sketch.vertices.length;
  if (count === 0) return false;
  const vertex = ((((sketch.vertex ?? (step > 0 ? -1 : 0)) + step) % count) + count) % count;
  changeSketch(session, { ...sketch, vertex });
  session.map?.flyTo(sketch.vertices[vertex]);
  return true;
}
