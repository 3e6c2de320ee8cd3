/** A QR code (ISO/IEC 18004) as marks: black squares on white with the quiet zone the standard asks for. */
import encodeQR from 'qr';
import type { Frame, PaperMark } from '../drawing.ts';

/** Modules of white about the code: ISO/IEC 18004, 6.3.8. */
const QUIET = 4;

/**
 * The code of a text, filling a square box; error correction M (15 % of the code may be soiled).
 * @throws the encoder's error for a text that no code can hold (more than 2,331 bytes)
 */
export function qrMarks(text: string, box: Frame): readonly PaperMark[] {
  const rows = encodeQR(text, 'raw', { ecc: 'medium', border: QUIET });
  const module = box.widthMm / rows.length;
  const at = (modules: number, start: number) => start + modules * module;
  const marks: PaperMark[] = [{ mark: 'box', box, style: { fill: '#ffffff' } }];
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      let end = x + 1;
      while (row[end]) end++;
      const run = { leftMm: at(x, box.leftMm), topMm: at(y, box.topMm), widthMm: (end - x) * module, heightMm: module };
      marks.push({ mark: 'box', box: run, style: { fill: '#000000' } });
      x = end;
    }
  });
  return marks;
}
