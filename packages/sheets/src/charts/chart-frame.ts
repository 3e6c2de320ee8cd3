/** What all charts share: the page and its words as SVG text. No scripts, no outside references. */

/** What a chart says of itself. */
export interface ChartWords {
  readonly title: string;
  /** Says what the picture shows, for those who cannot see it. */
  readonly description: string;
  /** A line below the chart: source, date, what was left out. */
  readonly note?: string;
}

/** Where the plot lies on the page, px. */
export interface Plot {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly plot: Plot;
}

/** Colours told apart in print, by the colour-blind, and at 3 : 1 and more on white. */
export const CHART = {
  ink: '#1d2b33',
  muted: '#5c6b73',
  grid: '#dfe5e8',
  first: '#1f5f8b',
  firstPale: '#a9c8de',
  second: '#b5541c',
  cold: '#1f5f8b',
  hot: '#b5281c',
  plain: '#9aa5ab',
} as const;

const FONT = "Inter,'Noto Sans','DejaVu Sans',Helvetica,Arial,sans-serif";
const TITLE_PX = 16;
export const TEXT_PX = 12;
const MARGIN = 16;

/** The whole chart: title, body, note. The same text for the same input. */
export function chartSvg(
  { title, description, note }: ChartWords,
  { width, height }: Page,
  body: readonly string[],
): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="${FONT}" font-size="${TEXT_PX}">`,
    `<title>${escaped(title)}</title><desc>${escaped(description)}</desc>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    text(MARGIN, 24, title, `font-size="${TITLE_PX}" font-weight="700"`),
    ...body,
    ...(note === undefined ? [] : [text(MARGIN, height - 10, note, `fill="${CHART.muted}"`)]),
    '</svg>\n',
  ].join('\n');
}

/** One line of text, its baseline at y. */
export function text(x: number, y: number, words: string, more = ''): string {
  const fill = more.includes('fill=') ? '' : ` fill="${CHART.ink}"`;
  return `<text x="${px(x)}" y="${px(y)}"${fill}${more === '' ? '' : ` ${more}`}>${escaped(words)}</text>`;
}

/** A coordinate with a hundredth of a pixel; RangeError when it is not finite. */
export function px(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`chart: expected a finite place, got ${value}`);
  return String(Math.round(value * 100) / 100);
}

/** Text that may stand in SVG and HTML. */
export function escaped(words: string): string {
  return words.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
