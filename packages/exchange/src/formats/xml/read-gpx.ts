/** GPX 1.0 and 1.1: waypoints as points, routes and tracks as lines. */
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { tellDamage, tellRefusal } from '../damage.ts';
import { readXml } from './read-xml.ts';

/** What becomes a feature, and the points of a line. */
const FEATURES = new Set(['wpt', 'rte', 'trk']);
const NUMBERS = new Set(['ele', 'hdop', 'vdop', 'pdop', 'sat', 'magvar', 'geoidheight', 'number']);

/**
 * Hands over waypoints, routes and tracks, each with the text of its own elements and of its extensions as fields (`ele`
 * is the altitude in metres). What the points of a line carry beyond their position is passed over.
 */
export async function takeGpx(source: LayerSource, taker: FeatureTaker): Promise<void> {
  const end = await readXml(source.bytes, { ...gpxReader(taker), ready: () => taker.ready() });
  if (end.as === 'damaged') tellDamage(taker, 'GPX', end.problem);
  if (end.as === 'refused') tellRefusal(taker, 'GPX', end.problem);
}

function gpxReader(taker: FeatureTaker) {
  let feature: { name: string; properties: Map<string, unknown>; point: number[]; lines: number[][][] } | null = null;
  let amidPoint = false;
  let text = '';
  let leaf = false;

  function open(name: string, attributes: Readonly<Record<string, string>>): void {
    text = '';
    leaf = true;
    if (FEATURES.has(name)) {
      feature = { name, properties: new Map(), point: position(attributes), lines: name === 'rte' ? [[]] : [] };
    } else if (name === 'trkseg') feature?.lines.push([]);
    else if (name === 'trkpt' || name === 'rtept') {
      amidPoint = true;
      feature?.lines.at(-1)?.push(position(attributes));
    }
  }

  function close(name: string): void {
    if (name === feature?.name) {
      const { point, lines, properties } = feature;
      const geometry =
        name === 'wpt'
          ? { type: 'Point', coordinates: point }
          : { type: 'MultiLineString', coordinates: lines.filter((line) => line.length > 1) };
      taker.addFeature({ type: 'Feature', properties: Object.fromEntries(properties), geometry });
      feature = null;
    } else if (name === 'trkpt' || name === 'rtept') amidPoint = false;
    else if (feature && leaf && !amidPoint && text.trim() !== '' && !feature.properties.has(name)) {
      const number = Number(text);
      feature.properties.set(name, NUMBERS.has(name) && Number.isFinite(number) ? number : text.trim());
    }
    leaf = false;
    text = '';
  }

  return {
    open,
    close,
    text(run: string): void {
      text += run;
    },
  };
}

function position({ lon, lat }: Readonly<Record<string, string>>): number[] {
  return [numberIn(lon), numberIn(lat)];
}

function numberIn(text: string | undefined): number {
  return text === undefined || text.trim() === '' ? Number.NaN : Number(text);
}
