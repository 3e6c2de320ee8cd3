/** What is on the pages of a document, in reading order, before it becomes a PDF. Millimetres from a page's top left. */
import type { Drawing, Frame, PaperMark } from '../drawing.ts';

export type PaperName = 'letter' | 'a4';

/** ISO 216 and ANSI/ASME Y14.1 size A, upright, mm. */
export const PAPER: Readonly<Record<PaperName, { readonly widthMm: number; readonly heightMm: number }>> = {
  letter: { widthMm: 215.9, heightMm: 279.4 },
  a4: { widthMm: 210, heightMm: 297 },
};

export interface PageList {
  /** Shown as the window's title, and read first. */
  readonly title: string;
  /** BCP 47: en, es. */
  readonly language: string;
  readonly subject?: string;
  /** An ISO 8601 instant; the same instant and pages give the same bytes. */
  readonly createdAt: string;
  readonly pages: readonly Page[];
}

export interface Page {
  readonly paper: { readonly widthMm: number; readonly heightMm: number };
  /** The page's line in the list of contents that readers show beside it. */
  readonly bookmark?: string;
  /** In reading order; later marks cover earlier ones. */
  readonly content: readonly PageItem[];
}

export type PageItem =
  /** Rules, shades, page numbers: what a screen reader passes over. */
  | { readonly item: 'ornament'; readonly marks: readonly PaperMark[] }
  | { readonly item: 'text'; readonly tag: TextTag; readonly marks: readonly PaperMark[] }
  | { readonly item: 'list'; readonly entries: readonly (readonly PaperMark[])[] }
  | { readonly item: 'table'; readonly about: string; readonly rows: readonly TableRow[] }
  /** A picture; `alt` says what it shows. `link` opens when it is clicked. */
  | {
      readonly item: 'figure';
      readonly alt: string;
      readonly box: Frame;
      readonly picture: readonly PaperMark[] | Drawing;
      readonly link?: string;
    };

/** ISO 32000-1, 14.8.4: headings, paragraph, caption. */
export type TextTag = 'H1' | 'H2' | 'H3' | 'P' | 'Caption';

export type TableRow = readonly TableCell[];

export interface TableCell {
  /** A cell that names its column or row. */
  readonly heads?: 'Column' | 'Row';
  readonly marks: readonly PaperMark[];
}
