/** What one crown's new outline would change, reckoned from the cells near it alone. */
import { criterionAmounts, rankBlocks, type StainedPart } from '@crownfall/priority';
import { BalancedSums, layerShares } from '@crownfall/stain';
import { FOOT_TRAFFIC, PAVEMENT_KINDS, type Settings, type Tree, type TreeSeverity } from '@crownfall/survey';
import type { PlacedCrown } from '../ground/place-crowns.ts';
import { fouling, type Ranking } from '../rank-stage.ts';
import type { SitesNear } from '../sites-near.ts';
import type { Stain } from '../stain-stage.ts';
import type { Standing } from './live-ground.ts';
import type { LiveOverlayState } from './live-overlay-state.ts';
import { RankTable } from './rank-table.ts';

export interface BlockPreview {
  readonly blockId: string;
  readonly name: string | null;
  readonly stainedM2: number;
  readonly stainedBeforeM2: number;
  readonly score: number;
  readonly rank: number;
  readonly rankBefore: number;
}

export interface CrownPreview {
  readonly treeId: string;
  /** False: the shape has no usable area, and the crown counts for nothing. */
  readonly usable: boolean;
  readonly crownM2: number;
  /** Pavement under this crown, and within its fallout. */
  readonly driplineM2: number;
  readonly falloutM2: number;
  readonly dose: number;
  /** The block of the trunk first, then those whose stain changes, in order of rank. */
  readonly blocks: readonly BlockPreview[];
}

interface Known {
  readonly standing: Standing;
  readonly stain: Stain;
  readonly ranking: Ranking;
  /** By slot. */
  readonly doses: Float64Array;
  /** From the blocks of the live overlay to those of the ground; null: the same. */
  readonly blockOf: Int32Array | null;
}

interface Records {
  readonly settings: Settings;
  readonly asOf: string;
  readonly sites: SitesNear;
  readonly severityOf: (tree: Tree) => TreeSeverity;
}

/** Serves previews from one kept state; any kept change needs a new one. */
export class CrownPreviewer {
  readonly #known: Known;
  readonly #records: Records;
  readonly #state: LiveOverlayState;
  readonly #layerShare: Float64Array;
  readonly #piecesOfBlock: readonly (readonly number[])[];
  readonly #table: RankTable;
  #under: { readonly slot: number; readonly blocks: ReadonlySet<number> } | null = null;

  constructor(known: Known, records: Records, state: LiveOverlayState) {
    this.#known = known;
    this.#records = records;
    this.#state = state;
    this.#layerShare = layerShares(records.settings);
    this.#piecesOfBlock = piecesOfBlocks(known);
    this.#table = new RankTable(known.ranking);
  }

