/** What was sent and what waits; two versions side by side where there are two. */
import type { Visit } from '@crownfall/exchange';
import { useEffect, useState } from 'react';
import { send, visitsAsFile } from '../doing/sending.ts';
import { useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { photosWaiting, visitsWaiting } from '../doing/walk-state.ts';
import { decideDiffering, isBegun, noteOtherSeen, saveBegun } from '../doing/walking.ts';
import { ScreenHead } from '../parts/parts.tsx';
import { visitLine } from '../parts/stop-words.ts';
import type { QueuedVisit } from '../sync/queue.ts';

/** The newest; all are on the device. */
const LISTED = 40;

export function QueueScreen() {
  const walk = useWalk();
  const { queue } = useWords();
  const waiting = useShown(visitsWaiting);
  const photos = useShown(photosWaiting);
  const begun = useShown((state) => state.begun.filter(isBegun).length);
  const sending = useShown((state) => state.sending);
  const notSent = useShown((state) => state.notSent);
  const takes = useTakesVisits();
  return (
    <main className="screen">
      <ScreenHead title={queue.title} />
      <p className="lead" role="status">
        {waiting + photos === 0 ? queue.nothing : queue.waiting(waiting, photos)}
      </p>
      {begun > 0 ? (
        <div className="warn">
          <p>{queue.begun(begun)}</p>
          <button type="button" className="plain wide" onClick={() => void saveBegun(walk)}>
            {queue.saveBegun}
          </button>
        </div>
      ) : null}
      {takes ? null : <p className="warn">{queue.notTaken}</p>}
      {notSent === '' || !takes ? null : (
        <div className="warn" role="status">
          <p>{queue.noServer}</p>
          <p className="hint">{notSent}</p>
          <a className="plain" href="/log-in/">
            {queue.logIn}
          </a>
        </div>
      )}
      <Conflicts />
      <List />
      <div className="thumb-bar">
        {takes ? (
          <button
            type="button"
            className="main wide"
            disabled={sending || waiting + photos === 0}
            onClick={() => void send(walk)}
          >
            {sending ? queue.sending : queue.send}
          </button>
        ) : null}
        {waiting > 0 ? <GiveOut /> : null}
      </div>
    </main>
  );
}

/** As the server said when it was last reached. */
function useTakesVisits(): boolean {
  const { database } = useWalk();
  const project = useShown((state) => state.project);
  const source = useShown((state) => state.source);
  const [takes, setTakes] = useState(true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is noted changes with the source
  useEffect(() => {
    void database.fact<boolean>(`takes-visits:${project}`).then((noted) => setTakes(noted ?? true));
  }, [database, project, source]);
  return takes;
}

function GiveOut() {
  const walk = useWalk();
  const { queue } = useWords();
  const give = (): void => {
    const file = visitsAsFile(walk);
    const link = document.createElement('a');
    link.href = URL.createObjectURL(file);
    link.download = file.name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };
  return (
    <button type="button" className="plain" onClick={give}>
      {queue.file}
    </button>
  );
}

function Conflicts() {
  const walk = useWalk();
  const { queue } = useWords();
  const visits = useShown((state) => state.visits);
  const others = useShown((state) => state.others);
  const seen = useShown((state) => state.seenOthers);
  const differing = visits.filter(({ state }) => state === 'differs');
  const fresh = others.filter(({ visitId }) => !seen.has(visitId));
  if (differing.length + fresh.length === 0) return null;
  return (
    <section className="conflicts" aria-labelledby="conflicts-title">
      <h2 id="conflicts-title">{queue.conflicts}</h2>
      {differing.map((queued) => (
        <article key={queued.visitId} className="card column">
          <p>{queue.sameId}</p>
          <Versions yours={queued.visit} theirs={queued.theirs} />
          <div className="button-row">
            <button type="button" className="plain" onClick={() => void decideDiffering(walk, queued, 'both')}>
              {queue.keepBoth}
            </button>
            <button type="button" className="plain" onClick={() => void decideDiffering(walk, queued, 'leave')}>
              {queue.leave}
            </button>
          </div>
        </article>
      ))}
      {fresh.map((theirs) => {
        const yours = visits.find(({ visit }) => visit.treeId === theirs.treeId)?.visit ?? null;
        return (
          <article key={theirs.visitId} className="card column">
            <p>{queue.bothVisited(String(theirs.treeId))}</p>
            <Versions yours={yours} theirs={theirs} />
            <p className="hint">{queue.bothKept}</p>
            <button type="button" className="plain" onClick={() => void noteOtherSeen(walk, theirs.visitId)}>
              {queue.seenIt}
            </button>
          </article>
        );
      })}
    </section>
  );
}

function Versions({ yours, theirs }: { readonly yours: Visit | null; readonly theirs: Visit | null }) {
  const words = useWords();
  const { queue } = words;
  return (
    <dl className="versions">
      {[[queue.yours, yours] as const, [queue.theirs, theirs] as const].map(([name, visit]) =>
        visit ? (
          <div key={name}>
            <dt>
              {name}{' '}
              <span className="hint">{queue.at(visit.visitedOn.slice(0, 16).replace('T', ' '), visit.visitor)}</span>
            </dt>
            <dd>{visitLine(visit, words)}</dd>
          </div>
        ) : null,
      )}
    </dl>
  );
}

function List() {
  const words = useWords();
  const visits = useShown((state) => state.visits);
  const photos = useShown((state) => state.photos);
  const refused = photos.find(({ state }) => state === 'refused');
  return (
    <>
      {refused ? <p className="warn">{words.queue.photoRefused(refused.why)}</p> : null}
      <ul className="visit-list">
        {visits.slice(0, LISTED).map((queued) => (
          <Row key={queued.visitId} queued={queued} />
        ))}
      </ul>
    </>
  );
}

function Row({ queued }: { readonly queued: QueuedVisit }) {
  const words = useWords();
  const { visit, state, why } = queued;
  return (
    <li>
      <strong>{visit.treeId}</strong>
      <span className="state" data-state={state}>
        {words.queue.states[state]}
      </span>
      <p>{visitLine(visit, words)}</p>
      {why === '' ? null : <p className="hint">{why}</p>}
    </li>
  );
}
