/** The phone's position: followed only while a screen that needs it is looked at, so that the battery lasts. */
import { useEffect } from 'react';
import { useWalk } from './walk-session.ts';
import type { Position } from './walk-state.ts';

/** Follows the position while the calling screen stands and the page is visible. */
export function usePosition(): void {
  const { store } = useWalk();
  useEffect(() => {
    if (!('geolocation' in navigator)) return store.change({ positionRefused: true });
    let watch: number | null = null;
    const stop = (): void => {
      if (watch !== null) navigator.geolocation.clearWatch(watch);
      watch = null;
    };
    const follow = (): void => {
      stop();
      if (document.visibilityState !== 'visible') return;
      watch = navigator.geolocation.watchPosition(
        ({ coords }) => store.change({ position: positionOf(coords), positionRefused: false }),
        ({ code }) => store.change({ position: null, positionRefused: code === 1 }),
        { enableHighAccuracy: true, maximumAge: 5000, timeout: 30_000 },
      );
    };
    follow();
    document.addEventListener('visibilitychange', follow);
    return () => {
      stop();
      document.removeEventListener('visibilitychange', follow);
    };
  }, [store]);
}

const positionOf = ({ longitude, latitude, accuracy }: GeolocationCoordinates): Position => ({
  at: [longitude, latitude],
  accuracyM: accuracy,
});
