/** One sentence that tells what just happened, spoken by screen readers, gone by itself. */
import { useEffect } from 'react';
import { useApp, useSession } from '../session/session.ts';

const SHOWN_MS = 6000;

export function Notice() {
  const { store } = useSession();
  const notice = useApp((state) => state.notice);
  useEffect(() => {
    if (notice === '') return;
    const timer = setTimeout(() => store.change({ notice: '' }), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [notice, store]);
  return (
    <output className="notice" data-empty={notice === '' || undefined}>
      {notice}
    </output>
  );
}
