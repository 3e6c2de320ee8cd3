/** Boxes of a report: what the layout places, and what each becomes on its page. */
import type { PaperMark } from '../../drawing.ts';
import type { PageItem } from '../../pdf/page-list.ts';
import type { SheetFonts } from '../../pdf/sheet-fonts.ts';
import type { FlowBox } from './paginate.ts';

export interface ReportBox extends FlowBox {
  /** Boxes of one part join to one paragraph, list or table on each page. */
  readonly owner: number;
  /** Goes on with the list entry of the box before it. */
  readonly continues?: boolean;
  /** Text of a heading, for the list of contents beside the pages. */
  readonly heading?: string;
  /** What stands on the page when the box's top is at `topMm`. */
  readonly items: (topMm: number, headAgain: boolean) => readonly PageItem[];
}

/** Where text may stand, and its letters. */
export interface Measure {
  readonly leftMm: number;
  readonly widthMm: number;
  readonly fonts: SheetFonts;
}

/** A straight line as an ornament. */
export function ruled(
  from: readonly [number, number],
  to: readonly [number, number],
  stroke: { readonly colour: string; readonly widthMm: number },
): PageItem {
  return ornament([{ mark: 'line', points: [from, to], style: { stroke } }]);
}

export function ornament(marks: readonly PaperMark[]): PageItem {
  return { item: 'ornament', marks };
}
