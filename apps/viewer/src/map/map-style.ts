/** The map's style sheet for MapLibre: everything is drawn from the project's own layers, nothing comes from outside. */
import fontUrl from '@fontsource/inter/files/inter-latin-600-normal.woff2?url';
import type { ExpressionSpecification, LayerSpecification, SourceSpecification, StyleSpecification } from 'maplibre-gl';
import type { Layers } from '../project/project.ts';
import type { BlockMarks } from './block-ranks.ts';
import { MAP_COLOURS, type MapColours } from './map-colours.ts';
import { sketchLayers } from './sketch-layers.ts';
import { CLEAN, hatchName, STAIN_CLASSES, type Theme } from './stain-ramp.ts';
import { waterLayers } from './water-layers.ts';

const stainedPct: ExpressionSpecification = ['coalesce', ['get', 'stained_pct'], 0];
/** A crown stains when a cause was found in it. */
const stains: ExpressionSpecification = ['>', ['coalesce', ['get', 'dose'], 0], 0];
/** Blocks of the first ranks are drawn heavier, so that order shows without colour. */
const FIRST_RANKS = 5;
const isShown: ExpressionSpecification = ['get', 'shown'];
const isFirst: ExpressionSpecification = ['<=', ['get', 'rank'], FIRST_RANKS];

/** What the style is made of: the data, and how they are to look. */
export interface MapLook {
  readonly layers: Layers;
  readonly marks: BlockMarks;
  readonly sketch: GeoJSON.FeatureCollection;
  /** What lies about the chosen block while a season is planned. */
  readonly water: GeoJSON.FeatureCollection;
  readonly theme: Theme;
  readonly blockId: string | null;
  readonly treeId: string | null;
  /** The tree whose crown is being drawn: its recorded crown steps back. */
  readonly sketchedTree: string | null;
  readonly imagery: ImageryLook | null;
  /** Address of tiles beneath everything; null: none. */
  readonly background: string | null;
}

export interface ImageryLook {
  readonly tiles: string;
  readonly bounds: readonly [number, number, number, number];
  readonly opacity: number;
  /** −1 to 1. */
  readonly brightness: number;
}

export function mapStyle(look: MapLook): StyleSpecification {
  const { layers, marks, theme, imagery, background } = look;
  const colours = MAP_COLOURS[theme];
  return {
    version: 8,
    'font-faces': { Inter: new URL(fontUrl, location.href).href },
    sources: {
      blocks: { type: 'geojson', data: marks.blocks, promoteId: 'block_id' },
      'block-labels': { type: 'geojson', data: marks.labels },
      pavement: { type: 'geojson', data: layers.pavement, tolerance: 0.1, promoteId: 'pavement_id' },
      trees: { type: 'geojson', data: layers.trees, tolerance: 0.1, promoteId: 'tree_id' },
      drift: { type: 'geojson', data: layers.drift, tolerance: 0.1, promoteId: 'tree_id' },
      sketch: { type: 'geojson', data: look.sketch, tolerance: 0 },
      water: { type: 'geojson', data: look.water, tolerance: 0.1 },
      ...(imagery && { imagery: imagerySource(imagery) }),
      ...(background !== null && {
        background: { type: 'raster', tiles: [background], tileSize: 256, maxzoom: 19 } as const,
      }),
    },
    layers: [
      { id: 'ground', type: 'background', paint: { 'background-color': colours.ground } },
      ...(background === null ? [] : [{ id: 'background', type: 'raster', source: 'background' } as const]),
      {
        id: 'block-fill',
        type: 'fill',
        source: 'blocks',
        paint: { 'fill-color': colours.block, 'fill-opacity': background === null ? 1 : 0.2 },
      },
      ...(imagery ? [imageryLayer(imagery)] : []),
      ...pavementLayers(colours, theme, imagery !== null || background !== null),
      ...crownLayers(colours, look),
      ...blockLayers(colours, look.blockId),
      ...waterLayers(colours),
      ...sketchLayers(colours),
    ],
  };
}

function imagerySource({ tiles, bounds }: ImageryLook): SourceSpecification {
  return { type: 'raster', tiles: [tiles], tileSize: 256, bounds: [...bounds], maxzoom: 22 };
}

/** Brightening raises the darkest value, darkening lowers the lightest, so that neither loses the picture. */
export function imageryPaint({ opacity, brightness }: Pick<ImageryLook, 'opacity' | 'brightness'>) {
  return {
    'raster-opacity': opacity,
    'raster-brightness-min': Math.max(0, brightness) * 0.6,
    'raster-brightness-max': 1 + Math.min(0, brightness) * 0.6,
    'raster-fade-duration': 0,
  };
}

function imageryLayer(look: ImageryLook): LayerSpecification {
  return { id: 'imagery', type: 'raster', source: 'imagery', paint: imageryPaint(look) };
}

/** Picks the block to draw as selected; nothing is selected with null. */
export function selectedBlock(blockId: string | null): ['==', ['get', string], string] {
  return ['==', ['get', 'block_id'], blockId ?? ''];
}

/** Picks the tree to draw as selected. */
export function selectedTree(treeId: string | null): ['==', ['get', string], string] {
  return ['==', ['get', 'tree_id'], treeId ?? ''];
}

