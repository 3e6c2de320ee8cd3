/**
 * The light on each cell, told from its colour: shade is cooler than sun (sky and leaves light it), stain is not. A
 * cell's darkness is split into a part along the line of shade and a part along the line of stain, as in invariants of
 * illumination (Finlayson, Hordley, Lu and Drew 2006, IEEE Trans. Pattern Anal. Mach. Intell. 28, 59–68, from memory).
 */
import type { GroundCells } from './rectify.ts';

/** Darkness and coolness of every cell against the clean patch, both logarithms of light; 0 = as the patch. */
export interface CellTones {
  /** ln of the patch's luminance over the cell's. */
  readonly darkness: Float32Array;
  /** ½(ln green + ln blue) − ln red, less that of the patch. */
  readonly coolness: Float32Array;
}

export interface CellLight {
  /** Share of the sun, 0–1, that the cell gets. */
  readonly sun: Float32Array;
  /** What has to be added to ln luminance to see the cell in the sun. */
  readonly lift: Float32Array;
  /** Darkness of full shade; 0 where none was told. */
  readonly shadeDarkness: number;
}

/** (A) Full shade is at least so much cooler, in ln of linear light; under a clear sky it is 0.2–0.6. */
const SHADE_COOLER = 0.12;
/** (A) Darker than this is shade or stain: a tenth of the light is texture. */
const DARK = 0.25;
/** Fewer shaded cells than this share are no shade to speak of. */
const SHADE_SHARE = 0.01;
/** ln units: bins in which a crowd is looked for, and the darkest that is looked at. */
const [PEAK_STEP, DARKEST] = [0.05, 6];
/** (A) The lightest crowd of this part of the greatest is clean shade, unless the edges speak for another of the lesser part. */
const [PEAK_PART, LEAST_PART] = [0.35, 0.05];
/** Edges wider than this many cells are not used, and fewer places than this do not tell the depth of shade. */
const [EDGE_WIDEST, PAIRS_NEEDED] = [40, 30];
/** A change across an edge speaks for depths this near, ln units; a darker crowd must have clearly more votes. */
const [VOTE_REACH, CLEARLY_MORE] = [0.2, 1.5];
/** Lit cells darker than the patch and not cooler than this are stain in the sun. */
const NOT_COOLER = 0.05;

/** Tones of cells averaged over `reach` cells around each, in light: colour needs more light than brightness does. */
export function cellTones(
  cells: GroundCells,
  patch: { readonly luminance: number; readonly coolness: number },
  reach: number,
): CellTones {
  const [red, green, blue] = [cells.red, cells.green, cells.blue].map((band) =>
    boxMean(band, cells.width, cells.height, reach),
  );
  const darkness = red.map((r, p) => Math.log(patch.luminance / luminanceOf(r, green[p], blue[p])));
  const coolness = red.map((r, p) => coolnessOf(r, green[p], blue[p]) - patch.coolness);
  return { darkness, coolness };
}

export function luminanceOf(red: number, green: number, blue: number): number {
  return Math.max(1e-4, 0.2126 * red + 0.7152 * green + 0.0722 * blue);
}

export function coolnessOf(red: number, green: number, blue: number): number {
  const [r, g, b] = [red, green, blue].map((light) => Math.log(Math.max(1e-4, light)));
  return (g + b) / 2 - r;
}

/**
 * Splits each cell's tone. Full shade is taken from the coolest cells, the colour of stain from dark cells that are not
 * cool. `judged` is 0 for cells to leave out.
 */
export function cellLight({ darkness, coolness }: CellTones, judged: Uint8Array, width: number): CellLight {
  const even: CellLight = {
    sun: new Float32Array(darkness.length).fill(1),
    lift: new Float32Array(darkness.length),
    shadeDarkness: 0,
  };
  const cool = indices(darkness.length, (p) => judged[p] === 1 && darkness[p] > DARK && coolness[p] > SHADE_COOLER);
  if (cool.length < SHADE_SHARE * darkness.length) return even;
  const coolest = quantileOf(
    cool.map((p) => coolness[p]),
    0.9,
  );
  const deep = cool.filter((p) => coolness[p] > 0.8 * coolest);
  const crowds = crowdsOf(deep.map((p) => darkness[p]));
  let depth = crowds.find(({ part }) => part > PEAK_PART)?.at ?? crowds[0].at;
  const stained = indices(darkness.length, (p) => judged[p] === 1 && darkness[p] > DARK && coolness[p] < NOT_COOLER);
  const warmth =
    stained.length < 50
      ? 0
      : Math.min(
          0,
          Math.max(
            -0.4,
            quantileOf(
              stained.map((p) => coolness[p] / darkness[p]),
              0.5,
            ),
          ),
        );
  const split = (): Float32Array =>
    medianAround(
      Float32Array.from(darkness, (d, p) => (d > 0 ? sunShare(d, coolness[p], depth, coolest, warmth) : 1)),
      width,
    );
  let smooth = split();
  const across = acrossEdges(darkness, smooth, judged, width);
  if (across.length >= PAIRS_NEEDED) {
    const votes = (at: number): number =>
      across.reduce((sum, change) => sum + Math.max(0, 1 - Math.abs(change - at) / VOTE_REACH), 0);
    const best = crowds.reduce((a, b) => (votes(b.at) > CLEARLY_MORE * votes(a.at) ? b : a)).at;
    if (best !== depth) {
      depth = best;
      smooth = split();
    }
  }
  const lift = smooth.map((share) => darknessAt(share, depth));
  return { sun: smooth, lift, shadeDarkness: depth };
}

