/** The walk's map: works from the device alone. */
import { addProtocol, type GeoJSONSource, type LngLatBoundsLike, Map as MapLibreMap, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import type { Position } from '../doing/walk-state.ts';
import type { PackedTree } from '../pack/block-pack.ts';
import type { WalkDatabase } from '../sync/walk-database.ts';
import { TILE_SCHEME, type WalkLook, walkStyle } from './walk-style.ts';

export interface WalkMap {
  readonly show: (look: WalkLook) => void;
  readonly showTrees: (trees: GeoJSON.FeatureCollection) => void;
  readonly showPosition: (position: Position | null) => void;
  readonly centreOn: (at: readonly [number, number], closer?: boolean) => void;
  readonly middle: () => readonly [number, number];
  readonly name: (label: string) => void;
  readonly close: () => void;
}

const TREE_ZOOM = 19.3;

export function walkMap(holder: HTMLElement, first: WalkLook, treeTapped: (treeId: string) => void): WalkMap {
  setWorkerUrl(workerUrl);
  const map = new MapLibreMap({
    container: holder,
    style: walkStyle(first),
    attributionControl: false,
    maxPitch: 0,
    dragRotate: false,
    minZoom: 13,
    maxZoom: 22,
    bounds: [...first.pack.bounds] as LngLatBoundsLike,
    fitBoundsOptions: { padding: 24, maxZoom: TREE_ZOOM },
    // Nothing moves by itself: the map draws only when something changed.
    fadeDuration: 0,
  });
  map.touchZoomRotate.disableRotation();
  map.on('idle', () => map.getCanvas().setAttribute('data-drawn', ''));
  map.on('click', ({ point }) => {
    const reach = 22;
    const [tree] = map.queryRenderedFeatures(
      [
        [point.x - reach, point.y - reach],
        [point.x + reach, point.y + reach],
      ],
      { layers: ['trees'] },
    );
    if (tree) treeTapped(String(tree.properties.tree_id));
  });
  const whenStyled = (step: () => void): void => {
    if (map.style?._loaded) step();
    else map.once('style.load', step);
  };
  const source = (id: string): GeoJSONSource | undefined => map.getSource<GeoJSONSource>(id);
  return {
    show: (look) => void map.setStyle(walkStyle(look), { diff: false }),
    showTrees: (trees) => whenStyled(() => void source('trees')?.setData(trees)),
    showPosition: (position) => whenStyled(() => void source('position')?.setData(positionFeature(position))),
    centreOn: ([lon, lat], closer = false) =>
      void map.jumpTo({ center: [lon, lat], zoom: closer ? Math.max(map.getZoom(), TREE_ZOOM) : map.getZoom() }),
    middle: () => {
      const { lng, lat } = map.getCenter();
      return [lng, lat];
    },
    name: (label) => map.getCanvas().setAttribute('aria-label', label),
    close: () => map.remove(),
  };
}

/** Lets the map read the tiles that were taken along. */
export function serveTiles(database: WalkDatabase, project: () => string): void {
  addProtocol(TILE_SCHEME, async ({ url }) => {
    const row = await database.tiles.get([project(), url.slice(`${TILE_SCHEME}://`.length)]);
    return { data: row ? await row.picture.arrayBuffer() : new ArrayBuffer(0) };
  });
}

/** Trees as numbered points. */
export function treePoints(
  trees: readonly PackedTree[],
  seen: ReadonlySet<string>,
  now: string | null,
): GeoJSON.FeatureCollection {
  return {
    type: 'FeatureCollection',
    features: trees.map(({ treeId, at }, i) => ({
      type: 'Feature',
      properties: {
        tree_id: treeId,
        label: String(i + 1),
        state: treeId === now ? 'now' : seen.has(treeId) ? 'seen' : 'ahead',
      },
      geometry: { type: 'Point', coordinates: [...at] },
    })),
  };
}

/** Metres of a pixel at the equator at zoom 20, tiles of 512 pixels. */
const EQUATOR_PIXEL_M = 40_075_016.686 / (512 * 2 ** 20);

function positionFeature(position: Position | null): GeoJSON.FeatureCollection {
  if (!position) return { type: 'FeatureCollection', features: [] };
  const { at, accuracyM } = position;
  const pixelM = EQUATOR_PIXEL_M * Math.cos((at[1] * Math.PI) / 180);
  const properties = { accuracy_px_z20: Math.min(4000, accuracyM / pixelM) };
  return {
    type: 'FeatureCollection',
    features: [{ type: 'Feature', properties, geometry: { type: 'Point', coordinates: [...at] } }],
  };
}
