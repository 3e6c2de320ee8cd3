/** The invented aerial picture of the town's middle: four bands, 0.25 m, in State Plane feet, and what it shows of each crown. */
import { type GeoTransform, northUp, writeGeoTiff } from '@crownfall/imagery';
import type { TreeTruth } from '../life/truth.ts';
import { FEET_PER_METRE, gridFeet } from '../place.ts';
import type { Point } from '../town/loop.ts';
import type { Town } from '../town/town.ts';
import { forCells, paintCanopy } from './canopy.ts';
import { blankCanvas, type Canvas } from './canvas.ts';
import { colours } from './colours.ts';
import { paintGround } from './ground.ts';
import { directLight } from './light.ts';

/** South-west corner on the plan, and size, m. */
const WINDOW: { readonly corner: Point; readonly size: Point } = { corner: [92, -34], size: [520, 416] };
const PIXEL_M = 0.25;

interface CrownInPicture {
  readonly treeId: string;
  /** Share of the crown's visible part that is browned. */
  readonly brownedShare: number;
  /** Share of the outline's inside where this crown is on top; the rest is gaps or other crowns. */
  readonly visibleShare: number;
}

export interface AerialPicture {
  readonly bytes: Uint8Array;
  readonly transform: GeoTransform;
  readonly crowns: readonly CrownInPicture[];
}

export function aerialPicture(town: Town, truth: readonly TreeTruth[]): AerialPicture {
  const canvas = blankCanvas(WINDOW.corner, WINDOW.size);
  paintGround(canvas, town);
  paintCanopy(canvas, town, truth);
  const raster = colours(canvas, directLight(canvas), truth);
  const [left, top] = gridFeet([WINDOW.corner[0], WINDOW.corner[1] + WINDOW.size[1]]);
  const transform = northUp(left, top, PIXEL_M * FEET_PER_METRE);
  const bytes = writeGeoTiff(raster, {
    transform,
    crs: { epsg: 2236, kind: 'projected' },
    bandNames: ['red', 'green', 'blue', 'near infrared'],
  });
  return { bytes, transform, crowns: truth.flatMap((tree, i) => inPicture(canvas, tree, i + 1)) };
}

/** What is seen of a crown that lies whole inside the picture; nothing for others. */
function inPicture(canvas: Canvas, { tree }: TreeTruth, number: number): readonly CrownInPicture[] {
  const { corner, size } = WINDOW;
  const whole = tree.outline.every(
    ([x, y]) => x > corner[0] && x < corner[0] + size[0] && y > corner[1] && y < corner[1] + size[1],
  );
  if (!whole) return [];
  let [own, seen, brown] = [0, 0, 0];
  forCells(canvas, tree, 0, (cell, _x, _y, relative) => {
    if (relative <= 1) own++;
    if (canvas.crown[cell] !== number) return;
    if (relative <= 1) seen++;
    brown += canvas.browned[cell] * (relative <= 1 ? 1 : 0);
  });
  return [{ treeId: tree.id, brownedShare: seen === 0 ? 0 : brown / seen, visibleShare: seen / own }];
}
