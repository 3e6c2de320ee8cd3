/** From materials, crowns and light to the four bands of the camera, two by two cells to a pixel. */
import type { Raster } from '@crownfall/imagery';
import { clamp, TRUE_CAUSE_FACTOR, TRUE_DOSE_COEFFICIENT, TRUE_RINGS, type TreeTruth } from '../life/truth.ts';
import { cellHash } from '../random.ts';
import { forCells } from './canopy.ts';
import { type Canvas, CELL_M, YARD_TREE } from './canvas.ts';
import { MATERIALS, material } from './materials.ts';
import { cloudNoise, clumpAt, smoothNoise } from './noise.ts';

type Colour = readonly [number, number, number, number];

const BROWN_LEAF: Colour = [138, 106, 74, 128];
const YARD_LEAF: Colour = [86, 112, 60, 186];
const STAIN: Colour = [0.52, 0.48, 0.44, 0.6];
/** Light from the sky alone, by band: shade is bluish, and dark in the near infrared. */
const SKY: Colour = [0.4, 0.43, 0.5, 0.33];
const EXPOSURE = 0.96;
/** Brightness is stored in steps of two: a camera's noise hides finer ones, and the file is a third smaller. */
const STEP = 2;

export function colours(canvas: Canvas, light: Uint8Array, truth: readonly TreeTruth[]): Raster {
  const stained = stainedCells(canvas, truth);
  const width = canvas.width / 2;
  const height = canvas.height / 2;
  const bands = [0, 1, 2, 3].map(() => new Uint8Array(width * height));
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const sum = [0, 0, 0, 0];
      for (const [dr, dc] of CELLS_OF_PIXEL) {
        const cell = (2 * row + dr) * canvas.width + 2 * column + dc;
        const colour = surface(canvas, cell, truth, stained[cell] === 1);
        const direct = light[cell] / 100;
        for (let b = 0; b < 4; b++) sum[b] += colour[b] * (SKY[b] + (1 - SKY[b]) * direct);
      }
      for (let b = 0; b < 4; b++)
        bands[b][row * width + column] = STEP * Math.round(clamp((sum[b] / 4) * EXPOSURE, 0, 254) / STEP);
    }
  }
  return { width, height, bands };
}

const CELLS_OF_PIXEL = [
  [0, 0],
  [0, 1],
  [1, 0],
  [1, 1],
] as const;

function surface(canvas: Canvas, cell: number, truth: readonly TreeTruth[], isStained: boolean): Colour {
  const x = canvas.left + ((cell % canvas.width) + 0.5) * CELL_M;
  const y = canvas.top - (Math.floor(cell / canvas.width) + 0.5) * CELL_M;
  const crown = canvas.crown[cell];
  if (crown === 0) return groundColour(canvas, cell, x, y, isStained);
  const own = cellHash(crown, 7, 7) - 0.5;
  const clump = clumpAt(x, y, 1.25, 101 + (crown & 63)).own - 0.5;
  const gain = 1 + 0.16 * own + 0.22 * clump + 0.12 * (smoothNoise(x, y, 0.4, 33) - 0.5);
  if (crown === YARD_TREE) return scaled(YARD_LEAF, gain);
  const leaf = canvas.browned[cell] === 1 ? BROWN_LEAF : truth[crown - 1].tree.host.leaf;
  return scaled(leaf, gain);
}

function groundColour(canvas: Canvas, cell: number, x: number, y: number, isStained: boolean): Colour {
  const { colour, cloud, grain } = MATERIALS[canvas.material[cell]];
  const gain =
    (canvas.grain[cell] / 128) *
    (1 +
      cloud * (cloudNoise(x, y, 7, 51) - 0.5) +
      grain * (cellHash(Math.floor(x / 0.25), Math.floor(y / 0.25), 61) - 0.5));
  if (canvas.material[cell] === SEA) return seaColour(x, y, colour);
  if (canvas.material[cell] === LAWN) return lawnColour(x, y, scaled(colour, gain));
  if (!isStained) return scaled(colour, gain);
  return [
    colour[0] * gain * STAIN[0],
    colour[1] * gain * STAIN[1],
    colour[2] * gain * STAIN[2],
    colour[3] * gain * STAIN[3],
  ];
}

const SEA = material('sea');
const LAWN = material('lawn');

function seaColour(x: number, y: number, colour: Colour): Colour {
  const ripple = smoothNoise(x * 0.5 + y * 0.2, y, 1.4, 71) + smoothNoise(x, y * 1.6, 3.2, 73) - 1;
  return scaled(colour, 0.94 + 0.2 * cloudNoise(x, y, 26, 75) + 0.12 * ripple);
}

/** Lawns are watered here and parched there. */
function lawnColour(x: number, y: number, colour: Colour): Colour {
  const dry = clamp((cloudNoise(x, y, 16, 81) - 0.42) * 3.2, 0, 1) * 0.7;
  return [colour[0] + 44 * dry, colour[1] + 16 * dry, colour[2] + 18 * dry, colour[3] - 40 * dry];
}

function scaled(c: Colour, gain: number): Colour {
  return [c[0] * gain, c[1] * gain, c[2] * gain, c[3] * gain];
}

/** Cells of pavement that carry stain: patches of some 0.4 m, as many as the doses of the true crowns ask for. */
function stainedCells(canvas: Canvas, truth: readonly TreeTruth[]): Uint8Array {
  const dose = new Float32Array(canvas.width * canvas.height);
  for (const { tree, cause, browned } of truth) {
    const full = TRUE_DOSE_COEFFICIENT * TRUE_CAUSE_FACTOR[cause] * browned;
    if (full === 0) continue;
    forCells(canvas, tree, 1, (cell, _x, _y, _relative, _angle, beyond) => {
      const share = beyond <= 0 ? 1 : (TRUE_RINGS.find((ring) => beyond <= ring.toM)?.share ?? 0);
      dose[cell] += full * share;
    });
  }
  const stained = new Uint8Array(dose.length);
  for (let cell = 0; cell < dose.length; cell++) {
    if (dose[cell] === 0 || !MATERIALS[canvas.material[cell]].isPavement) continue;
    const x = canvas.left + (cell % canvas.width) * CELL_M;
    const y = canvas.top - Math.floor(cell / canvas.width) * CELL_M;
    if (clumpAt(x, y, 0.42, 91).own < 1 - Math.exp(-dose[cell])) stained[cell] = 1;
  }
  return stained;
}
