import { basename } from 'node:path';
import type { Finding } from '@crownfall/geometry';
import type { RawLayer } from '@crownfall/survey';
import { guessMapping, type MappingGuess } from '../inventory/guess-mapping.ts';
import { guessPosition } from '../inventory/guess-position.ts';
import type { InventoryMapping } from '../inventory/inventory-mapping.ts';
import type { LayerEntry, LayerReading } from '../layer-reading.ts';
import { readLayer } from '../project/read-layer.ts';
import { layerFile } from './layer-file.ts';

/** Reads an inventory's file as it stands, its positions placed as the mapping says. */
export async function readInventory(
  path: string,
  { crs, position }: Pick<InventoryMapping, 'crs' | 'position'>,
): Promise<LayerReading> {
  const fields =
    position && (crs === undefined ? { lon: position.x, lat: position.y } : { x: position.x, y: position.y });
  const entry: LayerEntry = {
    path: basename(path),
    ...(crs === undefined ? {} : { crs }),
    ...(fields ? { fields } : {}),
  };
  const file = await layerFile(path, entry);
  return readLayer(file.source).finally(file.close);
}

export interface InventoryGuess extends MappingGuess {
  /** Rows of the inventory; 0 when it could not be read. */
  readonly rows: number;
  readonly findings: readonly Finding[];
  /** Where the first placed row lies, for a person to check; null without any. */
  readonly example: { readonly lon: number; readonly lat: number } | null;
  /** True when no one states the system and it is guessed: the example tells whether it is right. */
  readonly crsGuessed: boolean;
}

/** What most maps on the web are in; numbers of millions of metres fit little else that comes without its name. */
const WEB_MERCATOR = 'EPSG:3857';

/**
 * Reads an inventory and guesses its mapping, for confirmation. A file whose coordinates come without their system is tried
 * as Web Mercator; when that cannot be, the findings say that the system must be stated. Throws an `Outage` when the disk
 * fails.
 */
export async function guessInventory(path: string, crs?: string): Promise<InventoryGuess> {
  const stated = crs === undefined ? {} : { crs };
  const { reading, placed } = await placedReading(path, stated);
  const features = reading.layer?.features ?? [];
  const guess = guessMapping(features.map(({ properties }) => properties));
  const crsGuessed = placed.crs !== undefined && crs === undefined;
  return {
    ...guess,
    mapping: { ...placed, ...guess.mapping },
    rows: features.length,
    findings: reading.findings,
    example: exampleOf(reading.layer),
    crsGuessed,
  };
}

type Placing = Pick<InventoryMapping, 'crs' | 'position'>;

async function placedReading(path: string, stated: Placing): Promise<{ reading: LayerReading; placed: Placing }> {
  const first = await readInventory(path, stated);
  const missing = first.findings.some(({ code }) => code === 'crs-missing');
  if (first.layer === null && missing && stated.crs === undefined) {
    const placed = { crs: WEB_MERCATOR };
    const second = await readInventory(path, placed);
    // Metres of Web Mercator within 100 km of 0, 0 are feet or metres of some local system instead.
    const at = exampleOf(second.layer);
    return at && Math.hypot(at.lon, at.lat) > 20 ? { reading: second, placed } : { reading: first, placed: stated };
  }
  if (first.layer === null || first.layer.features.some(({ geometry }) => geometry.kind !== 'none')) {
    return { reading: first, placed: stated };
  }
  const position = guessPosition(first.layer.features.map(({ properties }) => properties));
  if (position === null) return { reading: first, placed: stated };
  const placed = { ...stated, position };
  return { reading: await readInventory(path, placed), placed };
}

function exampleOf(layer: RawLayer | null): InventoryGuess['example'] {
  for (const { geometry } of layer?.features ?? []) {
    const flat =
      geometry.kind === 'point' ? geometry.points : geometry.kind === 'area' ? geometry.polygons[0][0] : null;
    if (flat && Number.isFinite(flat[0] + flat[1])) return { lon: flat[0], lat: flat[1] };
  }
  return null;
}
