/** Small pictures made by hand for tests: flat colours, so that every expected figure is plain geometry. */
import { northUp } from '../georeference.ts';
import type { Window } from '../window.ts';

export type Colour = readonly [red: number, green: number, blue: number, nearInfrared: number];

export const GREEN: Colour = [72, 121, 43, 190];
export const BROWN: Colour = [138, 101, 62, 150];
export const CONCRETE: Colour = [190, 186, 178, 200];
export const ASPHALT: Colour = [70, 70, 72, 75];

/** A window whose pixel (column, row) has the colour that `paint` gives its middle, in metres from the top left. */
export function picture(
  widthM: number,
  heightM: number,
  pixelM: number,
  paint: (x: number, y: number) => Colour,
): Window {
  const width = Math.round(widthM / pixelM);
  const height = Math.round(heightM / pixelM);
  const bands = [0, 1, 2, 3].map(() => new Uint8Array(width * height));
  for (let p = 0; p < width * height; p++) {
    const colour = paint(((p % width) + 0.5) * pixelM, (Math.floor(p / width) + 0.5) * pixelM);
    for (let b = 0; b < 4; b++) bands[b][p] = Math.round(colour[b]);
  }
  return {
    width,
    height,
    bands,
    roles: ['red', 'green', 'blue', 'near-infrared'],
    missing: new Uint8Array(width * height),
    nodata: null,
    transform: northUp(0, heightM, pixelM),
    pixelM,
  };
}

/** A colour under another light: each band times its own factor. */
export function under(light: Colour, colour: Colour): Colour {
  return [colour[0] * light[0], colour[1] * light[1], colour[2] * light[2], colour[3] * light[3]];
}

/** Open shade under a clear sky: a third of the light, bluer. */
export const SHADE: Colour = [0.3, 0.33, 0.4, 0.25];
