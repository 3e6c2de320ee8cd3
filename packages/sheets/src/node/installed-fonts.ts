/** The fonts that PDFs embed, from the installed package: Latin letters first, then what other alphabets need. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { openFonts, type SheetFonts } from '../pdf/sheet-fonts.ts';

const PARTS = ['latin', 'latin-ext', 'cyrillic', 'greek', 'vietnamese'] as const;

/** Opens Inter in both weights. @throws the disk's error when the package's files cannot be read. */
export async function installedFonts(): Promise<SheetFonts> {
  const require = createRequire(import.meta.url);
  const folder = dirname(require.resolve('@fontsource/inter/package.json'));
  const files = (weight: number) =>
    Promise.all(PARTS.map((part) => readFile(join(folder, 'files', `inter-${part}-${weight}-normal.woff`))));
  return openFonts({ normal: await files(400), bold: await files(700) });
}
