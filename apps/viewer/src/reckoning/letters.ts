/** The letters of PDFs, fetched when the first one is made. */
import type { SheetFonts } from '@crownfall/sheets';
import { openFonts } from '@crownfall/sheets/pdf';
import normal from '@fontsource/inter/files/inter-latin-400-normal.woff?url';
import bold from '@fontsource/inter/files/inter-latin-700-normal.woff?url';
import normalFurther from '@fontsource/inter/files/inter-latin-ext-400-normal.woff?url';
import boldFurther from '@fontsource/inter/files/inter-latin-ext-700-normal.woff?url';

export async function letters(): Promise<SheetFonts> {
  const files = (urls: readonly string[]) => Promise.all(urls.map(fileAt));
  return openFonts({ normal: await files([normal, normalFurther]), bold: await files([bold, boldFurther]) });
}

async function fileAt(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`The letters of the PDF could not be loaded (${response.status}).`);
  return new Uint8Array(await response.arrayBuffer());
}
