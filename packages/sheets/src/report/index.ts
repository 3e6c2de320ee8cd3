/** The door to reports and letters: content first, then the file it becomes. PDF is written by `@crownfall/sheets/pdf`. */
export type { ReportContent } from './content.ts';
export { contentText } from './content-text.ts';
export { reportHtml } from './html/report-html.ts';
export { type LetterOptions, letterContent } from './letter-content.ts';
export { fittedReport } from './pdf/fitted-report.ts';
export { type PagesOptions, reportPages } from './pdf/report-pages.ts';
export type { ReportInput } from './reading.ts';
export { type ReportOptions, reportContent } from './report-content.ts';
