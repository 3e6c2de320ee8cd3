/** Choosing blocks while there is a network, and those that are on the phone. */
import { useEffect, useMemo, useState } from 'react';
import { area } from '../../language/quantities.ts';
import type { BlockSummary } from '../../project/project.ts';
import { type PackSize, type PackWish, removePack, sizeOf, takeAlong } from '../doing/packing.ts';
import { useShown, useUnits, useWalk, useWords } from '../doing/walk-session.ts';
import { seenTrees, treesOf, type WalkState } from '../doing/walk-state.ts';
import { startBlock } from '../doing/walking.ts';
import type { BlockPack, PackSource } from '../pack/block-pack.ts';
import { Mark } from '../parts/mark.tsx';
import { sizeOfBytes } from '../parts/quantities-shown.ts';

/** Shown at first; the rest on demand. */
const FIRST_BLOCKS = 12;

export function BlocksScreen() {
  const packs = useShown((state) => state.packs);
  const source = useShown((state) => state.source);
  const notice = useShown((state) => state.notice);
  const words = useWords();
  return (
    <main className="screen blocks">
      {notice === '' ? null : (
        <p className="warn" role="status">
          {notice}
        </p>
      )}
      {packs.length > 0 ? (
        <section aria-labelledby="here-title">
          <h2 id="here-title">{words.blocks.here}</h2>
          <ul className="cards">
            {packs.map((pack) => (
              <PackCard key={pack.blockId} pack={pack} />
            ))}
          </ul>
        </section>
      ) : null}
      {source === null ? <p className="lead">{words.opening} …</p> : null}
      {source === 'none' && packs.length === 0 ? <p className="lead">{words.nothingHere}</p> : null}
      {source !== null && source !== 'none' ? <Choosing source={source} /> : null}
    </main>
  );
}

function PackCard({ pack }: { readonly pack: BlockPack }) {
  const walk = useWalk();
  const seen = useShown((state) => seenOf(state, pack));
  const words = useWords();
  const name = pack.figures.name ?? pack.blockId;
  return (
    <li className="card pack">
      <div className="card-text">
        <h3>{words.blocks.block(name, pack.figures.rank)}</h3>
        <Figures figures={pack.figures} />
        <p>
          {words.blocks.done(seen, pack.trees.length)} · {words.blocks.packed(pack.packedAt.slice(0, 10))}
        </p>
      </div>
      <div className="card-buttons">
        <button type="button" className="main" onClick={() => void startBlock(walk, pack.blockId)}>
          {words.blocks.walk}
        </button>
        <SheetLink pack={pack} name={name} />
        <button
          type="button"
          className="icon"
          aria-label={words.blocks.remove(name)}
          onClick={() => void removePack(walk, pack.blockId)}
        >
          <Mark name="close" />
        </button>
      </div>
    </li>
  );
}

/** The block's visit sheet as it was taken along. Saved, for not every phone shows PDF in its browser. */
function SheetLink({ pack, name }: { readonly pack: BlockPack; readonly name: string }) {
  const { database } = useWalk();
  const { blocks } = useWords();
  const [url, setUrl] = useState<string | null>(null);
  const { project, blockId, packedAt } = pack;
  // biome-ignore lint/correctness/useExhaustiveDependencies: packed anew, the sheet is another
  useEffect(() => {
    let isWanted = true;
    let made = '';
    void database.sheets.get([project, blockId]).then((row) => {
      if (!row || !isWanted) return;
      made = URL.createObjectURL(row.pdf);
      setUrl(made);
    });
    return () => {
      isWanted = false;
      URL.revokeObjectURL(made);
    };
  }, [database, project, blockId, packedAt]);
  if (url === null) return null;
  return (
    <a className="plain" href={url} download={`${blockId}.pdf`} aria-label={blocks.sheetOf(name)}>
      {blocks.sheet}
    </a>
  );
}

function seenOf(state: WalkState, pack: BlockPack): number {
  const seen = seenTrees(state);
  return treesOf(state, pack).filter(({ treeId }) => seen.has(treeId)).length;
}

