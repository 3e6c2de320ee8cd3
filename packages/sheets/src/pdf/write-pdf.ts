/** A page list as a tagged PDF (ISO 32000-1, 14.8): vector paths, embedded subsets of the fonts, one bookmark per page. */
import { PDFDocument, type StructureElement } from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import type { PaperMark } from '../drawing.ts';
import type { Page, PageItem, PageList } from './page-list.ts';
import { drawDrawing, drawPaperMarks, type Pen } from './pdf-marks.ts';
import type { SheetFonts } from './sheet-fonts.ts';

/** PDF's unit is 1/72 inch. */
const POINTS_PER_MM = 72 / 25.4;

/**
 * The bytes of the PDF. Lengths on paper are true when it is printed at 100 %: a ground length L at the scale 1 : n is
 * L / n to 0.03 mm (vertices nearer than that to a straight line are left out). The same pages, fonts and instant give the
 * same bytes on the same platform; the browser packs them by another program, so its bytes differ and its pages do not.
 * @throws RangeError when there is no page or `createdAt` is no instant.
 */
export async function writePdf(list: PageList, fonts: SheetFonts): Promise<Uint8Array> {
  const created = new Date(list.createdAt);
  if (Number.isNaN(created.getTime()))
    throw new RangeError(`writePdf: expected an ISO 8601 instant, got ${list.createdAt}`);
  if (list.pages.length === 0) throw new RangeError('writePdf: expected at least one page, got none');
  const doc = new PDFDocument({
    autoFirstPage: false,
    tagged: true,
    displayTitle: true,
    lang: list.language,
    pdfVersion: '1.7',
    compress: true,
    font: null,
    info: {
      Title: list.title,
      ...(list.subject === undefined ? {} : { Subject: list.subject }),
      Creator: 'Crownfall',
      CreationDate: created,
    },
  });
  const bytes = toBytes(doc);
  const root = doc.struct('Document', { lang: list.language, title: list.title });
  doc.addStructure(root);
  for (const page of list.pages) writePage({ doc, fonts }, root, page);
  root.end();
  doc.end();
  return bytes;
}

function writePage(pen: Pen, root: StructureElement, page: Page): void {
  const { doc } = pen;
  doc.addPage({ size: [page.paper.widthMm * POINTS_PER_MM, page.paper.heightMm * POINTS_PER_MM], margin: 0 });
  doc.scale(POINTS_PER_MM);
  if (page.bookmark !== undefined) doc.outline.addItem(page.bookmark);
  const section = doc.struct('Sect', page.bookmark === undefined ? {} : { title: page.bookmark });
  root.add(section);
  for (const item of page.content) writeItem(pen, section, item);
  section.end();
}

function writeItem(pen: Pen, section: StructureElement, item: PageItem): void {
  const { doc } = pen;
  switch (item.item) {
    case 'ornament':
      doc.markContent('Artifact', { type: 'Layout' });
      drawPaperMarks(pen, item.marks);
      doc.endMarkedContent();
      return;
    case 'text':
      element(pen, section, item.tag, (own) => writeContent(pen, own, item.tag, item.marks));
      return;
    case 'list':
      element(pen, section, 'L', (own) => {
        for (const entry of item.entries) {
          element(pen, own, 'LI', (line) =>
            element(pen, line, 'LBody', (body) => writeContent(pen, body, 'LBody', entry)),
          );
        }
      });
      return;
    case 'table':
      writeTable(pen, section, item);
      return;
    case 'figure':
      writeFigure(pen, section, item);
  }
}

function writeTable(pen: Pen, section: StructureElement, table: Extract<PageItem, { item: 'table' }>): void {
  element(
    pen,
    section,
    'Table',
    (own) => {
      for (const row of table.rows) {
        element(pen, own, 'TR', (line) => {
          for (const cell of row) {
            const tag = cell.heads === undefined ? 'TD' : 'TH';
            const scope = cell.heads === undefined ? {} : { scope: cell.heads };
            element(pen, line, tag, (box) => writeContent(pen, box, tag, cell.marks), scope);
          }
        });
      }
    },
    { title: table.about },
  );
}

function writeFigure(pen: Pen, section: StructureElement, figure: Extract<PageItem, { item: 'figure' }>): void {
  const { leftMm, topMm, widthMm, heightMm } = figure.box;
  const points = (mm: number) => mm * POINTS_PER_MM;
  const bbox = [points(leftMm), points(topMm), points(leftMm + widthMm), points(topMm + heightMm)] as const;
  const options = { alt: figure.alt, bbox };
  const drawn = (own: StructureElement) => {
    const content = pen.doc.markStructureContent('Figure');
    if ('ground' in figure.picture) drawDrawing(pen, figure.picture, figure.box);
    else drawPaperMarks(pen, figure.picture);
    pen.doc.endMarkedContent();
    own.add(content);
  };
  const { link } = figure;
  if (link === undefined) {
    element(pen, section, 'Figure', drawn, options);
    return;
  }
  element(pen, section, 'Link', (own) => {
    element(pen, own, 'Figure', drawn, options);
    pen.doc.link(leftMm, topMm, widthMm, heightMm, link, { structParent: own, Contents: text(figure.alt) });
  });
}

function writeContent(pen: Pen, own: StructureElement, tag: string, marks: readonly PaperMark[]): void {
  const content = pen.doc.markStructureContent(tag);
  drawPaperMarks(pen, spaced(marks));
  pen.doc.endMarkedContent();
  own.add(content);
}

/** A reader joins the lines of a paragraph as they stand in the file: each but the last ends with a space. */
function spaced(marks: readonly PaperMark[]): readonly PaperMark[] {
  const last = marks.findLastIndex((mark) => mark.mark === 'text');
  return marks.map((mark, i) => {
    const joins = mark.mark === 'text' && i < last && (mark.style.anchor ?? 'start') === 'start';
    return joins ? { ...mark, text: `${mark.text} ` } : mark;
  });
}

function element(
  pen: Pen,
  parent: StructureElement,
  tag: string,
  fill: (own: StructureElement) => void,
  options: Parameters<PDFDocument['struct']>[1] = {},
): void {
  const own = pen.doc.struct(tag, options);
  parent.add(own);
  fill(own);
  own.end();
}

/** The library takes a plain string for a PDF name, and a String object for a text. */
function text(words: string): object {
  return Object(words);
}
