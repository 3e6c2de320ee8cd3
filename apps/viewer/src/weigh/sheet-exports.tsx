/** Visit sheets for those who go there: of the block that is open, and of the blocks of a day. */
import type { PaperName } from '@crownfall/sheets';
import { Button, ToggleButton } from 'react-aria-components';
import type { BlockSummary } from '../project/project.ts';
import { exportSheets } from '../session/exporting.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { dayBlocks, paperOf } from '../state/derived-state.ts';
import { useMaking } from './use-making.ts';

export function BlockSheet({ block }: { readonly block: BlockSummary }) {
  const session = useSession();
  const can = useApp((state) => state.editing.can);
  const chosen = useApp((state) => state.day);
  const { sheets, exports } = useWords();
  const [making, make] = useMaking();
  if (can !== 'yes') return null;
  const { blockId } = block;
  const add = (goes: boolean): void =>
    session.store.change({ day: goes ? [...chosen, blockId] : chosen.filter((each) => each !== blockId) });
  return (
    <div className="button-row">
      <Button className="button" isDisabled={making} onPress={() => void make(() => exportSheets(session, [blockId]))}>
        {making ? exports.drawing : sheets.one}
      </Button>
      <ToggleButton className="button" isSelected={chosen.includes(blockId)} onChange={add}>
        {chosen.includes(blockId) ? sheets.inDay : sheets.toDay}
      </ToggleButton>
    </div>
  );
}

/** The day's blocks, or the first ones of the list while none were chosen. */
export function DaySheets() {
  const session = useSession();
  const blocks = useApp(dayBlocks);
  const isChosen = useApp((state) => state.day.length > 0);
  const paper = useApp(paperOf);
  const { sheets, exports } = useWords();
  const [making, make] = useMaking();
  if (blocks.length === 0) return null;
  const names = blocks.map(({ name, blockId }) => name ?? blockId).join(', ');
  const ids = blocks.map(({ blockId }) => blockId);
  return (
    <section className="day-sheets" aria-labelledby="sheets-title">
      <h3 id="sheets-title">{sheets.title}</h3>
      <p className="lead">{isChosen ? sheets.day(names) : sheets.first(names)}</p>
      <div className="button-row">
        <label className="filter">
          <span>{sheets.paper}</span>
          <select value={paper} onChange={({ target }) => session.store.change({ paper: target.value as PaperName })}>
            <option value="letter">{sheets.letter}</option>
            <option value="a4">A4</option>
          </select>
        </label>
        <Button className="button" isDisabled={making} onPress={() => void make(() => exportSheets(session, ids))}>
          {making ? exports.drawing : sheets.book(blocks.length)}
        </Button>
        {isChosen ? (
          <Button className="button quiet" onPress={() => session.store.change({ day: [] })}>
            {sheets.clear}
          </Button>
        ) : null}
      </div>
    </section>
  );
}
