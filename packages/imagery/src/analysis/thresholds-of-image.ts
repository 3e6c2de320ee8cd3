/** What counts as leaves in a whole image, from as much of it as need be read. */
import type { Imagery } from '../imagery.ts';
import { type OutlineThresholds, outlineThresholds } from './foliage-scene.ts';

/** Thresholds come from the finest level of no more than this many pixels, else from the middle of the image. */
const SURVEY_PIXELS = 4e6;

/** Thresholds for every window of the image. Throws what `readWindow` and `outlineThresholds` throw. */
export async function thresholdsOfImage(image: Imagery): Promise<OutlineThresholds> {
  const level = image.levels.findIndex(({ width, height }) => width * height <= SURVEY_PIXELS);
  if (level >= 0) {
    const { width, height } = image.levels[level];
    return outlineThresholds(await image.readWindow({ left: 0, top: 0, width, height }, { level }));
  }
  const side = Math.floor(Math.sqrt(SURVEY_PIXELS));
  const [width, height] = [Math.min(side, image.width), Math.min(side, image.height)];
  const [left, top] = [Math.floor((image.width - width) / 2), Math.floor((image.height - height) / 2)];
  return outlineThresholds(await image.readWindow({ left, top, width, height }));
}