function Choosing({ source }: { readonly source: PackSource }) {
  const walk = useWalk();
  const chosen = useShown((state) => state.chosen);
  const packing = useShown((state) => state.packing);
  const words = useWords();
  const [sought, seek] = useState('');
  const [all, showAll] = useState(false);
  const [withImagery, wantImagery] = useState(false);
  const language = useShown((state) => state.preferences.language);
  const units = useUnits();
  const wish = useMemo(() => ({ language, units, withImagery }), [language, units, withImagery]);
  const size = usePackSize(source, chosen, wish);
  const found = source.project.blocks.filter((block) => matches(block, sought));
  const shown =
    all || sought !== '' ? found : found.filter(({ blockId }, i) => i < FIRST_BLOCKS || chosen.has(blockId));
  const toggle = (blockId: string): void => {
    const next = new Set(chosen);
    if (!next.delete(blockId)) next.add(blockId);
    walk.store.change({ chosen: next });
  };
  return (
    <section aria-labelledby="choose-title">
      <h2 id="choose-title">{words.blocks.title}</h2>
      <p className="lead">{words.blocks.lead}</p>
      <label className="field">
        <span>{words.blocks.search}</span>
        <input type="search" value={sought} onChange={(event) => seek(event.target.value)} />
      </label>
      <ul className="cards">
        {shown.map((block) => (
          <li key={block.blockId}>
            <label className="card choice">
              <input type="checkbox" checked={chosen.has(block.blockId)} onChange={() => toggle(block.blockId)} />
              <span className="card-text">
                <strong>{words.blocks.block(block.name ?? block.blockId, block.rank)}</strong>
                <Figures figures={block} />
              </span>
            </label>
          </li>
        ))}
      </ul>
      {shown.length < found.length ? (
        <button type="button" className="plain wide" onClick={() => showAll(true)}>
          {words.blocks.showAll(found.length)}
        </button>
      ) : null}
      {chosen.size > 0 || packing ? (
        <div className="thumb-bar column">
          {source.imagery ? (
            <label className="check-line">
              <input type="checkbox" checked={withImagery} onChange={() => wantImagery(!withImagery)} />
              <span>{words.blocks.imagery}</span>
            </label>
          ) : null}
          <button
            type="button"
            className="main wide"
            disabled={packing !== null}
            onClick={() => void takeAlong(walk, source, withImagery)}
          >
            {packing
              ? words.blocks.taking(...packing)
              : `${words.blocks.take} · ${words.blocks.chosen(chosen.size)} · ${sizeShown(size, words.blocks)}`}
          </button>
        </div>
      ) : null}
    </section>
  );
}

function sizeShown(
  size: PackSize | null,
  words: { readonly size: (size: string, isAbout: boolean) => string; readonly measuring: string },
): string {
  return size ? words.size(sizeOfBytes(size.bytes), size.isAbout) : words.measuring;
}

/** Told before anything is taken. */
function usePackSize(source: PackSource, chosen: ReadonlySet<string>, wish: PackWish): PackSize | null {
  const [size, setSize] = useState<PackSize | null>(null);
  useEffect(() => {
    let isWanted = true;
    setSize(null);
    const timer = setTimeout(() => {
      void sizeOf(source, chosen, wish).then((told) => isWanted && setSize(told));
    }, 150);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [source, chosen, wish]);
  return size;
}

type Shown = Pick<BlockSummary, 'stainedM2' | 'trees' | 'treesRated' | 'bloomState'>;

function Figures({ figures }: { readonly figures: Shown }) {
  const units = useUnits();
  const { blocks } = useWords();
  const { stainedM2, trees, treesRated, bloomState } = figures;
  const bloom = blocks.bloom[bloomState];
  const value = area(stainedM2.value, units);
  return (
    <span className="figures">
      <span>{blocks.stained(value, stainedM2.range80?.map((m2) => area(m2, units)) ?? null)}</span>
      <span>
        {blocks.trees(trees, treesRated)}
        {bloom === undefined ? null : ` · ${bloom}`}
      </span>
    </span>
  );
}

function matches({ blockId, name }: BlockSummary, sought: string): boolean {
  return `${name ?? ''} ${blockId}`.toLowerCase().includes(sought.trim().toLowerCase());
}
