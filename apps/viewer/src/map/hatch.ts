/** Draws the hatch patterns that carry the stain classes without colour. */
import { HATCH_INK, hatchName, STAIN_CLASSES, type Theme } from './stain-ramp.ts';

/** Pattern tiles are drawn at twice their size so that they stay crisp on dense screens. */
const PIXEL_RATIO = 2;

export interface HatchImage {
  readonly name: string;
  readonly image: ImageData;
  readonly pixelRatio: number;
}

export function hatchImages(theme: Theme): HatchImage[] {
  return STAIN_CLASSES.flatMap((each) =>
    each.hatchPx === null
      ? []
      : [{ name: hatchName(each), image: hatchTile(each.hatchPx, HATCH_INK[theme]), pixelRatio: PIXEL_RATIO }],
  );
}

/** A seamless square of one diagonal line; the line is repeated at the neighbouring corners so that edges meet. */
function hatchTile(spacingPx: number, ink: string): ImageData {
  const side = spacingPx * PIXEL_RATIO;
  const canvas = new OffscreenCanvas(side, side);
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('This browser offers no 2D drawing.');
  pen.strokeStyle = ink;
  pen.globalAlpha = 0.75;
  pen.lineWidth = 0.9 * PIXEL_RATIO;
  for (const shift of [-side, 0, side]) {
    pen.beginPath();
    pen.moveTo(shift - side, 2 * side);
    pen.lineTo(shift + 2 * side, -side);
    pen.stroke();
  }
  return pen.getImageData(0, 0, side, side);
}
