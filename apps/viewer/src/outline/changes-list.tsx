/** What was changed, newest first; what was undone stands pale above and can be redone. */
import type { Edit } from '../edits/edit.ts';
import type { Words } from '../language/words.ts';
import { useApp, useWords } from '../session/session.ts';

/** More are kept than are listed. */
const LISTED_MOST = 50;

export function ChangesList() {
  const { entries, done } = useApp((state) => state.history);
  const shared = useApp((state) => state.sharing !== null);
  const words = useWords();
  const newest = entries.map((entry, number) => ({ ...entry, number })).reverse();
  return (
    <details className="folded changes" open={entries.length > 0 && entries.length < 6}>
      <summary>
        {words.edits.title}
        {done > 0 ? (
          <span className="count">{shared ? words.edits.savedShared(done) : words.edits.saved(done)}</span>
        ) : null}
      </summary>
      {entries.length === 0 ? <p className="lead">{shared ? words.edits.noneShared : words.edits.none}</p> : null}
      <ol>
        {newest.slice(0, LISTED_MOST).map(({ at, edit, number }) => (
          <li key={number} data-undone={number >= done || undefined}>
            <span>{inWords(edit, words)}</span>
            <time dateTime={at}>{at.slice(11, 16)}</time>
          </li>
        ))}
      </ol>
    </details>
  );
}

function inWords(edit: Edit, { edits }: Words): string {
  switch (edit.kind) {
    case 'crown':
      if (!edit.after) return edits.noCrown(edit.treeId);
      return edit.before ? edits.crown(edit.treeId) : edits.newCrown(edit.treeId);
    case 'rating':
      return edits.rating(edit.treeId, `${edit.after.browned_pct ?? edit.after.defoliated_pct} %`);
    case 'weighing':
      return edit.after ? edits.weighing : edits.ownWeighing;
    case 'scenario':
      return edit.after ? edits.scenario(edit.after.name) : edits.noScenario(edit.before?.name ?? '');
  }
}
