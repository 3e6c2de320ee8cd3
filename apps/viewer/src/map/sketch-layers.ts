/** How a crown in the making is drawn: its outline, a handle at each vertex, a lesser one between two. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Position, Sketch } from '../outline/sketch.ts';
import { sketchOutline } from '../outline/sketch-outline.ts';
import type { MapColours } from './map-colours.ts';

const NO_FEATURES: GeoJSON.FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Features of kind `area`, `line`, `vertex`, `middle`, `trunk`; the latter three carry what pointing at them means. */
export function sketchFeatures(sketch: Sketch | null): GeoJSON.FeatureCollection {
  if (!sketch) return NO_FEATURES;
  const ring = sketchOutline(sketch);
  return { type: 'FeatureCollection', features: [...outline(ring, sketch), ...handles(sketch)] };
}

function outline(ring: readonly Position[], sketch: Sketch): GeoJSON.Feature[] {
  if (ring.length < 2) return [];
  const whole = ring.length >= 3;
  const closed = whole && (sketch.tool !== 'polygon' || sketch.closed);
  const line = (closed ? [...ring, ring[0]] : ring).map(([lon, lat]) => [lon, lat]);
  const area = [...ring, ring[0]].map(([lon, lat]) => [lon, lat]);
  return [
    ...(whole ? [feature('area', { type: 'Polygon', coordinates: [area] })] : []),
    feature('line', { type: 'LineString', coordinates: line }),
  ];
}

function handles({ tool, vertices, closed, vertex, trunk }: Sketch): GeoJSON.Feature[] {
  if (tool !== 'polygon') return trunk ? [feature('trunk', point(trunk))] : [];
  const corners = vertices.map((at, index) => feature('vertex', point(at), { index, chosen: index === vertex }));
  const sides = vertices.slice(0, closed ? undefined : -1).map((at, index) => {
    const next = vertices[(index + 1) % vertices.length];
    return feature('middle', point([(at[0] + next[0]) / 2, (at[1] + next[1]) / 2]), { index });
  });
  return [...sides, ...corners];
}

const point = ([lon, lat]: Position): GeoJSON.Point => ({ type: 'Point', coordinates: [lon, lat] });

function feature(kind: string, geometry: GeoJSON.Geometry, more: object = {}): GeoJSON.Feature {
  return { type: 'Feature', properties: { kind, ...more }, geometry };
}

export function sketchLayers(colours: MapColours): LayerSpecification[] {
  const of = (...kinds: string[]): ['in', ['get', string], ['literal', string[]]] => [
    'in',
    ['get', 'kind'],
    ['literal', kinds],
  ];
  return [
    {
      id: 'sketch-area',
      type: 'fill',
      source: 'sketch',
      filter: of('area'),
      paint: { 'fill-color': colours.accent, 'fill-opacity': 0.2 },
    },
    {
      id: 'sketch-casing',
      type: 'line',
      source: 'sketch',
      filter: of('line'),
      paint: { 'line-color': colours.paper, 'line-width': 5, 'line-opacity': 0.85 },
    },
    {
      id: 'sketch-line',
      type: 'line',
      source: 'sketch',
      filter: of('line'),
      paint: { 'line-color': colours.accent, 'line-width': 2.25 },
    },
    {
      id: 'sketch-middle',
      type: 'circle',
      source: 'sketch',
      filter: of('middle'),
      minzoom: 17,
      paint: {
        'circle-radius': 3.5,
        'circle-color': colours.paper,
        'circle-stroke-color': colours.accent,
        'circle-stroke-width': 1,
      },
    },
    {
      id: 'sketch-handle',
      type: 'circle',
      source: 'sketch',
      filter: of('vertex', 'trunk'),
      paint: {
        'circle-radius': ['case', ['boolean', ['get', 'chosen'], false], 8, 5.5],
        'circle-color': ['case', ['boolean', ['get', 'chosen'], false], colours.accent, colours.paper],
        'circle-stroke-color': colours.accent,
        'circle-stroke-width': 2,
      },
    },
  ];
}
