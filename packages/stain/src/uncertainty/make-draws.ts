/** Random draws of the stained area: what cannot be known is drawn, and the cells are weighed again. No geometry is redone. */
import { normalQuantile, studentTQuantile } from '@crownfall/statistics';
import type { Settings } from '@crownfall/survey';
import { DrawStream, normalLevels, startOfDraw } from './draw-stream.ts';
import { shiftedShares } from './outline-shift.ts';
import { type DrawnSeverities, drawSeverities, type SeverityPlan } from './severity-plan.ts';
import type { StainPlan } from './stain-plan.ts';

/** Everything that draws are made from; plain data, so that it can be sent to a worker. */
export interface DrawPlan {
  readonly seed: number;
  readonly stain: StainPlan;
  readonly severity: SeverityPlan;
  /** k with the spread of its logarithm and the degrees of freedom behind it (0: normal). */
  readonly doseCoefficient: { readonly k: number; readonly logSd: number; readonly freedom: number };
  readonly ringShareSpread: number;
}

/** One draw; the arrays are used again for the next one. */
export interface Drawn {
  readonly draw: number;
  /** Stained area of each run of cells (one piece in one block), m². */
  readonly runM2: Float64Array;
  /** Attributed to each crown of the plan, m². */
  readonly crownM2: Float64Array;
  /** By tree: s, and whether a staining cause is present. */
  readonly severities: DrawnSeverities;
  /** Share that each crown of the plan leaves clean in each of its layers, by crown · layers + layer. */
  readonly clean: Float64Array;
  /** The same with the doses lowered as asked; `clean` itself when nothing was asked. */
  readonly cleanLowered: Float64Array;
}

/** The spread of k and of the ring shares, as settings put them. */
export function sharedSpread(settings: Settings): Pick<DrawPlan, 'doseCoefficient' | 'ringShareSpread'> {
  const { dose_coefficient_log_sd: logSd, dose_coefficient_freedom: freedom, ring_share_spread } = settings.uncertainty;
  return { doseCoefficient: { k: settings.dose_coefficient, logSd, freedom }, ringShareSpread: ring_share_spread };
}

/**
 * Makes draws `from` … `to − 1` and hands each to `visit`. A draw depends on the plan and its own number alone, so any split
 * among workers gives the same digits. With no spread at all every draw is the reckoning itself, to rounding. Time per draw is
 * linear in trees and covers. docs/methods/uncertainty.md says what is drawn from what. With `keeps` (by crown of the plan, the
 * share of its dose that each crown keeps, 0–1) every draw also says what the same draw would be with those doses.
 */
export function makeDraws(
  plan: DrawPlan,
  from: number,
  to: number,
  visit: (drawn: Drawn) => void,
  keeps?: Float64Array,
): void {
  const levels = normalLevels();
  const trees = plan.severity.how.length;
  const severities = {
    weighted: new Float64Array(trees),
    share: new Float64Array(trees),
    open: new Uint8Array(trees),
  };
  const entries = plan.stain.zones.length * plan.stain.layerShare.length;
  const clean = new Float64Array(entries);
  const dose = new Float64Array(entries);
  const cleanLowered = keeps === undefined ? clean : new Float64Array(entries);
  const resampled = new Int32Array(plan.severity.pool.length);
  const runM2 = new Float64Array(plan.stain.runPiece.length);
  const crownM2 = new Float64Array(plan.stain.zones.length);
  for (let draw = from; draw < to; draw++) {
    const start = startOfDraw(plan.seed, draw);
    const stream = new DrawStream(start.words, levels);
    const k = drawnCoefficient(plan, start.forCoefficient);
    drawSeverities(plan.severity, stream, severities, resampled);
    const ringFactor = 1 + plan.ringShareSpread * (2 * start.forRings - 1);
    drawFallout(plan.stain, { k, ringFactor, stream, severities }, { clean, dose, cleanLowered }, keeps);
    weighCells(plan.stain, { clean, dose }, { runM2, crownM2 });
    visit({ draw, runM2, crownM2, severities, clean, cleanLowered });
  }
}

/** ln k is normal, or Student's t when it was fitted to few quadrats. */
function drawnCoefficient({ doseCoefficient: { k, logSd, freedom } }: DrawPlan, uniform: number): number {
  if (logSd === 0) return k;
  const deviate = freedom > 0 ? studentTQuantile(uniform, freedom) : normalQuantile(uniform);
  return k * Math.exp(logSd * deviate);
}

interface Fallout {
  /** Clean share that a crown leaves in each of its layers, and the dose −ln of it; by crown · layers + layer. */
  readonly clean: Float64Array;
  readonly dose: Float64Array;
}

function drawFallout(
  stain: StainPlan,
  shared: { k: number; ringFactor: number; stream: DrawStream; severities: DrawnSeverities },
  { clean, dose, cleanLowered }: Fallout & { readonly cleanLowered: Float64Array },
  keeps: Float64Array | undefined,
): void {
  const { k, ringFactor, stream, severities } = shared;
  const layers = stain.layerShare.length;
  const layerShare = stain.layerShare.map((share, layer) => (layer === 0 ? share : Math.min(1, share * ringFactor)));
  const stained = new Float64Array(layers);
  const shifted = new Float64Array(layers);
  const widths = { depthM: 0, ringToM: stain.ringToM };
  const leave = (part: number, shiftM: number, into: Float64Array, at: number): void => {
    for (let layer = 0; layer < layers; layer++) stained[layer] = -Math.expm1(-layerShare[layer] * part);
    if (shiftM !== 0) shiftedShares(stained, widths, shiftM, shifted);
    const shares = shiftM === 0 ? stained : shifted;
    for (let layer = 0; layer < layers; layer++) into[at + layer] = 1 - shares[layer];
  };
  for (let zone = 0; zone < stain.zones.length; zone++) {
    // Taken for every crown, so that one crown's figure does not change the numbers that the next one gets.
    const shiftM = stain.outlineSdM[zone] > 0 ? stain.outlineSdM[zone] * stream.normal() : 0;
    const full = k * severities.weighted[stain.tree[zone]];
    const at = zone * layers;
    if (full === 0) {
      clean.fill(1, at, at + layers);
      cleanLowered.fill(1, at, at + layers);
      dose.fill(0, at, at + layers);
      continue;
    }
    widths.depthM = stain.depthM[zone];
    if (keeps !== undefined) leave(keeps[zone] * full, shiftM, cleanLowered, at);
    leave(full, shiftM, clean, at);
    for (let layer = 0; layer < layers; layer++)
      dose[at + layer] = shiftM === 0 ? layerShare[layer] * full : -Math.log1p(-shifted[layer]);
  }
}

function weighCells(
  stain: StainPlan,
  { clean, dose }: Fallout,
  out: { runM2: Float64Array; crownM2: Float64Array },
): void {
  const { areaM2, cover, coverStart, run } = stain;
  const layers = stain.layerShare.length;
  const { runM2, crownM2 } = out;
  runM2.fill(0);
  crownM2.fill(0);
  for (let cell = 0; cell < areaM2.length; cell++) {
    const start = coverStart[cell];
    const end = coverStart[cell + 1];
    let bare = 1;
    let sum = 0;
    for (let i = start; i < end; i++) {
      bare *= clean[cover[i]];
      sum += dose[cover[i]];
    }
    if (sum === 0) continue;
    const stainedM2 = areaM2[cell] * (1 - bare);
    runM2[run[cell]] += stainedM2;
    const perDose = stainedM2 / sum;
    for (let i = start; i < end; i++) crownM2[(cover[i] / layers) | 0] += perDose * dose[cover[i]];
  }
}
