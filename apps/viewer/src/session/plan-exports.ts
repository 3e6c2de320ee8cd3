/** Hands the plan and the bloom windows to the person as files. */
import { type PlanFileOptions, planFiles } from '@crownfall/exchange';
import { calendarSpans, icalendarOf, type WorkPlan } from '@crownfall/priority';
import { BLOOM_WORDS } from '@crownfall/survey';
import { save } from './exporting.ts';
import type { Session } from './session.ts';

/** MIME types by name of file. */
const TYPES = {
  'plan.csv': 'text/csv',
  'plan.geojson': 'application/geo+json',
  'plan.json': 'application/json',
  'notices.csv': 'text/csv',
} as const;
export type PlanFileName = keyof typeof TYPES;

export function exportPlan(session: Session, plan: WorkPlan, name: PlanFileName): void {
  const { layers, preferences } = session.store.get();
  const outlines = new Map(
    (layers?.blocks.features ?? []).map(({ properties, geometry }) => [String(properties?.block_id), geometry]),
  ) as unknown as NonNullable<PlanFileOptions['outlines']>;
  const file = planFiles(plan, { language: preferences.language, outlines }).find((each) => each.name === name);
  if (file) save(session, name, TYPES[name], [...file.text].join(''));
}

export function exportCalendar(session: Session): void {
  const { planning, preferences } = session.store.get();
  if (planning.state !== 'made') return;
  const { calendar } = planning.outcome;
  const { language } = preferences;
  const stamp = `${new Date().toISOString().slice(0, 19)}Z`;
  const title = BLOOM_WORDS[language].calendar(calendar.title);
  save(session, 'bloom.ics', 'text/calendar', icalendarOf(title, calendarSpans(calendar, language), stamp));
}
