/** Invented photos of quadrats for tests: a camera at a height and tilt, its lens, noise and 8 bits, from a seed. */
import { RandomStream } from '@crownfall/statistics';
import type { Homography } from './homography.ts';
import { inverseOf, projected } from './homography.ts';
import {
  type MadeLight,
  type MadePavement,
  type MadeSurface,
  madePavement,
  type PavementRecipe,
} from './made-pavement.test-data.ts';
import type { Photo, PhotoPoint, QuadratFrame } from './photo.ts';

export interface MadePhoto {
  readonly photo: Photo;
  readonly frame: QuadratFrame;
  readonly cleanPatch: readonly PhotoPoint[];
  readonly truth: number;
  readonly shaded: number;
  readonly recipe: PhotoRecipe;
}

export interface PhotoRecipe extends PavementRecipe {
  readonly width: number;
  readonly height: number;
  /** Degrees off the vertical. */
  readonly tilt: number;
  /** Of the lens, pixels. */
  readonly blur: number;
  /** Standard deviation in levels of 255, at mid grey. */
  readonly noise: number;
  /** Linear light of the brightest clean ground. */
  readonly exposure: number;
  /** How far off a corner is marked, pixels. */
  readonly markError: number;
}

/** A recipe of the given number: surface, light, stain, pose, lens and sensor all drawn from it. */
export function photoRecipe(seed: number, changes: Partial<PhotoRecipe> = {}): PhotoRecipe {
  const random = new RandomStream(seed, 0);
  const pick = <T>(...choices: readonly T[]): T => choices[random.wholeBelow(choices.length)];
  const sideM = pick(0.5, 0.5, 0.25);
  const patchSide = sideM * (0.2 + 0.1 * random.uniform());
  const beside = -patchSide - 0.06;
  const along = random.uniform() * (sideM - patchSide);
  const surface = pick<MadeSurface>('concrete', 'asphalt', 'pavers');
  // A clean patch of bricks shows its joints: it spans more than one brick.
  const patch = surface === 'pavers' ? Math.max(patchSide, 0.13) : patchSide;
  return {
    seed,
    surface,
    light: pick<MadeLight>('even', 'edge', 'dapple'),
    stained: random.uniform() < 0.1 ? 0 : 0.9 * random.uniform(),
    sideM,
    patchM: [Math.min(beside, -patch - 0.03), along, Math.min(beside, -patch - 0.03) + patch, along + patch],
    width: 720,
    height: 576,
    tilt: 40 * random.uniform(),
    blur: 0.5 + 0.5 * random.uniform(),
    noise: 1 + 2.5 * random.uniform(),
    exposure: 0.35 + 0.4 * random.uniform(),
    markError: 1.5,
    ...changes,
  };
}

export function madePhoto(recipe: PhotoRecipe): MadePhoto {
  const random = new RandomStream(recipe.seed, 2);
  const pavement = madePavement(recipe);
  const map = cameraOf(recipe, random);
  const light = seen(pavement, map, recipe);
  for (const band of light) blurred(band, recipe);
  const photo = developed(light, recipe, random);
  const { sideM, patchM } = recipe;
  const marked = (x: number, y: number): PhotoPoint => {
    const [u, v] = projected(map, x, y);
    const off = recipe.markError;
    return [u + off * (2 * random.uniform() - 1), v + off * (2 * random.uniform() - 1)];
  };
  const [left, top, right, bottom] = patchM;
  return {
    photo,
    frame: {
      corners: [marked(0, 0), marked(sideM, 0), marked(sideM, sideM), marked(0, sideM)],
      widthM: sideM,
      heightM: sideM,
    },
    cleanPatch: [marked(left, top), marked(right, top), marked(right, bottom), marked(left, bottom)],
    truth: pavement.truth,
    shaded: pavement.shaded,
    recipe,
  };
}

/** A pinhole camera 2.6 frames above the ground that looks at the frame and its patch; ground → photo. */
function cameraOf({ sideM, tilt, width, height, patchM }: PhotoRecipe, random: RandomStream): Homography {
  const [yaw, slant] = [random.uniform() * 2 * Math.PI, (tilt * Math.PI) / 180];
  const back = [Math.cos(yaw) * Math.sin(slant), Math.sin(yaw) * Math.sin(slant), Math.cos(slant)];
  const distance = 2.6 * sideM;
  const across = [-Math.sin(yaw), Math.cos(yaw), 0];
  const up = [
    back[1] * across[2] - back[2] * across[1],
    back[2] * across[0] - back[0] * across[2],
    back[0] * across[1] - back[1] * across[0],
  ];
  const reach = sideM - Math.min(0, patchM[0]);
  const focal = (0.75 * Math.min(width, height) * distance) / (reach * 1.1);
  const middle = [(sideM + Math.min(0, patchM[0])) / 2, sideM / 2, 0];
  const eye = middle.map((at, k) => at + distance * back[k]);
  const row = (axis: readonly number[]): number[] => [
    axis[0],
    axis[1],
    -(axis[0] * eye[0] + axis[1] * eye[1] + axis[2] * eye[2]),
  ];
  const depth = row(back.map((value) => -value));
  const [right, down] = [row(across), row(up.map((value) => -value))];
  const [cx, cy] = [width / 2, height / 2];
  const map = [
    ...right.map((value, k) => focal * value + cx * depth[k]),
    ...down.map((value, k) => -focal * value + cy * depth[k]),
    ...depth,
  ];
  return Float64Array.from(map);
}

