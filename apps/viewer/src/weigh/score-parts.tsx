/** A block's rank explained: each criterion with its measured amount, its weight and the points it gives; and what would change it. */
import type { ScorePart } from '@crownfall/priority';
import { area, percent } from '../language/quantities.ts';
import type { BlockSummary } from '../project/project.ts';
import { useApp, useUnits, useWords } from '../session/session.ts';
import { rankedBlocks } from '../state/derived-state.ts';
import { amountOf, points, TONES } from './criteria.ts';
import { placeChange } from './place-change.ts';
import { BlockSheet } from './sheet-exports.tsx';

export function ScoreParts({ block }: { readonly block: BlockSummary }) {
  const units = useUnits();
  const words = useWords();
  const { ranking } = words;
  const range = block.stainedM2.range80;
  const spread = range ? ranking.range(area(range[0], units), area(range[1], units)) : ranking.noRange;
  const worst = block.worstSeverityPct === null ? '' : ranking.worst(percent(block.worstSeverityPct / 100));
  const unrated = block.trees - block.treesRated;
  return (
    <div className="details">
      <p className="areas">
        {ranking.areas(
          area(block.stainedM2.value, units),
          spread,
          area(block.driplineM2, units),
          area(block.falloutM2, units),
        ) + worst}
      </p>
      {unrated > 0 ? <p className="caveat">{ranking.unratedWarning(unrated, block.trees)}</p> : null}
      <table className="parts">
        <caption>{ranking.why(block.rank, points(block.score))}</caption>
        <tbody>
          {block.scoreParts.map((part) => (
            <PartRow key={part.criterion} part={part} block={block} />
          ))}
        </tbody>
      </table>
      <WhatWouldChange block={block} />
      <BlockSheet block={block} />
    </div>
  );
}

function PartRow({ part, block }: { readonly part: ScorePart; readonly block: BlockSummary }) {
  const units = useUnits();
  const words = useWords();
  // A full bar is all the points that the criterion's weight allows.
  const bar = { width: `${part.value * 100}%`, background: TONES[part.criterion] };
  return (
    <tr>
      <th scope="row">{words.criteria[part.criterion]}</th>
      <td className="amount">{amountOf(part, block, units, words)}</td>
      <td className="track-cell">
        <span className="track" aria-hidden="true">
          <span className="bar" style={bar} />
        </span>
      </td>
      <td className="points">
        {points(part.points)}
        <small>{words.ranking.of(points(part.weight))}</small>
      </td>
    </tr>
  );
}

function WhatWouldChange({ block }: { readonly block: BlockSummary }) {
  const ranked = useApp(rankedBlocks);
  const words = useWords();
  const above = ranked[block.rank - 2];
  return (
    <div className="what-if">
      <h3>{words.change.title}</h3>
      <p>{sentence()}</p>
      {above ? <p>{words.change.gap(points(above.score - block.score))}</p> : null}
    </div>
  );

  function sentence(): string {
    if (ranked.length < 2) return words.change.alone;
    const change = placeChange(ranked, block);
    if (!change) return above ? words.change.stuck : words.change.firm;
    const rival = ranked.find(({ blockId }) => blockId === change.rival);
    const name = rival?.name ?? change.rival;
    const say = above ? words.change.overtakes : words.change.first;
    return say(words.criteria[change.criterion], percent(change.from), percent(change.to), name);
  }
}
