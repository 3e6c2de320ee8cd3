/** The files a plan reads beside the project: daily temperatures, addresses. */
import { createReadStream } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import type { Address } from '@crownfall/assessment';
import { geometryFromJson } from '@crownfall/exchange';
import type { DailyTemperature } from '@crownfall/priority';
import { isIsoDay } from '@crownfall/survey';
import { readTable } from './read-table.ts';

const COLUMNS = ['date', 'tmin_c', 'tmax_c'];

/** The file an option names, else the one the settings name beside the project; null for neither. */
export async function fileBeside(project: string, option: string | undefined, setting: string): Promise<string | null> {
  if (option !== undefined) return option;
  if (setting.trim() === '') return null;
  const folder = (await stat(project)).isDirectory() ? project : dirname(project);
  return join(folder, setting);
}

/** Daily temperatures, °C. Days without both figures are left out; RangeError for what is no day or no number. */
export async function readTemperatures(path: string): Promise<DailyTemperature[]> {
  const file = basename(path);
  const rows = await readTable(createReadStream(path), file, COLUMNS);
  return rows.flatMap(({ date, tmin_c, tmax_c }, i) => {
    const where = `${file}, row ${i + 2}`;
    if (!isIsoDay(date)) throw new RangeError(`${where}: expected a date YYYY-MM-DD, got ${date || 'nothing'}`);
    if (tmin_c === '' || tmax_c === '') return [];
    const [lowestC, highestC] = [Number(tmin_c), Number(tmax_c)];
    if (!(lowestC <= highestC)) throw new RangeError(`${where}: expected tmin_c ≤ tmax_c, got ${tmin_c} and ${tmax_c}`);
    return [{ date, lowestC, highestC }];
  });
}

/** Addresses from GeoJSON features with a property `address`; RangeError when there is none. */
export async function readAddresses(path: string): Promise<Address[]> {
  const file = basename(path);
  const read = parsed(await readFile(path, 'utf8'), file);
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
