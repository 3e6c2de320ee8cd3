/** When each block's bloom can still be worked in: closing soon first, over last; each window as a bar on one scale of days. */
import type { BloomCalendar as Calendar, TreeBloom } from '@crownfall/assessment';
import { type CalendarEntry, dayRangeText } from '@crownfall/priority';
import { BLOOM_WORDS } from '@crownfall/survey';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { grouped } from '../language/quantities.ts';
import { chooseBlock } from '../session/drawing.ts';
import { exportCalendar } from '../session/plan-exports.ts';
import { useApp, useSession, useWords } from '../session/session.ts';
import { usePlanWords } from './use-plan-words.ts';
import { type DayScale, dayScale, WindowBar } from './window-bar.tsx';

const SHOWN_FIRST = 10;

export function BloomCalendar({ calendar }: { readonly calendar: Calendar }) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  const [all, setAll] = useState(false);
  const { entries, trees, forecast, asOf } = calendar;
  const bloom = BLOOM_WORDS[language];
  const scale = dayScale(entries, asOf);
  const foretold = forecast.possible
    ? bloom.forecast(dayRangeText(forecast.opening, bloom), forecast.seasons.length, grouped(forecast.errorDays, 1))
    : bloom.noForecast(bloom.refusals[forecast.because]);
  return (
    <section className="bloom-calendar" aria-labelledby="calendar-title">
      <h2 id="calendar-title">{words.calendar}</h2>
      <p className="lead">{words.calendarLead}</p>
      <p className="lead">{foretold}</p>
      {scale ? (
        <p className="day-scale" aria-hidden="true">
          <span>{scale.first}</span>
          <span className="today" style={{ left: `${100 * scale.at(asOf)}%` }}>
            {words.today}
          </span>
          <span>{scale.last}</span>
        </p>
      ) : null}
      <ol>
        {entries.slice(0, all ? undefined : SHOWN_FIRST).map((entry) => (
          <WindowRow
            key={entry.blockId}
            entry={entry}
            trees={trees.filter(({ blockId }) => blockId === entry.blockId)}
            scale={scale}
            asOf={asOf}
          />
        ))}
      </ol>
      <div className="button-row">
        {!all && entries.length > SHOWN_FIRST ? (
          <Button className="button" onPress={() => setAll(true)}>
            {words.moreWindows(entries.length - SHOWN_FIRST)}
          </Button>
        ) : null}
        <Button className="button" onPress={() => exportCalendar(session)}>
          {words.files.calendar}
        </Button>
      </div>
    </section>
  );
}

interface RowProps {
  readonly entry: CalendarEntry;
  /** Looked at by themselves. */
  readonly trees: readonly TreeBloom[];
  readonly scale: DayScale | null;
  readonly asOf: string;
}

function WindowRow({ entry, trees, scale, asOf }: RowProps) {
  const session = useSession();
  const language = useApp((state) => state.preferences.language);
  const words = usePlanWords();
  const { bloom: states } = useWords();
  const { blockId, name, group, window, daysLeft } = entry;
  const bloom = BLOOM_WORDS[language];
  const { opens, closes, seenOn, bbch } = window;
  const left = group === 'closing-soon' || group === 'open' ? daysLeft : null;
  const facts = [
    opens && `${words.opens} ${dayRangeText(opens, bloom)}`,
    closes && `${words.closes} ${dayRangeText(closes, bloom)}`,
    seenOn !== null && words.seen(bbch ?? 0, seenOn),
    ...trees.map(({ treeId, state }) => `${treeId}: ${states[state]}`),
  ];
  return (
    <li data-group={group}>
      <Button className="button quiet" onPress={() => chooseBlock(session, blockId)}>
        {name ?? blockId}
      </Button>
      <span className="when">
        {bloom.groups[group]}
        {left !== null && left >= 0 ? ` · ${words.daysLeft(left)}` : null}
      </span>
      {scale ? <WindowBar window={window} scale={scale} asOf={asOf} /> : null}
      <small>{facts.filter(Boolean).join(' · ')}</small>
    </li>
  );
}
