/** Whether what was done here is with the shared project yet. Nothing is shown for a project of this browser alone. */
import { useApp, useWords } from '../session/session.ts';

export function SharingState() {
  const sharing = useApp((state) => state.sharing);
  const { sharing: words } = useWords();
  if (!sharing) return null;
  const { sendings } = sharing.outbox;
  const refused = sendings.filter((sending) => sending.refused !== null).length;
  const waiting = sendings.length - refused;
  const now = !sharing.reached ? words.waiting(waiting) : waiting > 0 ? words.sending(waiting) : words.saved;
  return (
    <p className="sharing-state" data-reached={sharing.reached} role="status">
      {now}
      {refused > 0 ? ` ${words.refusedCount(refused)}` : null}
    </p>
  );
}
