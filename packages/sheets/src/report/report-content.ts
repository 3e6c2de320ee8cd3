/** A whole report as content: the page for the council first, then all that it rests on. */
import type { Language } from '@crownfall/survey';
import { dayText, type Units } from '../quantities.ts';
import type { Part, ReportContent } from './content.ts';
import { planReading } from './plan-reading.ts';
import { REPORT_WORDS, type Reading, type ReportInput } from './reading.ts';
import { councilPage, type PageRoom } from './sections/council-page.ts';
import { gapsSection } from './sections/gaps-section.ts';
import { accuracySection, methodsSection } from './sections/methods-section.ts';
import { noPlanSection, planSection } from './sections/plan-section.ts';
import { rankingSection } from './sections/ranking-section.ts';
import { safetySection } from './sections/safety-section.ts';
import { seasonSection } from './sections/season-section.ts';
import { settingsSection } from './sections/settings-section.ts';
import { traceSection, withSources } from './sections/trace-section.ts';

export interface ReportOptions {
  readonly language: Language;
  /** The assessment's own when absent. */
  readonly units?: Units;
  /** Room for map and table on the first page. */
  readonly room?: PageRoom;
}

/** Text width of a letter page, and a map that leaves room for all else on it. */
const ROOM: PageRoom = { widthMm: 180, mapHeightMm: 100, rows: 8 };

/**
 * The content of a report in one language, the same for the same input. Where k is not fitted it says so on every page; a
 * range that was not drawn is left out and said to be, never invented.
 * @throws RangeError when the assessment has no block.
 */
export function reportContent(input: ReportInput, options: ReportOptions): ReportContent {
  const { assessment } = input;
  if (assessment.blocks.length === 0) throw new RangeError('report: expected at least one block, got none');
  const { language, units = assessment.units, room = ROOM } = options;
  const words = REPORT_WORDS[language];
  const reading: Reading = { ...input, language, units, words };
  const sections: readonly Part[] = [
    ...councilPage(reading, room),
    ...planParts(reading, room.widthMm),
    ...rankingSection(reading),
    ...seasonSection(reading),
    ...methodsSection(reading),
    ...accuracySection(reading),
    ...gapsSection(reading),
    ...settingsSection(reading),
  ];
  const { title, season, run } = assessment;
  return {
    language,
    title,
    about: words.about(season, run.asOf === null ? null : dayText(run.asOf, language)),
    running: [title, words.season(season), ...(run.calibrated ? [] : [words.uncalibrated])].join(' · '),
    parts: withSources([...sections, ...traceSection(reading, sections)], reading),
  };
}

/** The plan in detail with its safety; or the limits that clash. */
function planParts(reading: Reading, widthMm: number): readonly Part[] {
  const planned = planReading(reading);
  if (planned !== null) return [...planSection(planned), ...safetySection(planned, widthMm)];
  return reading.plan === undefined || reading.plan.feasible ? [] : noPlanSection(reading, reading.plan);
}
