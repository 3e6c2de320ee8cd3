/** All windows of a town in the order in which they matter: closing soon, open, opening, not known, over. */
import { daysBetween } from '../days.ts';
import type { BloomWindow } from './bloom-window.ts';

export const CALENDAR_GROUPS = ['closing-soon', 'open', 'opening', 'not-known', 'over'] as const;
export type CalendarGroup = (typeof CALENDAR_GROUPS)[number];

export interface CalendarEntry {
  readonly blockId: string;
  readonly name: string | null;
  readonly group: CalendarGroup;
  readonly window: BloomWindow;
  /** Days from the day of the figures to the expected end; negative: it is over; null: not known. */
  readonly daysLeft: number | null;
}

/**
 * The calendar on the day `asOf`. A window that is open or closing and ends within `soonDays` is closing soon; those that are over
 * come last, the latest of them first. Equal days keep the order given.
 */
export function calendarOf(
  blocks: readonly { readonly blockId: string; readonly name: string | null; readonly window: BloomWindow }[],
  asOf: string,
  soonDays: number,
): CalendarEntry[] {
  const entries = blocks.map((block): CalendarEntry => {
    const { closes } = block.window;
    const daysLeft = closes === null ? null : daysBetween(asOf, closes.day);
    return { ...block, group: groupOf(block.window, asOf, soonDays), daysLeft };
  });
  return entries
    .map((entry, at) => ({ entry, at }))
    .sort((a, b) => compared(a.entry, b.entry) || a.at - b.at)
    .map(({ entry }) => entry);
}

function groupOf({ state, opens, closes }: BloomWindow, asOf: string, soonDays: number): CalendarGroup {
  if (state === 'closed') return 'over';
  if (state === 'closing') return 'closing-soon';
  if (state === 'open') return closes !== null && daysBetween(asOf, closes.day) <= soonDays ? 'closing-soon' : 'open';
  if (state === 'before') return 'opening';
  // Not observed lately: what was seen or forecast earlier still orders it.
  if (closes !== null && closes.latest < asOf) return 'over';
  return opens !== null && opens.day > asOf ? 'opening' : 'not-known';
}

function compared(a: CalendarEntry, b: CalendarEntry): number {
  const group = CALENDAR_GROUPS.indexOf(a.group) - CALENDAR_GROUPS.indexOf(b.group);
  if (group !== 0) return group;
  const [first, second] = [keyDay(a), keyDay(b)];
  const order = first < second ? -1 : first > second ? 1 : 0;
  return a.group === 'over' ? -order : order;
}

function keyDay({ group, window: { opens, closes } }: CalendarEntry): string {
  return (group === 'opening' ? opens?.day : closes?.day) ?? (group === 'over' ? '' : '9999');
}
