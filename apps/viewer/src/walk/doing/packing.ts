/** Takes blocks along: their packs and, if wanted, imagery, onto the device. */

import type { PackSource } from '../pack/block-pack.ts';
import { type BlockPack, blockPack, dayOrder, packBytes } from '../pack/block-pack.ts';
import { tileCutter, tileName, tilesOver } from '../pack/pack-tiles.ts';
import type { Walk } from './walk-session.ts';

export interface PackSize {
  readonly bytes: number;
  /** Imagery is measured on a few tiles; the rest is exact. */
  readonly isAbout: boolean;
}

/** Tiles that are cut to tell how large all will be. */
const SAMPLED_TILES = 6;

function packsOf(source: PackSource, chosen: ReadonlySet<string>): readonly BlockPack[] {
  const about = { project: source.key, packedAt: new Date().toISOString() };
  return [...chosen].flatMap((blockId) => blockPack(blockId, source, about) ?? []);
}

/** How much the chosen blocks take, told before they are taken. */
export async function sizeOf(source: PackSource, chosen: ReadonlySet<string>, withImagery: boolean): Promise<PackSize> {
  const packs = packsOf(source, chosen);
  const bytes = packBytes(packs);
  const tiles = tilesOver(packs.map(({ bounds }) => bounds));
  if (!withImagery || !source.imagery || tiles.length === 0) return { bytes, isAbout: false };
  const cutter = await tileCutter(source.imagery.place, source.imagery.path);
  if (!cutter) return { bytes, isAbout: false };
  try {
    const step = Math.max(1, Math.floor(tiles.length / SAMPLED_TILES));
    const sample = tiles.filter((_, i) => i % step === 0).slice(0, SAMPLED_TILES);
    let sampled = 0;
    for (const tile of sample) sampled += (await cutter.cut(tile)).size;
    return { bytes: bytes + (sampled / sample.length) * tiles.length, isAbout: true };
  } finally {
    cutter.close();
  }
}

/** Stores the chosen blocks. A pack is there wholly or not at all; imagery that fails leaves the rest usable. */
export async function takeAlong(walk: Walk, source: PackSource, withImagery: boolean): Promise<void> {
  const { store, database } = walk;
  const packs = packsOf(source, store.get().chosen);
  const tiles = withImagery && source.imagery ? tilesOver(packs.map(({ bounds }) => bounds)) : [];
  store.change({ packing: [0, packs.length + tiles.length] });
  // Asked once, when there is something worth keeping; browsers decide without a question.
  await navigator.storage?.persist?.().catch(() => false);
  const known = store.get().packs.filter(({ blockId }) => !store.get().chosen.has(blockId));
  const all = dayOrder([...known, ...packs].toSorted((a, b) => a.figures.rank - b.figures.rank));
  try {
    await database.packs.bulkPut([...packs]);
    await database.note(
      `day:${source.key}`,
      all.map(({ blockId }) => blockId),
    );
    if (tiles.length > 0 && source.imagery) await takeTiles(walk, source, tiles, packs.length);
    store.change({ packs: all, chosen: new Set(), notice: '' });
  } catch (error) {
    store.change({ notice: error instanceof Error ? error.message : String(error) });
  } finally {
    store.change({ packing: null });
  }
}

async function takeTiles(
  { store, database }: Walk,
  source: PackSource,
  tiles: ReturnType<typeof tilesOver>,
  before: number,
): Promise<void> {
  const { imagery, key } = source;
  const cutter = imagery && (await tileCutter(imagery.place, imagery.path));
  if (!cutter) return;
  try {
    for (const [i, tile] of tiles.entries()) {
      await database.tiles.put({ tile: tileName(tile), project: key, picture: await cutter.cut(tile) });
      store.change({ packing: [before + i + 1, before + tiles.length] });
    }
  } finally {
    cutter.close();
  }
}

/** Takes a block off the device. Its visits stay until they are sent. */
export async function removePack({ store, database }: Walk, blockId: string): Promise<void> {
  const { project, packs } = store.get();
  await database.packs.delete([project, blockId]);
  const left = packs.filter((pack) => pack.blockId !== blockId);
  if (left.length === 0)
    await database.tiles.where('[project+tile]').between([project, ''], [project, '\uffff']).delete();
  store.change({ packs: left });
}
