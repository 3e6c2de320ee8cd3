/** Headings, paragraphs and lists as boxes, one line each, so that they break between lines. */
import type { TextTag } from '../../pdf/page-list.ts';
import type { Heading, List, Paragraph, Run } from '../content.ts';
import { ACCENT, LOOKS } from './looks.ts';
import { type Measure, ornament, type ReportBox } from './report-box.ts';
import { type Look, lineMarks, linesHeight, type RunLine, runLines } from './run-lines.ts';

interface Manner {
  readonly owner: number;
  readonly look: Look;
  readonly tag: TextTag;
  readonly gapMm: number;
}

/** The lines of a text; no first or last line is left alone on a page. */
export function textBoxes(run: Run, { owner, look, tag, gapMm }: Manner, measure: Measure): readonly ReportBox[] {
  const lines = runLines(run, look, measure.widthMm, measure.fonts);
  return lines.map((line, i) => ({
    owner,
    heightMm: linesHeight(1, look),
    gapMm: i === 0 ? gapMm : 0,
    ...(keptLine(i, lines.length) ? { withNext: true } : {}),
    items: (topMm) => [{ item: 'text', tag, marks: lineMarks(line, { x: measure.leftMm, top: topMm }, look) }],
  }));
}

const keptLine = (i: number, count: number): boolean => i < count - 1 && (i === 0 || i === count - 2);

const HEADINGS = {
  1: { look: LOOKS.title, tag: 'H1', gapMm: 0 },
  2: { look: LOOKS.section, tag: 'H2', gapMm: 10 },
  3: { look: LOOKS.subsection, tag: 'H3', gapMm: 6 },
} as const;

/** Above a section stands a bar, so that it is found by leafing. */
const BAR_MM = { width: 14, height: 0.9, above: 2.6 };

export function headingBoxes(
  { level, text, small, newPage }: Heading,
  owner: number,
  measure: Measure,
): readonly ReportBox[] {
  const { tag } = HEADINGS[level];
  const { look, gapMm } = HEADINGS[small ? 3 : level];
  const barred = level === 2 && !small;
  const lines = runLines([text], look, measure.widthMm, measure.fonts);
  const bar = barred ? BAR_MM.above : 0;
  const height = bar + linesHeight(lines.length, look);
  return [
    {
      owner,
      heading: text,
      heightMm: height,
      gapMm,
      withNext: true,
      ...(newPage === undefined ? {} : { newPage }),
      items: (topMm) => [
        ...(barred ? [barAt(measure.leftMm, topMm)] : []),
        {
          item: 'text',
          tag,
          marks: lines.flatMap((line, i) =>
            lineMarks(line, { x: measure.leftMm, top: topMm + bar + linesHeight(i, look) }, look),
          ),
        },
      ],
    },
  ];
}

function barAt(leftMm: number, topMm: number) {
  const box = { leftMm, topMm, widthMm: BAR_MM.width, heightMm: BAR_MM.height };
  return ornament([{ mark: 'box', box, style: { fill: ACCENT } }]);
}

export function paragraphBoxes({ text, tone }: Paragraph, owner: number, measure: Measure): readonly ReportBox[] {
  const look = tone === undefined ? LOOKS.body : LOOKS[tone];
  return textBoxes(text, { owner, look, tag: 'P', gapMm: 2.2 }, measure);
}

const INDENT_MM = 4.2;

export function listBoxes({ items, tone }: List, owner: number, measure: Measure): readonly ReportBox[] {
  const look = tone === undefined ? LOOKS.body : LOOKS.quietInk;
  return items.flatMap((item, entry) => {
    const lines = runLines(item, look, measure.widthMm - INDENT_MM, measure.fonts);
    return lines.map(
      (line, i): ReportBox => ({
        owner,
        heightMm: linesHeight(1, look),
        gapMm: i > 0 ? 0 : entry === 0 ? 2.2 : 1.1,
        ...(keptLine(i, lines.length) ? { withNext: true } : {}),
        ...(i > 0 ? { continues: true } : {}),
        items: (topMm) => [
          { item: 'list', entries: [entryMarks(line, { first: i === 0, top: topMm, look }, measure)] },
        ],
      }),
    );
  });
}

function entryMarks(
  line: RunLine,
  { first, top, look }: { readonly first: boolean; readonly top: number; readonly look: Look },
  { leftMm, fonts }: Measure,
) {
  const bullet = runLines(['•'], look, INDENT_MM, fonts)[0];
  return [
    ...(first ? lineMarks(bullet, { x: leftMm + 0.6, top }, look) : []),
    ...lineMarks(line, { x: leftMm + INDENT_MM, top }, look),
  ];
}
