/** Starts the viewer. */
import '@fontsource/inter/latin-400.css';
import '@fontsource/inter/latin-500.css';
import '@fontsource/inter/latin-600.css';
import '@fontsource/inter/latin-ext-400.css';
import 'maplibre-gl/dist/maplibre-gl.css';
import './style/page.css';
import './style/controls.css';
import './style/panel.css';
import './style/outline.css';
import './style/plan.css';
import './style/map.css';
import { createRoot } from 'react-dom/client';
import { keepForOffline } from './session/offline.ts';
import { openProject } from './session/opening.ts';
import { SessionContext, startSession } from './session/session.ts';
import { App } from './shell/app.tsx';

const session = startSession();
createRoot(document.getElementById('app') as HTMLElement).render(
  <SessionContext.Provider value={session}>
    <App />
  </SessionContext.Provider>,
);
void openProject(session);
keepForOffline();
