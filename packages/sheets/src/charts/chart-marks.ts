/** The marks of a chart in pixels of its page: one list becomes SVG text on a screen and a drawing in a report. */
import type { Drawing, PaperMark } from '../drawing.ts';
import { CHART, escaped, px, TEXT_PX } from './chart-frame.ts';

/** `about` shows when the pointer rests on the mark; it is left away on paper. */
export type ChartMark = ShapeMark & { readonly about?: string };

type ShapeMark = Exclude<PaperMark, { readonly mark: 'image' | 'line' }>;

type Place = readonly [x: number, y: number];

/** A straight line. */
export function rule(from: Place, to: Place, colour: string, widthPx = 1): ChartMark {
  return { mark: 'polygon', points: [from, to], style: { stroke: { colour, widthMm: widthPx } } };
}

/** A filled disc, or a ring about white when it has a `rim`. */
export function dot(at: Place, radiusPx: number, fill: string, rim?: { colour: string; widthPx: number }): ChartMark {
  const stroke = rim === undefined ? {} : { stroke: { colour: rim.colour, widthMm: rim.widthPx } };
  return { mark: 'disc', x: at[0], y: at[1], radiusMm: radiusPx, style: { fill, ...stroke } };
}

/** One line of text, its baseline at y. */
export function words(
  at: Place,
  text: string,
  {
    anchor = 'start',
    colour = CHART.ink,
    turnDeg,
  }: { anchor?: 'start' | 'middle' | 'end'; colour?: string; turnDeg?: number } = {},
): ChartMark {
  const turn = turnDeg === undefined ? {} : { turnDeg };
  return { mark: 'text', x: at[0], y: at[1], text, style: { sizeMm: TEXT_PX, colour, anchor, ...turn } };
}

/** The mark as SVG text; RangeError for a place that is not finite. */
export function markText(mark: ChartMark): string {
  const about = mark.about === undefined ? '' : `<title>${escaped(mark.about)}</title>`;
  if (mark.mark === 'text') return wordsText(mark);
  if (mark.mark === 'disc') {
    const place = `cx="${px(mark.x)}" cy="${px(mark.y)}" r="${mark.radiusMm}"`;
    return `<circle ${place} ${paint(mark.style)}>${about}</circle>`;
  }
  if (mark.mark === 'box') {
    const { leftMm, topMm, widthMm, heightMm } = mark.box;
    const place = `x="${px(leftMm)}" y="${px(topMm)}" width="${px(widthMm)}" height="${px(heightMm)}"`;
    return `<rect ${place} ${paint(mark.style)}>${about}</rect>`;
  }
  const path = mark.points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('');
  return `<path d="${path}" ${paint(mark.style)}/>`;
}

/**
 * Marks of a page `width` × `height` px as a drawing `widthMm` wide. `top` px above the plot, where a screen shows the title,
 * are cut off: on paper the title is the caption.
 */
export function chartDrawing(
  said: { readonly title: string; readonly description: string },
  page: { readonly width: number; readonly height: number; readonly top: number },
  marks: readonly ChartMark[],
  widthMm: number,
): Drawing {
  const mmPerPx = widthMm / page.width;
  const paper = { widthMm, heightMm: (page.height - page.top) * mmPerPx };
  return {
    title: said.title,
    description: said.description,
    paper,
    frame: { leftMm: 0, topMm: 0, widthMm: 0, heightMm: 0 },
    land: '#ffffff',
    scale: 1,
    centre: { x: 0, y: 0 },
    ground: [],
    onPaper: marks.map((mark) => scaled(mark, mmPerPx, page.top)),
  };
}

function scaled(mark: ShapeMark, by: number, top: number): PaperMark {
  if (mark.mark === 'text') {
    return {
      ...mark,
      x: mark.x * by,
      y: (mark.y - top) * by,
      style: { ...mark.style, sizeMm: mark.style.sizeMm * by },
    };
  }
  const style =
    mark.style.stroke === undefined
      ? mark.style
      : { ...mark.style, stroke: { ...mark.style.stroke, widthMm: mark.style.stroke.widthMm * by } };
  if (mark.mark === 'disc')
    return { ...mark, x: mark.x * by, y: (mark.y - top) * by, radiusMm: mark.radiusMm * by, style };
  if (mark.mark === 'box') {
    const { leftMm, topMm, widthMm, heightMm } = mark.box;
    const box = { leftMm: leftMm * by, topMm: (topMm - top) * by, widthMm: widthMm * by, heightMm: heightMm * by };
    return { ...mark, box, style };
  }
  return { ...mark, points: mark.points.map(([x, y]) => [x * by, (y - top) * by] as const), style };
}

function wordsText({ x, y, text, style }: Extract<ChartMark, { mark: 'text' }>): string {
  const anchor = style.anchor === undefined || style.anchor === 'start' ? '' : ` text-anchor="${style.anchor}"`;
  const turn = style.turnDeg === undefined ? '' : ` transform="rotate(${px(-style.turnDeg)} ${px(x)} ${px(y)})"`;
  return `<text x="${px(x)}" y="${px(y)}" fill="${style.colour}"${anchor}${turn}>${escaped(text)}</text>`;
}

function paint({ fill, stroke }: Extract<ChartMark, { mark: 'disc' }>['style']): string {
  const line = stroke === undefined ? '' : ` stroke="${stroke.colour}" stroke-width="${stroke.widthMm}"`;
  return `fill="${fill ?? 'none'}"${line}`;
}
