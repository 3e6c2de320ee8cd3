/**
 * Tiles: the overlay of one share of a project's pavement, written down so that many machines can share a city.
 * A tile file is JSON: which share of how many, a fingerprint of what it was reckoned from, and the ledger's columns.
 */
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Placed } from '@crownfall/assessment';
import { mergeLedgers, type OverlayLedger } from '@crownfall/geometry';

/** Tile `number` of `count`, counted from 1. */
export interface Tile {
  readonly number: number;
  readonly count: number;
}

interface TileFile extends Tile {
  readonly fingerprint: string;
  readonly ledger: Record<'piece' | 'block' | 'areaM2' | 'coverStart' | 'zone' | 'layer', readonly number[]>;
}

const NAME = /^tile-\d+-of-\d+\.json$/;

/** Equal for equal files, settings and program: tiles with different ones do not belong together. */
export function fingerprintOf({ input, settings }: Placed): string {
  const facts = { sources: input.sources.map(({ sha256 }) => sha256), settings };
  return createHash('sha256').update(JSON.stringify(facts)).digest('hex');
}

export async function writeTile(
  folder: string,
  tile: Tile,
  fingerprint: string,
  ledger: OverlayLedger,
): Promise<string> {
  const { piece, block, areaM2, coverStart, zone, layer } = ledger;
  const columns = { piece, block, areaM2, coverStart, zone, layer };
  const entries = Object.entries(columns).map(([name, column]) => [name, Array.from(column)]);
  const file = { ...tile, fingerprint, ledger: Object.fromEntries(entries) };
  const path = join(folder, `tile-${tile.number}-of-${tile.count}.json`);
  await mkdir(folder, { recursive: true });
  await writeFile(`${path}.${process.pid}.part`, JSON.stringify(file));
  await rename(`${path}.${process.pid}.part`, path);
  return path;
}

/** The ledger of all tiles in a folder. RangeError when one is missing, damaged, or from other files or settings. */
export async function readTiles(folder: string, fingerprint: string): Promise<OverlayLedger> {
  const names = (await readdir(folder)).filter((name) => NAME.test(name));
  const tiles = await Promise.all(names.map(async (name) => ({ name, ...(await readTile(join(folder, name))) })));
  const count = tiles[0]?.count ?? 0;
  for (const { name, ...tile } of tiles) {
    if (tile.fingerprint !== fingerprint) {
      throw new RangeError(`${join(folder, name)} was reckoned from other files or settings; reckon that tile again.`);
    }
  }
  const there = new Set(tiles.map(({ number }) => number));
  const missing = Array.from({ length: Math.max(count, 1) }, (_, i) => i + 1).filter((number) => !there.has(number));
  if (missing.length > 0 || tiles.some((tile) => tile.count !== count)) {
    const which = tiles.length === 0 ? 'there are none' : `missing: ${missing.join(', ')} of ${count}`;
    throw new RangeError(`${folder} does not hold all tiles of one cut: ${which}.`);
  }
  return mergeLedgers(tiles.map(({ ledger }) => ledgerOfColumns(ledger)));
}

async function readTile(path: string): Promise<TileFile> {
  const text = await readFile(path, 'utf8');
  try {
    return JSON.parse(text) as TileFile;
  } catch {
    throw new RangeError(`${path} is damaged; reckon that tile again.`);
  }
}

function ledgerOfColumns({ piece, block, areaM2, coverStart, zone, layer }: TileFile['ledger']): OverlayLedger {
  return {
    cellCount: piece.length,
    piece: Int32Array.from(piece),
    block: Int32Array.from(block),
    areaM2: Float64Array.from(areaM2),
    coverStart: Int32Array.from(coverStart),
    zone: Int32Array.from(zone),
    layer: Uint8Array.from(layer),
  };
}
