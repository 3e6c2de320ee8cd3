/** Starts the walk. */
import '@fontsource/inter/latin-400.css';
import '@fontsource/inter/latin-600.css';
import '@fontsource/inter/latin-ext-400.css';
import 'maplibre-gl/dist/maplibre-gl.css';
import './look/walk.css';
import './look/tree-card.css';
import { createRoot } from 'react-dom/client';
import { openWalk } from './doing/opening-walk.ts';
import { sendOnReturn } from './doing/sending.ts';
import { startWalk, WalkContext } from './doing/walk-session.ts';
import { showLight } from './look/walk-colours.ts';
import { serveTiles } from './map/walk-map.ts';
import { WalkApp } from './walk-app.tsx';

const walk = startWalk();
showLight(walk.store.get().light, document.documentElement);
serveTiles(walk.database, () => walk.store.get().project);
createRoot(document.getElementById('app') as HTMLElement).render(
  <WalkContext.Provider value={walk}>
    <WalkApp />
  </WalkContext.Provider>,
);
sendOnReturn(walk);
openWalk(walk).catch((error: Error) => walk.store.change({ notice: error.message, source: 'none' }));
if (import.meta.env.PROD && 'serviceWorker' in navigator)
  void navigator.serviceWorker.register('/offline.js').catch(() => undefined);
