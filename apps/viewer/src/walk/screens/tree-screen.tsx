/** The tree in front of the person: what was found last time, what is noted today, and what to do next. */
import { useEffect, useMemo, useRef } from 'react';
import { blockTrees, goTo, useShown, useUnits, useWalk, useWords } from '../doing/walk-session.ts';
import { seenTrees, type WalkState } from '../doing/walk-state.ts';
import {
  addPhoto,
  isBegun,
  nextBlock,
  removePhoto,
  saveStop,
  startBlock,
  stepTree,
  takeBack,
} from '../doing/walking.ts';
import type { PackedTree } from '../pack/block-pack.ts';
import { Mark, type MarkName } from '../parts/mark.tsx';
import { lengthOf, pctOf } from '../parts/quantities-shown.ts';
import { ratingParts, stopLine } from '../parts/stop-words.ts';
import { metresBetween } from '../stop/metres-between.ts';

const chosenTree = (state: WalkState): PackedTree | undefined =>
  blockTrees(state).find(({ treeId }) => treeId === state.treeId);

export function TreeScreen() {
  const tree = useShown(chosenTree);
  return tree ? <Tree tree={tree} /> : null;
}

function Tree({ tree }: { readonly tree: PackedTree }) {
  const walk = useWalk();
  const words = useWords();
  const trees = useShown(blockTrees);
  const stop = useShown((state) => state.stop);
  const isSeen = useShown((state) => seenTrees(state).has(tree.treeId));
  const isLarge = useShown((state) => state.largeMap);
  const at = trees.indexOf(tree);
  const begun = isBegun(stop);
  return (
    <main className="tree-card" data-small={isLarge || undefined}>
      <TreeHead tree={tree} number={at + 1} of={trees.length} />
      {isLarge ? null : (
        <div className="tree-text">
          <LastTime tree={tree} />
          {stop && begun ? (
            <p className="today">
              <strong>{words.tree.today}</strong> {stopLine(stop, words)}
            </p>
          ) : null}
          {isSeen && !begun ? <p className="seen">{words.tree.seen}</p> : null}
          <Doings />
          <PhotoRow />
        </div>
      )}
      <Notice />
      <AllSeen />
      <nav className="thumb-bar" aria-label={words.title}>
        <button
          type="button"
          className="icon big"
          aria-label={words.tree.previous}
          disabled={at === 0}
          onClick={() => stepTree(walk, -1)}
        >
          <Mark name="back" />
        </button>
        <button type="button" className="main wide" onClick={() => void saveStop(walk)}>
          {at === trees.length - 1 ? words.tree.saveLast : words.tree.save}
        </button>
        <button
          type="button"
          className="icon big"
          aria-label={words.tree.next}
          disabled={at === trees.length - 1}
          onClick={() => stepTree(walk, 1)}
        >
          <Mark name="next" />
        </button>
      </nav>
    </main>
  );
}

function TreeHead({ tree, number, of }: { readonly tree: PackedTree; readonly number: number; readonly of: number }) {
  const words = useWords();
  const units = useUnits();
  const position = useShown((state) => state.position);
  const { treeId, host, spreadM, at } = tree;
  return (
    <header className="tree-head">
      <span className="tree-number" role="img" aria-label={words.tree.ofAll(number, of)}>
        {number}
      </span>
      <div>
        <h1>
          {treeId} <span className="of-all">{words.tree.ofAll(number, of)}</span>
        </h1>
        <p>
          <i>{host ?? words.tree.noHost}</i>
          {spreadM === null ? null : ` · ${words.tree.spread(lengthOf(spreadM, units))}`}
          {position ? ` · ${words.tree.distance(lengthOf(metresBetween(position.at, at), units))}` : null}
        </p>
      </div>
    </header>
  );
}

