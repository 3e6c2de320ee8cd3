/** The pages of one block: heading, cautions, map with its panels, table; further pages only for trees that find no room. */
import type { BlockResult } from '@crownfall/assessment';
import type { LocalPlane } from '@crownfall/geometry';
import { treatmentCautions } from '@crownfall/survey';
import type { Drawing, Frame, PaperMark } from '../drawing.ts';
import { scaleBar } from '../furniture.ts';
import { boundsOf } from '../map-frame.ts';
import { regionOf } from '../map-marks.ts';
import type { Page, PageItem, PaperName } from '../pdf/page-list.ts';
import { PAPER } from '../pdf/page-list.ts';
import { dayText, grouped } from '../quantities.ts';
import { legendItems } from './map-legend.ts';
import { qrMarks } from './qr-code.ts';
import { MARGIN_MM, paragraph, RULE, STYLE } from './sheet-style.ts';
import { type LaidTable, rowsThatFit, tableItems, treeTable } from './tree-table.ts';
import type { VisitFacts } from './visit-facts.ts';
import { type Size, visitMap } from './visit-map.ts';
import {
  bloomPanel,
  figuresPanel,
  findingsPanel,
  notesItems,
  type Panel,
  type PanelRoom,
  reasonsPanel,
  writingPanel,
} from './visit-panels.ts';

/** Where a page's own words stand: numbers are known only when the whole book is laid out. */
export interface UnnumberedPage {
  readonly paper: Page['paper'];
  readonly bookmark?: string;
  readonly content: readonly PageItem[];
}

const FOOT_MM = 6;
const QR_MM = 23;
/** Room below the map for scale bar and legend, mm. */
const MAP_FOOT_MM = 21;
const COLUMN_MM = 60;
const GUTTER_MM = 4;
/** A block wider than this for its height gets a map over the whole width. */
const WIDE_ASPECT = 1.7;
const MAP_HEIGHTS_MM = [112, 106, 100, 94, 88];
const WIDE_MAP_HEIGHTS_MM = [96, 88, 80];

/** The pages of a block's sheet without foot and page numbers; the first one is its map. */
export function visitPages(facts: VisitFacts, paperName: PaperName): readonly UnnumberedPage[] {
  const paper = PAPER[paperName];
  const area: Frame = {
    leftMm: MARGIN_MM,
    topMm: MARGIN_MM - 1,
    widthMm: paper.widthMm - 2 * MARGIN_MM,
    heightMm: paper.heightMm - 2 * MARGIN_MM - FOOT_MM + 1,
  };
  const head = headItems(facts, area);
  const cautions = cautionItems(facts, { ...area, topMm: head.bottomMm + 2 });
  const table = treeTable(facts, area.widthMm);
  const body = fittingBody(facts, { ...area, topMm: cautions.bottomMm + 3 }, table, bottomOf(area));
  const bottomMm = bottomOf(area);
  let first = rowsThatFit(table, 0, bottomMm - body.bottomMm);
  const start = tableItems(table, { first: 0, count: first }, { x: area.leftMm, topMm: body.bottomMm });
  const pages: UnnumberedPage[] = [
    {
      paper,
      bookmark: titleOf(facts),
      content: [...head.items, ...cautions.items, ...body.items, ...(first > 0 ? start.items : [])],
    },
  ];
  while (first < table.heightsMm.length) {
    const top = continuedHead(facts, area);
    const count = Math.max(1, rowsThatFit(table, first, bottomMm - top.bottomMm));
    const more = tableItems(table, { first, count }, { x: area.leftMm, topMm: top.bottomMm });
    first += count;
    const isLast = first === table.heightsMm.length;
    const room = { x: area.leftMm, topMm: more.bottomMm + 4, widthMm: area.widthMm };
    const notes = isLast ? notesItems(facts, room, bottomMm - 1) : [];
    pages.push({ paper, content: [...top.items, ...more.items, ...notes] });
  }
  return pages;
}

