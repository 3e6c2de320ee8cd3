/** How the walk's map is drawn: stained pavement, crowns, drains, and trees numbered in walking order. */
import fontUrl from '@fontsource/inter/files/inter-latin-600-normal.woff2?url';
import type { ExpressionSpecification, LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { CLEAN, STAIN_CLASSES, type Theme } from '../../map/stain-ramp.ts';
import type { Light } from '../look/walk-colours.ts';
import type { BlockPack } from '../pack/block-pack.ts';

export const TILE_SCHEME = 'crownfall-walk-tile';

interface MapInk {
  readonly ground: string;
  readonly block: string;
  readonly edge: string;
  readonly crown: string;
  readonly crownLine: string;
  readonly ink: string;
  readonly paper: string;
  readonly now: string;
  readonly water: string;
}

const INK: Readonly<Record<Light, MapInk>> = {
  sun: {
    ground: '#f4f7f2',
    block: '#ffffff',
    edge: '#0b1711',
    crown: '#5f9a6c',
    crownLine: '#1e4a30',
    ink: '#0b1711',
    paper: '#ffffff',
    now: '#ffd84a',
    water: '#0a4f86',
  },
  night: {
    ground: '#0c120f',
    block: '#141c18',
    edge: '#dfe9e2',
    crown: '#38634a',
    crownLine: '#8fc7a0',
    ink: '#f2f7f3',
    paper: '#0c120f',
    now: '#f0c64a',
    water: '#7fbdf0',
  },
};

const THEME: Readonly<Record<Light, Theme>> = { sun: 'light', night: 'dark' };
const EMPTY: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };
const stainedPct: ExpressionSpecification = ['coalesce', ['get', 'stained_pct'], 0];

export interface WalkLook {
  readonly pack: BlockPack;
  /** Points with `label`, `state` now · seen · ahead. */
  readonly trees: GeoJSON.FeatureCollection;
  readonly light: Light;
  readonly imagery: boolean;
}

export function walkStyle({ pack, trees, light, imagery }: WalkLook): StyleSpecification {
  const ink = INK[light];
  const { layers } = pack;
  return {
    version: 8,
    'font-faces': { Inter: new URL(fontUrl, location.href).href },
    sources: {
      blocks: { type: 'geojson', data: layers.blocks },
      pavement: { type: 'geojson', data: layers.pavement, tolerance: 0.1 },
      crowns: { type: 'geojson', data: layers.crowns, tolerance: 0.1 },
      water: { type: 'geojson', data: layers.water },
      trees: { type: 'geojson', data: trees },
      position: { type: 'geojson', data: EMPTY },
      ...(imagery && {
        imagery: {
          type: 'raster',
          tiles: [`${TILE_SCHEME}://{z}/{x}/{y}`],
          tileSize: 256,
          minzoom: 17,
          maxzoom: 20,
          bounds: [...pack.bounds],
        },
      }),
    },
    layers: [
      { id: 'ground', type: 'background', paint: { 'background-color': ink.ground } },
      { id: 'block', type: 'fill', source: 'blocks', paint: { 'fill-color': ink.block } },
      ...(imagery
        ? [{ id: 'imagery', type: 'raster', source: 'imagery', paint: { 'raster-fade-duration': 0 } } as const]
        : []),
      ...groundLayers(ink, light, imagery),
      ...crownLayers(ink, pack.blockId, imagery),
      ...waterLayers(ink),
      ...treeLayers(ink),
      ...positionLayers(ink),
    ],
  };
}

function groundLayers(ink: MapInk, light: Light, imagery: boolean): LayerSpecification[] {
  const theme = THEME[light];
  const steps = STAIN_CLASSES.flatMap((each) => [each.fromPct, each[theme]]);
  return [
    {
      id: 'pavement',
      type: 'fill',
      source: 'pavement',
      paint: {
        'fill-color': ['step', stainedPct, CLEAN[theme], ...steps] as ExpressionSpecification,
        'fill-opacity': imagery ? ['step', stainedPct, 0, STAIN_CLASSES[0].fromPct, 0.5] : 1,
      },
    },
    {
      id: 'pavement-edge',
      type: 'line',
      source: 'pavement',
      paint: { 'line-color': ink.edge, 'line-opacity': 0.35, 'line-width': 0.7 },
    },
  ];
}