/** All trees that a layer shows but the one that is being drawn. */
export function layerFilter(layer: string, sketchedTree: string | null): ExpressionSpecification {
  const others: ExpressionSpecification = ['!=', ['get', 'tree_id'], sketchedTree ?? ''];
  if (layer === 'drift-line') return ['all', others, stains];
  if (layer === 'crown-label') return ['all', others, stains, ['!=', ['typeof', ['get', 'severity_pct']], 'null']];
  return others;
}

function pavementLayers(colours: MapColours, theme: Theme, overImagery: boolean): LayerSpecification[] {
  const steps = STAIN_CLASSES.flatMap((each) => [each.fromPct, each[theme]]);
  const hatched = STAIN_CLASSES.filter((each) => each.hatchPx !== null);
  const hatches = hatched.slice(1).flatMap((each) => [each.fromPct, hatchName(each)]);
  return [
    {
      id: 'pavement-fill',
      type: 'fill',
      source: 'pavement',
      paint: {
        'fill-color': ['step', stainedPct, CLEAN[theme], ...steps] as ExpressionSpecification,
        // A crown must be judged through it: over a picture clean pavement is a breath, stain a tint.
        'fill-opacity': overImagery ? ['step', stainedPct, 0.06, STAIN_CLASSES[0].fromPct, 0.28] : 1,
      },
    },
    {
      id: 'pavement-hatch',
      type: 'fill',
      source: 'pavement',
      filter: ['>=', stainedPct, hatched[0].fromPct],
      paint: { 'fill-pattern': ['step', stainedPct, hatchName(hatched[0]), ...hatches] as ExpressionSpecification },
    },
    {
      id: 'pavement-line',
      type: 'line',
      source: 'pavement',
      minzoom: 16,
      paint: { 'line-color': colours.pavementLine, 'line-width': 0.6 },
    },
  ];
}

function crownLayers(colours: MapColours, { imagery, treeId, sketchedTree }: MapLook): LayerSpecification[] {
  return [
    {
      id: 'drift-line',
      type: 'line',
      source: 'drift',
      minzoom: 16,
      filter: layerFilter('drift-line', sketchedTree),
      paint: { 'line-color': colours.drift, 'line-width': 1, 'line-dasharray': [2, 2] },
    },
    {
      id: 'crown-fill',
      type: 'fill',
      source: 'trees',
      filter: layerFilter('crown-fill', sketchedTree),
      paint: { 'fill-color': colours.crown, 'fill-opacity': imagery ? 0 : ['case', stains, 0.42, 0.18] },
    },
    {
      id: 'crown-line',
      type: 'line',
      source: 'trees',
      filter: layerFilter('crown-line', sketchedTree),
      paint: {
        'line-color': colours.crownLine,
        'line-width': [
          'interpolate',
          ['linear'],
          ['zoom'],
          14,
          ['case', stains, 0.6, 0.2],
          18,
          ['case', stains, 2, 0.8],
        ],
      },
    },
    {
      id: 'crown-chosen',
      type: 'line',
      source: 'trees',
      filter: selectedTree(treeId),
      paint: { 'line-color': colours.accent, 'line-width': 3.5 },
    },
    {
      id: 'crown-label',
      type: 'symbol',
      source: 'trees',
      minzoom: 18,
      filter: layerFilter('crown-label', sketchedTree),
      layout: {
        // A severity that comes from trees like it, not from a rating, is marked as about so much.
        'text-field': [
          'concat',
          ['case', ['==', ['get', 'severity_from'], 'group'], '≈', ''],
          ['to-string', ['round', ['get', 'severity_pct']]],
          ' %',
        ],
        'text-font': ['Inter'],
        'text-size': 11,
      },
      paint: { 'text-color': colours.ink, 'text-halo-color': colours.paper, 'text-halo-width': 1.5 },
    },
  ];
}

function blockLayers(colours: MapColours, selected: string | null): LayerSpecification[] {
  return [
    {
      id: 'block-line',
      type: 'line',
      source: 'blocks',
      // Where blocks share a border the better rank is drawn on top.
      layout: { 'line-sort-key': ['-', 0, ['get', 'rank']] },
      paint: {
        'line-color': ['case', isFirst, colours.ink, colours.blockLine],
        'line-width': ['case', ['!', isShown], 0.4, isFirst, 1.8, 0.8],
      },
    },
    {
      id: 'block-chosen',
      type: 'line',
      source: 'blocks',
      filter: selectedBlock(selected),
      layout: { 'line-join': 'round' },
      paint: { 'line-color': colours.accent, 'line-width': 4.5 },
    },
    {
      id: 'rank-badge',
      type: 'circle',
      source: 'block-labels',
      filter: isShown,
      layout: { 'circle-sort-key': ['-', 0, ['get', 'rank']] },
      paint: {
        'circle-radius': ['interpolate', ['linear'], ['zoom'], 13.5, 5.5, 15, 9, 16, 13],
        'circle-color': ['case', isFirst, colours.ink, colours.paper],
        'circle-stroke-color': ['case', isFirst, colours.paper, colours.blockLine],
        'circle-stroke-width': 1.2,
      },
    },
    {
      id: 'rank-label',
      type: 'symbol',
      source: 'block-labels',
      filter: isShown,
      layout: {
        'text-field': ['to-string', ['get', 'rank']],
        'text-font': ['Inter'],
        'text-size': ['interpolate', ['linear'], ['zoom'], 13.5, 7, 15, 10.5, 16, 14],
        'text-allow-overlap': true,
        'text-ignore-placement': true,
      },
      paint: { 'text-color': ['case', isFirst, colours.paper, colours.ink] },
    },
  ];
}
