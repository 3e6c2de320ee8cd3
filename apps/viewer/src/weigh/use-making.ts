/** A file that takes a moment: whether it is under way, and how to begin it. What fails becomes the page's notice. */
import { useState } from 'react';
import { useSession } from '../session/session.ts';

export function useMaking(): readonly [making: boolean, make: (file: () => Promise<void>) => Promise<void>] {
  const { store } = useSession();
  const [making, setMaking] = useState(false);
  const make = async (file: () => Promise<void>): Promise<void> => {
    setMaking(true);
    try {
      await file();
    } catch (error) {
      store.change({ notice: error instanceof Error ? error.message : String(error) });
    } finally {
      setMaking(false);
    }
  };
  return [making, make];
}
