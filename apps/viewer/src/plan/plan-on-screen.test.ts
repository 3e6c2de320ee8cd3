/** What must stand on the plan's screen in both languages: reasons, clashes, cautions, windows in the order in which they matter. */
import type { CalendarEntry, WorkPlan } from '@crownfall/priority';
import {
  BLOOM_WORDS,
  describeConstraint,
  describeReason,
  type Language,
  REASON_CODES,
  rotationReminders,
  treatmentCautions,
} from '@crownfall/survey';
import { createElement, type ReactNode } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import {
  CLASH,
  IMPOSSIBLE,
  planAgainst,
  planWith,
} from '../../../../packages/priority/src/plan/forbidden-plan.test-data.ts';
import { READY_PLAN, REASON_CASES, reasonsIn } from '../../../../packages/priority/src/plan/reason-cases.test-data.ts';
import { type Session, SessionContext } from '../session/session.ts';
import { FIRST_STATE } from '../state/app-state.ts';
import { createStore } from '../state/store.ts';
import { BeforeTreating } from './before-treating.tsx';
import { BloomCalendar } from './bloom-calendar.tsx';
import { PlanBench } from './plan-bench.tsx';
import { NoPlanMade } from './plan-outcome.tsx';
import { PlannedRow } from './planned-row.tsx';

const LANGUAGES = ['en', 'es'] as const;

function onScreen(language: Language, node: ReactNode): string {
  const preferences = { ...FIRST_STATE.preferences, language };
  const store = createStore({ ...FIRST_STATE, planSettings: READY_PLAN, preferences });
  const session = { store } as Session;
  return spoken(renderToStaticMarkup(createElement(SessionContext.Provider, { value: session }, node)));
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#x27': "'", '#39': "'" };

/** The text of a page of HTML. */
function spoken(html: string): string {
  const text = html.replace(/<[^>]*>/g, '');
  return text.replace(/&([\w#]+);/g, (whole, name: string) => ENTITIES[name] ?? whole);
}

const rowOf = (language: Language, plan: WorkPlan): string =>
  onScreen(language, createElement(PlannedRow, { block: plan.blocks[0], plan }));

describe('the plan on the screen', () => {
  test.each(LANGUAGES)('tells every reason with what to do, and only where it forbids (%s)', (language) => {
    const free = rowOf(
      language,
      planWith(() => []),
    );
    for (const code of REASON_CODES) {
      const { what, remedy } = describeReason(reasonsIn(REASON_CASES[code])[0], language);
      expect(rowOf(language, planAgainst(code)), code).toContain(`${what}. ${remedy}`);
      expect(free, code).not.toContain(what);
    }
  });

  test.each(LANGUAGES)('names each of the limits that clash (%s)', (language) => {
    const text = onScreen(language, createElement(NoPlanMade, { plan: IMPOSSIBLE }));
    for (const constraint of CLASH) expect(text).toContain(describeConstraint(constraint, 'USD', language));
  });

  test.each(LANGUAGES)('shows the cautions before there is any plan (%s)', (language) => {
    const text = onScreen(language, createElement(PlanBench));
    for (const caution of treatmentCautions(language)) expect(text).toContain(caution);
  });

  test.each(LANGUAGES)('reminds of the mode of action and says whom to tell (%s)', (language) => {
    const note = {
      blockId: 'B1',
      product: 'P',
      group: 'X1',
      last: { on: '2025-05-16', product: 'Q' },
      since: 'last-season',
    } as const;
    const plan: WorkPlan = {
      ...planWith(() => []),
      settings: { ...READY_PLAN, notice_m: 20 },
      treated: [{ treeId: 'T1', blockId: 'B1', nearestM: { drain: 3 } }],
      rotation: [note],
      notices: [{ blockId: 'B1', address: '1 Invented Street', distanceM: 12 }],
    };
    const text = onScreen(language, createElement(BeforeTreating, { plan }));
    const [reminder] = rotationReminders([note], language);
    expect(text).toContain(reminder);
    expect(reminder).toMatch(/^B1: P .*X1.*Q.*2025-05-16/);
    expect(text).toMatch(language === 'en' ? /1 address within 20\s*m/ : /1 dirección a menos de 20\s*m/);
    const untreated = onScreen(language, createElement(BeforeTreating, { plan: { ...plan, treated: [] } }));
    expect(untreated).toBe('');
  });
});

describe('the bloom calendar on the screen', () => {
  const day = (text: string) => ({ day: text, earliest: text, latest: text, from: 'seen' }) as const;
  const entry = (blockId: string, group: CalendarEntry['group'], from: string, to: string): CalendarEntry => ({
    blockId,
    name: null,
    group,
    daysLeft: 2,
    window: { state: 'open', seenOn: '2026-05-19', bbch: 64, opens: day(from), closes: day(to) },
  });
  const calendar = {
    title: 'T',
    season: 2026,
    asOf: '2026-05-20',
    forecast: { possible: false, because: 'no-temperatures', seasons: [] },
    entries: [
      entry('B2', 'closing-soon', '2026-05-10', '2026-05-22'),
      entry('B1', 'open', '2026-05-12', '2026-05-29'),
      entry('B3', 'over', '2026-05-01', '2026-05-11'),
    ],
    trees: [{ treeId: 'T9', blockId: 'B2', state: 'open', seenOn: '2026-05-19', bbch: 65 }],
  } as const;

  test.each(LANGUAGES)(
    'tells closing soon ahead of over, each day with how it is known, and why nothing is forecast (%s)',
    (language) => {
      const words = BLOOM_WORDS[language];
      const text = onScreen(language, createElement(BloomCalendar, { calendar }));
      const at = [words.groups['closing-soon'], words.groups.over].map((group) => text.indexOf(group));
      expect(at[0]).toBeGreaterThan(0);
      expect(at[1]).toBeGreaterThan(at[0]);
      expect(text).toContain(`2026-05-22 (${words.from.seen})`);
      expect(text).toContain(words.refusals['no-temperatures']);
      expect(text).toContain(language === 'en' ? 'T9: open' : 'T9: abierta');
    },
  );
});
