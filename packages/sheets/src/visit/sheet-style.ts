/** Sizes of a visit sheet, chosen for a sheet held at arm's length: 9 points and more for what is read on the spot. */
import type { PaperMark, TextStyle } from '../drawing.ts';
import { linesHeightMm, linesOf, textMarks } from '../pdf/lay-text.ts';
import type { SheetFonts } from '../pdf/sheet-fonts.ts';

const INK = '#000000';

export const STYLE = {
  title: { sizeMm: 5.4, weight: 'bold', colour: INK },
  about: { sizeMm: 3.2, colour: INK },
  heading: { sizeMm: 3.6, weight: 'bold', colour: INK },
  text: { sizeMm: 3.2, colour: INK },
  strong: { sizeMm: 3.2, weight: 'bold', colour: INK },
  large: { sizeMm: 4.4, weight: 'bold', colour: INK },
  table: { sizeMm: 3.1, colour: INK },
  tableStrong: { sizeMm: 3.1, weight: 'bold', colour: INK },
  tableHead: { sizeMm: 2.8, weight: 'bold', colour: INK },
  small: { sizeMm: 2.7, colour: INK },
  foot: { sizeMm: 2.5, colour: '#3a3531' },
} as const satisfies Readonly<Record<string, TextStyle>>;

/** Between the paper's edge and what is printed: most printers reach so far, mm. */
export const MARGIN_MM = 11;

export const HAIRLINE = { colour: '#8a837b', widthMm: 0.2 } as const;
export const RULE = { colour: INK, widthMm: 0.4 } as const;

/** Text wrapped into a width, and where the next thing may begin. */
export function paragraph(
  text: string,
  at: { readonly x: number; readonly y: number; readonly widthMm: number },
  style: TextStyle,
  fonts: SheetFonts,
): { readonly marks: readonly PaperMark[]; readonly bottomMm: number } {
  const lines = linesOf(text, style, at.widthMm, fonts);
  return {
    marks: textMarks(lines, at.x, at.y, style),
    bottomMm: at.y + linesHeightMm(lines.length, style.sizeMm),
  };
}
