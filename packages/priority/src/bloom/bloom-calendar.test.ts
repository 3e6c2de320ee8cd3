import { type BloomObservation, DEFAULT_SETTINGS } from '@crownfall/survey';
import { describe, expect, test } from 'vitest';
import { calendarOf } from './bloom-calendar.ts';
import { bloomWindowOf, type DayRange } from './bloom-window.ts';

const BLOOM = { ...DEFAULT_SETTINGS.bloom, open_days: 14 };
const FORECAST: DayRange = { day: '2026-05-24', earliest: '2026-05-20', latest: '2026-05-28', from: 'forecast' };

const seen = (
  day: number,
  bbch: number,
  larvaeInGalls: BloomObservation['larvaeInGalls'] = 'no',
): BloomObservation => ({
  blockId: 'B',
  observedOn: `2026-05-${String(day).padStart(2, '0')}`,
  bbch,
  larvaeInGalls,
  beesAtFlowers: 'unknown',
  extra: {},
});
const windowOf = (list: readonly BloomObservation[], forecast: DayRange | null = null, asOf = '2026-05-20') =>
  bloomWindowOf(list, { asOf, staleDays: 14, bloom: BLOOM }, forecast);

describe('windows', () => {
  test('an opening that two visits enclose lies between them, and the end a bloom later', () => {
    const { state, opens, closes, bbch, seenOn } = windowOf([seen(9, 57), seen(14, 61), seen(18, 64)]);
    expect({ state, bbch, seenOn }).toEqual({ state: 'open', bbch: 64, seenOn: '2026-05-18' });
    expect(opens).toEqual({ day: '2026-05-12', earliest: '2026-05-10', latest: '2026-05-14', from: 'seen' });
    // Fourteen days from 12 May end on 25 May.
    expect(closes).toMatchObject({ day: '2026-05-25', earliest: '2026-05-23', latest: '2026-05-27' });
  });

  test('an end that two visits enclose lies between them; larvae in the galls end it at any stage', () => {
    expect(windowOf([seen(6, 62), seen(12, 69)]).closes).toEqual({
      day: '2026-05-08',
      earliest: '2026-05-06',
      latest: '2026-05-11',
      from: 'seen',
    });
    expect(windowOf([seen(6, 62), seen(12, 63, 'yes')])).toMatchObject({
      state: 'closed',
      closes: { latest: '2026-05-11' },
    });
  });

  test('a forecast stands until flowers are seen, and never before a visit that saw none', () => {
    expect(windowOf([], FORECAST)).toMatchObject({ state: 'unknown', opens: FORECAST });
    expect(
      windowOf([seen(19, 58)], { ...FORECAST, day: '2026-05-12', earliest: '2026-05-08', latest: '2026-05-16' }).opens,
    ).toEqual({
      day: '2026-05-20',
      earliest: '2026-05-20',
      latest: '2026-05-20',
      from: 'forecast',
    });
    expect(windowOf([seen(15, 58), seen(19, 61)], FORECAST).opens?.from).toBe('seen');
  });

  test('flowers seen open today are open today, however long they have been', () => {
    expect(windowOf([seen(1, 60), seen(20, 65)]).closes?.day).toBe('2026-05-20');
  });

  test('observations of other years and of later days say nothing', () => {
    const other = { ...seen(14, 61), observedOn: '2025-05-14' };
    expect(windowOf([other, seen(25, 63)])).toMatchObject({
      state: 'unknown',
      seenOn: null,
      opens: null,
      closes: null,
    });
  });
});

describe('calendar', () => {
  const entry = (blockId: string, list: readonly BloomObservation[], forecast: DayRange | null = null) => ({
    blockId,
    name: null,
    window: windowOf(list, forecast),
  });

  test('closing soon comes first, what is over last', () => {
    const blocks = [
      entry('over-early', [seen(1, 62), seen(6, 71)]),
      entry('not-known', []),
      entry('opening-late', [seen(18, 55)], FORECAST),
      entry('over-late', [seen(12, 62), seen(19, 72)]),
      entry('open', [seen(17, 59), seen(18, 61)]),
      entry('closing', [seen(10, 63), seen(19, 68)]),
      entry('opening-soon', [seen(18, 55)], { ...FORECAST, day: '2026-05-22' }),
      entry('soon', [seen(7, 59), seen(8, 60), seen(19, 66)]),
    ];
    const calendar = calendarOf(blocks, '2026-05-20', 5);
    expect(calendar.map(({ blockId }) => blockId)).toEqual([
      'closing',
      'soon',
      'open',
      'opening-soon',
      'opening-late',
      'not-known',
      'over-late',
      'over-early',
    ]);
    expect(calendar.map(({ group }) => group).slice(0, 4)).toEqual(['closing-soon', 'closing-soon', 'open', 'opening']);
    expect(calendar[1].daysLeft).toBe(1);
  });
});