/** Sun and sky mix in light, so darkness is −ln of the mix. */
function darknessAt(sun: number, depth: number): number {
  return -Math.log(sun + (1 - sun) * Math.exp(-depth));
}

/** Coolness of a mix: sky light's own counts by its part of the light. */
function coolnessAt(sun: number, depth: number, coolest: number): number {
  const sky = (1 - sun) * Math.exp(-depth);
  // Bands of sky light relative to its luminance: green and blue by +c/3, red by −2c/3, roughly.
  const [cooler, warmer] = [Math.exp(coolest / 3), Math.exp((-2 * coolest) / 3)];
  return Math.log((sun + sky * cooler) / (sun + sky * warmer));
}

/** The share of sun at which what is left of darkness and coolness lies on the line of stain; by halving. */
function sunShare(darkness: number, coolness: number, depth: number, coolest: number, warmth: number): number {
  const tooCool = (sun: number): boolean => {
    const left = darkness - darknessAt(sun, depth);
    return coolness - coolnessAt(sun, depth, coolest) > warmth * Math.max(0, left);
  };
  if (!tooCool(1)) return 1;
  if (tooCool(0)) return 0;
  let [low, high] = [0, 1];
  for (let k = 0; k < 8; k++) {
    const middle = (low + high) / 2;
    if (tooCool(middle)) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/**
 * By how much darkness grows from sun to full shade across each edge of shade, along rows and columns: ground of one kind
 * lies on both sides of most edges, whether clean or stained.
 */
function acrossEdges(darkness: Float32Array, sun: Float32Array, judged: Uint8Array, width: number): number[] {
  const height = darkness.length / width;
  const found: number[] = [];
  const kind = (p: number): number => (judged[p] === 0 ? 0 : sun[p] > 0.95 ? 1 : sun[p] < 0.05 ? 2 : 0);
  const scan = (start: number, step: number, count: number): void => {
    let [last, was] = [-1, 0];
    for (let k = 0; k < count; k++) {
      const now = kind(start + k * step);
      if (now === 0) continue;
      if (was !== 0 && now !== was && k - last <= EDGE_WIDEST) {
        const off = 2 + ((k - last) >> 1);
        const [a, b] = [last - off, k + off];
        if (a >= 0 && b < count && kind(start + a * step) === was && kind(start + b * step) === now) {
          const change = darkness[start + b * step] - darkness[start + a * step];
          found.push(now === 2 ? change : -change);
        }
      }
      [last, was] = [k, now];
    }
  };
  for (let row = 0; row < height; row++) scan(row * width, 1, width);
  for (let column = 0; column < width; column++) scan(column, width, height);
  return found;
}

/** Where the values crowd, least dark first, and how much each crowd is of the greatest. */
function crowdsOf(values: readonly number[]): { readonly at: number; readonly part: number }[] {
  const bins = new Float64Array(Math.ceil(DARKEST / PEAK_STEP));
  for (const value of values) {
    for (let k = -3; k <= 3; k++) {
      const bin = Math.floor(value / PEAK_STEP) + k;
      if (bin >= 0 && bin < bins.length) bins[bin] += 4 - Math.abs(k);
    }
  }
  const most = bins.reduce((a, b) => Math.max(a, b), 0);
  return Array.from(bins.keys())
    .filter((k) => bins[k] > LEAST_PART * most && bins[k] >= Math.max(...bins.subarray(Math.max(0, k - 3), k + 4)))
    .map((k) => ({ at: (k + 0.5) * PEAK_STEP, part: bins[k] / most }));
}

function boxMean(band: Float32Array, width: number, height: number, reach: number): Float32Array {
  const across = new Float32Array(band.length);
  const mean = new Float32Array(band.length);
  for (let p = 0; p < band.length; p++) {
    const column = p % width;
    let [sum, count] = [0, 0];
    for (let c = Math.max(0, column - reach); c <= Math.min(width - 1, column + reach); c++, count++)
      sum += band[p - column + c];
    across[p] = sum / count;
  }
  for (let p = 0; p < band.length; p++) {
    const row = Math.floor(p / width);
    let [sum, count] = [0, 0];
    for (let r = Math.max(0, row - reach); r <= Math.min(height - 1, row + reach); r++, count++)
      sum += across[p + (r - row) * width];
    mean[p] = sum / count;
  }
  return mean;
}

/** Median of 5 × 5: keeps edges of shade, drops single cells. */
function medianAround(values: Float32Array, width: number): Float32Array {
  const height = values.length / width;
  const near: number[] = [];
  return values.map((_, p) => {
    near.length = 0;
    const [column, row] = [p % width, Math.floor(p / width)];
    for (let r = Math.max(0, row - 2); r <= Math.min(height - 1, row + 2); r++) {
      for (let c = Math.max(0, column - 2); c <= Math.min(width - 1, column + 2); c++) near.push(values[r * width + c]);
    }
    near.sort((a, b) => a - b);
    return near[near.length >> 1];
  });
}

function indices(count: number, keep: (p: number) => boolean): number[] {
  const kept: number[] = [];
  for (let p = 0; p < count; p++) if (keep(p)) kept.push(p);
  return kept;
}

function quantileOf(values: readonly number[], share: number): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
}
