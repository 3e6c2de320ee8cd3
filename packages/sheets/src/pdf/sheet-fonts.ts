/** The letters of a sheet: measured for the layout, and embedded in the PDF. */
import { create, type Font } from 'fontkit';
import type { TextStyle } from '../drawing.ts';

/** Bytes of TrueType, OpenType or WOFF files; the first file that has a letter gives it. */
export interface FontFiles {
  readonly normal: readonly Uint8Array[];
  readonly bold: readonly Uint8Array[];
}

export interface SheetFonts {
  /** Width of one line, mm. */
  widthMm(text: string, style: Pick<TextStyle, 'sizeMm' | 'weight' | 'spread'>): number;
  /** The text in stretches of one font; a letter that no font has becomes a question mark. */
  runs(text: string, weight?: TextStyle['weight']): readonly FontRun[];
}

interface FontRun {
  readonly text: string;
  /** Told from the room's other fonts by weight and place, since files of one family may share a name. */
  readonly key: string;
  readonly font: Font;
}

/**
 * Opens the fonts of a sheet.
 * @throws RangeError when a weight has no file, or one is WOFF2, whose accented letters the library cannot embed; whatever the reader says of bytes that are no font.
 * @example openFonts({ normal: [latin], bold: [latinBold] }).widthMm('Año', { sizeMm: 4 }) // 7.9 in Inter
 */
export function openFonts(files: FontFiles): SheetFonts {
  const fonts = { normal: files.normal.map(opened), bold: files.bold.map(opened) };
  for (const weight of ['normal', 'bold'] as const) {
    if (fonts[weight].length === 0)
      throw new RangeError(`openFonts: expected a font file for ${weight} text, got none`);
  }
  const widths = new Map<string, number>();
  const runs: SheetFonts['runs'] = (text, weight = 'normal') => fontRuns(text, weight, fonts[weight]);
  const perSize = (text: string, weight: 'normal' | 'bold'): number => {
    const key = `${weight} ${text}`;
    const known = widths.get(key);
    if (known !== undefined) return known;
    const width = runs(text, weight).reduce(
      (sum, run) => sum + run.font.layout(run.text).advanceWidth / run.font.unitsPerEm,
      0,
    );
    widths.set(key, width);
    return width;
  };
  return {
    runs,
    widthMm: (text, { sizeMm, weight = 'normal', spread = 0 }) =>
      (perSize(text, weight) + spread * Array.from(text).length) * sizeMm,
  };
}

/** The signature of WOFF2: W3C WOFF File Format 2.0, section 4.1. */
const WOFF2 = 'wOF2';

function opened(bytes: Uint8Array): Font {
  const signature = String.fromCharCode(...bytes.subarray(0, 4));
  if (signature === WOFF2) throw new RangeError('openFonts: expected TrueType, OpenType or WOFF, got WOFF2');
  return create(bytes);
}

function fontRuns(text: string, weight: string, fonts: readonly Font[]): readonly FontRun[] {
  const out: { text: string; key: string; font: Font }[] = [];
  for (const letter of text.normalize('NFC')) {
    const found = fonts.findIndex((font) => font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0));
    const index = Math.max(found, 0);
    const shown = found < 0 ? '?' : letter;
    const last = out.at(-1);
    if (last?.font === fonts[index]) last.text += shown;
    else out.push({ text: shown, key: `${weight} ${index}`, font: fonts[index] });
  }
  return out;
}
