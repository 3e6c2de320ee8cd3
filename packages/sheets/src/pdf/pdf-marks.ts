/** Marks of a drawing list as vector operators of a PDF page that is measured in millimetres from its top left. */
import type { PDFDocument } from 'pdfkit';
import {
  type Drawing,
  type Frame,
  type GroundMark,
  type Hatch,
  imageBox,
  onPaper,
  type PaperMark,
  type Style,
  type TextStyle,
} from '../drawing.ts';
import { simplified } from '../svg-path.ts';
import { CENTRING } from './lay-text.ts';
import type { SheetFonts } from './sheet-fonts.ts';

export interface Pen {
  readonly doc: PDFDocument;
  readonly fonts: SheetFonts;
}

/** Draws marks whose places are in millimetres on the page. */
export function drawPaperMarks(pen: Pen, marks: readonly PaperMark[]): void {
  for (const mark of marks) drawPaperMark(pen, mark);
}

/** Draws a whole drawing with its top left at the given place: the ground cut off at its frame, then what is on paper. */
export function drawDrawing(
  pen: Pen,
  drawing: Drawing,
  place: { readonly leftMm: number; readonly topMm: number },
): void {
  const { doc } = pen;
  const { frame } = drawing;
  doc.save().transform(1, 0, 0, 1, place.leftMm, place.topMm);
  doc.save().rect(frame.leftMm, frame.topMm, frame.widthMm, frame.heightMm).clip();
  drawPaperMark(pen, { mark: 'box', box: frame, style: { fill: drawing.land } });
  for (const mark of drawing.ground) drawGroundMark(pen, drawing, mark);
  doc.restore();
  drawPaperMarks(pen, drawing.onPaper);
  doc.restore();
}

function drawGroundMark(pen: Pen, drawing: Drawing, mark: GroundMark): void {
  if (mark.mark === 'image') drawImage(pen, imageBox(drawing, mark), mark.bytes);
  else if (mark.mark === 'region' || mark.mark === 'line') {
    const closed = mark.mark === 'region';
    const lines = (closed ? mark.region : [mark.line]).map((line) => paperLine(drawing, line, closed));
    paint(pen, mark.style, { box: () => boxOf(lines), trace: () => traceLines(pen.doc, lines, closed) });
  } else {
    const [x, y] = onPaper(drawing, mark.x, mark.y);
    const badge = mark.mark === 'badge';
    if (badge) drawPaperMark(pen, { mark: 'disc', x, y, radiusMm: mark.radiusMm, style: mark.style });
    drawText(
      pen,
      { x, y, text: mark.text, style: badge ? { ...mark.textStyle, anchor: 'middle' } : mark.style },
      CENTRING,
    );
  }
}

function drawPaperMark(pen: Pen, mark: PaperMark): void {
  if (mark.mark === 'text') drawText(pen, mark, 0);
  else if (mark.mark === 'image') drawImage(pen, mark.box, mark.bytes);
  else paint(pen, mark.style, shapeOf(pen.doc, mark));
}

function shapeOf(doc: PDFDocument, mark: Exclude<PaperMark, { mark: 'text' | 'image' }>): Shape {
  if (mark.mark === 'disc') {
    const { x, y, radiusMm: r } = mark;
    const box = () => ({ leftMm: x - r, topMm: y - r, widthMm: 2 * r, heightMm: 2 * r });
    return { box, trace: () => doc.circle(x, y, r) };
  }
  if (mark.mark === 'box') {
    const { leftMm, topMm, widthMm, heightMm } = mark.box;
    return { box: () => mark.box, trace: () => doc.rect(leftMm, topMm, widthMm, heightMm) };
  }
  const lines = [mark.points.flat()];
  return { box: () => boxOf(lines), trace: () => traceLines(doc, lines, mark.mark === 'polygon') };
}

function paperLine(drawing: Drawing, line: Float64Array, closed: boolean): readonly number[] {
  const out = new Float64Array(line.length);
  for (let i = 0; i + 1 < line.length; i += 2) [out[i], out[i + 1]] = onPaper(drawing, line[i], line[i + 1]);
  return simplified(out, closed);
}

function traceLines(doc: PDFDocument, lines: readonly (readonly number[])[], closed: boolean): void {
  for (const line of lines) {
    if (line.length < 4) continue;
    doc.moveTo(micron(line[0]), micron(line[1]));
    for (let i = 2; i + 1 < line.length; i += 2) doc.lineTo(micron(line[i]), micron(line[i + 1]));
    if (closed) doc.closePath();
  }
}

