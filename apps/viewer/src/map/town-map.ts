/** The map: draws layers, ranks, sketch and imagery; reports what is pointed at. The one place that knows the map library. */
import type { BlockWater } from '@crownfall/assessment';
import {
  type GeoJSONSource,
  type LngLatBoundsLike,
  Map as MapLibreMap,
  NavigationControl,
  ScaleControl,
  setWorkerUrl,
} from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import type { Units } from '../language/quantities.ts';
import type { Sketch } from '../outline/sketch.ts';
import { type Bounds, FEATURE_ID, type Layers } from '../project/project.ts';
import type { MapDoor } from '../session/map-door.ts';
import type { MapView } from '../state/app-state.ts';
import { shellsOf } from './block-labels.ts';
import type { BlockMarks } from './block-ranks.ts';
import { hatchImages } from './hatch.ts';
import { mapPicture } from './map-picture.ts';
import { imageryPaint, layerFilter, type MapLook, mapStyle, selectedBlock, selectedTree } from './map-style.ts';
import { sketchFeatures } from './sketch-layers.ts';
import { followPointer, type SketchEvents } from './sketch-pointer.ts';
import { snappedTo } from './snapping.ts';
import { updateSource } from './source-changes.ts';
import type { Theme } from './stain-ramp.ts';
import { waterFeatures } from './water-layers.ts';

export interface TownMap extends MapDoor {
  readonly showLayers: (layers: Layers) => void;
  readonly showMarks: (marks: BlockMarks) => void;
  readonly showBlock: (blockId: string | null) => void;
  readonly showTree: (treeId: string | null) => void;
  readonly showSketch: (sketch: Sketch | null) => void;
  readonly showWater: (water: BlockWater | null, units: Units) => void;
  readonly showImagery: (imagery: MapLook['imagery']) => void;
  readonly showTheme: (theme: Theme) => void;
  readonly showBackground: (background: string | null) => void;
  readonly showUnits: (units: Units) => void;
  readonly name: (label: string, controls: { readonly zoomIn: string; readonly zoomOut: string }) => void;
  readonly close: () => void;
}

export interface MapEvents extends Omit<SketchEvents, 'snapped'> {
  readonly blockClicked: (blockId: string) => void;
  readonly treeClicked: (treeId: string | null) => void;
  readonly viewMoved: (view: MapView) => void;
  /** While it moves, at every step. */
  readonly viewMoving: (view: MapView) => void;
}

const FIT = { padding: 48, maxZoom: 18.5 };