function bottomOf({ topMm, heightMm }: Frame): number {
  return topMm + heightMm;
}

function titleOf({ block, words }: VisitFacts): string {
  return `${words.block} ${block.blockId}${block.name === null ? '' : ` · ${block.name}`}`;
}

function headItems(facts: VisitFacts, { leftMm: x, topMm: y, widthMm }: Frame): Panel {
  const { assessment, block, words, fonts, language, link } = facts;
  const room = widthMm - (link === undefined ? 0 : QR_MM + 3);
  const title = paragraph(titleOf(facts), { x, y, widthMm: room }, STYLE.title, fonts);
  const asOf = assessment.run.asOf === null ? '–' : dayText(assessment.run.asOf, language);
  const about = `${assessment.title} · ${words.season(assessment.season, asOf)} · ${words.rank(block.rank, assessment.blocks.length)}`;
  const told = paragraph(about, { x, y: title.bottomMm + 1.6, widthMm: room }, STYLE.about, fonts);
  const items: PageItem[] = [
    { item: 'text', tag: 'H1', marks: title.marks },
    { item: 'text', tag: 'P', marks: told.marks },
  ];
  if (link === undefined) return { items, bottomMm: told.bottomMm };
  const box = { leftMm: x + widthMm - QR_MM, topMm: y - 1, widthMm: QR_MM, heightMm: QR_MM };
  items.push({ item: 'figure', alt: `${words.openOnPhone}: ${link}`, box, picture: qrMarks(link, box), link });
  const calledMm = Math.max(told.bottomMm + 3.6, box.topMm + QR_MM - 3.5);
  const called: PaperMark = {
    mark: 'text',
    x: box.leftMm - 1,
    y: calledMm,
    text: words.openOnPhone,
    style: { ...STYLE.small, anchor: 'end' },
  };
  items.push({ item: 'text', tag: 'P', marks: [called] });
  return { items, bottomMm: Math.max(calledMm + 1, box.topMm + QR_MM) };
}

function continuedHead(facts: VisitFacts, { leftMm: x, topMm: y, widthMm }: Frame): Panel {
  const words = facts.words.continued(titleOf(facts));
  const { marks, bottomMm } = paragraph(words, { x, y, widthMm }, STYLE.heading, facts.fonts);
  return { items: [{ item: 'text', tag: 'H2', marks }], bottomMm: bottomMm + 2 };
}

/** A framed box with a warning sign: traffic, overhead, then the cautions of treatment in the catalogue's own words. */
function cautionItems({ words, fonts, language }: VisitFacts, { leftMm, topMm, widthMm }: Frame): Panel {
  const cautions = [words.traffic, words.overhead, ...treatmentCautions(language)];
  const pad = 2;
  const columnMm = (widthMm - 3 * pad) / 2;
  const title = paragraph(
    words.before,
    { x: leftMm + pad + 6, y: topMm + pad, widthMm: widthMm - 12 },
    STYLE.heading,
    fonts,
  );
  const half = Math.ceil(cautions.length / 2);
  const bottoms: number[] = [];
  const entries = [0, 1].flatMap((column) => {
    const x = leftMm + pad + column * (columnMm + pad);
    let y = title.bottomMm + 1.6;
    return cautions.slice(column * half, (column + 1) * half).map((text) => {
      const { marks, bottomMm } = paragraph(text, { x: x + 3, y, widthMm: columnMm - 3 }, STYLE.text, fonts);
      const bullet: PaperMark = { mark: 'disc', x: x + 0.9, y: y + 1.3, radiusMm: 0.55, style: { fill: '#000000' } };
      y = bottomMm + 1.2;
      bottoms.push(bottomMm);
      return [bullet, ...marks];
    });
  });
  const bottomMm = Math.max(...bottoms) + pad;
  const frame: PaperMark = {
    mark: 'box',
    box: { leftMm, topMm, widthMm, heightMm: bottomMm - topMm },
    style: { stroke: { colour: '#000000', widthMm: 0.7 } },
  };
  return {
    items: [
      { item: 'ornament', marks: [frame, ...warningSign(leftMm + pad, topMm + pad - 0.4)] },
      { item: 'text', tag: 'H2', marks: title.marks },
      { item: 'list', entries },
    ],
    bottomMm,
  };
}

