/** The map as a picture for paper, with title, legend, scale bar and the line that says how it was made. */
import { CLEAN, HATCH_INK, STAIN_CLASSES } from '../map/stain-ramp.ts';
import type { MapDoor } from '../session/map-door.ts';

export interface PrintWords {
  readonly title: string;
  readonly legend: string;
  readonly clean: string;
  readonly note: string;
}

/** A4 landscape less the printer's margins, at 96 to the inch. */
const WIDTH = 1050;
const HEIGHT = 640;
const DOTS_PER_INCH = 300;
const BAND = 92;

/** PNG at 300 dots per inch. Always in light colours: paper is white. */
export async function printedMap(map: MapDoor, words: PrintWords): Promise<Blob> {
  const drawn = await map.picture({ width: WIDTH, height: HEIGHT, dotsPerInch: DOTS_PER_INCH });
  const scale = drawn.width / WIDTH;
  const sheet = document.createElement('canvas');
  sheet.width = drawn.width;
  sheet.height = drawn.height + BAND * scale;
  const pen = sheet.getContext('2d');
  if (!pen) throw new Error('This browser offers no 2D drawing.');
  pen.fillStyle = '#ffffff';
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.scale(scale, scale);
  pen.fillStyle = '#1b2a23';
  pen.font = '600 17px Inter, sans-serif';
  pen.fillText(words.title, 12, 25);
  pen.drawImage(drawn, 0, 36, WIDTH, HEIGHT);
  drawLegend(pen, words, HEIGHT + 56);
  pen.font = '400 10px Inter, sans-serif';
  pen.fillText(words.note, 12, HEIGHT + BAND - 9);
  return withResolution(await pngOf(sheet), DOTS_PER_INCH);
}

function drawLegend(pen: CanvasRenderingContext2D, words: PrintWords, y: number): void {
  pen.font = '500 11px Inter, sans-serif';
  pen.fillText(words.legend, 12, y);
  let x = 12 + pen.measureText(words.legend).width + 16;
  const classes = [
    { label: words.clean, light: CLEAN.light, hatchPx: null },
    ...STAIN_CLASSES.map(({ label, light, hatchPx }) => ({ label, light, hatchPx })),
  ];
  for (const { label, light, hatchPx } of classes) {
    drawSwatch(pen, { x, y: y - 9, light, hatchPx });
    pen.fillStyle = '#1b2a23';
    pen.fillText(label, x + 28, y);
    x += 28 + pen.measureText(label).width + 14;
  }
}

interface Swatch {
  readonly x: number;
  readonly y: number;
  readonly light: string;
  readonly hatchPx: number | null;
}

function drawSwatch(pen: CanvasRenderingContext2D, { x, y, light, hatchPx }: Swatch): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, 22, 11);
  pen.fillStyle = light;
  pen.fill();
  pen.clip();
  if (hatchPx !== null) {
    pen.strokeStyle = HATCH_INK.light;
    pen.lineWidth = 0.9;
    for (let at = -12; at < 24; at += hatchPx) {
      pen.beginPath();
      pen.moveTo(x + at, y + 12);
      pen.lineTo(x + at + 12, y);
      pen.stroke();
    }
  }
  pen.restore();
}

function pngOf(canvas: HTMLCanvasElement): Promise<Blob> {
  return new Promise((tell, fail) =>
    canvas.toBlob(
      (blob) => (blob ? tell(blob) : fail(new Error('The picture is too large for this browser.'))),
      'image/png',
    ),
  );
}

const METRES_PER_INCH = 0.0254;
/** Where the first chunk of every PNG ends: signature 8, IHDR 25 (PNG specification, 5 and 11.2.1). */
const AFTER_HEADER = 33;

/** Writes the pHYs chunk (PNG specification, 11.3.4.3), so that a print comes out at the size meant. */
async function withResolution(png: Blob, dotsPerInch: number): Promise<Blob> {
  const perMetre = Math.round(dotsPerInch / METRES_PER_INCH);
  const body = new Uint8Array(13);
  body.set(new TextEncoder().encode('pHYs'));
  const view = new DataView(body.buffer);
  view.setUint32(4, perMetre);
  view.setUint32(8, perMetre);
  body[12] = 1;
  const frame = new Uint8Array(4 + body.length + 4);
  new DataView(frame.buffer).setUint32(0, 9);
  frame.set(body, 4);
  new DataView(frame.buffer).setUint32(4 + body.length, crc32(body));
  return new Blob([png.slice(0, AFTER_HEADER), frame, png.slice(AFTER_HEADER)], { type: 'image/png' });
}

/** PNG specification, annex D. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ~crc >>> 0;
}
