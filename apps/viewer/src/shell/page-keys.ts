/** Keys that work everywhere on the page: undo and redo; on the outline bench those of rating. */
import { useEffect } from 'react';
import { withDigit, withLetter } from '../outline/rating-draft.ts';
import { startEditing } from '../session/drawing.ts';
import { hasPicture } from '../session/picture.ts';
import { proposeForTree, startFromPicture } from '../session/proposing.ts';
import { changeRating, goToUnrated, saveRating } from '../session/rating.ts';
import { type Session, useSession } from '../session/session.ts';
import { askOrTakeShare } from '../session/suggesting.ts';
import { redo, undo } from '../session/undoing.ts';

/** Digits that follow within this time belong together. */
const DIGITS_TOGETHER_MS = 1200;

export function usePageKeys(): void {
  const session = useSession();
  useEffect(() => {
    let lastDigit = 0;
    const listen = (event: KeyboardEvent): void => {
      if (event.defaultPrevented) return;
      if ((event.ctrlKey || event.metaKey) && /^[zy]$/i.test(event.key)) undoKey(event, session);
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      const done = ratingKey(event.key, session, event.timeStamp - lastDigit > DIGITS_TOGETHER_MS, event.target);
      if (/^\d$/.test(event.key)) lastDigit = event.timeStamp;
      if (done) event.preventDefault();
    };
    document.addEventListener('keydown', listen);
    return () => document.removeEventListener('keydown', listen);
  }, [session]);
}

function undoKey(event: KeyboardEvent, session: Session): void {
  if (isTyping(event.target)) return;
  event.preventDefault();
  const again = event.shiftKey || event.key.toLowerCase() === 'y';
  void (again ? redo(session) : undo(session));
}

/** True when the key was one of the rating's. */
function ratingKey(key: string, session: Session, fresh: boolean, target: EventTarget | null): boolean {
  const { bench, ratingDraft, sketch, editing } = session.store.get();
  if (bench !== 'outline' || sketch) return false;
  const letter = key.toLowerCase();
  if (letter === 'n' || letter === 'p') {
    void goToUnrated(session, letter === 'n' ? 1 : -1);
    return true;
  }
  if (hasPicture(session.store.get()) && editing.can === 'yes' && pictureKey(letter, session)) return true;
  if (!ratingDraft) return false;
  if (/^\d$/.test(key)) {
    changeRating(session, withDigit(ratingDraft, key, fresh));
    return true;
  }
  if (letter === 'e') return focusOn('rating-evidence');
  if (letter === 'o') {
    void startEditing(session);
    return true;
  }
  // What has the focus keeps its own Enter.
  if (key === 'Enter' && !(target instanceof Element && target.closest('button, summary, a, select'))) {
    void saveRating(session);
    return true;
  }
  const changed = withLetter(ratingDraft, letter);
  if (changed) changeRating(session, changed);
  return changed !== null;
}

/** T: an outline from the picture, of the chosen tree or a new one; I: the browned share, and once more to take it. */
function pictureKey(letter: string, session: Session): boolean {
  const { tree, treeId, ratingDraft } = session.store.get();
  if (letter === 't') {
    if (tree) void proposeForTree(session);
    else if (treeId === null) startFromPicture(session);
    return true;
  }
  if (letter !== 'i' || !ratingDraft) return false;
  askOrTakeShare(session);
  return true;
}

function focusOn(id: string): boolean {
  document.getElementById(id)?.focus();
  return true;
}

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  const isRange = target instanceof HTMLInputElement && /^(range|radio|checkbox|button)$/.test(target.type);
  return !isRange && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));
}
