/** Boxes into pages: none is cut, headings stay with what they head, a table's head stands again where it goes on. */

/** What the layout must know of a box; what is in it concerns only whoever paints it. */
export interface FlowBox {
  readonly heightMm: number;
  /** Space above; none at the top of a page. */
  readonly gapMm: number;
  /** Never the last on a page while more follows: headings, first lines, heads of tables. */
  readonly withNext?: boolean;
  /** Starts a page. */
  readonly newPage?: boolean;
  /** A row of a table: the height of the head that stands above it where it comes first on a page. */
  readonly headMm?: number;
}

export interface PlacedBox {
  readonly index: number;
  readonly topMm: number;
  /** The head of its table stands directly above it once more. */
  readonly headAgain: boolean;
}

/**
 * Pages of the boxes, in order, each from 0 down to `pageMm`. Boxes that are to stay together move to the next page together,
 * unless together they are taller than a page: then they break where they must. A box taller than a page stands alone and
 * runs over its foot. No boxes give no pages.
 * @throws RangeError when a page has no height, or a box a height or gap that is none.
 * @example paginate([{ heightMm: 60, gapMm: 0 }, { heightMm: 60, gapMm: 4 }], 100).length // 2
 */
export function paginate(boxes: readonly FlowBox[], pageMm: number): readonly (readonly PlacedBox[])[] {
  expectBoxes(boxes, pageMm);
  const pages: PlacedBox[][] = [];
  let page: PlacedBox[] = [];
  let foot = 0;
  let index = 0;
  while (index < boxes.length) {
    const end = togetherUntil(boxes, index);
    const group = boxes.slice(index, end);
    const height = heightOf(group, page.length === 0);
    const fitsNewPage = heightOf(group, true) <= pageMm + ROUNDING;
    if (page.length > 0 && (group[0].newPage === true || (foot + height > pageMm + ROUNDING && fitsNewPage))) {
      pages.push(page);
      page = [];
      foot = 0;
    }
    for (const [k, box] of group.entries()) {
      // Only a group taller than a page breaks inside.
      if (page.length > 0 && foot + box.gapMm + box.heightMm > pageMm + ROUNDING) {
        pages.push(page);
        page = [];
        foot = 0;
      }
      const first = page.length === 0;
      const headAgain = first && box.headMm !== undefined;
      const topMm = foot + (first ? 0 : box.gapMm) + (headAgain ? (box.headMm ?? 0) : 0);
      page.push({ index: index + k, topMm, headAgain });
      foot = topMm + box.heightMm;
    }
    index = end;
  }
  return page.length === 0 ? pages : [...pages, page];
}

const ROUNDING = 1e-9;

/** One past the last box that must stay with the one at `start`. */
function togetherUntil(boxes: readonly FlowBox[], start: number): number {
  let end = start + 1;
  while (end < boxes.length && boxes[end - 1].withNext === true && boxes[end].newPage !== true) end++;
  return end;
}

function heightOf(group: readonly FlowBox[], atTop: boolean): number {
  const sum = group.reduce((height, box, i) => height + box.heightMm + (atTop && i === 0 ? 0 : box.gapMm), 0);
  return sum + (atTop ? (group[0].headMm ?? 0) : 0);
}

function expectBoxes(boxes: readonly FlowBox[], pageMm: number): void {
  if (!(pageMm > 0)) throw new RangeError(`paginate: expected a page with a height, got ${pageMm} mm`);
  for (const [i, { heightMm, gapMm }] of boxes.entries()) {
    if (!(heightMm >= 0 && gapMm >= 0 && Number.isFinite(heightMm + gapMm)))
      throw new RangeError(`paginate: expected heights and gaps from 0, got ${heightMm} and ${gapMm} mm (box ${i})`);
  }
}
