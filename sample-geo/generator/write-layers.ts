/** The project's files as text: GeoJSON with one feature a line, CSV. Longitude and latitude with nine decimals. */
import { type CrownRecord, crownRecords } from './life/crown-records.ts';
import {
  BLOOM_COLUMNS,
  bloomRows,
  complaintNotes,
  drainPoints,
  type Note,
  type QuadratNote,
  seaRing,
  siteNotes,
  wellPoints,
} from './life/field-notes.ts';
import { pastBloomRows, TEMPERATURE_COLUMNS, temperatureRows } from './life/past-seasons.ts';
import { addressNotes, BLOOM_SETTINGS, planSettings } from './life/plan-notes.ts';
import { RATING_COLUMNS, ratingRows } from './life/ratings.ts';
import type { TreeTruth } from './life/truth.ts';
import { lonLat } from './place.ts';
import type { Point } from './town/loop.ts';
import { areaOf, type Ring } from './town/shapes.ts';
import { blockName, streetLines } from './town/street-lines.ts';
import type { Town } from './town/town.ts';

type Properties = Readonly<Record<string, unknown>>;

/** Every layer's file by name. */
export function layerFiles(
  town: Town,
  truth: readonly TreeTruth[],
  quadrats: readonly QuadratNote[],
): ReadonlyMap<string, string> {
  const temperatures = temperatureRows();
  const settings = { ...PROJECT.settings, bloom: BLOOM_SETTINGS, plan: planSettings(town) };
  const bloom = [...pastBloomRows(town, temperatures).toSorted(byDay), ...bloomRows(town, truth)];
  return new Map([
    ['project.json', `${JSON.stringify({ ...PROJECT, settings }, null, 2)}\n`],
    ['temperatures.csv', csv(TEMPERATURE_COLUMNS, temperatures)],
    ['addresses.geojson', collection('addresses', addressNotes(town).map(noteFeature))],
    ['crowns.geojson', collection('crowns', crownRecords(town.trees).map(crownFeature))],
    ['pavement.geojson', collection('pavement', pavementFeatures(town))],
    ['blocks.geojson', collection('blocks', blockFeatures(town))],
    ['ratings.csv', csv(RATING_COLUMNS, ratingRows(truth))],
    [
      'quadrats.csv',
      csv(['quadrat_id', 'lon', 'lat', 'area_m2', 'stained_pct', 'measured_on', 'by'], quadrats.map(quadratRow)),
    ],
    ['complaints.geojson', collection('complaints', complaintNotes(town, truth).map(noteFeature))],
    ['bloom.csv', csv(BLOOM_COLUMNS, bloom)],
    ['sites.geojson', collection('sites', siteNotes(town).map(noteFeature))],
    ['water.geojson', collection('water', waterFeatures(town))],
    [
      'streets.geojson',
      collection(
        'streets',
        streetLines().map(({ name, line }) => feature({ type: 'LineString', coordinates: line.map(lonLat) }, { name })),
      ),
    ],
  ]);
}

const PROJECT = {
  title: 'Port Calessa (invented)',
  season: 2026,
  units: 'metric',
  layers: {
    crowns: 'crowns.geojson',
    pavement: 'pavement.geojson',
    blocks: 'blocks.geojson',
    ratings: 'ratings.csv',
    quadrats: 'quadrats.csv',
    complaints: 'complaints.geojson',
    bloom: 'bloom.csv',
    water: 'water.geojson',
    sites: 'sites.geojson',
    streets: 'streets.geojson',
    imagery: ['aerial.tif'],
  },
  settings: { as_of: '2026-05-20' },
};

function byDay(a: { readonly observed_on: string | number }, b: { readonly observed_on: string | number }): number {
  return a.observed_on < b.observed_on ? -1 : a.observed_on > b.observed_on ? 1 : 0;
}

function crownFeature({ geometry, properties }: CrownRecord): string {
  return 'ring' in geometry
    ? feature({ type: 'Polygon', coordinates: [closed(geometry.ring, true)] }, properties)
    : feature({ type: 'Point', coordinates: lonLat(geometry.at) }, properties);
}

function pavementFeatures(town: Town): readonly string[] {
  return town.pavement.map(({ id, kind, surface, footTraffic, street, shell, holes, line, width }) => {
    const properties = {
      pavement_id: id,
      kind,
      surface,
      foot_traffic: footTraffic,
      ...(street === null ? {} : { street }),
      ...(typeof width === 'number' ? { width_m: width } : {}),
    };
    if (shell === undefined) return feature({ type: 'LineString', coordinates: (line ?? []).map(lonLat) }, properties);
    return feature(
      { type: 'Polygon', coordinates: [closed(shell, true), ...(holes ?? []).map((hole) => closed(hole, false))] },
      properties,
    );
  });
}

function blockFeatures(town: Town): readonly string[] {
  return town.blocks.map(({ id, use, face, loop }) => {
    const name = blockName(
      loop.sides.map((side) => side.street),
      use,
    );
    return feature(
      {
        type: 'Polygon',
        coordinates: [
          closed(
            face.map((c) => c.at),
            true,
          ),
        ],
      },
      { block_id: id, name, use },
    );
  });
}

function waterFeatures(town: Town): readonly string[] {
  const ponds = town.grounds.flatMap((grounds) => (grounds.pond === null ? [] : [grounds.pond]));
  const areas = [seaRing(), ...ponds].map((ring) =>
    feature({ type: 'Polygon', coordinates: [closed(ring, true)] }, { kind: 'water' }),
  );
  const points = (kind: string, at: readonly Point[]) =>
    at.map((point) => feature({ type: 'Point', coordinates: lonLat(point) }, { kind }));
  return [...areas, ...points('drain', drainPoints(town)), ...points('well', wellPoints(town))];
}

function noteFeature({ at, properties }: Note): string {
  return feature({ type: 'Point', coordinates: lonLat(at) }, properties);
}

function quadratRow({
  id,
  at,
  areaM2,
  stainedPct,
  measuredOn,
  by,
}: QuadratNote): Readonly<Record<string, string | number>> {
  const [lon, lat] = lonLat(at);
  return { quadrat_id: id, lon, lat, area_m2: areaM2, stained_pct: stainedPct, measured_on: measuredOn, by };
}

/** A closed ring as RFC 7946 wants it: shells counter-clockwise, holes clockwise. */
function closed(ring: Ring, shell: boolean): readonly Point[] {
  const turned = areaOf(ring) > 0 === shell ? ring : ring.toReversed();
  return [...turned, turned[0]].map(lonLat);
}

function feature(geometry: unknown, properties: Properties): string {
  return JSON.stringify({ type: 'Feature', properties, geometry });
}

function collection(name: string, features: readonly string[]): string {
  const head = `{"type":"FeatureCollection","name":${JSON.stringify(name)},"description":"Invented data (CC0)","features":[\n`;
  return `${head}${features.join(',\n')}\n]}\n`;
}

function csv<Column extends string>(
  columns: readonly Column[],
  rows: readonly Readonly<Record<Column, string | number>>[],
): string {
  const cell = (value: string | number) =>
    /[",\n]/.test(String(value)) ? `"${String(value).replaceAll('"', '""')}"` : String(value);
  return `${[columns.join(','), ...rows.map((row) => columns.map((column) => cell(row[column])).join(','))].join('\n')}\n`;
}
