/** Undo and redo, each saying whether there is anything to go to. */
import { Button } from 'react-aria-components';
import { useApp, useSession, useWords } from '../session/session.ts';
import { redo, undo } from '../session/undoing.ts';
import { Sign } from './sign.tsx';

export function UndoButtons() {
  const session = useSession();
  const words = useWords();
  const canUndo = useApp(({ sketch, history }) => (sketch?.past.length ?? 0) > 0 || history.done > 0);
  const canRedo = useApp(({ sketch, history }) => {
    return (sketch?.future.length ?? 0) > 0 || history.done < history.entries.length;
  });
  return (
    <div className="undo">
      <Button
        className="sign-button"
        aria-label={words.edits.undo}
        isDisabled={!canUndo}
        onPress={() => void undo(session)}
      >
        <Sign name="undo" />
      </Button>
      <Button
        className="sign-button"
        aria-label={words.edits.redo}
        isDisabled={!canRedo}
        onPress={() => void redo(session)}
      >
        <Sign name="redo" />
      </Button>
    </div>
  );
}
