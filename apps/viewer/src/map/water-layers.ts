/** Water, drains and wells about a block's trees: the ground to keep clear, and the shortest ways with their lengths. */
import type { BlockWater, WaterLine } from '@crownfall/assessment';
import type { ExpressionSpecification, LayerSpecification } from 'maplibre-gl';
import { toGeoJson } from '../edits/record-geometry.ts';
import { length, type Units } from '../language/quantities.ts';
import type { MapColours } from './map-colours.ts';

const NO_FEATURES: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Features of kind `keep`, `water`, `drain`, `well`, `way` and `length`; each tree's tightest way only. */
export function waterFeatures(water: BlockWater | null, units: Units): GeoJSON.FeatureCollection {
  if (!water) return NO_FEATURES;
  const ways = water.trees.flatMap(({ lines }) => tightest(lines));
  return {
    type: 'FeatureCollection',
    features: [
      ...water.keepOff.flatMap((geometry) => feature('keep', toGeoJson(geometry))),
      ...water.features.flatMap(({ kind, geometry }) => feature(kind, toGeoJson(geometry))),
      ...ways.flatMap(({ from, to, distanceM, keepOffM }) => {
        const near = keepOffM !== null && distanceM < keepOffM;
        const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
        return [
          ...feature('way', { type: 'LineString', coordinates: [[...from], [...to]] }, { near }),
          ...feature('length', { type: 'Point', coordinates: middle }, { near, text: length(distanceM, units) }),
        ];
      }),
    ],
  };
}

const roomOf = ({ distanceM, keepOffM }: WaterLine): number => distanceM - (keepOffM ?? 0);

function tightest(lines: readonly WaterLine[]): readonly WaterLine[] {
  return lines.toSorted((a, b) => roomOf(a) - roomOf(b)).slice(0, 1);
}

function feature(kind: string, geometry: GeoJSON.Geometry | null, more: object = {}): GeoJSON.Feature[] {
  return geometry ? [{ type: 'Feature', properties: { kind, ...more }, geometry }] : [];
}

export function waterLayers(colours: MapColours): LayerSpecification[] {
  const of = (...kinds: string[]): ExpressionSpecification => ['in', ['get', 'kind'], ['literal', kinds]];
  return [
    {
      id: 'water-keep',
      type: 'fill',
      source: 'water',
      filter: of('keep'),
      paint: { 'fill-color': colours.water, 'fill-opacity': 0.3, 'fill-outline-color': colours.ink },
    },
    {
      id: 'water-line',
      type: 'line',
      source: 'water',
      filter: of('water'),
      paint: { 'line-color': colours.water, 'line-width': 2.5 },
    },
    {
      id: 'water-way',
      type: 'line',
      source: 'water',
      filter: of('way'),
      paint: { 'line-color': colours.ink, 'line-width': ['case', ['get', 'near'], 3, 1.6] },
    },
    {
      id: 'water-drain',
      type: 'circle',
      source: 'water',
      filter: of('drain', 'well'),
      paint: {
        'circle-radius': 5,
        'circle-color': ['case', ['==', ['get', 'kind'], 'well'], colours.ink, colours.paper],
        'circle-stroke-color': colours.ink,
        'circle-stroke-width': 2,
      },
    },
    {
      id: 'water-length',
      type: 'symbol',
      source: 'water',
      filter: of('length'),
      layout: {
        'text-field': ['get', 'text'],
        'text-font': ['Inter'],
        'text-size': 12,
      },
      paint: { 'text-color': colours.ink, 'text-halo-color': colours.paper, 'text-halo-width': 2 },
    },
  ];
}
