/** When each block's bloom can still be worked in: those that close soonest first, those that closed last. */
import type { DayRange } from '@crownfall/priority';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { PlanOutcome } from '../reckoning/plan-maker.ts';
import { chooseBlock } from '../session/drawing.ts';
import { useSession, useWords } from '../session/session.ts';

type BlockWindow = PlanOutcome['windows'][number];

const ORDER = ['closing', 'open', 'before', 'unknown', 'closed'] as const;
const SHOWN_FIRST = 10;

export function BloomCalendar({ windows }: { readonly windows: readonly BlockWindow[] }) {
  const session = useSession();
  const { plan: words, bloom } = useWords();
  const [all, setAll] = useState(false);
  const sorted = [...windows].sort(byUrgency);
  return (
    <section className="bloom-calendar" aria-labelledby="calendar-title">
      <h2 id="calendar-title">{words.calendar}</h2>
      <p className="lead">{words.calendarLead}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.block}</th>
            <th scope="col">{words.state}</th>
            <th scope="col">{words.opens}</th>
            <th scope="col">{words.closes}</th>
          </tr>
        </thead>
        <tbody>
          {sorted.slice(0, all ? undefined : SHOWN_FIRST).map((window) => (
            <tr key={window.blockId} data-state={window.state}>
              <th scope="row">
                <Button className="button quiet" onPress={() => chooseBlock(session, window.blockId)}>
                  {window.name ?? window.blockId}
                </Button>
              </th>
              <td>
                {bloom[window.state]}
                {window.seenOn === null ? null : <small>{words.seen(window.bbch ?? 0, window.seenOn)}</small>}
              </td>
              <td>{dayText(window.opens, words.from)}</td>
              <td>{dayText(window.closes, words.from)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {!all && sorted.length > SHOWN_FIRST ? (
        <Button className="button" onPress={() => setAll(true)}>
          {words.moreWindows(sorted.length - SHOWN_FIRST)}
        </Button>
      ) : null}
    </section>
  );
}

function byUrgency(a: BlockWindow, b: BlockWindow): number {
  const state = ORDER.indexOf(a.state) - ORDER.indexOf(b.state);
  return state || (a.closes?.latest ?? '9').localeCompare(b.closes?.latest ?? '9');
}

function dayText(range: DayRange | null, from: Readonly<Record<DayRange['from'], string>>): string {
  if (!range) return '–';
  const days = range.earliest === range.latest ? range.day : `${range.earliest} – ${range.latest}`;
  return range.from === 'seen' ? days : `${days} (${from[range.from]})`;
}
