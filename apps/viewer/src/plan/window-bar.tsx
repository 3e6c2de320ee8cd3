/** A bloom window on a scale of days: full where it is expected to be open, pale where it may be. */
import { addDays, type BloomWindow, type CalendarEntry, daysBetween } from '@crownfall/priority';

export interface DayScale {
  readonly first: string;
  readonly last: string;
  /** Share 0–1 of the scale at the beginning of a day. */
  readonly at: (day: string) => number;
}

/** From the first day of any window that is not over, or today, to the last; null when no window is known. */
export function dayScale(entries: readonly CalendarEntry[], asOf: string): DayScale | null {
  const days = entries
    .filter(({ group }) => group !== 'over')
    .flatMap(({ window: { opens, closes } }) => (opens && closes ? [opens.earliest, closes.latest] : []));
  if (days.length === 0) return null;
  const sorted = [...days, asOf].sort();
  const [first, last] = [sorted[0], sorted[sorted.length - 1]];
  const whole = daysBetween(first, addDays(last, 1));
  const at = (day: string): number => Math.min(1, Math.max(0, daysBetween(first, day) / whole));
  return { first, last, at };
}

interface Props {
  readonly window: BloomWindow;
  readonly scale: DayScale;
  readonly asOf: string;
}

export function WindowBar({ window: { opens, closes }, scale, asOf }: Props) {
  return (
    <span className="window-bar" aria-hidden="true">
      {opens && closes ? (
        <>
          <i className="may-be" style={between(scale, opens.earliest, closes.latest)} />
          <i className="is" style={between(scale, opens.day, closes.day)} />
        </>
      ) : null}
      <i className="today" style={{ left: `${100 * scale.at(asOf)}%` }} />
    </span>
  );
}

function between({ at }: DayScale, from: string, to: string) {
  const start = at(from);
  return { left: `${100 * start}%`, width: `${100 * Math.max(0, at(addDays(to, 1)) - start)}%` };
}
