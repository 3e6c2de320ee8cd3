/**
 * Invented towns whose truth is known, for the question: how often does a range hold the truth? Each town's truth is drawn
 * first (severities, gates, raters' biases, k, drift, true outlines); then it is recorded as people record it, with all the
 * errors that the settings state; then its ranges are drawn from the records alone. The true stained area comes from an overlay
 * of the true outlines, so the approximation of outline errors is on trial too.
 */
import { falloutZone, type Region, reckonOverlay } from '@crownfall/geometry';
import {
  type DrawPlan,
  figureSamples,
  makeDraws,
  rangesOf,
  severityPlan,
  sharedSpread,
  stainedShares,
  stainPlan,
} from '@crownfall/stain';
import { RandomStream } from '@crownfall/statistics';
import {
  DEFAULT_SETTINGS,
  type Rating,
  type Settings,
  type Survey,
  severityOfPercent,
  severityOfTrees,
  strayAt,
  type Tree,
} from '@crownfall/survey';

export interface TownOptions {
  readonly draws: number;
  /** Blocks of eight crowns each. */
  readonly blocks: number;
}

/** Whether the ranges of the total and of each block held the truth. */
export interface Held {
  readonly total80: boolean;
  readonly total95: boolean;
  readonly blocks80: readonly boolean[];
  readonly blocks95: readonly boolean[];
}

const CROWNS_PER_BLOCK = 8;
const RATERS = ['A', 'B', 'C'];
const UNRATED = 0.2;
const FOULING = 0.7;
const TOLERANCE_M = 0.01;
/** k as well known as a small calibration makes it. */
const SETTINGS: Settings = {
  ...DEFAULT_SETTINGS,
  uncertainty: { ...DEFAULT_SETTINGS.uncertainty, dose_coefficient_log_sd: 0.15 },
};

interface Crown {
  readonly x: number;
  readonly y: number;
  readonly radiusM: number;
  readonly trueRadiusM: number;
  readonly severity: number;
  readonly fouls: boolean;
}

/** Draws town number `town` and its ranges, and holds them against its truth. */
export function townHeld(town: number, { draws, blocks }: TownOptions): Held {
  const random = new RandomStream(2026, town);
  const { uncertainty, dose_coefficient: k, drift_rings: rings } = SETTINGS;
  const crowns = Array.from({ length: blocks * CROWNS_PER_BLOCK }, (_, i) => crownOf(i, random));
  const ratings = ratingsOf(crowns, random);
  // The record of k strays from the true one as its standard error says, so the true one strays from the record alike.
  const trueK = k * Math.exp(uncertainty.dose_coefficient_log_sd * random.normal());
  const ringFactor = random.between(1 - uncertainty.ring_share_spread, 1 + uncertainty.ring_share_spread);
  const pieces = Array.from({ length: blocks }, (_, block) => strip(block));
  const overlay = (radius: (crown: Crown) => number) =>
    reckonOverlay({
      zones: crowns.map((crown) => falloutZone(disc(crown, radius(crown)), rings, TOLERANCE_M)),
      pieces,
      blocks: Array.from({ length: blocks }, (_, block) => square(block)),
    });
  const truth = byBlock(
    overlay((crown) => crown.trueRadiusM),
    crowns.map((crown) => (crown.fouls ? trueK * crown.severity : 0)),
    [1, ...rings.map(({ share }) => Math.min(1, share * ringFactor))],
    blocks,
  );
  return held(
    truth,
    drawn(
      overlay((crown) => crown.radiusM),
      crowns,
      ratings,
      { town, draws, blocks },
    ),
  );
}

function crownOf(i: number, random: RandomStream): Crown {
  const block = Math.floor(i / CROWNS_PER_BLOCK);
  const radiusM = random.between(2.5, 5);
  const shiftM = SETTINGS.uncertainty.outline_sd_m * random.normal();
  return {
    x: 100 * block + 6 + 9 * (i % CROWNS_PER_BLOCK) + random.between(-2, 2),
    y: random.between(-2.5, 2.5),
    radiusM,
    trueRadiusM: Math.max(0.5, radiusM + shiftM),
    severity: random.between(0.05, 0.85),
    fouls: random.uniform() < FOULING,
  };
}

