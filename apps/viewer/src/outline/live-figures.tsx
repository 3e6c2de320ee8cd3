/** What the crown in the making would change, as it changes: its area, its pavement, the block's stain and rank. */
import { area, percent } from '../language/quantities.ts';
import { useApp, useUnits, useWords } from '../session/session.ts';

/** Further blocks than this are seldom reached by one crown. */
const BLOCKS_MOST = 3;

export function LiveFigures() {
  const preview = useApp((state) => state.preview);
  const pavementOf = useApp((state) => state.project?.blocks);
  const units = useUnits();
  const { live } = useWords();
  if (!preview) return null;
  return (
    <div className="live" aria-live="off">
      <h3>{live.title}</h3>
      <dl>
        <Figure name={live.crown} value={area(preview.crownM2, units)} />
        <Figure name={live.pavement} value={area(preview.driplineM2, units)} />
        <Figure name={live.fallout} value={area(preview.falloutM2, units)} />
      </dl>
      {preview.blocks.slice(0, BLOCKS_MOST).map((block) => {
        const all = pavementOf?.find(({ blockId }) => blockId === block.blockId)?.pavementM2 ?? Number.NaN;
        return (
          <dl key={block.blockId} className="live-block">
            <Figure
              name={live.stained(block.name ?? block.blockId)}
              value={`${area(block.stainedM2, units)} · ${percent(block.stainedM2 / all)}`}
              change={signed(block.stainedM2 - block.stainedBeforeM2, (value) => area(value, units))}
            />
            <Figure
              name={live.rank}
              value={live.of(block.rank, block.rankBefore)}
              strong={block.rank !== block.rankBefore}
            />
          </dl>
        );
      })}
      {preview.blocks.length === 0 ? <p className="lead">{live.nowhere}</p> : null}
      {preview.usable && preview.dose === 0 ? <p className="lead">{live.noDose}</p> : null}
    </div>
  );
}

interface FigureProps {
  readonly name: string;
  readonly value: string;
  readonly change?: string;
  readonly strong?: boolean;
}

function Figure({ name, value, change = '', strong = false }: FigureProps) {
  return (
    <div className="figure-row">
      <dt>{name}</dt>
      <dd data-strong={strong || undefined}>
        {value}
        {change === '' ? null : <small> {change}</small>}
      </dd>
    </div>
  );
}

/** Below a square decimetre there is nothing to tell. */
function signed(changeM2: number, say: (value: number) => string): string {
  if (Math.abs(changeM2) < 0.01) return '';
  return changeM2 > 0 ? `+${say(changeM2)}` : `−${say(-changeM2)}`;
}
