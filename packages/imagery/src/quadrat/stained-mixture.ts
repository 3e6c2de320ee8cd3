/**
 * What share of cells is stained when texture and stain overlap: cells are a mixture of clean ground, as the clean patch
 * shows it, and the same ground darkened, with cells half covered between. The darkening is fitted by maximum likelihood
 * (EM: Dempster, Laird and Rubin 1977, J. R. Stat. Soc. B 39, 1–38, from memory). The share is then that of the cells
 * below a cut, corrected for clean cells that lie below it and stained ones that do not (Rogan and Gladen 1978, Am. J.
 * Epidemiol. 107, 71–76, from memory), which asks less of the mixture's form than its own weights do.
 */

export interface StainedMixture {
  /** Share stained, 0–1. */
  readonly share: number;
  /** ln of light against the patch's, below which a cell counts as stained: half the light that the stain takes away. */
  readonly cut: number;
}

/** ln of light against the patch's: bins of 0.04 from −4 to 1.6. */
const BINS = { from: -4, step: 0.04, count: 140 } as const;
/** (A) Stain takes 40 % of the light at least: ln 1.65. Less is told from texture and uneven light only by luck. */
const DARKENING = { from: 0.5, to: 2.6, step: 0.06 } as const;
/** (A) And it is darker than so many spreads of the clean ground. */
const SPREADS = 2.2;
/** Scatter beyond the patch's own: of the light on clean cells, and of the thickness of stain; ln units. */
const LIGHT_SCATTER = [0.02, 0.06, 0.12, 0.2] as const;
const STAIN_SCATTER = [0.05, 0.15, 0.3] as const;
const COVERED = [0.125, 0.375, 0.625, 0.875] as const;
const ROUNDS = 30;
/** A cell covered to this part counts: a little below half, as the rims of small spots outnumber those of small gaps. */
const HALF_COVERED = 0.44;

interface Fit {
  readonly clean: Float64Array;
  readonly stained: Float64Array;
  readonly darkening: number;
  readonly logLikelihood: number;
}

/** Counts of ln light in this room's bins; values beyond go to the outermost. */
export function lightHistogram(values: Iterable<number>): Float64Array {
  const bins = new Float64Array(BINS.count);
  for (const value of values)
    bins[Math.min(BINS.count - 1, Math.max(0, Math.floor((value - BINS.from) / BINS.step)))]++;
  return bins;
}

/** Both as `lightHistogram` gives them; `spread` of clean ground in ln units. Neither may be empty. */
export function stainedMixture(quadrat: Float64Array, patch: Float64Array, spread: number): StainedMixture {
  let best: Fit | null = null;
  for (const light of LIGHT_SCATTER) {
    const clean = spreadBy(sharesOf(patch), light);
    for (const thickness of STAIN_SCATTER) {
      const soft = spreadBy(clean, thickness);
      for (let d = Math.max(DARKENING.from, SPREADS * spread); d <= DARKENING.to; d += DARKENING.step) {
        const fit = fitted(quadrat, clean, soft, d);
        if (best === null || fit.logLikelihood > best.logLikelihood) best = fit;
      }
    }
  }
  const { clean, stained, darkening } = best as Fit;
  const cut = Math.log(1 - HALF_COVERED + HALF_COVERED * Math.exp(-darkening));
  const [all, falsely, truly] = [sharesOf(quadrat), clean, stained].map((bins) => below(bins, cut));
  return { share: Math.min(1, Math.max(0, (all - falsely) / (truly - falsely))), cut };
}

/** Weights of clean, half covered and stained cells by expectation and maximisation. */
function fitted(quadrat: Float64Array, clean: Float64Array, soft: Float64Array, darkening: number): Fit {
  const stained = darker(soft, darkening);
  const between = new Float64Array(BINS.count);
  for (const covered of COVERED) {
    const part = darker(clean, -Math.log(1 - covered + covered * Math.exp(-darkening)));
    for (let k = 0; k < part.length; k++) between[k] += part[k] / COVERED.length;
  }
  let [a, b, c] = [0.5, 0.1, 0.4];
  let logLikelihood = 0;
  for (let round = 0; round < ROUNDS; round++) {
    let [na, nb, nc] = [0, 0, 0];
    logLikelihood = 0;
    for (let k = 0; k < BINS.count; k++) {
      if (quadrat[k] === 0) continue;
      const [pa, pb, pc] = [a * clean[k], b * between[k], c * stained[k]];
      const sum = pa + pb + pc + STRAY;
      na += (quadrat[k] * pa) / sum;
      nb += (quadrat[k] * pb) / sum;
      nc += (quadrat[k] * pc) / sum;
      logLikelihood += quadrat[k] * Math.log(sum);
    }
    const counted = na + nb + nc;
    [a, b, c] = [na / counted, nb / counted, nc / counted];
  }
  return { clean, stained, darkening, logLikelihood };
}

/** Likelihood of a cell that is neither, so that one stray cell does not rule a fit out. */
const STRAY = 1e-6;

function sharesOf(bins: Float64Array): Float64Array {
  const total = bins.reduce((sum, count) => sum + count, 0);
  return bins.map((count) => count / total);
}

function darker(bins: Float64Array, by: number): Float64Array {
  const [whole, part] = [Math.floor(by / BINS.step), (by / BINS.step) % 1];
  return bins.map((_, k) => (bins[k + whole] ?? 0) * (1 - part) + (bins[k + whole + 1] ?? 0) * part);
}

function spreadBy(bins: Float64Array, sd: number): Float64Array {
  const reach = Math.ceil((3 * sd) / BINS.step);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-(((k - reach) * BINS.step) ** 2) / (2 * sd * sd)),
  );
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const spread = new Float64Array(bins.length);
  for (let k = 0; k < bins.length; k++) {
    for (let j = -reach; j <= reach && bins[k] > 0; j++) {
      const at = Math.min(bins.length - 1, Math.max(0, k + j));
      spread[at] += (bins[k] * weights[j + reach]) / total;
    }
  }
  return spread;
}

/** Share below a limit, bins filled evenly. */
function below(bins: Float64Array, limit: number): number {
  const at = (limit - BINS.from) / BINS.step;
  return bins.reduce((sum, share, k) => sum + share * Math.min(1, Math.max(0, at - k)), 0);
}
