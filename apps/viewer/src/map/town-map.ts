/** The map of ranked blocks: draws the project's layers, reports clicks, zooms to the selected block. */
import { type LngLatBoundsLike, Map as MapLibreMap, NavigationControl, ScaleControl, setWorkerUrl } from 'maplibre-gl';
import workerUrl from 'maplibre-gl/dist/maplibre-gl-worker.mjs?worker&url';
import type { Layers, Project } from '../project.ts';
import type { Units } from '../quantities.ts';
import { shellsOf } from './block-labels.ts';
import { hatchImages } from './hatch.ts';
import { mapStyle, selectedBlock } from './map-style.ts';
import type { Theme } from './stain-ramp.ts';

export interface TownMap {
  readonly showBlock: (blockId: string | null) => void;
  readonly showUnits: (units: Units) => void;
  readonly showAll: () => void;
}

export interface MapEvents {
  readonly blockClicked: (blockId: string) => void;
  readonly treePointed: (tree: GeoJSON.GeoJsonProperties) => void;
}

const FIT = { padding: 48, maxZoom: 18.5 };

export function townMap(holder: HTMLElement, project: Project, layers: Layers, events: MapEvents): TownMap {
  setWorkerUrl(workerUrl);
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const theme = (): Theme => (dark.matches ? 'dark' : 'light');
  let selected: string | null = null;
  const map = new MapLibreMap({
    container: holder,
    style: mapStyle(layers, theme(), selected),
    attributionControl: false,
    maxPitch: 0,
    dragRotate: false,
    ...(project.bounds && { bounds: project.bounds as unknown as LngLatBoundsLike, fitBoundsOptions: FIT }),
  });
  map.touchZoomRotate.disableRotation();
  map.addControl(new NavigationControl({ showCompass: false }), 'top-right');
  const scale = new ScaleControl({ unit: 'metric', maxWidth: 120 });
  map.addControl(scale, 'bottom-right');
  nameCanvas(map, project);
  // Hatches are drawn when the style asks for them, so they survive a change of theme.
  map.setMissingStyleImageResolver((id) => {
    const hatch = hatchImages(theme()).find((each) => each.name === id);
    if (hatch && !map.hasImage(id)) map.addImage(id, hatch.image, { pixelRatio: hatch.pixelRatio });
  });
  dark.addEventListener('change', () => map.setStyle(mapStyle(layers, theme(), selected), { diff: false }));
  reportPointing(map, events);
  return {
    showBlock: (blockId) => {
      selected = blockId;
      if (map.getLayer('block-chosen')) map.setFilter('block-chosen', selectedBlock(blockId));
      const bounds = blockId === null ? null : boundsOfBlock(layers.blocks, blockId);
      if (bounds) map.fitBounds(bounds, FIT);
    },
    showUnits: (units) => scale.setUnit(units === 'us' ? 'imperial' : 'metric'),
    showAll: () => {
      if (project.bounds) map.fitBounds(project.bounds as unknown as LngLatBoundsLike, FIT);
    },
  };
}

function nameCanvas(map: MapLibreMap, project: Project): void {
  const canvas = map.getCanvas();
  canvas.setAttribute('aria-label', `Map of ${project.title}: pavement by stained share, crowns, blocks by rank`);
  // The browser tests wait for this before they look.
  map.once('idle', () => canvas.setAttribute('data-drawn', ''));
}

function reportPointing(map: MapLibreMap, events: MapEvents): void {
  map.on('click', (event) => {
    const [tree] = map.queryRenderedFeatures(event.point, { layers: ['crown-fill'] });
    events.treePointed(tree?.properties ?? null);
    const [block] = map.queryRenderedFeatures(event.point, { layers: ['rank-badge', 'block-fill'] });
    if (block && !tree) events.blockClicked(String(block.properties.block_id));
  });
  for (const layer of ['rank-badge', 'block-fill', 'crown-fill']) {
    map.on('mouseenter', layer, () => {
      map.getCanvas().style.cursor = 'pointer';
    });
    map.on('mouseleave', layer, () => {
      map.getCanvas().style.cursor = '';
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
