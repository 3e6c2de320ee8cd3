/** The rank stage: what is known of each block, weighed. A moved weight needs this stage alone. */
import {
  type BlockEvidence,
  BlockScorer,
  type BloomState,
  bloomStateOf,
  complaintCounts,
  criterionAmounts,
  type RankedBlock,
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

/** Ranks the blocks on the day `asOf`. Linear in runs and records, n log n in blocks. */
export function rank(
  ground: Ground,
  stain: Stain,
  records: Pick<Survey, 'complaints' | 'bloom' | 'sites'>,
  settings: Settings,
  asOf: string,
): Ranking {
  return new RankBook(ground, records, settings.priority).rank(ground, stain, settings, asOf);
}

/** What a block was last ranked by. */
interface Known {
  readonly stainedM2: number;
  readonly stained: readonly StainedPart[];
  readonly severities: readonly TreeSeverity[];
  readonly sites: number;
  readonly notes: BlockNotes;
  readonly evidence: BlockEvidence;
}

interface Memory {
  /** Day, and the age at which bloom observations say no more. */
  readonly under: string;
  readonly scorer: BlockScorer;
  known: readonly Known[];
}

/** Ranks again and again while crowns and doses change; of a block that they do not touch nothing is worked out anew. */
export class RankBook {
  readonly #records: Pick<Survey, 'complaints' | 'bloom'>;
  /** The same for as long as records and blocks stay. */
  readonly #complaintBlock: Int32Array;
  readonly #complaints: readonly (readonly Complaint[])[];
  readonly sites: SitesNear;
  /** Weights are moved back and forth; what is known under each stays. */
  readonly #memories = new WeakMap<PrioritySettings, Memory>();

  constructor(
    { near, blocks }: FixedGround,
    records: Pick<Survey, 'complaints' | 'bloom' | 'sites'>,
    { complaint_distance_m, site_distance_m }: PrioritySettings,
  ) {
    this.#records = records;
    this.#complaintBlock = complaintBlocks(near, records.complaints, complaint_distance_m);
    this.#complaints = grouped(blocks.length, records.complaints, (_, i) => this.#complaintBlock[i]);
    this.sites = new SitesNear(near, records.sites, site_distance_m);
  }

  rank(ground: Ground, stain: Stain, settings: Settings, asOf: string): Ranking {
    const memory = this.#memory(settings, asOf);
    const stained = stainedParts(ground, stain);
    const sites = sitesByBlock(ground.crowns, stain.ledgers.blame, ground.blocks.length, this.sites);
    const bloom = bloomByBlock(ground, this.#records.bloom);
    const zones = zonesByBlock(ground);
    memory.known = ground.blocks.map(({ blockId }, block): Known => {
      const bloomState = bloomStateOf(bloom[block], asOf, settings.bloom_stale_days);
      const fresh = {
        stainedM2: stain.ledgers.byBlock.stainedM2[block],
        stained: stained[block],
        severities: zones[block].map((zone) => stain.severities[zone]),
        sites: sites[block],
      };
      const known = memory.known[block];
      if (known && known.notes.bloomState === bloomState && isSame(known, fresh, zones[block])) return known;
      const complaints = this.#complaints[block];
      const severities = fouling(fresh.severities).map(({ share }) => share);
      const amounts = criterionAmounts({ ...fresh, complaints, severities, bloomState }, settings.priority, asOf);
      const notes = notesOn(zones[block], fresh.severities, complaints, { bloomState, asOf });
      return { ...fresh, notes, evidence: { blockId, stainedM2: fresh.stainedM2, amounts } };
    });
    return {
      ranked: memory.scorer.rank(memory.known.map(({ evidence }) => evidence)),
      complaintBlock: this.#complaintBlock,
      notes: memory.known.map(({ notes }) => notes),
    };
  }

  #memory({ priority, bloom_stale_days }: Settings, asOf: string): Memory {
    const under = `${asOf} ${bloom_stale_days}`;
    let memory = this.#memories.get(priority);
    if (memory?.under !== under) {
      memory = { under, scorer: new BlockScorer(priority), known: [] };
      this.#memories.set(priority, memory);
    }
    return memory;
  }
}

function isSame(known: Known, fresh: Omit<Known, 'notes' | 'evidence'>, zones: readonly number[]): boolean {
  return (
    known.stainedM2 === fresh.stainedM2 &&
    known.sites === fresh.sites &&
    known.severities.length === zones.length &&
    known.severities.every((severity, i) => severity === fresh.severities[i] && known.notes.zones[i] === zones[i]) &&
    known.stained.length === fresh.stained.length &&
    known.stained.every(({ stainedM2, kind, footTraffic }, i) => {
      const now = fresh.stained[i];
      return stainedM2 === now.stainedM2 && kind === now.kind && footTraffic === now.footTraffic;
    })
  );
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
function stainedParts({ pavement, blocks }: Ground, { ledgers: { runs, blockRuns } }: Stain): StainedPart[][] {
  const classes = FOOT_TRAFFIC.length + 1;
  const width = PAVEMENT_KINDS.length * classes;
  const partOf = Int32Array.from(pavement, ({ pavement: { kind, footTraffic } }) => {
    const trafficClass = footTraffic === undefined ? FOOT_TRAFFIC.length : FOOT_TRAFFIC.indexOf(footTraffic);
    return PAVEMENT_KINDS.indexOf(kind) * classes + trafficClass;
  });
  const sums = new BalancedSums(width);
  return blocks.map((_, block) => {
    sums.clear(width);
    for (let i = blockRuns.start[block]; i < blockRuns.start[block + 1]; i++) {
      const run = blockRuns.run[i];
      sums.add(partOf[runs.piece[run]], runs.areas.stainedM2[run]);
    }
    const parts: StainedPart[] = [];
    for (let part = 0; part < width; part++) {
      const stainedM2 = sums.at(part);
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
  return grouped(ground.blocks.length, bloom, bloom.length > 0 ? bloomBlocks(ground) : () => -1);
}

function bloomBlocks({ blocks, crowns }: Ground): (seen: BloomObservation) => number {
  const blockOf = new Map(blocks.map(({ blockId }, block) => [blockId, block]));
  const blockOfTree = new Map(crowns.map(({ tree, block }) => [tree.treeId, block]));
  return ({ blockId, treeId }) => (blockId === undefined ? blockOfTree.get(treeId ?? '') : blockOf.get(blockId)) ?? -1;
}

/** Trees by the block in which their trunks stand, as zones. */
function zonesByBlock({ blocks, crowns }: Ground): number[][] {
  const zones: number[][] = blocks.map(() => []);
  for (let zone = 0; zone < crowns.length; zone++) zones[crowns[zone].block]?.push(zone);
  return zones;
}

/** Records by block; those of no block are left aside. */
function grouped<T>(blockCount: number, records: readonly T[], blockOf: (record: T, index: number) => number): T[][] {
  const groups: T[][] = Array.from({ length: blockCount }, () => []);
  records.forEach((record, i) => {
    const block = blockOf(record, i);
    if (block >= 0) groups[block].push(record);
  });
  return groups;
}
