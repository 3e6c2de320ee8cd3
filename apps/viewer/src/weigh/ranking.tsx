/** The ranked blocks as a list: arrow keys move through it, a click or Enter opens a block and shows it on the map. */
import { type KeyboardEvent, memo, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { area, areaNumber, areaUnit, percent, type Units } from '../language/quantities.ts';
import type { Words } from '../language/words.ts';
import type { BlockSummary } from '../project/project.ts';
import { chooseBlock } from '../session/drawing.ts';
import { useApp, useSession, useUnits, useWords } from '../session/session.ts';
import { rankedBlocks, shownBlocks } from '../state/derived-state.ts';
import { points, TONES } from './criteria.ts';
import { ScoreParts } from './score-parts.tsx';

/** Blocks listed at first, and more at each wish: a city has thousands. */
const PAGE = 100;

export function Ranking() {
  const blocks = useApp(shownBlocks);
  const all = useApp(rankedBlocks).length;
  const chosenId = useApp((state) => state.blockId);
  const ownRank = useApp(ownRanks);
  const units = useUnits();
  const words = useWords();
  const list = useRef<HTMLOListElement>(null);
  const [pages, setPages] = useState(1);
  const chosenAt = blocks.findIndex(({ blockId }) => blockId === chosenId);
  const listed = Math.max(pages * PAGE, chosenAt + 1);
  useEffect(() => {
    if (chosenId === null) return;
    const row = list.current?.querySelector(`[data-block="${CSS.escape(chosenId)}"]`);
    row?.closest('li')?.scrollIntoView({ block: 'nearest' });
  }, [chosenId]);
  return (
    <section className="blocks" aria-labelledby="blocks-title">
      <div className="section-head">
        <h2 id="blocks-title">{words.ranking.title}</h2>
        <span className="count">{words.ranking.count(blocks.length, all)}</span>
      </div>
      {blocks.length === 0 ? (
        <p className="empty">{all === 0 ? words.ranking.none : words.ranking.filteredOut}</p>
      ) : (
        <ol className="ranking" ref={list} onKeyDown={moveFocus}>
          {blocks.slice(0, listed).map((block, i) => (
            <BlockRow
              key={block.blockId}
              block={block}
              chosen={block.blockId === chosenId}
              inTabOrder={chosenAt < 0 ? i === 0 : i === chosenAt}
              movedBy={(ownRank.get(block.blockId) ?? block.rank) - block.rank}
              units={units}
              words={words}
            />
          ))}
        </ol>
      )}
      {listed < blocks.length ? (
        <Button className="button more" onPress={() => setPages(pages + 1)}>
          {words.ranking.more(Math.min(PAGE, blocks.length - listed))}
        </Button>
      ) : null}
    </section>
  );
}

const NO_RANKS: ReadonlyMap<string, number> = new Map();
let ranksOf: { readonly project: unknown; readonly ranks: ReadonlyMap<string, number> } | null = null;

/** Ranks under the project's own weights. */
function ownRanks({ project }: { readonly project: { readonly blocks: readonly BlockSummary[] } | null }) {
  if (!project) return NO_RANKS;
  if (ranksOf?.project !== project)
    ranksOf = { project, ranks: new Map(project.blocks.map(({ blockId, rank }) => [blockId, rank])) };
  return ranksOf.ranks;
}

interface RowProps {
  readonly block: BlockSummary;
  readonly chosen: boolean;
  readonly inTabOrder: boolean;
  readonly movedBy: number;
  readonly units: Units;
  readonly words: Words;
}

const BlockRow = memo(function BlockRow({ block, chosen, inTabOrder, movedBy, units, words }: RowProps) {
  const session = useSession();
  const { ranking } = words;
  const share = percent(block.stainedM2.value / block.pavementM2);
  const caption = ranking.caption(share, area(block.pavementM2, units), block.treesRated, block.trees);
  return (
    <li className={chosen ? 'chosen' : undefined}>
      <button
        type="button"
        className="row-head"
        data-block={block.blockId}
        aria-expanded={chosen}
        tabIndex={inTabOrder ? 0 : -1}
        onClick={() => chooseBlock(session, chosen ? null : block.blockId)}
      >
        <span className={block.rank <= 5 ? 'rank first' : 'rank'}>
          {block.rank}
          {movedBy === 0 ? null : (
            <span className="moved" data-up={movedBy > 0 || undefined} title={ranking.moved(movedBy)}>
              <span className="spoken-only">{ranking.moved(movedBy)}</span>
              <span aria-hidden="true">{movedBy > 0 ? `▲${movedBy}` : `▼${-movedBy}`}</span>
            </span>
          )}
        </span>
        <span className="name">
          {block.name ?? block.blockId}
          <span className="caption">{block.treesRated === 0 && block.trees > 0 ? ranking.noneRated : caption}</span>
        </span>
        <span className="figure">
          {areaNumber(block.stainedM2.value, units)}
          <small> {areaUnit(units)}</small>
        </span>
        <ScoreStrip block={block} label={ranking.score(points(block.score))} />
      </button>
      {chosen ? <ScoreParts block={block} /> : null}
    </li>
  );
});

/** The whole score as one strip, each criterion its own length. */
function ScoreStrip({ block, label }: { readonly block: BlockSummary; readonly label: string }) {
  return (
    <span className="strip" role="img" aria-label={label}>
      {block.scoreParts.map(({ criterion, points: share }) =>
        share > 0 ? (
          <span
            key={criterion}
            className={`piece ${criterion}`}
            style={{ width: `${share * 100}%`, background: TONES[criterion] }}
          />
        ) : null,
      )}
    </span>
  );
}

function moveFocus(event: KeyboardEvent<HTMLOListElement>): void {
  const heads = [...event.currentTarget.querySelectorAll<HTMLButtonElement>('.row-head')];
  const at = heads.indexOf(document.activeElement as HTMLButtonElement);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: heads.length - 1 }[event.key];
  if (at < 0 || to === undefined || heads[to] === undefined) return;
  event.preventDefault();
  heads[to].focus();
}
