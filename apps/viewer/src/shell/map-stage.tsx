/** The map and what lies on it: the cross for drawing by keys, imagery, legend. */
import { type KeyboardEvent, lazy, Suspense, useEffect, useMemo, useRef } from 'react';
import { Button, ToggleButton } from 'react-aria-components';
import { type BlockMarks, blockMarks } from '../map/block-ranks.ts';
import { type TownMap, townMap } from '../map/town-map.ts';
import { drawingKey } from '../session/drawing-keys.ts';
import { mapEvents } from '../session/map-events.ts';
import { toggleSplit } from '../session/seasons.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import type { AppState } from '../state/app-state.ts';
import { backgroundOf, rankedBlocks, shownBlocks } from '../state/derived-state.ts';
import { derived } from '../state/store.ts';
import { ImageryControl, useImageryLook } from './imagery-control.tsx';
import { Legend } from './legend.tsx';
import { useResolvedTheme } from './theme.ts';

/** Loaded when two seasons are first shown. */
const EarlierMap = lazy(() => import('./earlier-map.tsx').then(({ EarlierMap }) => ({ default: EarlierMap })));

const EMPTY: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

const marks = derived(
  (state: AppState) => [state.layers?.blocks ?? EMPTY, rankedBlocks(state), shownBlocks(state)] as const,
  (outlines, ranked, shown): BlockMarks => blockMarks(outlines, ranked, new Set(shown.map(({ blockId }) => blockId))),
);

export function MapStage() {
  const session = useSession();
  const words = useWords();
  const drawing = useApp((state) => state.sketch !== null);
  const split = useApp((state) => state.split);
  const season = useApp((state) => state.earlierSeason);
  const asOf = useApp((state) => state.project?.run.asOf ?? '');
  const editable = useApp((state) => state.editing.can === 'yes');
  const holder = useTownMap();
  return (
    <section className="stage" aria-label={words.map.section}>
      <div
        className="view"
        data-drawing={drawing || undefined}
        data-split={(split && typeof season === 'object') || undefined}
        onKeyDownCapture={(event: KeyboardEvent) => drawingKey(session, event)}
      >
        {split && typeof season === 'object' && season ? (
          <Suspense>
            <EarlierMap season={season} />
          </Suspense>
        ) : null}
        <div className="map-holder" ref={holder} />
        {split && typeof season === 'object' && season ? <p className="season-tag now">{asOf}</p> : null}
        {split && season === 'none' ? <p className="season-tag">{words.charts.noSeason}</p> : null}
        {drawing ? <div className="cross" aria-hidden="true" /> : null}
        <div className="map-corner">
          <Button className="button floating whole" onPress={() => session.map?.showAll()}>
            {words.map.whole}
          </Button>
          <ImageryControl />
          {editable ? (
            <ToggleButton className="button floating" isSelected={split} onChange={() => toggleSplit(session)}>
              {words.split.toggle}
            </ToggleButton>
          ) : null}
        </div>
      </div>
      <Legend />
    </section>
  );
}

/** Makes the map once, and tells it of every change it shows. */
function useTownMap() {
  const session = useSession();
  const holder = useRef<HTMLDivElement>(null);
  const map = useRef<TownMap | null>(null);
  const layers = useApp((state) => state.layers);
  const title = useApp((state) => state.project?.title ?? '');
  const blockMarksNow = useApp(marks);
  const blockId = useApp((state) => state.blockId);
  const treeId = useApp((state) => state.treeId);
  const sketch = useApp((state) => state.sketch);
  const water = useApp((state) => state.blockWater);
  const imagery = useImageryLook();
  const background = useApp(backgroundOf);
  const theme = useResolvedTheme();
  const units = useUnits();
  const words = useWords();
  // What the map is made with; later changes are told to it below.
  // biome-ignore lint/correctness/useExhaustiveDependencies: made once
  const first = useMemo(() => ({ layers, marks: blockMarksNow, theme, blockId, treeId, imagery, background }), []);
  useEffect(() => {
    if (!holder.current || !first.layers) return;
    const { project, mapView } = session.store.get();
    const look = { ...first, layers: first.layers, sketchedTree: null };
    const made = townMap(holder.current, look, project?.bounds ?? null, mapView, mapEvents(session));
    map.current = made;
    session.map = made;
    return () => {
      made.close();
      session.map = null;
      map.current = null;
    };
  }, [session, first]);
  useChange(layers, (now) => now && map.current?.showLayers(now));
  useChange(blockMarksNow, (now) => map.current?.showMarks(now));
  useChange(blockId, (now) => map.current?.showBlock(now));
  useChange(theme, (now) => map.current?.showTheme(now));
  useChange(background, (now) => map.current?.showBackground(now));
  useChange(imagery, (now) => map.current?.showImagery(now));
  useEffect(() => map.current?.showTree(treeId), [treeId]);
  useEffect(() => map.current?.showSketch(sketch), [sketch]);
  useEffect(() => map.current?.showWater(water, units), [water, units]);
  useEffect(() => map.current?.showUnits(units), [units]);
  useEffect(() => map.current?.name(words.map.label(title), words.map), [title, words]);
  return holder;
}

/** Runs `tell` when a value becomes another one, not at first. */
function useChange<Value>(value: Value, tell: (value: Value) => void): void {
  const last = useRef(value);
  const telling = useRef(tell);
  telling.current = tell;
  useEffect(() => {
    if (Object.is(last.current, value)) return;
    last.current = value;
    telling.current(value);
  }, [value]);
}
