/**
 * From ratings to one figure per tree, with what it rests on (docs/methods/severity.md). Ratings know no geometry; the dose
 * is reckoned where these figures meet the crowns.
 */
import type { Survey } from '../records.ts';
import type { Settings } from '../settings.ts';
import { SeverityBook } from './severity-book.ts';
import type { SeverityReading } from './tree-severity.ts';

/**
 * Severity of every tree on the day `asOf` (ISO), in the survey's order. The newest visit of the season's year counts: its
 * raters are averaged, intervals too; the newest stated diagnosis sets the gate. A tree without a figure takes the mean of
 * its host's rated trees with their spread; when the host has none, its figure is `none` and it adds nothing. Independent of
 * the order of the ratings. Throws RangeError when `asOf` is not a day.
 * @example severityOfTrees(survey, DEFAULT_SETTINGS, '2026-06-30').trees[0].weightedSeverity // 0.4
 */
export function severityOfTrees(survey: Survey, settings: Settings, asOf: string): SeverityReading {
  return new SeverityBook(settings).read(survey, asOf);
}
