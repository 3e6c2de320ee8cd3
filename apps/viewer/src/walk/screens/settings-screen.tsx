/** Language, units, light, initials, and what stays on the phone. */
import { useEffect, useState } from 'react';
import { savePreferences } from '../../state/preferences.ts';
import { useShown, useUnits, useWalk, useWords } from '../doing/walk-session.ts';
import type { Light } from '../look/walk-colours.ts';
import { Chips, ScreenHead } from '../parts/parts.tsx';
import { sizeOfBytes } from '../parts/quantities-shown.ts';

export function SettingsScreen() {
  const { store, database } = useWalk();
  const { settings, desk } = useWords();
  const preferences = useShown((state) => state.preferences);
  const light = useShown((state) => state.light);
  const keepPosition = useShown((state) => state.keepPosition);
  const units = useUnits();
  const set = (part: Partial<typeof preferences>): void => {
    const changed = { ...preferences, ...part };
    savePreferences(changed);
    store.change({ preferences: changed });
  };
  const setLight = (chosen: Light | null): void => {
    if (!chosen) return;
    store.change({ light: chosen });
    void database.note('light', chosen);
  };
  return (
    <main className="screen">
      <ScreenHead title={settings.title} />
      <Chips
        label={settings.light}
        of={['sun', 'night'] as const}
        words={settings.lights}
        value={light}
        choose={setLight}
      />
      <Chips
        label={settings.language}
        of={['en', 'es'] as const}
        words={{ en: 'English', es: 'Español' }}
        value={preferences.language}
        choose={(language) => language && set({ language })}
      />
      <Chips
        label={settings.units}
        of={['metric', 'us'] as const}
        words={{ metric: settings.metric, us: settings.us }}
        value={units}
        choose={(chosen) => chosen && set({ units: chosen })}
      />
      <RaterField />
      <Chips
        label={settings.position}
        of={['off', 'on'] as const}
        words={settings.positions}
        value={keepPosition ? 'on' : 'off'}
        choose={(chosen) => {
          if (!chosen) return;
          store.change({ keepPosition: chosen === 'on' });
          void database.note('keep-position', chosen === 'on');
        }}
      />
      <p className="hint">{settings.positionWhy}</p>
      <Room />
      <p className="hint">{settings.foot}</p>
      <a className="plain wide" href="/">
        {desk}
      </a>
    </main>
  );
}

export function RaterField() {
  const { store, database } = useWalk();
  const rater = useShown((state) => state.rater);
  const { cautions } = useWords();
  return (
    <label className="field">
      <span>{cautions.rater}</span>
      <input
        value={rater}
        maxLength={20}
        autoComplete="off"
        autoCapitalize="characters"
        onChange={({ target }) => {
          store.change({ rater: target.value });
          void database.note('rater', target.value.trim());
        }}
      />
      <span className="hint">{cautions.raterWhy}</span>
    </label>
  );
}

function Room() {
  const { settings } = useWords();
  const [room, setRoom] = useState<{ readonly used: number; readonly kept: boolean } | null>(null);
  useEffect(() => {
    const { storage } = navigator;
    if (!storage?.estimate) return;
    void Promise.all([storage.estimate(), storage.persisted()]).then(([{ usage = 0 }, kept]) =>
      setRoom({ used: usage, kept }),
    );
  }, []);
  if (!room) return null;
  return (
    <p className="hint">
      {settings.room(sizeOfBytes(room.used))} {room.kept ? settings.kept : settings.notKept}
    </p>
  );
}
