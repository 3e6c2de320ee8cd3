/** The map above the tree's card. It stays while other screens lie over it, for making one costs battery. */
import { useEffect, useMemo, useRef } from 'react';
import { derived } from '../../state/store.ts';
import { usePosition } from '../doing/position.ts';
import { blockTrees, useShown, useWalk, useWords } from '../doing/walk-session.ts';
import { packOf, type Screen, seenTrees, type WalkState } from '../doing/walk-state.ts';
import { chooseTree } from '../doing/walking.ts';
import { treePoints, type WalkMap, walkMap } from '../map/walk-map.ts';
import type { BlockPack } from '../pack/block-pack.ts';
import { Mark } from '../parts/mark.tsx';

/** Those that show the map; on some a cross marks its middle. */
const WITH_MAP: readonly Screen[] = ['tree', 'new-tree', 'quadrat'];
const WITH_CROSS: readonly Screen[] = ['new-tree', 'quadrat'];

const points = derived(
  (state: WalkState) => [blockTrees(state), state.visits, state.treeId] as const,
  (trees, visits, treeId) => treePoints(trees, seenTrees({ visits }), treeId),
);

export function MapPane() {
  const pack = useShown(packOf);
  return pack ? <PackMap key={`${pack.blockId} ${pack.packedAt}`} pack={pack} /> : null;
}

function PackMap({ pack }: { readonly pack: BlockPack }) {
  const { store } = useWalk();
  const words = useWords();
  const screen = useShown((state) => state.screen);
  const isLarge = useShown((state) => state.largeMap);
  const imageryShown = useShown((state) => state.imageryShown);
  const position = useShown((state) => state.position);
  const refused = useShown((state) => state.positionRefused);
  const { holder, map } = useMap(pack);
  const isShown = WITH_MAP.includes(screen);
  return (
    <section
      className="map-pane"
      data-away={!isShown || undefined}
      data-large={(isLarge && screen === 'tree') || undefined}
      inert={!isShown}
      aria-label={words.tree.inBlock(pack.figures.name ?? pack.blockId)}
    >
      <div className="map-holder" ref={holder} />
      {WITH_CROSS.includes(screen) ? <div className="cross" aria-hidden="true" /> : null}
      <div className="map-buttons">
        <button
          type="button"
          className="icon floating"
          aria-label={words.tree.whereAmI}
          disabled={!position}
          onClick={() => position && map.current?.centreOn(position.at)}
        >
          <Mark name="here" />
        </button>
        <button
          type="button"
          className="icon floating"
          aria-label={words.tree.imagery}
          aria-pressed={imageryShown}
          onClick={() => store.change({ imageryShown: !imageryShown })}
        >
          <Mark name="picture" />
        </button>
        {screen === 'tree' ? (
          <button
            type="button"
            className="icon floating"
            aria-label={isLarge ? words.tree.smaller : words.tree.larger}
            aria-expanded={isLarge}
            onClick={() => store.change({ largeMap: !isLarge })}
          >
            <Mark name="larger" />
          </button>
        ) : null}
      </div>
      {refused ? <p className="map-note">{words.tree.noPosition}</p> : null}
      {isShown ? <PositionFollower /> : null}
    </section>
  );
}

function PositionFollower() {
  usePosition();
  return null;
}

/** Makes the map once, and tells it of every change it shows. */
function useMap(pack: BlockPack) {
  const walk = useWalk();
  const words = useWords();
  const holder = useRef<HTMLDivElement>(null);
  const map = useRef<WalkMap | null>(null);
  const trees = useShown(points);
  const light = useShown((state) => state.light);
  const imagery = useShown((state) => state.imageryShown);
  const position = useShown((state) => state.position);
  const treeId = useShown((state) => state.treeId);
  const look = useMemo(() => ({ pack, trees, light, imagery }), [pack, trees, light, imagery]);
  const lookNow = useRef(look);
  const styled = useRef({ light, imagery });
  lookNow.current = look;
  useEffect(() => {
    if (!holder.current) return;
    const made = walkMap(holder.current, lookNow.current, (tapped) => {
      if (walk.store.get().screen === 'tree') chooseTree(walk, tapped);
    });
    map.current = made;
    walk.mapMiddle = made.middle;
    walk.mapCentre = (at) => made.centreOn(at, true);
    return () => {
      made.close();
      map.current = null;
      walk.mapMiddle = null;
      walk.mapCentre = null;
    };
  }, [walk]);
  useEffect(() => {
    if (styled.current.light === light && styled.current.imagery === imagery) return;
    styled.current = { light, imagery };
    map.current?.show(lookNow.current);
  }, [light, imagery]);
  useEffect(() => map.current?.showTrees(trees), [trees]);
  useEffect(() => map.current?.showPosition(position), [position]);
  useEffect(() => map.current?.name(words.tree.map(pack.figures.name ?? pack.blockId)), [words, pack]);
  useEffect(() => {
    const tree = blockTrees(walk.store.get()).find((each) => each.treeId === treeId);
    if (tree) map.current?.centreOn(tree.at, true);
  }, [walk, treeId]);
  return { holder, map };
}