function warningSign(x: number, y: number): readonly PaperMark[] {
  const points = [
    [x + 2.3, y],
    [x + 4.6, y + 4],
    [x, y + 4],
  ] as const;
  return [
    { mark: 'polygon', points, style: { fill: '#000000', stroke: { colour: '#000000', widthMm: 0.4 } } },
    { mark: 'box', box: { leftMm: x + 2.05, topMm: y + 1.3, widthMm: 0.5, heightMm: 1.3 }, style: { fill: '#ffffff' } },
    { mark: 'box', box: { leftMm: x + 2.05, topMm: y + 2.9, widthMm: 0.5, heightMm: 0.5 }, style: { fill: '#ffffff' } },
  ];
}

/** What stands beside and below a map of some height. */
interface Body extends Panel {
  readonly map: Size;
}

/** The tallest map that still leaves room for all trees on the page; the tallest of all when none does. */
function fittingBody(facts: VisitFacts, area: Frame, table: LaidTable, bottomMm: number): Panel {
  const build = isWide(facts.block, facts.plane) ? wideBody : sideBody;
  const bodies = mapSizes(facts.block, facts.plane, { widthMm: area.widthMm + 2 * MARGIN_MM }).map((size) =>
    build(facts, area, size),
  );
  const fits = (body: Body) => rowsThatFit(table, 0, bottomMm - body.bottomMm) === table.heightsMm.length;
  const body = bodies.find(fits) ?? bodies[0];
  const map = mapItems(facts, { x: area.leftMm, topMm: area.topMm }, body.map);
  return { items: [...map, ...body.items], bottomMm: body.bottomMm };
}

function isWide(block: BlockResult, plane: LocalPlane): boolean {
  const box = boundsOf([regionOf(block.geometry, plane)]);
  return (box.maxX - box.minX) / (box.maxY - box.minY) > WIDE_ASPECT;
}

/** The sizes that the map of a block may take on a paper, the largest first. */
export function mapSizes(block: BlockResult, plane: LocalPlane, paper: Pick<Size, 'widthMm'>): readonly Size[] {
  const whole = paper.widthMm - 2 * MARGIN_MM;
  if (isWide(block, plane)) return WIDE_MAP_HEIGHTS_MM.map((heightMm) => ({ widthMm: whole, heightMm }));
  return MAP_HEIGHTS_MM.map((heightMm) => ({ widthMm: whole - COLUMN_MM - GUTTER_MM, heightMm }));
}

function sideBody(facts: VisitFacts, { leftMm, topMm }: Frame, map: Size): Body {
  const bottomMm = topMm + map.heightMm + MAP_FOOT_MM;
  const column = { x: leftMm + map.widthMm + GUTTER_MM, topMm, widthMm: COLUMN_MM };
  const panels = stacked(facts, column, bottomMm);
  return { map, items: panels.items, bottomMm: Math.max(bottomMm, panels.bottomMm) + 2 };
}

/** Least height of the panel to write in, mm. */
const WRITING_MM = 37;

function stacked(facts: VisitFacts, room: PanelRoom, bottomMm: number): Panel {
  const figures = figuresPanel(facts, room);
  const bloom = bloomPanel(facts, { ...room, topMm: figures.bottomMm + 2 });
  const reasons = reasonsPanel(facts, { ...room, topMm: bloom.bottomMm + 2 });
  const after = { ...room, topMm: reasons.bottomMm + 2 };
  const whole = findingsPanel(facts, after, 2);
  const told = whole.bottomMm + WRITING_MM > bottomMm ? findingsPanel(facts, after, 0) : whole;
  const end = Math.max(bottomMm, told.bottomMm + WRITING_MM);
  const writing = writingPanel(facts, { ...room, topMm: told.bottomMm + 2 }, end - 1);
  return {
    items: [...figures.items, ...bloom.items, ...reasons.items, ...told.items, ...writing.items],
    bottomMm: end,
  };
}

