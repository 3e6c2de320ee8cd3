/** The page: the panel of the chosen bench, the map beside it, and what lies over both. */
import { lazy, Suspense, useEffect } from 'react';
import { I18nProvider } from 'react-aria-components';
import { useApp, useWords } from '../session/session.ts';
import { WeighBench } from '../weigh/weigh-bench.tsx';
import { Conflicts } from './conflicts.tsx';
import { FindingsList } from './findings-list.tsx';
import { MapStage } from './map-stage.tsx';
import { Masthead } from './masthead.tsx';
import { Notice } from './notice.tsx';
import { OpenElsewhere } from './open-elsewhere.tsx';
import { Opening } from './opening-screen.tsx';
import { usePageKeys } from './page-keys.ts';
import { useTheme } from './theme.ts';
import { Tour } from './tour.tsx';

/** Loaded when somebody first outlines, or plans. */
const OutlineBench = lazy(() =>
  import('../outline/outline-bench.tsx').then(({ OutlineBench }) => ({ default: OutlineBench })),
);
const PlanBench = lazy(() => import('../plan/plan-bench.tsx').then(({ PlanBench }) => ({ default: PlanBench })));

/** Points as decimal marks in both languages: figures read as in the files. */
const LOCALES = { en: 'en-US', es: 'es-US' };

export function App() {
  const status = useApp((state) => state.status);
  const language = useApp((state) => state.preferences.language);
  const title = useApp((state) => state.project?.title);
  const words = useWords();
  useTheme();
  usePageKeys();
  useEffect(() => {
    document.documentElement.lang = language;
    if (title !== undefined) document.title = words.pageTitle(title);
  }, [language, title, words]);
  return (
    <I18nProvider locale={LOCALES[language]}>
      {status === 'ready' ? <Benches /> : <Opening />}
      <Notice />
    </I18nProvider>
  );
}

function Benches() {
  const bench = useApp((state) => state.bench);
  const words = useWords();
  return (
    <>
      <main className="panel">
        <Masthead />
        <Conflicts />
        {bench === 'weigh' ? (
          <WeighBench />
        ) : bench === 'plan' ? (
          <Suspense>
            <PlanBench />
          </Suspense>
        ) : (
          <Suspense>
            <OutlineBench />
          </Suspense>
        )}
        <FindingsList />
        <OpenElsewhere />
        <footer className="foot">{words.foot}</footer>
      </main>
      <MapStage />
      <Tour />
    </>
  );
}
