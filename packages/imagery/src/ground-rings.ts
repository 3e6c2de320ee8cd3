/** Rings carried between longitude and latitude and an image's own coordinate system. */
import type { Coordinates } from '@crownfall/geometry';
import type { Imagery } from './imagery.ts';

/** Flat WGS 84 degrees in the image's coordinate system; NaN where its projection does not reach. */
export function lonLatToGround(image: Imagery, lonLat: ArrayLike<number>): Float64Array {
  return pairs(image.lonLatToPixel(lonLat), image.pixelToGround);
}

/** The way back. */
export function groundToLonLat(image: Imagery, ground: ArrayLike<number>): Coordinates<'lonlat'> {
  return image.pixelToLonLat(pairs(ground, image.groundToPixel));
}

function pairs(from: ArrayLike<number>, to: (x: number, y: number) => readonly [number, number]): Float64Array {
  const out = new Float64Array(from.length);
  for (let i = 0; i + 1 < out.length; i += 2) [out[i], out[i + 1]] = to(from[i], from[i + 1]);
  return out;
}
