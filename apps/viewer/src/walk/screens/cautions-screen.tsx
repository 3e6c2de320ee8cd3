/** What to beware of, before the first tree of a block. */
import { useState } from 'react';
import { useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { packOf } from '../doing/walk-state.ts';
import { cautionsRead } from '../doing/walking.ts';
import { ScreenHead } from '../parts/parts.tsx';
import { RaterField } from './settings-screen.tsx';

export function CautionsScreen() {
  const walk = useWalk();
  const words = useWords();
  const name = useShown((state) => packOf(state)?.figures.name ?? state.blockId ?? '');
  const rater = useShown((state) => state.rater);
  const [asks] = useState(rater === '');
  return (
    <main className="screen">
      <ScreenHead title={words.cautions.title} />
      <p className="lead">{name}</p>
      <ol className="cautions">
        {words.cautions.items.map(([title, text]) => (
          <li key={title}>
            <h2>{title}</h2>
            <p>{text}</p>
          </li>
        ))}
      </ol>
      {asks ? <RaterField /> : null}
      <div className="thumb-bar">
        <button
          type="button"
          className="main wide"
          disabled={rater.trim() === ''}
          onClick={() => void cautionsRead(walk)}
        >
          {words.cautions.start}
        </button>
      </div>
    </main>
  );
}
