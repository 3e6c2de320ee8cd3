/** Inter from the installed package, for the tests of this room. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { openFonts, type SheetFonts } from './sheet-fonts.ts';

export function interFonts(): SheetFonts {
  const require = createRequire(import.meta.url);
  const folder = dirname(require.resolve('@fontsource/inter/package.json'));
  const file = (part: string, weight: number) =>
    readFileSync(join(folder, 'files', `inter-${part}-${weight}-normal.woff`));
  return openFonts({
    normal: ['latin', 'latin-ext'].map((part) => file(part, 400)),
    bold: ['latin', 'latin-ext'].map((part) => file(part, 700)),
  });
}
