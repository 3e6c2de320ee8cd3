/** What the plan must know of each block: which crowns an action would reach, and what the rules ask for. */
import type { BlockSituation, BloomWindow } from '@crownfall/priority';
import { savedByTreating } from '@crownfall/stain';
import { type BloomObservation, PAVEMENT_KINDS, type PlanSettings, type TreeSeverity } from '@crownfall/survey';
import type { Reckoned } from '../assess.ts';
import { bloomByBlock } from '../rank-stage.ts';
import { type NearestByKind, WaterDistances } from './water-distances.ts';

/** By block index unless stated otherwise; zones are crowns. */
export interface PlanScene {
  readonly situations: readonly BlockSituation[];
  readonly unrated: readonly (readonly number[])[];
  /** Crowns that a treatment of the block lowers: diagnosed, of a cause it acts on, and far enough from water. */
  readonly treated: readonly (readonly number[])[];
  /** The diagnosed crown whose removal avoids most, −1 for none. */
  readonly replaced: Int32Array;
  /** By zone: the block whose treatment lowers it, −1 for none. */
  readonly treatedIn: Int32Array;
  /** By pavement piece: whether it is cleaned. */
  readonly isCleaned: Uint8Array;
  /** Pavement in fallout zones that a cleaning goes over, m². */
  readonly cleanM2: Float64Array;
  /** Crowns with a cause found on evidence that treatment acts on, whether or not they keep their distance. */
  readonly treatable: readonly (readonly number[])[];
  readonly water: WaterDistances;
  /** By zone, for treatable crowns. */
  readonly nearest: ReadonlyMap<number, NearestByKind>;
  /** Whether any crown keeps every stated distance from water. */
  readonly keepsOff: (zone: number) => boolean;
}

export function planScene({ stages, settings, asOf }: Reckoned, windows: readonly BloomWindow[]): PlanScene {
  const { ground, stain, ranking, survey } = stages;
  const { plan } = settings;
  const water = new WaterDistances(ground, survey.water);
  const saved = savedByTreating(stain.ledgers.field);
  const observations = bloomByBlock(ground, survey.bloom);
  const isCleaned = Uint8Array.from(ground.pavement, ({ pavement }) =>
    plan.clean_kinds.includes(pavement.kind) ? 1 : 0,
  );
  const diagnosed = (zone: number) => isDiagnosed(stain.severities[zone]);
  const treatable = ranking.notes.map(({ zones }) =>
    zones.filter((zone) => diagnosed(zone) && plan.treat_causes.includes(stain.severities[zone].cause)),
  );
  const nearest = new Map(treatable.flat().map((zone) => [zone, water.of(zone)] as const));
  const treated = treatable.map((zones) => zones.filter((zone) => keepsOff(nearest.get(zone) ?? {}, plan)));
  const situations = ground.blocks.map(({ blockId }, block): BlockSituation => {
    const { zones } = ranking.notes[block];
    return {
      blockId,
      asOf,
      trees: zones.length,
      unrated: zones.filter((zone) => stain.severities[zone].from !== 'rating').length,
      diagnosed: zones.filter(diagnosed).length,
      treatable: treatable[block].length,
      clearOfWater: treated[block].length,
      nearestWater: tightest(treatable[block], nearest, plan),
      waterKinds: water.kinds,
      bloomState: windows[block].state,
      seenOn: windows[block].seenOn,
      ...beesAt(blockId, observations[block], { asOf, plan }),
      stainedToCleanM2: stainedToClean(block, stages, plan),
    };
  });
  return {
    situations,
    unrated: ranking.notes.map(({ zones }) => zones.filter((zone) => stain.severities[zone].from !== 'rating')),
    treated,
    replaced: Int32Array.from(ranking.notes, ({ zones }) => most(zones.filter(diagnosed), saved)),
    treatedIn: treatedBlocks(treated, ground.crowns.length),
    isCleaned,
    cleanM2: Float64Array.from(ground.blocks, (_, block) => falloutToClean(block, stages, plan)),
    treatable,
    water,
    nearest,
    keepsOff: (zone) => keepsOff(nearest.get(zone) ?? water.of(zone), plan),
  };
}

