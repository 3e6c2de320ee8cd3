/** Text with stresses into lines of a given width. */
import type { PaperMark, TextStyle } from '../../drawing.ts';
import type { SheetFonts } from '../../pdf/sheet-fonts.ts';
import type { Run } from '../content.ts';

/** Height of capitals in parts of the size: how far the first baseline lies below the top. */
const ASCENT = 0.76;

/** A stretch of one line in one weight, at `x` mm from its left. */
interface Piece {
  readonly x: number;
  readonly text: string;
  readonly bold: boolean;
}

export interface RunLine {
  readonly pieces: readonly Piece[];
  readonly widthMm: number;
}

interface Word {
  readonly text: string;
  readonly bold: boolean;
  /** A space stands before it. */
  readonly spaced: boolean;
}

/**
 * The run in lines no wider than `widthMm`, broken at spaces but not at those that hold a number to its unit; a word that
 * is wider is broken between letters. Stressed words are bold. Nothing to read gives no line.
 */
export function runLines(run: Run, style: TextStyle, widthMm: number, fonts: SheetFonts): readonly RunLine[] {
  const lines: RunLine[] = [];
  let pieces: Piece[] = [];
  let end = 0;
  const flush = (): void => {
    if (pieces.length > 0) lines.push({ pieces, widthMm: end });
    pieces = [];
    end = 0;
  };
  const width = (text: string, bold: boolean) =>
    fonts.widthMm(text, { ...style, weight: bold || style.weight === 'bold' ? 'bold' : 'normal' });
  for (const word of wordsOf(run).flatMap((each) => brokenWord(each, widthMm, width))) {
    let longer = appended(pieces, word, end + (word.spaced ? width(' ', word.bold) : 0));
    if (pieces.length > 0 && word.spaced && endOf(longer, width) > widthMm) {
      flush();
      longer = appended([], word, 0);
    }
    pieces = longer;
    end = endOf(pieces, width);
  }
  flush();
  return lines;
}

/** Words of one weight that follow each other become one piece, so that a reader can copy the line whole. */
function appended(pieces: readonly Piece[], { text, bold, spaced }: Word, x: number): Piece[] {
  const last = pieces.at(-1);
  if (last === undefined) return [{ x: 0, text, bold }];
  if (last.bold !== bold) return [...pieces, { x, text, bold }];
  return [...pieces.slice(0, -1), { ...last, text: `${last.text}${spaced ? ' ' : ''}${text}` }];
}

/** Where the last piece ends; measured whole, as letters of neighbouring words may move together. */
function endOf(pieces: readonly Piece[], width: (text: string, bold: boolean) => number): number {
  const last = pieces[pieces.length - 1];
  return last.x + width(last.text, last.bold);
}

function wordsOf(run: Run): readonly Word[] {
  const words: Word[] = [];
  let spaced = false;
  for (const inline of run) {
    const bold = typeof inline !== 'string' && 'strong' in inline;
    const text = typeof inline === 'string' ? inline : 'strong' in inline ? inline.strong : inline.figure;
    for (const [, space, word] of text.matchAll(/([ \n\t]*)([^ \n\t]*)/g)) {
      if (space !== '') spaced = true;
      if (word === '') continue;
      words.push({ text: word, bold, spaced: spaced || words.length === 0 });
      spaced = false;
    }
  }
  return words;
}

/** After these a long word may go over without a hyphen. */
const BREAK_AFTER = /[./_,+;:-]/;

function brokenWord(word: Word, widthMm: number, width: (text: string, bold: boolean) => number): readonly Word[] {
  if (width(word.text, word.bold) <= widthMm) return [word];
  const out: Word[] = [];
  let piece = '';
  let safe = 0;
  for (const letter of word.text) {
    if (piece !== '' && width(piece + letter, word.bold) > widthMm) {
      const cut = safe > 0 ? safe : piece.length;
      out.push({ text: piece.slice(0, cut), bold: word.bold, spaced: true });
      piece = piece.slice(cut);
      safe = 0;
    }
    piece += letter;
    if (BREAK_AFTER.test(letter)) safe = piece.length;
  }
  out.push({ text: piece, bold: word.bold, spaced: true });
  return out.map((each, i) => (i === 0 ? { ...each, spaced: word.spaced } : each));
}

/** How a text looks: its style, and from one baseline to the next in parts of its size. */
export interface Look extends TextStyle {
  readonly leading: number;
}

/** Height of so many lines, mm. */
export const linesHeight = (count: number, { sizeMm, leading }: Look): number => count * sizeMm * leading;

/** The line as marks in its room from `top` down; to the left of x when `align` is right. */
export function lineMarks(
  line: RunLine,
  at: { readonly x: number; readonly top: number; readonly align?: 'left' | 'right' },
  { leading, ...style }: Look,
): readonly PaperMark[] {
  const left = at.align === 'right' ? at.x - line.widthMm : at.x;
  // The room above capitals and below tails is shared, so that lines sit in the middle of their room.
  const baseline = at.top + style.sizeMm * (ASCENT + (leading - 1) / 2);
  return line.pieces.map(({ x, text, bold }) => ({
    mark: 'text',
    x: left + x,
    y: baseline,
    text,
    style: bold ? { ...style, weight: 'bold' } : style,
  }));
}

/** Lines below each other, the first one's room from `top` down. */
export function blockMarks(
  lines: readonly RunLine[],
  at: { readonly x: number; readonly top: number; readonly align?: 'left' | 'right' },
  look: Look,
): readonly PaperMark[] {
  return lines.flatMap((line, i) => lineMarks(line, { ...at, top: at.top + linesHeight(i, look) }, look));
}
