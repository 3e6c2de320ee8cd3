/** Makes one crown of the chosen one and a neighbour: two outlines over one tree. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useApp, useSession, useWords } from '../session/session.ts';
import { mergeCrown, neighboursOf } from '../session/splitting.ts';

export function MergeForm({ treeId }: { readonly treeId: string }) {
  const session = useSession();
  useApp((state) => state.layers);
  const { outline: words } = useWords();
  const [chosen, setChosen] = useState('');
  const near = neighboursOf(session, treeId);
  if (near.length === 0) return null;
  const other = near.includes(chosen) ? chosen : near[0];
  return (
    <details className="merge">
      <summary>{words.merge}</summary>
      <p className="lead">{words.mergeLead(treeId)}</p>
      <div className="inline-form">
        <label className="field">
          {words.mergeWith}
          <select value={other} onChange={(event) => setChosen(event.target.value)}>
            {near.map((id) => (
              <option key={id}>{id}</option>
            ))}
          </select>
        </label>
        <Button className="button" onPress={() => void mergeCrown(session, other)}>
          {words.mergeNow}
        </Button>
      </div>
    </details>
  );
}
