/** What is never cut: key figures, notices, pictures with their captions. */
import type { Frame } from '../../drawing.ts';
import type { PageItem } from '../../pdf/page-list.ts';
import type { KeyFigure, KeyFigures, Notice, Picture, Run } from '../content.ts';
import { ACCENT, LOOKS, RULE, TINT } from './looks.ts';
import { type Measure, ornament, type ReportBox } from './report-box.ts';
import { blockMarks, type Look, linesHeight, type RunLine, runLines } from './run-lines.ts';
import { textBoxes } from './text-boxes.ts';

const BETWEEN_MM = 4;
const PAD_MM = 2.4;
const EDGE_MM = 1.1;

interface Line {
  readonly lines: readonly RunLine[];
  readonly look: Look;
}

/** Panels side by side, of one height, or below each other beside a picture; label above, figure, range below. */
export function keyFigureBoxes({ figures, beside }: KeyFigures, owner: number, measure: Measure): readonly ReportBox[] {
  if (beside !== undefined) return besideBoxes(figures, beside, owner, measure);
  const width = (measure.widthMm - BETWEEN_MM * (figures.length - 1)) / figures.length;
  const panels = figures.map((figure) => panelOf(figure, width, measure));
  const labelMm = Math.max(...panels.map(({ label }) => heightOf([label])));
  const heightMm = 2 * PAD_MM + labelMm + Math.max(...panels.map(({ rest }) => heightOf(rest)));
  const items = (topMm: number): readonly PageItem[] =>
    panels.flatMap((panel, i) =>
      panelItems(
        panel,
        { leftMm: measure.leftMm + i * (width + BETWEEN_MM), topMm, widthMm: width, heightMm },
        labelMm,
      ),
    );
  return [{ owner, heightMm, gapMm: 4, items }];
}

interface Panel {
  readonly label: Line;
  readonly rest: readonly Line[];
}

function panelOf({ label, figure, range, rangeLabel, note }: KeyFigure, widthMm: number, { fonts }: Measure): Panel {
  const inner = widthMm - EDGE_MM - 2 * PAD_MM;
  const laid = (run: Run, look: Look): Line => ({ lines: runLines(run, look, inner, fonts), look });
  const ranged: Run = range === null ? [rangeLabel] : [`${rangeLabel}: `, range];
  const below = note === undefined ? [] : [laid([note], LOOKS.keyRange)];
  return {
    label: laid([label], LOOKS.keyLabel),
    rest: [laid([figure], LOOKS.keyValue), laid(ranged, LOOKS.keyRange), ...below],
  };
}

/** The picture to the left at its own size; the panels share its height. */
function besideBoxes(
  figures: readonly KeyFigure[],
  picture: Picture,
  owner: number,
  measure: Measure,
): readonly ReportBox[] {
  const [image, ...below] = pictureBoxes(picture, owner, measure);
  const taken = picture.drawing.paper.widthMm + BETWEEN_MM;
  const widthMm = measure.widthMm - taken;
  const panels = figures.map((figure) => panelOf(figure, widthMm, measure));
  const least = panels.map(({ label, rest }) => 2 * PAD_MM + heightOf([label, ...rest]));
  const gaps = BETWEEN_MM * (figures.length - 1);
  const heightMm = Math.max(
    image.heightMm,
    least.reduce((sum, each) => sum + each, gaps),
  );
  const eachMm = Math.max(...least, (heightMm - gaps) / figures.length);
  const items = (topMm: number): readonly PageItem[] => [
    ...panels.flatMap((panel, i) => {
      const top = topMm + i * (eachMm + BETWEEN_MM);
      const place = { leftMm: measure.leftMm + taken, topMm: top, widthMm, heightMm: eachMm };
      return panelItems(panel, place, heightOf([panel.label]));
    }),
    ...image.items(topMm, false),
  ];
  return [{ ...image, heightMm: Math.max(heightMm, figures.length * eachMm + gaps), items }, ...below];
}

