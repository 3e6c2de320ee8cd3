/** Undo and redo of everything: in the sketch while one is drawn, else in the edits. */
import { redone, undone } from '../edits/history.ts';
import { sketchRedone, sketchUndone } from '../outline/sketch.ts';
import { changeSketch } from './drawing.ts';
import { moveTo } from './editing.ts';
import type { Session } from './session.ts';

export async function undo(session: Session): Promise<void> {
  const { sketch, history } = session.store.get();
  if (sketch && sketch.past.length > 0) return changeSketch(session, sketchUndone(sketch));
  await moveTo(session, undone(history));
}

export async function redo(session: Session): Promise<void> {
  const { sketch, history } = session.store.get();
  if (sketch && sketch.future.length > 0) return changeSketch(session, sketchRedone(sketch));
  await moveTo(session, redone(history));
}
