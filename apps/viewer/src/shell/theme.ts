/** Light or dark: the person's choice, else the device's. */
import { useEffect, useSyncExternalStore } from 'react';
import type { Theme } from '../map/stain-ramp.ts';
import { useApp } from '../session/session.ts';

const DARK = matchMedia('(prefers-color-scheme: dark)');

export function useResolvedTheme(): Theme {
  const choice = useApp((state) => state.preferences.theme);
  const device = useSyncExternalStore(
    (listener) => {
      DARK.addEventListener('change', listener);
      return () => DARK.removeEventListener('change', listener);
    },
    () => (DARK.matches ? 'dark' : 'light'),
  );
  return choice === 'system' ? device : choice;
}

/** Puts the theme on the page's root, where the style sheets look for it. */
export function useTheme(): void {
  const theme = useResolvedTheme();
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
  }, [theme]);
}