/** Thousandths of a millimetre are far below what a printer can set, and keep the file small. */
function micron(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

interface Shape {
  readonly box: () => Frame;
  readonly trace: () => void;
}

function paint({ doc }: Pen, { fill, opacity, hatch, stroke }: Style, shape: Shape): void {
  doc.save();
  if (fill !== undefined) doc.fillColor(fill).fillOpacity(opacity ?? 1);
  if (fill !== undefined && (hatch !== undefined || stroke === undefined)) {
    shape.trace();
    doc.fill();
  }
  if (hatch !== undefined) drawHatch(doc, hatch, shape);
  if (stroke !== undefined) {
    doc.lineWidth(stroke.widthMm).strokeColor(stroke.colour).lineJoin('round');
    if (stroke.dashMm !== undefined) doc.dash(stroke.dashMm);
    shape.trace();
    if (fill !== undefined && hatch === undefined) doc.fillAndStroke();
    else doc.stroke();
  }
  doc.restore();
}

/** Lines whose distance from the page's corner is a whole number of gaps, so that neighbours' hatches run on. */
function drawHatch(doc: PDFDocument, { colour, widthMm, gapMm, crossed }: Hatch, { box, trace }: Shape): void {
  const { leftMm, topMm, widthMm: wide, heightMm: high } = box();
  if (!(wide > 0 && high > 0)) return;
  doc.save();
  trace();
  doc.clip();
  const step = gapMm * Math.SQRT2;
  // Rising lines: x + y constant; falling ones: x − y constant.
  for (let sum = Math.ceil((leftMm + topMm) / step) * step; sum < leftMm + wide + topMm + high; sum += step) {
    doc.moveTo(micron(sum - topMm), micron(topMm)).lineTo(micron(sum - topMm - high), micron(topMm + high));
  }
  if (crossed) {
    for (let gap = Math.ceil((leftMm - topMm - high) / step) * step; gap < leftMm + wide - topMm; gap += step) {
      doc.moveTo(micron(gap + topMm), micron(topMm)).lineTo(micron(gap + topMm + high), micron(topMm + high));
    }
  }
  doc.lineWidth(widthMm).strokeColor(colour).stroke().restore();
}

function drawImage({ doc }: Pen, { leftMm, topMm, widthMm, heightMm }: Frame, bytes: Uint8Array): void {
  doc.image(bytes, leftMm, topMm, { width: widthMm, height: heightMm });
}

interface PlacedText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly style: TextStyle;
}

/** `sink`: how far the baseline lies below the place, in parts of the size. */
function drawText(pen: Pen, { x, y, text, style }: PlacedText, sink: number): void {
  const { doc, fonts } = pen;
  const { sizeMm, anchor, turnDeg, spread, colour, weight } = style;
  const width = fonts.widthMm(text, style);
  const left = x - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
  const base = y + sink * sizeMm;
  doc.save();
  if (turnDeg !== undefined) doc.rotate(-turnDeg, { origin: [x, y] });
  if (style.halo !== undefined) drawHalo(pen, { x: left, y: base, text, style });
  doc.fillColor(colour).fillOpacity(1);
  let at = left;
  for (const run of fonts.runs(text, weight)) {
    doc.registerFont(run.key, run.font).font(run.key).fontSize(sizeMm);
    const options = { lineBreak: false, baseline: 'alphabetic', characterSpacing: (spread ?? 0) * sizeMm };
    doc.text(run.text, micron(at), micron(base), options);
    at += fonts.widthMm(run.text, style);
  }
  doc.restore();
}

/** The rim is drawn from the letters' outlines, so that the words stand only once in the file. */
function drawHalo({ doc, fonts }: Pen, { x: left, y: base, text, style }: PlacedText): void {
  doc.strokeColor(style.halo ?? '#ffffff').lineJoin('round');
  let at = left;
  for (const { text: stretch, font } of fonts.runs(text, style.weight)) {
    const perUnit = style.sizeMm / font.unitsPerEm;
    const { glyphs, positions } = font.layout(stretch);
    glyphs.forEach((glyph, i) => {
      const data = glyph.path.toSVG();
      if (data !== '') {
        doc.save().transform(perUnit, 0, 0, -perUnit, at, base);
        doc
          .lineWidth((style.sizeMm * 0.28) / perUnit)
          .path(data)
          .stroke()
          .restore();
      }
      at += positions[i].xAdvance * perUnit + (style.spread ?? 0) * style.sizeMm;
    });
  }
}

function boxOf(lines: readonly (readonly number[])[]): Frame {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const line of lines) {
    for (let i = 0; i + 1 < line.length; i += 2) {
      left = Math.min(left, line[i]);
      right = Math.max(right, line[i]);
      top = Math.min(top, line[i + 1]);
      bottom = Math.max(bottom, line[i + 1]);
    }
  }
  return { leftMm: left, topMm: top, widthMm: right - left, heightMm: bottom - top };
}
