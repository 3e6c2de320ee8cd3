/**
 * The content of a report as plain data: headings, paragraphs, tables, figures, notices, in one language and one system of
 * units. Page and paper come later: the same content becomes HTML, PDF and plain text.
 */
import type { Language } from '@crownfall/survey';
import type { Drawing } from '../drawing.ts';

export interface ReportContent {
  readonly language: Language;
  readonly title: string;
  /** What it is, of when; below the title. */
  readonly about: string;
  /** On every page: whose report, and that figures are not calibrated where they are not. */
  readonly running: string;
  readonly parts: readonly Part[];
}

export type Part = Heading | Paragraph | List | KeyFigures | Table | Picture | Notice;

export interface Heading {
  readonly part: 'heading';
  /** 1 is the title's; the sections of a report have 2. */
  readonly level: 1 | 2 | 3;
  readonly text: string;
  /** Looks like the level below it: where a page has no larger headings. */
  readonly small?: true;
  /** Starts a new page on paper. */
  readonly newPage?: boolean;
}

export interface Paragraph {
  readonly part: 'paragraph';
  readonly text: Run;
  /** `lead` is larger, `quiet` smaller and grey. */
  readonly tone?: 'lead' | 'quiet';
}

export interface List {
  readonly part: 'list';
  readonly items: readonly Run[];
  /** Smaller. */
  readonly tone?: 'quiet';
}

/** Up to three figures that a reader takes away. */
export interface KeyFigures {
  readonly part: 'key-figures';
  readonly figures: readonly KeyFigure[];
  /** Stands to their left; the figures then stand below each other. */
  readonly beside?: Picture;
}

export interface KeyFigure {
  readonly label: string;
  readonly figure: Figure;
  /** null: none was drawn, and `rangeLabel` says so. */
  readonly range: Figure | null;
  readonly rangeLabel: string;
  readonly note?: string;
}

export interface Table {
  readonly part: 'table';
  readonly caption: string;
  /** The heading above says it already: the caption is kept for screen readers only. */
  readonly captionHidden?: true;
  readonly columns: readonly Column[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly Run[])[];
  /** What the columns hold that their titles do not say. */
  readonly note?: Run;
}

export interface Column {
  readonly title: string;
  readonly align: 'left' | 'right';
  /** Share of the width beside the other columns. */
  readonly weight: number;
}

export interface Picture {
  readonly part: 'picture';
  readonly drawing: Drawing;
  readonly caption: string;
}

/** Something that must not be overread: cautions, limits. */
export interface Notice {
  readonly part: 'notice';
  readonly title: string;
  readonly lines: readonly Run[];
}

/** Text with figures and stresses in it. */
export type Run = readonly Inline[];
export type Inline = string | Figure | Strong;

interface Strong {
  readonly strong: string;
}

/** A figure as it is read, and the cells of the result files that it comes from, in the order of its numbers. */
export interface Figure {
  readonly figure: string;
  readonly from: readonly Trace[];
}

/** A cell of a file that `reckon`, `plan` or `season` writes, or several cells of one column added up. */
export interface Trace {
  readonly file: string;
  /** The id of the block, tree or pavement, or several that are added up; absent: the whole column, or the one such figure. */
  readonly row?: string | readonly string[];
  readonly column: string;
  /** All rows added up. */
  readonly sum?: true;
  /** The figure is the share of this. */
  readonly per?: Trace;
}

/** The words of a run, figures included. */
export function plainText(run: Run): string {
  return run.map((one) => (typeof one === 'string' ? one : 'figure' in one ? one.figure : one.strong)).join('');
}
