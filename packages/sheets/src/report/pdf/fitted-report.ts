/** A report whose first page is full and not overfull: the map takes what the rest leaves. */
import type { PaperName } from '../../pdf/page-list.ts';
import type { SheetFonts } from '../../pdf/sheet-fonts.ts';
import type { ReportContent } from '../content.ts';
import type { ReportInput } from '../reading.ts';
import { type ReportOptions, reportContent } from '../report-content.ts';
import { firstPageHeight, textRoom } from './report-pages.ts';

/** A lower map shows too little; a higher one is more than the page's share. */
const LEAST_MAP_MM = 76;
const MOST_MAP_MM = 130;
/** Rows of the first page's table: as many as leave the map its least height. */
const ROWS = [6, 5, 4, 3];

/** The content of a report for a paper; what does not fit the first page even with few rows goes on to the second. */
export function fittedReport(
  input: ReportInput,
  options: Omit<ReportOptions, 'room'>,
  { paper, fonts }: { readonly paper: PaperName; readonly fonts: SheetFonts },
): ReportContent {
  const { widthMm, heightMm } = textRoom(paper);
  const withRoom = (mapHeightMm: number, rows: number) =>
    reportContent(input, { ...options, room: { widthMm, mapHeightMm, rows } });
  for (const rows of ROWS) {
    const least = withRoom(LEAST_MAP_MM, rows);
    // A tenth of a millimetre is left, so that rounding cannot push a line over.
    const free = heightMm - firstPageHeight(least, paper, fonts) - 0.1;
    if (free >= 0) return withRoom(Math.min(MOST_MAP_MM, LEAST_MAP_MM + free), rows);
  }
  return withRoom(LEAST_MAP_MM, ROWS[ROWS.length - 1]);
}