function ratingsOf(crowns: readonly Crown[], random: RandomStream): Rating[] {
  const { rater_bias_sd_pct, rater_error_sd_pct } = SETTINGS.uncertainty;
  const biases = RATERS.map(() => (rater_bias_sd_pct / 100) * random.normal());
  return crowns.flatMap((crown, i): Rating[] => {
    const rater = random.wholeBelow(RATERS.length);
    const off = biases[rater] + (rater_error_sd_pct / 100) * random.normal();
    if (random.uniform() < UNRATED) return [];
    const read = Math.min(1, Math.max(0, crown.severity + off * strayAt(crown.severity)));
    const diagnosis = crown.fouls ? ({ cause: 'frass', gallLoad: 'moderate' } as const) : ({ cause: 'none' } as const);
    return [
      {
        treeId: `T${i}`,
        ratedOn: '2026-05-01',
        rater: RATERS[rater],
        browned: severityOfPercent(100 * read),
        ...diagnosis,
        extra: {},
      },
    ];
  });
}

function drawn(
  ledger: ReturnType<typeof reckonOverlay>,
  crowns: readonly Crown[],
  ratings: readonly Rating[],
  { town, draws, blocks }: TownOptions & { readonly town: number },
) {
  const trees = crowns.map(
    (crown, i): Tree => ({
      treeId: `T${i}`,
      at: { lon: 0, lat: 0 },
      crown: { from: 'spread', at: { lon: 0, lat: 0 }, spreadM: 2 * crown.radiusM },
      host: 'Terminalia buceras',
      extra: {},
    }),
  );
  const none = { pavement: [], blocks: [], quadrats: [], complaints: [], bloom: [], sites: [], water: [], streets: [] };
  const survey: Survey = { title: 'Invented', season: 2026, units: 'metric', trees, ratings, ...none };
  const reading = severityOfTrees(survey, SETTINGS, '2026-06-01');
  const planned = crowns.map((crown, tree) => ({
    tree,
    spreadM: 2 * crown.radiusM,
    outlineSdM: SETTINGS.uncertainty.outline_sd_m,
  }));
  const rings = {
    layerShare: Float64Array.of(1, ...SETTINGS.drift_rings.map(({ share }) => share)),
    ringToM: Float64Array.from(SETTINGS.drift_rings, ({ to_m }) => to_m),
  };
  const mayStain = (zone: number) => reading.trees[zone].weightedHi > 0;
  const plan: DrawPlan = {
    seed: town,
    severity: severityPlan(reading, SETTINGS),
    stain: stainPlan(ledger, planned, rings, { mayStain, keys: { blockCount: blocks } }),
    ...sharedSpread(SETTINGS),
  };
  const samples = figureSamples(blocks + 1, draws);
  makeDraws(plan, 0, draws, ({ draw, runM2 }) => {
    const row = draw * (blocks + 1);
    runM2.forEach((areaM2, run) => {
      samples.value[row + plan.stain.runBlock[run]] += areaM2;
      samples.value[row + blocks] += areaM2;
    });
  });
  return samples;
}

/** Stained area of each block, then of all. */
function byBlock(
  ledger: ReturnType<typeof reckonOverlay>,
  dose: readonly number[],
  layerShare: readonly number[],
  blocks: number,
): Float64Array {
  const share = stainedShares({ ledger, layerShare, dose: Float64Array.from(dose) });
  const sums = new Float64Array(blocks + 1);
  share.forEach((stained, cell) => {
    sums[ledger.block[cell]] += stained * ledger.areaM2[cell];
    sums[blocks] += stained * ledger.areaM2[cell];
  });
  return sums;
}

function held(truth: Float64Array, samples: ReturnType<typeof figureSamples>): Held {
  const rows = [...truth.keys()].map((row) => rangesOf(samples, row));
  const inside = (row: number, which: 'range80' | 'range95'): boolean => {
    const range = rows[row][which];
    return range !== null && truth[row] >= range[0] && truth[row] <= range[1];
  };
  const blocks = [...truth.keys()].slice(0, -1);
  const total = truth.length - 1;
  return {
    total80: inside(total, 'range80'),
    total95: inside(total, 'range95'),
    blocks80: blocks.map((block) => inside(block, 'range80')),
    blocks95: blocks.map((block) => inside(block, 'range95')),
  };
}

/** A sidewalk of 80 × 4 m through each block. */
function strip(block: number): Region {
  return [Float64Array.of(100 * block, -2, 100 * block + 80, -2, 100 * block + 80, 2, 100 * block, 2)];
}

function square(block: number): Region {
  const [west, east] = [100 * block - 10, 100 * block + 90];
  return [Float64Array.of(west, -50, east, -50, east, 50, west, 50)];
}

function disc({ x, y }: Crown, radiusM: number): Region {
  const vertices = 48;
  const ring = new Float64Array(2 * vertices);
  for (let i = 0; i < vertices; i++) {
    ring[2 * i] = x + radiusM * Math.cos((2 * Math.PI * i) / vertices);
    ring[2 * i + 1] = y + radiusM * Math.sin((2 * Math.PI * i) / vertices);
  }
  return [ring];
}
