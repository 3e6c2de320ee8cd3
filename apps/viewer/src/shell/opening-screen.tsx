/** What is seen before there is a project to see, and when there is none. */
import { describeFinding } from '@crownfall/survey';
import { useApp, useWords } from '../session/session.ts';
import { OpenButtons } from './open-elsewhere.tsx';

export function Opening() {
  const status = useApp((state) => state.status);
  const failure = useApp((state) => state.failure);
  const editing = useApp((state) => state.editing);
  const words = useWords();
  if (status === 'opening') {
    const stage = editing.can === 'soon' ? (words.stage[editing.stage] ?? '') : '';
    return (
      <main className="opening">
        <h1>Crownfall</h1>
        <p role="status">{`${words.opening}: ${stage} …`}</p>
      </main>
    );
  }
  return (
    <main className="opening">
      <h1>{status === 'stopped' ? words.stoppedTitle : 'Crownfall'}</h1>
      {status === 'stopped' ? <StoppingFindings /> : <p role="alert">{words.failed(failure)}</p>}
      <OpenButtons />
    </main>
  );
}

function StoppingFindings() {
  const findings = useApp((state) => state.stopping);
  const language = useApp((state) => state.preferences.language);
  return (
    <div role="alert">
      <ul className="stopping">
        {findings.slice(0, 20).map((finding, i) => {
          const { where, what, remedy } = describeFinding(finding, language);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: findings have no id and never change their order
            <li key={i}>
              <strong>{where}</strong> {what}. {remedy}
            </li>
          );
        })}
      </ul>
    </div>
  );
}