/** A person rated it and found a staining cause in this crown on evidence. */
function isDiagnosed({ from, gateShare, weightedSeverity }: TreeSeverity): boolean {
  return from === 'rating' && gateShare === 1 && weightedSeverity > 0;
}

function keepsOff(nearest: NearestByKind, { keep_off_m }: PlanSettings): boolean {
  return Object.entries(nearest).every(([kind, distanceM]) => {
    const keepM = keep_off_m[kind as keyof NearestByKind];
    return keepM === null || keepM === undefined || distanceM >= keepM;
  });
}

/** The water that a treatable tree of the block comes nearest to, relative to the distance to keep. */
function tightest(
  zones: readonly number[],
  nearest: ReadonlyMap<number, NearestByKind>,
  { keep_off_m }: PlanSettings,
): BlockSituation['nearestWater'] {
  const pairs = zones.flatMap((zone) =>
    Object.entries(nearest.get(zone) ?? {}).map(([kind, distanceM]) => {
      const of = kind as keyof NearestByKind;
      return { kind: of, distanceM, keepOffM: keep_off_m[of] ?? 0 };
    }),
  );
  return pairs.reduce<BlockSituation['nearestWater']>(
    (worst, pair) => (worst && worst.distanceM - worst.keepOffM <= pair.distanceM - pair.keepOffM ? worst : pair),
    null,
  );
}

/** The newest look for bees that has an answer, from the bloom notes or the checks before work; bees seen by anyone that day count. */
function beesAt(
  blockId: string,
  observations: readonly BloomObservation[],
  { asOf, plan }: { readonly asOf: string; readonly plan: PlanSettings },
): Pick<BlockSituation, 'beesLookedOn' | 'beesSeen'> {
  const checks = plan.weather
    .filter(({ block_id }) => block_id === blockId)
    .map(({ on, bees_at_flowers }) => ({ on, bees: bees_at_flowers ?? 'unknown' }));
  const notes = observations
    .filter(inFlower)
    .map(({ observedOn, beesAtFlowers }) => ({ on: observedOn, bees: beesAtFlowers }));
  const looks = [...checks, ...notes].filter(({ on, bees }) => bees !== 'unknown' && on <= asOf);
  const newest = looks
    .map(({ on }) => on)
    .sort()
    .at(-1);
  return { beesLookedOn: newest ?? null, beesSeen: looks.some(({ on, bees }) => on === newest && bees === 'yes') };
}

/** Without flowers nobody can have looked for bees at them. */
function inFlower({ bbch }: BloomObservation): boolean {
  return bbch >= 60 && bbch <= 69;
}

function stainedToClean(block: number, { stain }: Reckoned['stages'], { clean_kinds }: PlanSettings): number {
  const { byBlockAndKind } = stain.ledgers;
  return sumOverKinds(block, clean_kinds, byBlockAndKind.stainedM2);
}

function falloutToClean(block: number, { stain }: Reckoned['stages'], { clean_kinds }: PlanSettings): number {
  return sumOverKinds(block, clean_kinds, stain.ledgers.byBlockAndKind.falloutM2);
}

function sumOverKinds(block: number, kinds: PlanSettings['clean_kinds'], areasM2: Float64Array): number {
  return [...new Set(kinds)].reduce(
    (sum, kind) => sum + areasM2[block * PAVEMENT_KINDS.length + PAVEMENT_KINDS.indexOf(kind)],
    0,
  );
}

function most(zones: readonly number[], saved: Float64Array): number {
  return zones.reduce((best, zone) => (best < 0 || saved[zone] > saved[best] ? zone : best), -1);
}

function treatedBlocks(treated: readonly (readonly number[])[], zones: number): Int32Array {
  const blockOf = new Int32Array(zones).fill(-1);
  treated.forEach((list, block) => {
    for (const zone of list) blockOf[zone] = block;
  });
  return blockOf;
}