function LastTime({ tree }: { readonly tree: PackedTree }) {
  const words = useWords();
  const { lastRating, severityPct } = tree;
  if (!lastRating && severityPct === null) return <p className="last">{words.tree.never}</p>;
  const { rated_on, rater } = lastRating ?? {};
  const parts = lastRating ? ratingParts(lastRating, words) : [words.tree.browned(pctOf(severityPct ?? 0))];
  return (
    <p className="last">
      <strong>{words.tree.last}</strong>{' '}
      {rated_on ? `${words.tree.lastRated(String(rated_on), String(rater ?? ''))}: ` : null}
      {parts.join(' · ')}
    </p>
  );
}

function Doings() {
  const walk = useWalk();
  const words = useWords();
  const camera = useRef<HTMLInputElement>(null);
  const doing = (name: MarkName, word: string, press: () => void) => (
    <button type="button" className="doing" onClick={press}>
      <Mark name={name} />
      <span>{word}</span>
    </button>
  );
  return (
    <>
      <div className="doings">
        {doing('leaf', words.tree.rate, () => goTo(walk, 'rate'))}
        {doing('flower', words.tree.bloom, () => goTo(walk, 'bloom'))}
        {doing('frame', words.tree.quadrat, () => goTo(walk, 'quadrat'))}
        {doing('camera', words.tree.photo, () => camera.current?.click())}
      </div>
      <div className="doings second">
        {doing('other', words.tree.problem, () => goTo(walk, 'problem'))}
        {doing('tree', words.tree.newTree, () => goTo(walk, 'new-tree'))}
      </div>
      <input
        ref={camera}
        className="spoken-only"
        type="file"
        accept="image/*"
        capture="environment"
        tabIndex={-1}
        aria-label={words.tree.photo}
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) void addPhoto(walk, file).catch((error: Error) => walk.store.change({ notice: error.message }));
          target.value = '';
        }}
      />
    </>
  );
}

function PhotoRow() {
  const walk = useWalk();
  const words = useWords();
  const stop = useShown((state) => state.stop);
  const photos = useShown((state) => state.photos);
  const shown = useMemo(
    () =>
      (stop?.photos ?? []).flatMap(({ photoId }) => {
        const row = photos.find((each) => each.photoId === photoId);
        return row ? [{ photoId, url: URL.createObjectURL(row.photo) }] : [];
      }),
    [stop?.photos, photos],
  );
  useEffect(() => () => shown.forEach(({ url }) => void URL.revokeObjectURL(url)), [shown]);
  if (!stop || shown.length === 0) return null;
  return (
    <ul className="photo-row">
      {shown.map(({ photoId, url }, i) => (
        <li key={photoId}>
          <img src={url} alt={words.tree.photoOf(stop.treeId, i + 1)} />
          <button
            type="button"
            className="icon floating"
            aria-label={words.tree.removePhoto(i + 1)}
            onClick={() => void removePhoto(walk, photoId)}
          >
            <Mark name="close" />
          </button>
        </li>
      ))}
    </ul>
  );
}

function Notice() {
  const walk = useWalk();
  const words = useWords();
  const notice = useShown((state) => state.notice);
  const saved = useShown((state) => state.saved);
  return (
    <div className="toast" role="status" data-empty={notice === '' || undefined}>
      <span>{notice}</span>
      {saved && notice !== '' ? (
        <button type="button" className="plain" onClick={() => void takeBack(walk)}>
          {words.tree.undo}
        </button>
      ) : null}
    </div>
  );
}

function AllSeen() {
  const walk = useWalk();
  const words = useWords();
  const trees = useShown(blockTrees);
  const left = useShown((state) => {
    const seen = seenTrees(state);
    return blockTrees(state).filter(({ treeId }) => !seen.has(treeId)).length;
  });
  if (left > 0 || trees.length === 0) return null;
  const next = nextBlock(walk);
  return (
    <div className="all-seen">
      <p>{words.tree.blockDone}</p>
      {next ? (
        <button type="button" className="plain wide" onClick={() => void startBlock(walk, next.blockId)}>
          {words.tree.nextBlock(next.name)}
        </button>
      ) : null}
    </div>
  );
}
