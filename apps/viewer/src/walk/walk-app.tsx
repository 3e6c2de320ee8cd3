/** The walk: one screen at a time, what waits always in sight. */
import { useEffect } from 'react';
import { goTo, useShown, useWalk, useWords } from './doing/walk-session.ts';
import { conflictsOpen, packOf, photosWaiting, type Screen, visitsWaiting } from './doing/walk-state.ts';
import { showLight } from './look/walk-colours.ts';
import { Mark } from './parts/mark.tsx';
import { BlocksScreen } from './screens/blocks-screen.tsx';
import { BloomScreen } from './screens/bloom-screen.tsx';
import { CautionsScreen } from './screens/cautions-screen.tsx';
import { MapPane } from './screens/map-pane.tsx';
import { NewTreeScreen } from './screens/new-tree-screen.tsx';
import { ProblemScreen } from './screens/problem-screen.tsx';
import { QuadratScreen } from './screens/quadrat-screen.tsx';
import { QueueScreen } from './screens/queue-screen.tsx';
import { RateScreen } from './screens/rate-screen.tsx';
import { SettingsScreen } from './screens/settings-screen.tsx';
import { TreeScreen } from './screens/tree-screen.tsx';

const SCREENS: Readonly<Record<Screen, () => React.ReactNode>> = {
  blocks: BlocksScreen,
  cautions: CautionsScreen,
  tree: TreeScreen,
  rate: RateScreen,
  bloom: BloomScreen,
  quadrat: QuadratScreen,
  problem: ProblemScreen,
  'new-tree': NewTreeScreen,
  queue: QueueScreen,
  settings: SettingsScreen,
};

/** Those with the strip on top; the others have a head that leads back. */
const WITH_STRIP: readonly Screen[] = ['blocks', 'tree'];

export function WalkApp() {
  const screen = useShown((state) => state.screen);
  const language = useShown((state) => state.preferences.language);
  const light = useShown((state) => state.light);
  const title = useShown((state) => packOf(state)?.title ?? state.packs[0]?.title ?? '');
  const words = useWords();
  const Shown = SCREENS[screen];
  useEffect(() => showLight(light, document.documentElement), [light]);
  useEffect(() => {
    document.documentElement.lang = language;
    document.title = title === '' ? words.title : words.pageTitle(title);
  }, [language, title, words]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new screen begins at its top
  useEffect(() => {
    scrollTo(0, 0);
  }, [screen]);
  return (
    <div className="walk" data-screen={screen}>
      {WITH_STRIP.includes(screen) ? <Strip /> : null}
      <MapPane />
      <Shown />
    </div>
  );
}

/** Where the person is, and how much waits. */
function Strip() {
  const walk = useWalk();
  const words = useWords();
  const screen = useShown((state) => state.screen);
  const block = useShown((state) => packOf(state)?.figures.name ?? state.blockId ?? '');
  const waiting = useShown((state) => visitsWaiting(state) + photosWaiting(state));
  const conflicts = useShown(conflictsOpen);
  return (
    <header className="strip">
      {screen === 'tree' ? (
        <button type="button" className="icon" aria-label={words.blocks.here} onClick={() => goTo(walk, 'blocks')}>
          <Mark name="back" />
        </button>
      ) : null}
      <p className="strip-title">{screen === 'tree' ? block : words.title}</p>
      <button
        type="button"
        className="waiting"
        data-waiting={waiting > 0 || undefined}
        data-count={waiting}
        aria-label={words.waitingSpoken(waiting)}
        onClick={() => goTo(walk, 'queue')}
      >
        <Mark name={waiting === 0 ? 'sent' : 'waiting'} />
        {/* Under the trees the block's name needs the room. */}
        {screen === 'tree' ? waiting > 0 && <span>{waiting}</span> : <span>{words.waiting(waiting)}</span>}
        {conflicts > 0 ? <span className="flag">{conflicts}</span> : null}
      </button>
      <button type="button" className="icon" aria-label={words.more} onClick={() => goTo(walk, 'settings')}>
        <Mark name="more" />
      </button>
    </header>
  );
}
