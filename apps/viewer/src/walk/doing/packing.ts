/** Takes blocks along: their packs, their sheets and, if wanted, imagery, onto the device. */
import type { BlockPack, PackSource } from '../pack/block-pack.ts';
import { blockPack, dayOrder, packBytes } from '../pack/block-pack.ts';
import type { SheetLook } from '../pack/pack-sheets.ts';
import { type TileAddress, tileName, tilesOver } from '../pack/pack-tiles.ts';
import { tileCutter } from '../pack/tile-cutter.ts';
import type { SheetRow } from '../sync/walk-database.ts';
import { unitsOf, type Walk, wordsOf } from './walk-session.ts';
import type { WalkState } from './walk-state.ts';

export interface PackWish extends SheetLook {
  readonly withImagery: boolean;
}

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

const boundsOf = (packs: readonly BlockPack[]) => packs.map(({ bounds }) => bounds);

/** How much the chosen blocks take, told before they are taken. */
export async function sizeOf(source: PackSource, chosen: ReadonlySet<string>, wish: PackWish): Promise<PackSize> {
  const packs = packsOf(source, chosen);
  let bytes = packBytes(packs);
  for (const { blockId } of packs) bytes += (await source.sheets.size(blockId, wish).catch(() => null)) ?? 0;
  if (!wish.withImagery || !source.imagery) return { bytes, isAbout: false };
  const tiles = tilesOver(boundsOf(packs));
  const cutter = await tileCutter(source.imagery, boundsOf(packs));
  try {
    const step = Math.max(1, Math.floor(tiles.length / SAMPLED_TILES));
    const sample = tiles.filter((_, i) => i % step === 0).slice(0, SAMPLED_TILES);
    let sampled = 0;
    for (const tile of sample) sampled += (await cutter.cut(tile))?.size ?? 0;
    return { bytes: bytes + (sampled / Math.max(1, sample.length)) * tiles.length, isAbout: true };
  } finally {
    cutter.close();
  }
}

/** Stores the chosen blocks. A pack is there wholly or not at all; a sheet or imagery that fails leaves the rest usable. */
export async function takeAlong(walk: Walk, source: PackSource, withImagery: boolean): Promise<void> {
  const { store, database } = walk;
  const { chosen, preferences } = store.get();
  const packs = packsOf(source, chosen);
  const tiles = withImagery && source.imagery ? tilesOver(boundsOf(packs)) : [];
  let done = 0;
  const tell = (): void => store.change({ packing: [done, 2 * packs.length + tiles.length] });
  const step = (by = 1): void => {
    done += by;
    tell();
  };
  tell();
  // Asked once, when there is something worth keeping; browsers decide without a question.
  await navigator.storage?.persist?.().catch(() => false);
  const known = store.get().packs.filter(({ blockId }) => !chosen.has(blockId));
  const all = dayOrder([...known, ...packs].toSorted((a, b) => a.figures.rank - b.figures.rank));
  try {
    const look = { language: preferences.language, units: unitsOf(store.get()) };
    const sheets = await sheetsOf(source, packs, look, step);
    await database.take(
      packs,
      sheets,
      all.map(({ blockId }) => blockId),
    );
    step(packs.length);
    const lacking = packs.length - sheets.length;
    const notice = lacking === 0 ? '' : wordsOf(store.get()).blocks.noSheets(lacking);
    store.change({ packs: all, chosen: new Set(), notice });
    if (tiles.length > 0) await takeTiles(walk, source, { tiles, packs }, step);
  } catch (error) {
    store.change({ notice: whyNot(error, store.get()) });
  } finally {
    store.change({ packing: null });
  }
}

function whyNot(error: unknown, state: WalkState): string {
  const { blocks } = wordsOf(state);
  if (error instanceof Error && /Quota/.test(`${error.name} ${error.message}`)) return blocks.noRoom;
  // The packs are there by now: what is missing is imagery.
  if (state.chosen.size === 0) return blocks.imageryCut;
  return error instanceof Error ? error.message : String(error);
}

/** Those that can be had. */
async function sheetsOf(
  { key: project, sheets }: PackSource,
  packs: readonly BlockPack[],
  look: SheetLook,
  step: () => void,
): Promise<readonly SheetRow[]> {
  const rows: SheetRow[] = [];
  for (const { blockId } of packs) {
    const pdf = await sheets.sheet(blockId, look).catch(() => null);
    if (pdf) rows.push({ project, blockId, pdf });
    step();
  }
  return rows;
}

async function takeTiles(
  { database }: Walk,
  { imagery, key: project }: PackSource,
  { tiles, packs }: { readonly tiles: readonly TileAddress[]; readonly packs: readonly BlockPack[] },
  step: () => void,
): Promise<void> {
  if (!imagery) return;
  const cutter = await tileCutter(imagery, boundsOf(packs));
  try {
    for (const tile of tiles) {
      const picture = await cutter.cut(tile);
      if (picture) await database.tiles.put({ tile: tileName(tile), project, picture });
      step();
    }
  } finally {
    cutter.close();
  }
}

/** Takes a block off the device. Its visits stay until they are sent. */
export async function removePack({ store, database }: Walk, blockId: string): Promise<void> {
  const { project, packs } = store.get();
  await database.transaction('rw', database.packs, database.sheets, async () => {
    await database.packs.delete([project, blockId]);
    await database.sheets.delete([project, blockId]);
  });
  const left = packs.filter((pack) => pack.blockId !== blockId);
  if (left.length === 0)
    await database.tiles.where('[project+tile]').between([project, ''], [project, '\uffff']).delete();
  store.change({ packs: left });
}
