/** What is not as recorded: the tree is gone, or it is another species. Records stay; the desk decides. */
import { blockTrees, goBack, useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { packOf } from '../doing/walk-state.ts';
import { changeStop } from '../doing/walking.ts';
import { Chips, ScreenHead } from '../parts/parts.tsx';

/** As many as a thumb looks through. */
const HOSTS_OFFERED = 8;
/** A host that is not among those of the project: the note says which. */
const OTHER = 'other';

export function ProblemScreen() {
  const walk = useWalk();
  const words = useWords();
  const { problem, rate } = words;
  const treeId = useShown((state) => state.treeId ?? '');
  const stop = useShown((state) => state.stop);
  const recorded = useShown((state) => blockTrees(state).find((tree) => tree.treeId === state.treeId)?.host ?? null);
  const known = useShown((state) => packOf(state)?.hosts ?? NONE);
  const hosts = [...known.filter((host) => host !== recorded).slice(0, HOSTS_OFFERED), OTHER];
  const hostWords = Object.fromEntries(hosts.map((host) => [host, host === OTHER ? problem.otherHost : host]));
  return (
    <main className="screen">
      <ScreenHead title={problem.title(treeId)} />
      <button
        type="button"
        className="chip wide"
        aria-pressed={stop?.notFound ?? false}
        onClick={() => void changeStop(walk, { notFound: !(stop?.notFound ?? false) })}
      >
        {problem.notFound}
      </button>
      <p className="hint">{problem.notFoundWhy}</p>
      <h2>{problem.wrong}</h2>
      <p className="hint">{problem.recorded(recorded ?? words.tree.noHost)}</p>
      <Chips
        label={problem.seen}
        of={hosts}
        words={hostWords}
        value={stop?.hostSeen ?? null}
        choose={(hostSeen) => void changeStop(walk, { hostSeen })}
      />
      {stop?.hostSeen === OTHER ? <p className="warn">{problem.other}</p> : null}
      <label className="field">
        <span>{problem.note}</span>
        <textarea
          rows={3}
          maxLength={2000}
          value={stop?.note ?? ''}
          onChange={({ target }) => void changeStop(walk, { note: target.value })}
        />
      </label>
      <div className="thumb-bar">
        <button type="button" className="main wide" onClick={goBack}>
          {rate.done}
        </button>
      </div>
    </main>
  );
}

const NONE: readonly string[] = [];
