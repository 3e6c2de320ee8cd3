/** The rank stage: what is known of each block, weighed. A moved weight needs this stage alone. */
import {
  type BloomState,
  bloomStateOf,
  complaintCounts,
  criterionAmounts,
  type RankedBlock,
  rankBlocks,
  type StainedPart,
} from '@crownfall/priority';
import { BalancedSums } from '@crownfall/stain';
import {
  type BloomObservation,
  type Complaint,
  FOOT_TRAFFIC,
  PAVEMENT_KINDS,
  type PrioritySettings,
  type Settings,
  type Survey,
  type TreeSeverity,
} from '@crownfall/survey';
import type { FixedGround, Ground, Nearness } from './ground/ground.ts';
import { SitesNear, sitesByBlock } from './sites-near.ts';
import type { Stain } from './stain-stage.ts';

/** What the ranking knew of a block beside its stain. */
export interface BlockNotes {
  /** Trees whose trunk stands in the block, as zones. */
  readonly zones: readonly number[];
  readonly treesRated: number;
  readonly worstSeverityPct: number | null;
  readonly complaintsOpen: number;
  readonly bloomState: BloomState;
}

export interface Ranking {
  /** In rank order; `index` is the block's position in `Ground.blocks`. */
  readonly ranked: readonly RankedBlock[];
  /** By position in the survey's complaints; −1: no block near. */
  readonly complaintBlock: Int32Array;
  /** By block index. */
  readonly notes: readonly BlockNotes[];
}

/** A tree that nobody diagnosed counts for the worst severity when most diagnosed trees of its group foul pavement (A). */
const GATE_MOST = 0.5;

/** Where the records that rank lie: found once for as long as they and the blocks stay. */
export interface RankPlaces {
  /** By position in the survey's complaints; −1: no block near. */
  readonly complaintBlock: Int32Array;
  readonly sites: SitesNear;
}

export function rankPlaces(
  { near }: FixedGround,
  records: Pick<Survey, 'complaints' | 'sites'>,
  { complaint_distance_m, site_distance_m }: PrioritySettings,
): RankPlaces {
  return {
    complaintBlock: complaintBlocks(near, records.complaints, complaint_distance_m),
    sites: new SitesNear(near, records.sites, site_distance_m),
  };
}

/** Ranks the blocks on the day `asOf`. Linear in runs and records, n log n in blocks. `places`: when they are known. */
export function rank(
  ground: Ground,
  stain: Stain,
  records: Pick<Survey, 'complaints' | 'bloom' | 'sites'> & { readonly places?: RankPlaces },
  settings: Settings,
  asOf: string,
): Ranking {
  const { priority } = settings;
  const { complaintBlock, sites: sitesNear } = records.places ?? rankPlaces(ground, records, priority);
  const stained = stainedParts(ground, stain);
  const sites = sitesByBlock(ground.crowns, stain.ledgers.blame, ground.blocks.length, sitesNear);
  const complaints = grouped(ground, records.complaints, (_, i) => complaintBlock[i]);
  const bloom = bloomByBlock(ground, records.bloom);
  const zones = grouped(ground, [...ground.crowns.keys()], (zone) => ground.crowns[zone].block);
  const notes: BlockNotes[] = [];
  const evidence = ground.blocks.map(({ blockId }, block) => {
    const severities = zones[block].map((zone) => stain.severities[zone]);
    const bloomState = bloomStateOf(bloom[block], asOf, settings.bloom_stale_days);
    notes.push(notesOn(zones[block], severities, complaints[block], { bloomState, asOf }));
    const facts = {
      stained: stained[block],
      complaints: complaints[block],
      severities: fouling(severities).map(({ share }) => share),
      sites: sites[block],
      bloomState,
    };
    const amounts = criterionAmounts(facts, priority, asOf);
    return { blockId, stainedM2: stain.ledgers.byBlock.stainedM2[block], amounts };
  });
  return { ranked: rankBlocks(evidence, priority), complaintBlock, notes };
}

function notesOn(
  zones: readonly number[],
  severities: readonly TreeSeverity[],
  complaints: readonly Complaint[],
  { bloomState, asOf }: { readonly bloomState: BloomState; readonly asOf: string },
): BlockNotes {
  const worst = fouling(severities).reduce((most, { share }) => Math.max(most, share), 0);
  return {
    zones,
    treesRated: severities.filter(({ from }) => from === 'rating').length,
    worstSeverityPct: severities.some(({ from }) => from !== 'none') ? 100 * worst : null,
    complaintsOpen: complaints.filter((complaint) => complaintCounts(complaint, asOf)).length,
    bloomState,
  };
}

/** The trees that count for the worst severity. */
export function fouling(severities: readonly TreeSeverity[]): TreeSeverity[] {
  return severities.filter(({ gateShare, from }) => from !== 'none' && gateShare >= GATE_MOST);
}

/** Stained area of each block by kind of pavement and foot-traffic class. */
function stainedParts({ pavement, blocks }: Ground, { ledgers: { runs } }: Stain): StainedPart[][] {
  const classes = FOOT_TRAFFIC.length + 1;
  const width = PAVEMENT_KINDS.length * classes;
  const partOf = Int32Array.from(pavement, ({ pavement: { kind, footTraffic } }) => {
    const trafficClass = footTraffic === undefined ? FOOT_TRAFFIC.length : FOOT_TRAFFIC.indexOf(footTraffic);
    return PAVEMENT_KINDS.indexOf(kind) * classes + trafficClass;
  });
  const sums = new BalancedSums(blocks.length * width);
  runs.block.forEach((block, run) => {
    if (block >= 0) sums.add(block * width + partOf[runs.piece[run]], runs.areas.stainedM2[run]);
  });
  return blocks.map((_, block) => {
    const parts: StainedPart[] = [];
    for (let part = 0; part < width; part++) {
      const stainedM2 = sums.at(block * width + part);
      const kind = PAVEMENT_KINDS[Math.floor(part / classes)];
      if (stainedM2 > 0) parts.push({ kind, footTraffic: FOOT_TRAFFIC[part % classes], stainedM2 });
    }
    return parts;
  });
}

/** The block of each complaint: the one that holds its point, else the nearest within reach. */
function complaintBlocks({ forward, blocks }: Nearness, complaints: readonly Complaint[], reachM: number): Int32Array {
  return Int32Array.from(complaints, ({ at }) => {
    const [x, y] = forward([at.lon, at.lat]);
    return blocks.holdingOrNearest(x, y, reachM);
  });
}

/** The bloom observations of each block, its own and those of its trees; those of no block are left aside. */
export function bloomByBlock(ground: Ground, bloom: readonly BloomObservation[]): BloomObservation[][] {
  return grouped(ground, bloom, bloomBlocks(ground));
}

function bloomBlocks({ blocks, crowns }: Ground): (seen: BloomObservation) => number {
  const blockOf = new Map(blocks.map(({ blockId }, block) => [blockId, block]));
  const blockOfTree = new Map(crowns.map(({ tree, block }) => [tree.treeId, block]));
  return ({ blockId, treeId }) => (blockId === undefined ? blockOfTree.get(treeId ?? '') : blockOf.get(blockId)) ?? -1;
}

/** Records by block; those of no block are left aside. */
function grouped<T>({ blocks }: Ground, records: readonly T[], blockOf: (record: T, index: number) => number): T[][] {
  const groups: T[][] = blocks.map(() => []);
  records.forEach((record, i) => {
    const block = blockOf(record, i);
    if (block >= 0) groups[block].push(record);
  });
  return groups;
}