function panelItems({ label, rest }: Panel, place: Frame, labelMm: number): readonly PageItem[] {
  const x = place.leftMm + EDGE_MM + PAD_MM;
  const slack = place.heightMm - 2 * PAD_MM - labelMm - heightOf(rest);
  const top = place.topMm + PAD_MM + slack / 2;
  const marks = [...stackedMarks([label], x, top), ...stackedMarks(rest, x, top + labelMm)];
  return [panelAt(place), { item: 'text', tag: 'P', marks }];
}

function panelAt(box: Frame): PageItem {
  return ornament([
    { mark: 'box', box, style: { fill: TINT } },
    { mark: 'box', box: { ...box, widthMm: EDGE_MM }, style: { fill: ACCENT } },
  ]);
}

const heightOf = (stack: readonly Line[]): number =>
  stack.reduce((sum, { lines, look }) => sum + linesHeight(lines.length, look), 0);

function stackedMarks(stack: readonly Line[], x: number, topMm: number) {
  let top = topMm;
  return stack.flatMap(({ lines, look }) => {
    const marks = blockMarks(lines, { x, top }, look);
    top += linesHeight(lines.length, look);
    return marks;
  });
}

const INDENT_MM = 4;

/** A framed box; one line follows its title, several stand below it with bullets. */
export function noticeBoxes({ title, lines }: Notice, owner: number, measure: Measure): readonly ReportBox[] {
  const inner = measure.widthMm - 2 * PAD_MM;
  const look = LOOKS.quietInk;
  const single = lines.length === 1;
  const head: Run = single ? [{ strong: `${title}. ` }, ...lines[0]] : [{ strong: title }];
  const headLines = runLines(head, look, inner, measure.fonts);
  const entries = single ? [] : lines.map((line) => runLines(line, look, inner - INDENT_MM, measure.fonts));
  const bullet = runLines(['•'], look, INDENT_MM, measure.fonts);
  const textMm = [headLines, ...entries].reduce((sum, each) => sum + linesHeight(each.length, look), 0);
  const heightMm = 2 * PAD_MM * 0.8 + textMm;
  const items = (topMm: number): readonly PageItem[] => {
    const x = measure.leftMm + PAD_MM;
    let top = topMm + PAD_MM * 0.8 + linesHeight(headLines.length, look);
    const listed = entries.map((entry) => {
      const marks = [
        ...blockMarks(bullet, { x: x + 0.4, top }, look),
        ...blockMarks(entry, { x: x + INDENT_MM, top }, look),
      ];
      top += linesHeight(entry.length, look);
      return marks;
    });
    const box = { leftMm: measure.leftMm, topMm, widthMm: measure.widthMm, heightMm };
    return [
      ornament([{ mark: 'box', box, style: { stroke: RULE } }]),
      { item: 'text', tag: 'P', marks: blockMarks(headLines, { x, top: topMm + PAD_MM * 0.8 }, look) },
      ...(listed.length === 0 ? [] : [{ item: 'list', entries: listed } as const]),
    ];
  };
  return [{ owner, heightMm, gapMm: 4, items }];
}

/** A picture at its own size, its caption below. */
export function pictureBoxes({ drawing, caption }: Picture, owner: number, measure: Measure): readonly ReportBox[] {
  const { widthMm, heightMm } = drawing.paper;
  const below = textBoxes([caption], { owner, look: LOOKS.below, tag: 'Caption', gapMm: 1.4 }, measure);
  return [
    {
      owner,
      heightMm,
      gapMm: 4.5,
      withNext: true,
      items: (topMm) => [
        {
          item: 'figure',
          alt: `${drawing.title}. ${drawing.description}`,
          box: { leftMm: measure.leftMm, topMm, widthMm, heightMm },
          picture: drawing,
        },
      ],
    },
    ...below.map((box, i) => (i < below.length - 1 ? { ...box, withNext: true } : box)),
  ];
}
