/** Inter from the installed package, for the tests of this room. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { openFonts, type SheetFonts } from './sheet-fonts.ts';

export function interFonts(): SheetFonts {
  const require = createRequire(import.meta.url);
  const file = (part: string, weight: number) =>
    readFileSync(require.resolve(`@fontsource/inter/files/inter-${part}-${weight}-normal.woff`));
  return openFonts({
    normal: ['latin', 'latin-ext'].map((part) => file(part, 400)),
    bold: ['latin', 'latin-ext'].map((part) => file(part, 700)),
  });
}
