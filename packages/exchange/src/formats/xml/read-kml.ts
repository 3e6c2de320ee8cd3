/** KML 2.2 (OGC 07-147r2): placemarks with their geometry, name, description, time and extended data. */
import type { FeatureTaker } from '../../geojson/feature-taker.ts';
import type { LayerSource } from '../../layer-reading.ts';
import { tellDamage, tellRefusal } from '../damage.ts';
import { readXml } from './read-xml.ts';

interface JsonGeometry {
  readonly type: string;
  readonly coordinates?: unknown;
  readonly geometries?: readonly JsonGeometry[];
}

/** A geometry that is being read: its rings, or its members. */
interface Frame {
  readonly name: string;
  readonly rings: number[][][];
  readonly members: JsonGeometry[];
}

const GEOMETRIES = new Set(['Point', 'LineString', 'LinearRing', 'Polygon', 'MultiGeometry']);
/** Elements of a placemark whose text is a field, and the field's name. */
const FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  description: 'description',
  when: 'time',
  begin: 'begin',
  end: 'end',
};
const NUMBER_TYPES = /^(?:int|uint|short|ushort|float|double)$/;

/** Hands over every placemark. Altitudes are dropped; styles, overlays, tracks and links are passed over. */
export async function takeKml(source: LayerSource, taker: FeatureTaker): Promise<void> {
  const placemarks = placemarkReader(taker);
  const end = await readXml(source.bytes, { ...placemarks, ready: () => taker.ready() });
  if (end.as === 'damaged') tellDamage(taker, 'KML', end.problem);
  if (end.as === 'refused') tellRefusal(taker, 'KML', end.problem);
}

function placemarkReader(taker: FeatureTaker) {
  let properties: Record<string, unknown> | null = null;
  let shapes: JsonGeometry[] = [];
  let frames: Frame[] = [];
  let dataName = '';
  let text = '';
  const path: string[] = [];
  const numeric = new Set<string>();

  function open(name: string, attributes: Readonly<Record<string, string>>): void {
    path.push(name);
    text = '';
    if (name === 'Placemark') {
      properties = {};
      shapes = [];
      frames = [];
    }
    if (name === 'SimpleField' && NUMBER_TYPES.test(attributes.type ?? '')) numeric.add(attributes.name ?? '');
    if (name === 'Data' || name === 'SimpleData') dataName = attributes.name ?? '';
    if (properties && GEOMETRIES.has(name)) frames.push({ name, rings: [], members: [] });
  }

  function close(name: string): void {
    path.pop();
    if (!properties) return;
    if (name === 'Placemark') {
      taker.addFeature({ type: 'Feature', properties, geometry: joined(shapes) });
      properties = null;
    } else if (name === 'coordinates') frames.at(-1)?.rings.push(positions(text));
    else if (GEOMETRIES.has(name)) closeGeometry();
    else closeField(name, properties);
    text = '';
  }

  function closeField(name: string, into: Record<string, unknown>): void {
    const parent = path.at(-1) ?? '';
    if (name === 'SimpleData' || (name === 'value' && parent === 'Data')) {
      if (dataName !== '') define(into, dataName, numeric.has(dataName) ? numberOr(text) : text.trim());
    } else if (Object.hasOwn(FIELDS, name) && (parent === 'Placemark' || name === 'when' || parent === 'TimeSpan')) {
      if (parent !== 'Track') define(into, FIELDS[name], text.trim());
    }
  }

  function closeGeometry(): void {
    const frame = frames.pop();
    if (!frame) return;
    const outer = frames.at(-1);
    if (outer?.name === 'Polygon' && frame.name === 'LinearRing') outer.rings.push(...frame.rings);
    else if (outer) outer.members.push(geometryOf(frame));
    else shapes.push(geometryOf(frame));
  }

  return {
    open,
    close,
    text(run: string): void {
      text += run;
    },
  };
}

/** Own fields win over later ones of the same name, and no name can reach the object's prototype. */
function define(into: Record<string, unknown>, name: string, value: unknown): void {
  if (!Object.hasOwn(into, name)) Object.defineProperty(into, name, { value, enumerable: true, writable: true });
}

function numberOr(text: string): unknown {
  const number = Number(text);
  return text.trim() !== '' && Number.isFinite(number) ? number : text.trim();
}

/** `lon,lat[,altitude]`, parted by white space; blanks around commas, which some programs write, are passed over. */
function positions(text: string): number[][] {
  const tuples = text
    .replace(/\s*,\s*/g, ',')
    .trim()
    .split(/\s+/);
  return tuples
    .filter((tuple) => tuple !== '')
    .map((tuple) => {
      const [lon, lat] = tuple.split(',');
      return [numberIn(lon), numberIn(lat)];
    });
}

function numberIn(text: string | undefined): number {
  return text === undefined || text === '' ? Number.NaN : Number(text);
}

function geometryOf({ name, rings, members }: Frame): JsonGeometry {
  if (name === 'MultiGeometry') return joined(members) ?? { type: 'GeometryCollection', geometries: [] };
  if (name === 'Point') return { type: 'Point', coordinates: rings[0]?.[0] ?? [] };
  if (name === 'Polygon') return { type: 'Polygon', coordinates: rings };
  return { type: 'LineString', coordinates: rings[0] ?? [] };
}

function joined(shapes: readonly JsonGeometry[]): JsonGeometry | null {
  if (shapes.length === 0) return null;
  return shapes.length === 1 ? shapes[0] : { type: 'GeometryCollection', geometries: shapes };
}