  preview(tree: Tree): CrownPreview {
    const slot = this.#state.slotOf(tree.treeId);
    const crown = this.#state.place(tree);
    const before = this.#blocksUnder(slot);
    const pieces = this.#state.show(slot, crown);
    const severity = this.#records.severityOf(tree);
    const dose = this.#records.settings.dose_coefficient * severity.weightedSeverity;
    const doses: SlotDoses = { slot, dose, of: this.#known.doses };
    const trunk = this.#blockOfTrunk(tree);
    const touched = new Set<number>(trunk < 0 ? [] : [trunk]);
    for (const block of [...before, ...this.#blocksIn(pieces, slot)]) touched.add(block);
    const moved = { tree, slot, severity, crown, trunk };
    const own = this.#ownAreas(pieces, slot);
    return {
      treeId: tree.treeId,
      usable: crown !== null,
      crownM2: crown?.crownM2 ?? 0,
      ...own,
      dose,
      blocks: this.#ranked([...touched], doses, moved),
    };
  }

  #ranked(blocks: readonly number[], doses: SlotDoses, moved: Moved): BlockPreview[] {
    const { standing, stain } = this.#known;
    const { ground } = standing;
    const { settings, asOf } = this.#records;
    const evidence = blocks.map((block) => {
      const { parts, stainedM2, staining } = this.#stainOf(block, doses);
      const severities = this.#severitiesIn(block, moved);
      const facts = { stained: parts, complaints: [], severities, sites: 0, bloomState: 'unknown' as const };
      const fresh = criterionAmounts(facts, settings.priority, asOf);
      const kept = this.#table.amounts(block);
      const sensitive_sites = this.#sitesOf(staining, moved);
      const { stained, foot_traffic, worst_severity } = fresh;
      const amounts = { ...kept, stained, foot_traffic, worst_severity, sensitive_sites };
      return { blockId: ground.blocks[block].blockId, stainedM2, amounts };
    });
    const scored = rankBlocks(evidence, settings.priority);
    const ranks = this.#table.ranksWith(scored.map((each) => ({ ...each, block: blocks[each.index] })));
    return scored
      .map(({ index, blockId, score, stainedM2 }): BlockPreview => {
        const block = blocks[index];
        return {
          blockId,
          name: ground.blocks[block].name,
          stainedM2,
          stainedBeforeM2: stain.ledgers.byBlock.stainedM2[block],
          score,
          rank: ranks.get(block) ?? 0,
          rankBefore: this.#table.rank(block),
        };
      })
      .sort((a, b) => trunkFirst(a, b, ground.blocks[moved.trunk]?.blockId) || a.rank - b.rank);
  }

  /** Stained area of a block by kind and traffic, summed anew over its pieces as the rank stage does. */
  #stainOf(block: number, doses: SlotDoses) {
    const classes = FOOT_TRAFFIC.length + 1;
    const sums = new BalancedSums(PAVEMENT_KINDS.length * classes + 1);
    const total = PAVEMENT_KINDS.length * classes;
    const staining = new Set<number>();
    for (const piece of this.#piecesOfBlock[block]) {
      const { kind, footTraffic } = this.#known.standing.ground.pavement[piece].pavement;
      const traffic = footTraffic === undefined ? FOOT_TRAFFIC.length : FOOT_TRAFFIC.indexOf(footTraffic);
      const part = PAVEMENT_KINDS.indexOf(kind) * classes + traffic;
      const cells = this.#state.overlay.cells(piece);
      for (let i = 0; i < cells.block.length; i++) {
        if (this.#numbered(cells.block[i]) !== block) continue;
        let dose = 0;
        for (let entry = cells.coverStart[i]; entry < cells.coverStart[i + 1]; entry++) {
          const zone = cells.zone[entry];
          const own = this.#layerShare[cells.layer[entry]] * doseOf(doses, zone);
          if (own > 0) staining.add(zone);
          dose += own;
        }
        const stainedM2 = cells.areaM2[i] * -Math.expm1(-dose);
        if (stainedM2 === 0) continue;
        sums.add(part, stainedM2);
        sums.add(total, stainedM2);
      }
    }
    const parts: StainedPart[] = [];
    for (let part = 0; part < total; part++) {
      const kind = PAVEMENT_KINDS[Math.floor(part / classes)];
      if (sums.at(part) > 0) parts.push({ kind, footTraffic: FOOT_TRAFFIC[part % classes], stainedM2: sums.at(part) });
    }
    return { parts, stainedM2: sums.at(total), staining };
  }

  /** This crown's own pavement, overlaps with other crowns not removed. */
  #ownAreas(pieces: readonly number[], slot: number): { readonly driplineM2: number; readonly falloutM2: number } {
    const sums = new BalancedSums(2);
    for (const piece of pieces) {
      const cells = this.#state.overlay.cells(piece);
      for (let i = 0; i < cells.block.length; i++) {
        for (let entry = cells.coverStart[i]; entry < cells.coverStart[i + 1]; entry++) {
          if (cells.zone[entry] !== slot) continue;
          sums.add(1, cells.areaM2[i]);
          if (cells.layer[entry] === 0) sums.add(0, cells.areaM2[i]);
        }
      }
    }
    return { driplineM2: sums.at(0), falloutM2: sums.at(1) };
  }

  /** Blocks whose cells the kept crown of a slot covers. */
  #blocksUnder(slot: number): ReadonlySet<number> {
    if (this.#under?.slot === slot) return this.#under.blocks;
    const { standing, stain } = this.#known;
    const zone = standing.zoneOf[slot] ?? -1;
    const { blame } = stain.ledgers;
    const blocks = new Set<number>();
    for (let row = 0; row < blame.zone.length; row++)
      if (blame.zone[row] === zone && blame.block[row] >= 0) blocks.add(blame.block[row]);
    this.#under = { slot, blocks };
    return blocks;
  }

  #blocksIn(pieces: readonly number[], slot: number): ReadonlySet<number> {
    const blocks = new Set<number>();
    for (const piece of pieces) {
      const cells = this.#state.overlay.cells(piece);
      for (let i = 0; i < cells.block.length; i++) {
        const block = this.#numbered(cells.block[i]);
        if (block < 0 || blocks.has(block)) continue;
        for (let entry = cells.coverStart[i]; entry < cells.coverStart[i + 1]; entry++)
          if (cells.zone[entry] === slot) blocks.add(block);
      }
    }
    return blocks;
  }

  #severitiesIn(block: number, { tree, severity, trunk }: Moved): number[] {
    const { ranking, standing, stain } = this.#known;
    const { crowns } = standing.ground;
    const others = ranking.notes[block].zones.filter((zone) => crowns[zone].tree.treeId !== tree.treeId);
    const all = others.map((zone) => stain.severities[zone]);
    return fouling(block === trunk ? [...all, severity] : all).map(({ share }) => share);
  }

  #sitesOf(staining: ReadonlySet<number>, moved: Moved): number {
    const near = new Set<number>();
    for (const slot of staining) {
      const crown = slot === moved.slot ? moved.crown : this.#state.crowns[slot];
      if (crown) for (const site of this.#records.sites.of(crown)) near.add(site);
    }
    return near.size;
  }

  #blockOfTrunk({ at }: Tree): number {
    const { near } = this.#known.standing.ground;
    const [x, y] = near.forward([at.lon, at.lat]);
    return near.blocks.holding(x, y);
  }

  #numbered(block: number): number {
    const { blockOf } = this.#known;
    return block < 0 || blockOf === null ? block : blockOf[block];
  }
}

interface Moved {
  readonly tree: Tree;
  readonly slot: number;
  readonly severity: TreeSeverity;
  readonly crown: PlacedCrown | null;
  readonly trunk: number;
}

/** Doses by slot, one of them changed. */
interface SlotDoses {
  readonly slot: number;
  readonly dose: number;
  readonly of: Float64Array;
}

function doseOf({ slot, dose, of }: SlotDoses, zone: number): number {
  return zone === slot ? dose : of[zone];
}

/** Which pieces have ground in which block: a matter of pavement and blocks alone. */
function piecesOfBlocks({ standing, stain }: Known): number[][] {
  const { block, piece } = stain.ledgers.runs;
  const pieces: number[][] = standing.ground.blocks.map(() => []);
  block.forEach((each, run) => {
    if (each >= 0) pieces[each].push(piece[run]);
  });
  return pieces;
}

function trunkFirst(a: BlockPreview, b: BlockPreview, trunkId: string | undefined): number {
  return Number(b.blockId === trunkId) - Number(a.blockId === trunkId);
}
