/** Words into lines of a given width, and the room that a line takes. */
import type { PaperMark, TextStyle } from '../drawing.ts';
import type { SheetFonts } from './sheet-fonts.ts';

/** Where a line may end; a no-break space keeps a number with its unit. */
const BREAKS = /[ \t\n\r]+/;

/** From one baseline to the next, in parts of the size. */
export const LEADING = 1.3;
/** Height of capitals and depth of tails in parts of the size (Inter: 0.727 and 0.24). */
const ASCENT = 0.76;
const DESCENT = 0.24;

/**
 * The text in lines no wider than `widthMm`, broken at spaces; a word that is wider is broken between letters. Empty
 * text gives no line.
 * @example linesOf('look for bees', { sizeMm: 4, colour: '#000' }, 18, fonts) // ['look for', 'bees']
 */
export function linesOf(text: string, style: TextStyle, widthMm: number, fonts: SheetFonts): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS).filter((each) => each !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fonts.widthMm(longer, style) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = piecesOf(word, style, widthMm, fonts);
    lines.push(...pieces.slice(0, -1));
    line = pieces[pieces.length - 1];
  }
  return line === '' ? lines : [...lines, line];
}

/** The lines as marks below each other, the first one's capitals touching `y`. */
export function textMarks(lines: readonly string[], x: number, y: number, style: TextStyle): readonly PaperMark[] {
  return lines.map((text, i) => ({
    mark: 'text',
    x,
    y: y + style.sizeMm * (ASCENT + i * LEADING),
    text,
    style,
  }));
}

/** Height of so many lines, from capitals to tails, mm. */
export function linesHeightMm(count: number, sizeMm: number): number {
  return count === 0 ? 0 : sizeMm * (ASCENT + DESCENT + (count - 1) * LEADING);
}

/**
 * The four corners of the room a line takes on paper (x, y in mm, flat), turned as it is; `centred` for labels whose
 * place is the middle of their capitals.
 */
export function textCorners(
  at: { readonly x: number; readonly y: number; readonly text: string; readonly style: TextStyle },
  fonts: SheetFonts,
  centred = false,
): Float64Array {
  const { x, y, text, style } = at;
  const width = fonts.widthMm(text, style);
  const left = style.anchor === 'middle' ? -width / 2 : style.anchor === 'end' ? -width : 0;
  const sink = centred ? CENTRING * style.sizeMm : 0;
  const [top, bottom] = [sink - ASCENT * style.sizeMm, sink + DESCENT * style.sizeMm];
  const turn = (-(style.turnDeg ?? 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const corners = [left, top, left + width, top, left + width, bottom, left, bottom];
  const out = new Float64Array(8);
  for (let i = 0; i < 8; i += 2) {
    out[i] = x + corners[i] * cos - corners[i + 1] * sin;
    out[i + 1] = y + corners[i] * sin + corners[i + 1] * cos;
  }
  return out;
}

/** Half the height of capitals: how far a label's baseline lies below its place. */
export const CENTRING = 0.36;

function piecesOf(word: string, style: TextStyle, widthMm: number, fonts: SheetFonts): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && fonts.widthMm(piece + letter, style) > widthMm) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
