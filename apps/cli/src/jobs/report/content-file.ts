/** Writes content as the kind of file its name asks for. */
import { basename, dirname, extname, resolve } from 'node:path';
import { writeFiles } from '@crownfall/exchange/node';
import type { PaperName, SheetFonts } from '@crownfall/sheets';
import { writePdf } from '@crownfall/sheets/pdf';
import { contentText, type ReportContent, reportHtml, reportPages } from '@crownfall/sheets/report';

/** Pages of the PDF; null for the other kinds. */
export async function writeContent(
  out: string,
  content: ReportContent,
  { paper, fonts, day }: { readonly paper: PaperName; readonly fonts: SheetFonts; readonly day: string },
): Promise<number | null> {
  const file = resolve(out);
  const write = (text: Iterable<string | Uint8Array>) => writeFiles(dirname(file), [{ name: basename(file), text }]);
  const kind = extname(file).toLowerCase();
  if (kind === '.txt') await write([contentText(content)]);
  if (kind === '.html') await write([reportHtml(content, { paper })]);
  if (kind !== '.pdf') return null;
  const list = reportPages(content, { paper, fonts, createdAt: `${day}T00:00:00Z` });
  await write([await writePdf(list, fonts)]);
  return list.pages.length;
}