function crownLayers(ink: MapInk, blockId: string, imagery: boolean): LayerSpecification[] {
  const own: ExpressionSpecification = ['==', ['get', 'block_id'], blockId];
  return [
    {
      id: 'crowns',
      type: 'fill',
      source: 'crowns',
      paint: { 'fill-color': ink.crown, 'fill-opacity': ['case', own, imagery ? 0.25 : 0.6, 0.15] },
    },
    {
      id: 'drip-line',
      type: 'line',
      source: 'crowns',
      paint: { 'line-color': ink.crownLine, 'line-width': ['case', own, 1.8, 0.6] },
    },
    {
      id: 'block-edge',
      type: 'line',
      source: 'blocks',
      filter: own,
      paint: { 'line-color': ink.edge, 'line-width': 2.5, 'line-dasharray': [4, 2] },
    },
  ];
}

function waterLayers(ink: MapInk): LayerSpecification[] {
  return [
    {
      id: 'water',
      type: 'fill',
      source: 'water',
      filter: ['==', ['geometry-type'], 'Polygon'],
      paint: { 'fill-color': ink.water },
    },
    { id: 'water-line', type: 'line', source: 'water', paint: { 'line-color': ink.water, 'line-width': 2 } },
    {
      id: 'drains',
      type: 'circle',
      source: 'water',
      filter: ['==', ['geometry-type'], 'Point'],
      paint: {
        'circle-radius': 5,
        'circle-color': ink.paper,
        'circle-stroke-color': ink.water,
        'circle-stroke-width': 3,
      },
    },
  ];
}

function treeLayers(ink: MapInk): LayerSpecification[] {
  const state = (now: string | number, seen: string | number, ahead: string | number): ExpressionSpecification =>
    ['match', ['get', 'state'], 'now', now, 'seen', seen, ahead] as unknown as ExpressionSpecification;
  return [
    {
      id: 'trees',
      type: 'circle',
      source: 'trees',
      layout: { 'circle-sort-key': state(2, 0, 1) },
      paint: {
        'circle-radius': state(17, 12, 13),
        'circle-color': state(ink.now, ink.crownLine, ink.paper),
        'circle-stroke-color': ink.ink,
        'circle-stroke-width': state(3, 1, 2),
      },
    },
    {
      id: 'tree-numbers',
      type: 'symbol',
      source: 'trees',
      layout: {
        'text-field': ['get', 'label'],
        'text-font': ['Inter'],
        'text-size': state(16, 12, 12),
        'text-allow-overlap': true,
        'symbol-sort-key': state(2, 0, 1),
      },
      paint: { 'text-color': state('#1c1500', ink.paper, ink.ink) },
    },
  ];
}

function positionLayers(ink: MapInk): LayerSpecification[] {
  const pixels = ['get', 'accuracy_px_z20'] as unknown as ExpressionSpecification;
  return [
    {
      id: 'position-accuracy',
      type: 'circle',
      source: 'position',
      paint: {
        // A circle's radius on the ground doubles with each zoom.
        'circle-radius': [
          'interpolate',
          ['exponential', 2],
          ['zoom'],
          15,
          ['/', pixels, 32],
          20,
          pixels,
          23,
          ['*', pixels, 8],
        ],
        'circle-color': ink.water,
        'circle-opacity': 0.15,
      },
    },
    {
      id: 'position',
      type: 'circle',
      source: 'position',
      paint: {
        'circle-radius': 8,
        'circle-color': '#1769e0',
        'circle-stroke-color': '#ffffff',
        'circle-stroke-width': 3,
      },
    },
  ];
}
