/** A report as pages: boxes flow down the paper, each page with its running line and number. */
import type { PageItem, PageList, PaperName } from '../../pdf/page-list.ts';
import { PAPER, type Page } from '../../pdf/page-list.ts';
import type { SheetFonts } from '../../pdf/sheet-fonts.ts';
import type { Part, ReportContent } from '../content.ts';
import { HAIRLINE, LOOKS } from '../flow/looks.ts';
import { type PlacedBox, paginate } from '../flow/paginate.ts';
import { keyFigureBoxes, noticeBoxes, pictureBoxes } from '../flow/panel-boxes.ts';
import { type Measure, ornament, type ReportBox, ruled } from '../flow/report-box.ts';
import { blockMarks, linesHeight, runLines } from '../flow/run-lines.ts';
import { tableBoxes } from '../flow/table-boxes.ts';
import { headingBoxes, listBoxes, paragraphBoxes, textBoxes } from '../flow/text-boxes.ts';
import { REPORT_WORDS } from '../reading.ts';

/** White about the text, mm; the running line stands in the foot. */
const MARGIN_MM = { left: 18, right: 18, top: 15, bottom: 17 };
const FOOT_MM = 10;

export interface PagesOptions {
  readonly paper: PaperName;
  readonly fonts: SheetFonts;
  /** ISO 8601 instant. */
  readonly createdAt: string;
}

/** The width of the text on a paper, and the height its lines may fill. */
export function textRoom(paper: PaperName): { readonly widthMm: number; readonly heightMm: number } {
  const { widthMm, heightMm } = PAPER[paper];
  return {
    widthMm: widthMm - MARGIN_MM.left - MARGIN_MM.right,
    heightMm: heightMm - MARGIN_MM.top - MARGIN_MM.bottom,
  };
}

/** The pages of a report in reading order. No row, picture or panel is cut; no heading ends a page. */
export function reportPages(content: ReportContent, { paper, fonts, createdAt }: PagesOptions): PageList {
  const room = textRoom(paper);
  const measure: Measure = { leftMm: MARGIN_MM.left, widthMm: room.widthMm, fonts };
  const boxes = contentBoxes(content, measure);
  const placed = paginate(boxes, room.heightMm);
  return {
    title: content.title,
    language: content.language,
    subject: content.about,
    createdAt,
    pages: placed.map((page, i) =>
      pageOf({ boxes, page, number: i + 1, count: placed.length }, { content, paper, measure }),
    ),
  };
}

/** The height of all that stands before the first section that starts a page, mm. */
export function firstPageHeight(content: ReportContent, paper: PaperName, fonts: SheetFonts): number {
  const measure: Measure = { leftMm: MARGIN_MM.left, widthMm: textRoom(paper).widthMm, fonts };
  const boxes = contentBoxes(content, measure);
  const end = boxes.findIndex(({ newPage }) => newPage === true);
  const first = end < 0 ? boxes : boxes.slice(0, end);
  return first.reduce((sum, { heightMm, gapMm }, i) => sum + heightMm + (i === 0 ? 0 : gapMm), 0);
}

function contentBoxes({ title, about, parts }: ReportContent, measure: Measure): readonly ReportBox[] {
  return [
    ...headingBoxes({ part: 'heading', level: 1, text: title }, -2, measure),
    ...textBoxes([about], { owner: -1, look: LOOKS.about, tag: 'P', gapMm: 0.6 }, measure),
    ...parts.flatMap((part, owner) => {
      const boxes = partBoxes(part, owner, measure);
      return leadsOn(parts, owner) ? boxes.map((box): ReportBox => ({ ...box, withNext: true })) : boxes;
    }),
  ];
}

/** A paragraph between a heading and a table or picture: all three stay together. */
function leadsOn(parts: readonly Part[], at: number): boolean {
  const [before, after] = [parts[at - 1], parts[at + 1]];
  return (
    parts[at].part === 'paragraph' &&
    before?.part === 'heading' &&
    (after?.part === 'table' || after?.part === 'picture' || after?.part === 'notice')
  );
}