function wideBody(facts: VisitFacts, { leftMm, topMm, widthMm }: Frame, map: Size): Body {
  const third = (widthMm - 2 * GUTTER_MM) / 3;
  const below = topMm + map.heightMm + MAP_FOOT_MM + 1;
  const column = (i: number) => ({ x: leftMm + i * (third + GUTTER_MM), topMm: below, widthMm: third });
  const figures = figuresPanel(facts, column(0));
  const bloom = bloomPanel(facts, column(1));
  const reasons = reasonsPanel(facts, { ...column(1), topMm: bloom.bottomMm + 2 });
  const least = Math.max(figures.bottomMm, reasons.bottomMm, below + WRITING_MM);
  const told = findingsPanel(
    facts,
    { ...column(1), topMm: reasons.bottomMm + 2 },
    least - reasons.bottomMm > 20 ? 1 : 0,
  );
  const bottomMm = Math.max(least, told.bottomMm);
  const writing = writingPanel(facts, column(2), bottomMm - 1);
  return {
    map,
    items: [...figures.items, ...bloom.items, ...reasons.items, ...told.items, ...writing.items],
    bottomMm: bottomMm + 2,
  };
}

function mapItems(facts: VisitFacts, { x, topMm }: { x: number; topMm: number }, size: Size): readonly PageItem[] {
  const drawing: Drawing = visitMap(facts, size);
  const { words, units } = facts;
  const below = topMm + size.heightMm;
  const bar = scaleBar({ x: x + 0.5, y: below + 4.8, roomMm: 70, scale: drawing.scale, units });
  return [
    {
      item: 'figure',
      alt: `${drawing.title}. ${drawing.description}`,
      box: { leftMm: x, topMm, ...size },
      picture: drawing,
    },
    {
      item: 'figure',
      alt: `1 : ${grouped(drawing.scale)}`,
      box: { leftMm: x, topMm: below, widthMm: size.widthMm, heightMm: 9 },
      picture: bar,
    },
    ...legendItems(words, { x, topMm: below + 11.5, widthMm: size.widthMm }, facts.fonts),
  ];
}

/** The line at the foot: where the figures come from, and the page's number. */
export function withFoot(
  page: UnnumberedPage,
  facts: Omit<VisitFacts, 'block' | 'stops'>,
  number: { page: number; of: number },
): Page {
  const { assessment, words, fonts, version } = facts;
  const { run } = assessment;
  const k = run.settings.dose_coefficient.toFixed(2);
  const parts = [
    words.madeBy(version),
    assessment.title,
    run.calibrated ? words.calibrated(k) : words.uncalibrated(k),
    ...(run.draws > 0 ? [words.draws(run.draws, run.seed)] : []),
  ];
  const { widthMm, heightMm } = page.paper;
  const y = heightMm - MARGIN_MM;
  const own = words.page(number.page, number.of);
  const room = widthMm - 2 * MARGIN_MM - fonts.widthMm(own, STYLE.foot) - 4;
  const lines = paragraph(parts.join(' · '), { x: MARGIN_MM, y: y - 2.4, widthMm: room }, STYLE.foot, fonts);
  return {
    ...page,
    content: [
      ...page.content,
      {
        item: 'ornament',
        marks: [
          {
            mark: 'line',
            points: [
              [MARGIN_MM, y - 3.6],
              [widthMm - MARGIN_MM, y - 3.6],
            ],
            style: { stroke: RULE },
          },
          { mark: 'text', x: widthMm - MARGIN_MM, y: y - 0.5, text: own, style: { ...STYLE.foot, anchor: 'end' } },
        ],
      },
      { item: 'text', tag: 'P', marks: lines.marks },
    ],
  };
}
