/** Aerial pictures laid below the maps of visit sheets: warped to the map's plane at print resolution, as PNG. */
import type { Finding } from '@crownfall/geometry';
import type { Imagery, ReadWindow } from '@crownfall/imagery';
import type { GroundMark, GroundWanted } from '@crownfall/sheets';
import type { ProjectInput } from '@crownfall/survey';
import { forImages } from '../imagery/project-images.ts';
import { rgbPng } from './rgb-png.ts';

type GroundPicture = Extract<GroundMark, { mark: 'image' }>;

export interface GroundPictures {
  readonly wanted: readonly string[];
  readonly byBlock: ReadonlyMap<string, GroundPicture>;
  readonly findings: readonly Finding[];
}

/**
 * A picture for every block that one of the project's images covers at all; where several do, the first one listed lies on
 * top. Nearest pixel; ground that no image shows is white.
 */
export async function groundPictures(
  project: string,
  { imagery }: ProjectInput,
  wanted: ReadonlyMap<string, GroundWanted>,
): Promise<GroundPictures> {
  const canvases = new Map([...wanted].map(([id, ground]) => [id, canvasFor(ground)]));
  const { findings } = await forImages(project, imagery, {}, async ({ image }) => {
    if (!image.placed) return;
    for (const canvas of canvases.values()) await paint(canvas, image);
  });
  const painted = [...canvases].filter(([, canvas]) => canvas.known.includes(1));
  return {
    wanted: [...wanted.keys()],
    byBlock: new Map(painted.map(([id, canvas]) => [id, pictureOf(canvas)])),
    findings,
  };
}

interface Canvas {
  readonly ground: GroundWanted;
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
  readonly known: Uint8Array;
}

function canvasFor(ground: GroundWanted): Canvas {
  const { minX, minY, maxX, maxY } = ground.bounds;
  const width = Math.ceil((maxX - minX) / ground.pixelM);
  const height = Math.ceil((maxY - minY) / ground.pixelM);
  const known = new Uint8Array(width * height);
  return { ground, width, height, rgb: new Uint8Array(3 * width * height).fill(255), known };
}

async function paint(canvas: Canvas, image: Imagery): Promise<void> {
  const places = image.lonLatToPixel(lonLatOfPixels(canvas));
  const level = levelFor(image, canvas.ground.pixelM);
  const { width, height } = image.levels[level];
  const [perColumn, perRow] = [width / image.width, height / image.height];
  const columns = places.map((value, i) => Math.floor(value * (i % 2 === 0 ? perColumn : perRow)));
  const window = boxOf(columns, { width, height });
  if (window === null) return;
  const bands = colourBandsOf(image);
  const read = await image.readWindow(window, { level, bands });
  const scale = stretchOf(read);
  for (let pixel = 0; pixel < canvas.known.length; pixel++) {
    const x: number = columns[2 * pixel] - window.left;
    const y: number = columns[2 * pixel + 1] - window.top;
    if (canvas.known[pixel] === 1 || !(x >= 0 && y >= 0 && x < read.width && y < read.height)) continue;
    const from = y * read.width + x;
    if (read.missing[from] === 1) continue;
    canvas.known[pixel] = 1;
    for (let c = 0; c < 3; c++) canvas.rgb[3 * pixel + c] = scale(read.bands[Math.min(c, read.bands.length - 1)][from]);
  }
}

/** Middles of all pixels, row by row from the north-west, in degrees. */
function lonLatOfPixels({ ground, width, height }: Canvas): Float64Array {
  const { plane, bounds, pixelM } = ground;
  const flat = new Float64Array(2 * width * height);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const at = 2 * (row * width + column);
      flat[at] = bounds.minX + (column + 0.5) * pixelM;
      flat[at + 1] = bounds.maxY - (row + 0.5) * pixelM;
    }
  }
  return plane.inverse(flat);
}

/** The coarsest level that is still as fine as the print. */
function levelFor(image: Imagery, pixelM: number): number {
  const fine = image.levels.map(({ width }) => (image.pixelM * image.width) / width <= pixelM);
  return Math.max(0, fine.lastIndexOf(true));
}

function boxOf(columns: Float64Array, { width, height }: { readonly width: number; readonly height: number }) {
  let [left, top, right, bottom] = [width, height, -1, -1];
  for (let i = 0; i < columns.length; i += 2) {
    const [x, y] = [columns[i], columns[i + 1]];
    if (!(x >= 0 && y >= 0 && x < width && y < height)) continue;
    [left, top, right, bottom] = [Math.min(left, x), Math.min(top, y), Math.max(right, x), Math.max(bottom, y)];
  }
  return right < 0 ? null : { left, top, width: right - left + 1, height: bottom - top + 1 };
}

/** Red, green and blue when they exist; else the first band as grey. */
function colourBandsOf({ roles }: Imagery): readonly number[] {
  const rgb = (['red', 'green', 'blue'] as const).map((role) => roles.indexOf(role));
  return rgb.every((band) => band >= 0) ? rgb : [0];
}

/** 8-bit samples as they are; others from their least to their greatest in view. */
function stretchOf({ bands, missing }: ReadWindow): (value: number) => number {
  if (bands.every((band) => band instanceof Uint8Array)) return (value) => value;
  let [least, most] = [Infinity, -Infinity];
  for (const band of bands) {
    for (let i = 0; i < band.length; i++) {
      if (missing[i] === 1 || Number.isNaN(band[i])) continue;
      least = Math.min(least, band[i]);
      most = Math.max(most, band[i]);
    }
  }
  return (value) => Math.round((255 * (value - least)) / Math.max(most - least, Number.MIN_VALUE));
}

function pictureOf({ ground, width, height, rgb }: Canvas): GroundPicture {
  const { bounds, pixelM } = ground;
  return {
    mark: 'image',
    bytes: rgbPng(rgb, width, height),
    west: bounds.minX,
    north: bounds.maxY,
    east: bounds.minX + width * pixelM,
    south: bounds.maxY - height * pixelM,
  };
}