function partBoxes(part: Part, owner: number, measure: Measure): readonly ReportBox[] {
  switch (part.part) {
    case 'heading':
      return headingBoxes(part, owner, measure);
    case 'paragraph':
      return paragraphBoxes(part, owner, measure);
    case 'list':
      return listBoxes(part, owner, measure);
    case 'key-figures':
      return keyFigureBoxes(part, owner, measure);
    case 'table':
      return tableBoxes(part, owner, measure);
    case 'picture':
      return pictureBoxes(part, owner, measure);
    case 'notice':
      return noticeBoxes(part, owner, measure);
  }
}

interface Placed {
  readonly boxes: readonly ReportBox[];
  readonly page: readonly PlacedBox[];
  readonly number: number;
  readonly count: number;
}

function pageOf(
  { boxes, page, number, count }: Placed,
  on: { readonly content: ReportContent; readonly paper: PaperName; readonly measure: Measure },
): Page {
  const ornaments: PageItem[] = [];
  const content: PageItem[] = [];
  let owner: number | null = null;
  for (const { index, topMm, headAgain } of page) {
    const box = boxes[index];
    let same = owner === box.owner;
    for (const item of box.items(MARGIN_MM.top + topMm, headAgain)) {
      if (item.item === 'ornament') ornaments.push(item);
      else if (!joined(content, item, { same, continues: box.continues === true })) content.push(item);
      // Within one box only rows belong together: panels side by side are texts of their own.
      same = item.item === 'table' || (same && item.item === 'ornament');
    }
    owner = box.owner;
  }
  const heading = page.map(({ index }) => boxes[index].heading).find((text) => text !== undefined);
  return {
    paper: PAPER[on.paper],
    ...(heading === undefined ? {} : { bookmark: heading }),
    content: [...ornaments, ...content, ...runningFoot(number, count, on)],
  };
}

/** Lines of one paragraph, entries of one list, rows of one table become one item; true when they did. */
function joined(
  content: PageItem[],
  item: PageItem,
  { same, continues }: { readonly same: boolean; readonly continues: boolean },
): boolean {
  const last = content.at(-1);
  if (!same || last === undefined) return false;
  if (last.item === 'text' && item.item === 'text' && last.tag === item.tag) {
    content[content.length - 1] = { ...last, marks: [...last.marks, ...item.marks] };
    return true;
  }
  if (last.item === 'list' && item.item === 'list') {
    const entries = continues
      ? [...last.entries.slice(0, -1), [...last.entries[last.entries.length - 1], ...item.entries[0]]]
      : [...last.entries, ...item.entries];
    content[content.length - 1] = { item: 'list', entries };
    return true;
  }
  if (last.item === 'table' && item.item === 'table') {
    content[content.length - 1] = { ...last, rows: [...last.rows, ...item.rows] };
    return true;
  }
  return false;
}

function runningFoot(
  number: number,
  count: number,
  {
    content,
    paper,
    measure,
  }: { readonly content: ReportContent; readonly paper: PaperName; readonly measure: Measure },
): readonly PageItem[] {
  const look = LOOKS.foot;
  const top = PAPER[paper].heightMm - FOOT_MM - linesHeight(1, look);
  const right = measure.leftMm + measure.widthMm;
  const page = runLines([REPORT_WORDS[content.language].page(number, count)], look, measure.widthMm, measure.fonts);
  const running = runLines([content.running], look, measure.widthMm * 0.8, measure.fonts).slice(0, 1);
  return [
    ruled([measure.leftMm, top - 1.2], [right, top - 1.2], HAIRLINE),
    ornament([
      ...blockMarks(running, { x: measure.leftMm, top }, look),
      ...blockMarks(page, { x: right, top, align: 'right' }, look),
    ]),
  ];
}
