/** A report whose first page is full and not overfull: the map takes what the rest leaves. */
import type { PaperName } from '../../pdf/page-list.ts';
import type { SheetFonts } from '../../pdf/sheet-fonts.ts';
import type { ReportContent } from '../content.ts';
import type { ReportInput } from '../reading.ts';
import { type ReportOptions, reportContent } from '../report-content.ts';
import { firstPageHeight, textRoom } from './report-pages.ts';

/** A lower map shows too little; a higher one is more than the page's share. */
const LEAST_MAP_MM = 68;
const MOST_MAP_MM = 130;
const TRIAL_MAP_MM = 100;

/** The content of a report for a paper; what does not fit the first page even with a small map goes on to the second. */
export function fittedReport(
  input: ReportInput,
  options: Omit<ReportOptions, 'room'>,
  { paper, fonts }: { readonly paper: PaperName; readonly fonts: SheetFonts },
): ReportContent {
  const { widthMm, heightMm } = textRoom(paper);
  const withMap = (mapHeightMm: number) => reportContent(input, { ...options, room: { widthMm, mapHeightMm } });
  const free = heightMm - firstPageHeight(withMap(TRIAL_MAP_MM), paper, fonts);
  // A tenth of a millimetre is left, so that rounding cannot push a line over.
  const mapHeightMm = Math.min(MOST_MAP_MM, Math.max(LEAST_MAP_MM, TRIAL_MAP_MM + free - 0.1));
  return withMap(mapHeightMm);
}
