/** The files a plan reads beside the project: daily temperatures, addresses. */
import type { Address } from '@crownfall/assessment';
import { isIsoDay } from '@crownfall/survey';
import { readTable } from '../csv/read-table.ts';
import { geometryFromJson } from '../geojson/geometry-from-json.ts';

/** Lowest and highest temperature of a day, °C. */
export interface DayTemperature {
  readonly date: string;
  readonly lowestC: number;
  readonly highestC: number;
}

/** Delimited text `date, tmin_c, tmax_c`. Days without both figures are left out; RangeError for what is no day or no number. */
export async function readTemperatures(bytes: Uint8Array, file: string): Promise<DayTemperature[]> {
  const rows = await readTable(bytes, file, ['date', 'tmin_c', 'tmax_c']);
  return rows.flatMap(({ date, tmin_c, tmax_c }, i) => {
    const where = `${file}, row ${i + 2}`;
    if (!isIsoDay(date)) throw new RangeError(`${where}: expected a date YYYY-MM-DD, got ${date || 'nothing'}`);
    if (tmin_c === '' || tmax_c === '') return [];
    const [lowestC, highestC] = [Number(tmin_c), Number(tmax_c)];
    if (!(lowestC <= highestC)) throw new RangeError(`${where}: expected tmin_c ≤ tmax_c, got ${tmin_c} and ${tmax_c}`);
    return [{ date, lowestC, highestC }];
  });
}

/** Addresses or parcels from GeoJSON features with a property `address`; RangeError when there is none. */
export function readAddresses(bytes: Uint8Array, file: string): Address[] {
  const read = parsed(new TextDecoder().decode(bytes), file);
  const features = isObject(read) && Array.isArray(read.features) ? read.features : [];
  const addresses = features.flatMap((feature: unknown) => {
    if (!isObject(feature) || !isObject(feature.properties)) return [];
    const { address } = feature.properties;
    const geometry = geometryFromJson(feature.geometry, UNNOTED);
    return typeof address === 'string' && geometry.kind !== 'none' ? [{ address, geometry }] : [];
  });
  if (addresses.length === 0) throw new RangeError(`${file}: expected features with a field address, got none`);
  return addresses;
}

/** A parcel ring left open is closed; nothing else of the notes matters for a distance. */
const UNNOTED = { unclosed: () => {}, collectionMixed: () => {} };

function parsed(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new RangeError(`${file}: expected GeoJSON, got ${error instanceof Error ? error.message : 'something else'}`);
  }
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
