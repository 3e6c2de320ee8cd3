/** Language, units, theme: remembered by this browser; at first as the browser asks. */
import { FIRST_STATE, type Language, type Preferences, type ThemeChoice } from './app-state.ts';

const KEY = 'crownfall-preferences';

export function loadPreferences(): Preferences {
  const first = { ...FIRST_STATE.preferences, language: browserLanguage() };
  try {
    return { ...first, ...readPreferences(JSON.parse(localStorage.getItem(KEY) ?? '{}')) };
  } catch {
    // Storage may be forbidden, or hold what another program wrote.
    return first;
  }
}

export function savePreferences(preferences: Preferences): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(preferences));
  } catch {
    // Then they last as long as the page.
  }
}

function browserLanguage(): Language {
  const wanted = navigator.languages.map((tag) => tag.slice(0, 2)).find((tag) => tag === 'en' || tag === 'es');
  return wanted === 'es' ? 'es' : 'en';
}

function readPreferences(value: Record<string, unknown>): Partial<Preferences> {
  const { language, units, theme, tourSeen, background } = value;
  return {
    ...(language === 'en' || language === 'es' ? { language } : {}),
    ...(units === 'metric' || units === 'us' ? { units } : {}),
    ...(theme === 'light' || theme === 'dark' || theme === 'system' ? { theme: theme as ThemeChoice } : {}),
    ...(tourSeen === true ? { tourSeen } : {}),
    ...(typeof background === 'string' ? { background } : {}),
  };
}