/** Light on the sensor: 2 × 2 samples a pixel; the frame's own bars lie round the frame. */
function seen({ size, cellM, marginM, light }: MadePavement, map: Homography, recipe: PhotoRecipe): Float32Array[] {
  const { width, height, sideM } = recipe;
  const back = inverseOf(map);
  const bands = [0, 1, 2].map(() => new Float32Array(width * height));
  for (let p = 0; p < width * height; p++) {
    for (let k = 0; k < 4; k++) {
      const [x, y] = projected(back, (p % width) + 0.25 + 0.5 * (k % 2), Math.floor(p / width) + 0.25 + 0.5 * (k >> 1));
      const outside = Math.max(-x, x - sideM, -y, y - sideM);
      if (outside > 0 && outside < 0.02) {
        for (let b = 0; b < 3; b++) bands[b][p] += BAR[b] / 4;
        continue;
      }
      const c = Math.min(Math.max((x + marginM) / cellM - 0.5, 0), size - 1.001);
      const r = Math.min(Math.max((y + marginM) / cellM - 0.5, 0), size - 1.001);
      const at = Math.floor(r) * size + Math.floor(c);
      const [s, t] = [c % 1, r % 1];
      for (let b = 0; b < 3; b++) {
        const upper = light[b][at] * (1 - s) + light[b][at + 1] * s;
        bands[b][p] += (upper * (1 - t) + (light[b][at + size] * (1 - s) + light[b][at + size + 1] * s) * t) / 4;
      }
    }
  }
  return bands;
}

/** Wood, of ash. */
const BAR = [0.45, 0.38, 0.26] as const;

/** Gaussian blur along rows and columns, in place. */
function blurred(band: Float32Array, { width, height, blur }: PhotoRecipe): void {
  if (blur === 0) return;
  const reach = Math.ceil(2.5 * blur);
  const given = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-((k - reach) ** 2) / (2 * blur * blur)));
  const total = given.reduce((sum, weight) => sum + weight, 0);
  const weights = Float64Array.from(given, (weight) => weight / total);
  const line = new Float64Array(Math.max(width, height) + 2 * reach);
  const along = (start: number, step: number, count: number): void => {
    for (let k = -reach; k < count + reach; k++)
      line[k + reach] = band[start + Math.min(count - 1, Math.max(0, k)) * step];
    for (let k = 0; k < count; k++) {
      let sum = 0;
      for (let j = 0; j < weights.length; j++) sum += weights[j] * line[k + j];
      band[start + k * step] = sum;
    }
  };
  for (let row = 0; row < height; row++) along(row * width, 1, width);
  for (let column = 0; column < width; column++) along(column, width, height);
}

/** White balance off by a few per cent, shot and reading noise, sRGB curve, 8 bits, colour of 2 × 2 pixels shared. */
function developed(light: readonly Float32Array[], recipe: PhotoRecipe, random: RandomStream): Photo {
  const { width, height, exposure, noise } = recipe;
  const sorted = Float32Array.from(light[1]).sort();
  const gain = exposure / sorted[Math.floor(0.98 * sorted.length)];
  const balance = [1 + 0.16 * (random.uniform() - 0.5), 1, 1 + 0.16 * (random.uniform() - 0.5)];
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  const levels = Float32Array.from({ length: 4096 }, (_, k) => 255 * encoded(k / 4095));
  const normals = Float32Array.from({ length: 4096 }, () => random.normal());
  for (let p = 0; p < width * height; p++) {
    for (let b = 0; b < 3; b++) {
      const value = light[b][p] * gain * balance[b];
      // At mid grey (linear 0.21) the curve's slope turns a linear error of 0.0053 into one level.
      const sd = noise * 0.0053 * Math.sqrt(0.1 + (0.9 * value) / 0.21);
      const seenLight = value + sd * normals[random.word() & 0xfff];
      rgba[p * 4 + b] = levels[Math.min(4095, Math.max(0, Math.round(4095 * seenLight)))];
    }
  }
  shareColour(rgba, width, height);
  return { width, height, rgba };
}

function encoded(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}

/** As JPEG keeps it: brightness by the pixel, colour by the four. */
function shareColour(rgba: Uint8ClampedArray, width: number, height: number): void {
  for (let row = 0; row + 1 < height; row += 2) {
    for (let column = 0; column + 1 < width; column += 2) {
      const four = [0, 1, width, width + 1].map((step) => (row * width + column + step) * 4);
      const bright = four.map((at) => 0.299 * rgba[at] + 0.587 * rgba[at + 1] + 0.114 * rgba[at + 2]);
      const middle = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / 4;
      const [red, blue] = [0, 2].map((b) => middle(four.map((at, k) => rgba[at + b] - bright[k])));
      const green = -(0.299 * red + 0.114 * blue) / 0.587;
      four.forEach((at, k) => {
        rgba[at] = bright[k] + red;
        rgba[at + 1] = bright[k] + green;
        rgba[at + 2] = bright[k] + blue;
      });
    }
  }
}