export function townMap(
  holder: HTMLElement,
  first: Omit<MapLook, 'sketch' | 'water'>,
  bounds: Bounds | null,
  view: MapView | null,
  events: MapEvents,
): TownMap {
  setWorkerUrl(workerUrl);
  let look: MapLook = { ...first, sketch: sketchFeatures(null), water: waterFeatures(null, 'metric') };
  const fit = bounds as unknown as LngLatBoundsLike;
  const start = (look.blockId !== null && boundsOfBlock(look.layers.blocks, look.blockId)) || fit;
  const map = new MapLibreMap({
    container: holder,
    style: mapStyle(look),
    attributionControl: false,
    maxPitch: 0,
    dragRotate: false,
    maxZoom: 23,
    ...(view ? { center: [view[0], view[1]], zoom: view[2] } : bounds && { bounds: start, fitBoundsOptions: FIT }),
  });
  map.touchZoomRotate.disableRotation();
  map.addControl(new NavigationControl({ showCompass: false }), 'top-right');
  const scale = new ScaleControl({ unit: 'metric', maxWidth: 120 });
  map.addControl(scale, 'bottom-right');
  // The browser tests wait for this before they look.
  map.on('idle', () => map.getCanvas().setAttribute('data-drawn', ''));
  // Hatches are drawn when the style asks for them, so they survive a change of theme.
  map.setMissingStyleImageResolver((id) => {
    const hatch = hatchImages(look.theme).find((each) => each.name === id);
    if (hatch && !map.hasImage(id)) map.addImage(id, hatch.image, { pixelRatio: hatch.pixelRatio });
  });
  let led = false;
  map.on('move', () => {
    const { lng, lat } = map.getCenter();
    if (!led) events.viewMoving([lng, lat, map.getZoom()]);
  });
  map.on('moveend', () => {
    const { lng, lat } = map.getCenter();
    events.viewMoved([lng, lat, map.getZoom()]);
  });
  reportPointing(map, events);
  followPointer(map, {
    ...events,
    snapped: (at, exact) =>
      exact ? at : snappedTo(map, at, { verticesOf: (treeId) => verticesOf(look.layers, treeId, look.sketchedTree) }),
  });

  const source = (id: string): GeoJSONSource | undefined => map.getSource<GeoJSONSource>(id);
  /** Changes the look, and the map by `step` alone; before the style stands the whole style is set once it does. */
  const show = (part: Partial<MapLook>, step: () => void): void => {
    look = { ...look, ...part };
    if (map.style?._loaded) step();
    else map.once('style.load', step);
  };
  const restyle = (): void => void map.setStyle(mapStyle(look), { diff: false });

  return {
    showLayers: (layers) => {
      const before = look.layers;
      show({ layers }, () => {
        for (const name of ['pavement', 'trees', 'drift'] as const)
          updateSource(source(name), FEATURE_ID[name], before[name], layers[name]);
      });
    },
    showMarks: (marks) =>
      show({ marks }, () => {
        void source('blocks')?.setData(marks.blocks);
        void source('block-labels')?.setData(marks.labels);
      }),
    showBlock: (blockId) => show({ blockId }, () => void map.setFilter('block-chosen', selectedBlock(blockId))),
    fitBlock: (blockId) => {
      const box = boundsOfBlock(look.layers.blocks, blockId);
      if (box) map.fitBounds(box, FIT);
    },
    showTree: (treeId) => show({ treeId }, () => void map.setFilter('crown-chosen', selectedTree(treeId))),
    showSketch: (sketch) => {
      const sketchedTree = sketch?.treeId ?? null;
      const swapped = sketchedTree !== look.sketchedTree;
      if (sketch) map.doubleClickZoom.disable();
      else map.doubleClickZoom.enable();
      show({ sketch: sketchFeatures(sketch), sketchedTree }, () => {
        void source('sketch')?.setData(look.sketch);
        if (!swapped) return;
        for (const layer of ['crown-fill', 'crown-line', 'drift-line', 'crown-label'])
          map.setFilter(layer, layerFilter(layer, sketchedTree));
      });
    },
    showWater: (water, units) =>
      show({ water: waterFeatures(water, units) }, () => void source('water')?.setData(look.water)),
    showImagery: (imagery) => {
      const stands = look.imagery !== null && imagery !== null && look.imagery.tiles === imagery.tiles;
      show({ imagery }, () => {
        if (!stands || !imagery || !map.getLayer('imagery')) return restyle();
        for (const [name, value] of Object.entries(imageryPaint(imagery)))
          map.setPaintProperty('imagery', name as 'raster-opacity', value);
      });
    },
    showTheme: (theme) => show({ theme }, restyle),
    showBackground: (background) => show({ background }, restyle),
    showUnits: (units) => scale.setUnit(units === 'us' ? 'imperial' : 'metric'),
    name: (label, { zoomIn, zoomOut }) => {
      map.getCanvas().setAttribute('aria-label', label);
      for (const [kind, words] of [
        ['zoom-in', zoomIn],
        ['zoom-out', zoomOut],
      ]) {
        const button = holder.querySelector(`.maplibregl-ctrl-${kind}`);
        button?.setAttribute('aria-label', words);
        button?.setAttribute('title', words);
      }
    },
    showAll: () => {
      if (bounds) map.fitBounds(fit, FIT);
    },
    focus: () => map.getCanvas().focus(),
    flyTo: ([lon, lat], zoom) =>
      void map.easeTo({ center: [lon, lat], zoom: zoom === undefined ? map.getZoom() : Math.max(zoom, map.getZoom()) }),
    jumpTo: ([lon, lat, zoom]) => {
      led = true;
      map.jumpTo({ center: [lon, lat], zoom });
      led = false;
    },
    centre: () => {
      const { lng, lat } = map.getCenter();
      return [lng, lat];
    },
    panBy: (x, y) => void map.panBy([x, y], { duration: 0 }),
    picture: (wish) =>
      mapPicture(wish, mapStyle(look), map, (id) => hatchImages(look.theme).find((each) => each.name === id)),
    close: () => map.remove(),
  };
}

function reportPointing(map: MapLibreMap, events: MapEvents): void {
  map.on('click', (event) => {
    if (events.drawing()) return;
    const [tree] = map.queryRenderedFeatures(event.point, { layers: ['crown-fill'] });
    events.treeClicked(tree ? String(tree.properties.tree_id) : null);
    const [block] = map.queryRenderedFeatures(event.point, { layers: ['rank-badge', 'block-fill'] });
    if (block && !tree) events.blockClicked(String(block.properties.block_id));
  });
  const canvas = map.getCanvas();
  map.on('mousemove', () => {
    canvas.style.cursor = events.drawing() ? 'crosshair' : '';
  });
  for (const layer of ['rank-badge', 'block-fill', 'crown-fill']) {
    map.on('mousemove', layer, () => {
      if (!events.drawing()) canvas.style.cursor = 'pointer';
    });
  }
}

function boundsOfBlock(blocks: GeoJSON.FeatureCollection, blockId: string): [number, number, number, number] | null {
  const block = blocks.features.find((each) => each.properties?.block_id === blockId);
  const positions = block ? shellsOf(block.geometry).flat() : [];
  if (positions.length === 0) return null;
  const lons = positions.map(([lon]) => lon);
  const lats = positions.map(([, lat]) => lat);
  return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
}

function verticesOf(layers: Layers, treeId: string, except: string | null): readonly GeoJSON.Position[] {
  if (treeId === except) return [];
  const tree = layers.trees.features.find((feature) => feature.properties?.tree_id === treeId);
  return shellsOf(tree?.geometry ?? null).flat();
}
