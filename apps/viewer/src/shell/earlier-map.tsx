/** The map of the season before, beside the map of this one: both show the same place. */
import { useEffect, useRef } from 'react';
import { blockMarks } from '../map/block-ranks.ts';
import { type TownMap, townMap } from '../map/town-map.ts';
import type { EarlierSeason } from '../reckoning/earlier-season.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import { rankedBlocks } from '../state/derived-state.ts';
import { useResolvedTheme } from './theme.ts';

const NOTHING = () => undefined;

export function EarlierMap({ season }: { readonly season: EarlierSeason }) {
  const session = useSession();
  const holder = useRef<HTMLDivElement>(null);
  const map = useRef<TownMap | null>(null);
  const theme = useResolvedTheme();
  const units = useUnits();
  const words = useWords();
  const blockId = useApp((state) => state.blockId);
  useEffect(() => {
    const { project, mapView } = session.store.get();
    if (!holder.current || !project) return;
    // No block is ranked here: ranks are this season's.
    const marks = blockMarks(season.layers.blocks, rankedBlocks(session.store.get()), new Set());
    const look = {
      layers: season.layers,
      marks,
      theme,
      blockId: null,
      treeId: null,
      imagery: null,
      background: null,
      sketchedTree: null,
    };
    const made = townMap(holder.current, look, project.bounds, mapView, {
      ...{ placed: NOTHING, vertexTapped: NOTHING, vertexRemoved: NOTHING, dragStarted: NOTHING, dragged: NOTHING },
      ...{ dropped: NOTHING, blockClicked: NOTHING, treeClicked: NOTHING, viewMoved: NOTHING },
      inserted: (after) => after,
      drawing: () => false,
      viewMoving: (view) => session.map?.jumpTo(view),
    });
    map.current = made;
    session.beside = made;
    return () => {
      made.close();
      session.beside = null;
      map.current = null;
    };
  }, [session, season, theme]);
  useEffect(() => map.current?.showBlock(blockId), [blockId]);
  useEffect(() => map.current?.showUnits(units), [units]);
  useEffect(() => map.current?.name(words.split.earlier(season.asOf), words.map), [season, words]);
  return (
    <div className="earlier-map">
      <div className="map-holder" ref={holder} />
      <p className="season-tag">{season.asOf}</p>
    </div>
  );
}
