/** What one crown's new outline would change, reckoned from the cells near it alone. */
import { criterionAmounts, rankBlocks, type StainedPart } from '@crownfall/priority';
import { BalancedSums, layerShares } from '@crownfall/stain';
import {
  FOOT_TRAFFIC,
  PAVEMENT_KINDS,
  type Settings,
  type Survey,
  severityOfTrees,
  type Tree,
  type TreeSeverity,
} from '@crownfall/survey';
import type { Ground } from '../ground/ground.ts';
import type { PlacedCrown } from '../ground/place-crowns.ts';
import { fouling, type Ranking } from '../rank-stage.ts';
import { distanceTo } from '../region-lookup.ts';
import type { Stain } from '../stain-stage.ts';
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
  readonly ground: Ground;
  readonly stain: Stain;
  readonly ranking: Ranking;
}

interface Records {
  readonly survey: Survey;
  readonly settings: Settings;
  readonly asOf: string;
}

/** Serves previews from one kept state; any kept change needs a new one. */
export class CrownPreviewer {
  readonly #known: Known;
  readonly #records: Records;
  readonly #state: LiveOverlayState;
  readonly #layerShare: Float64Array;
  /** By slot. */
  readonly #dose: Float64Array;
  readonly #piecesOfBlock: readonly (readonly number[])[];
  readonly #blockNumber: Int32Array;
  readonly #table: RankTable;
  readonly #sitesNear = new Map<number, ReadonlySet<number>>();
  readonly #sitePlaces: readonly (readonly [number, number])[];
  #severity: { readonly treeId: string; readonly host: string | undefined; readonly of: TreeSeverity } | null = null;

  #under: { readonly slot: number; readonly blocks: ReadonlySet<number> } | null = null;

  constructor(known: Known, records: Records, state: LiveOverlayState) {
    this.#known = known;
    this.#records = records;
    this.#state = state;
    this.#layerShare = layerShares(records.settings);
    this.#dose = doseBySlot(state, known.stain);
    this.#blockNumber = blockNumbers(state, known.ground);
    this.#piecesOfBlock = piecesOfBlocks(known.ground);
    this.#table = new RankTable(known.ranking);
    this.#sitePlaces = records.survey.sites.map(({ at }) => {
      const [x, y] = known.ground.near.forward(Float64Array.of(at.lon, at.lat));
      return [x, y];
    });
  }

  preview(tree: Tree): CrownPreview {
    const slot = this.#state.slotOf(tree.treeId);
    const crown = this.#state.place(tree);
    const before = this.#blocksUnder(slot);
    const pieces = this.#state.show(slot, crown);
    const severity = this.#severityOf(tree);
    const dose = this.#records.settings.dose_coefficient * severity.weightedSeverity;
    const doses: SlotDoses = { slot, dose, of: this.#dose };
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
    const { ground, stain } = this.#known;
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
      const { kind, footTraffic } = this.#known.ground.pavement[piece].pavement;
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
    const zone = this.#state.crowns[slot] ? this.#state.crowns.slice(0, slot).filter((crown) => crown).length : -1;
    const { blame } = this.#known.stain.ledgers;
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

  #severityOf(tree: Tree): TreeSeverity {
    if (this.#severity?.treeId !== tree.treeId || this.#severity.host !== tree.host) {
      const { survey, settings, asOf } = this.#records;
      const at = survey.trees.findIndex(({ treeId }) => treeId === tree.treeId);
      const trees = at < 0 ? [...survey.trees, tree] : survey.trees.with(at, tree);
      const reading = severityOfTrees({ ...survey, trees }, settings, asOf);
      this.#severity = { treeId: tree.treeId, host: tree.host, of: reading.trees[at < 0 ? trees.length - 1 : at] };
    }
    return this.#severity.of;
  }

  #severitiesIn(block: number, { tree, severity, trunk }: Moved): number[] {
    const { ranking, ground, stain } = this.#known;
    const others = ranking.notes[block].zones.filter((zone) => ground.crowns[zone].tree.treeId !== tree.treeId);
    const all = others.map((zone) => stain.severities[zone]);
    return fouling(block === trunk ? [...all, severity] : all).map(({ share }) => share);
  }

  #sitesOf(staining: ReadonlySet<number>, moved: Moved): number {
    const sites = new Set<number>();
    for (const slot of staining) for (const site of this.#sitesNearSlot(slot, moved)) sites.add(site);
    return sites.size;
  }

  #sitesNearSlot(slot: number, moved: Moved): ReadonlySet<number> {
    if (slot === moved.slot) return moved.crown ? this.#sitesNearCrown(moved.crown) : new Set();
    const known = this.#sitesNear.get(slot);
    if (known) return known;
    const crown = this.#state.crowns[slot];
    const found = crown ? this.#sitesNearCrown(crown) : new Set<number>();
    this.#sitesNear.set(slot, found);
    return found;
  }

  /** By the outline as the rank stage sees it: out to longitude and latitude and back. */
  #sitesNearCrown({ geometry, outline }: PlacedCrown): ReadonlySet<number> {
    const reachM = this.#records.settings.priority.site_distance_m;
    const { forward } = this.#known.ground.near;
    const near = new Set<number>();
    this.#sitePlaces.forEach(([x, y], site) => {
      // A crown is small against the reach: most sites are ruled out by one vertex.
      if (geometry.kind !== 'area' || Math.hypot(outline[0][0] - x, outline[0][1] - y) > reachM + 200) return;
      const rings = geometry.polygons.flatMap((polygon) => polygon.map(forward));
      if (distanceTo(rings, x, y) <= reachM) near.add(site);
    });
    return near;
  }

  #blockOfTrunk({ at }: Tree): number {
    const { near } = this.#known.ground;
    const [x, y] = near.forward(Float64Array.of(at.lon, at.lat));
    return near.blocks.holding(x, y);
  }

  #numbered(block: number): number {
    return block < 0 ? -1 : this.#blockNumber[block];
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

function doseBySlot({ crowns }: LiveOverlayState, stain: Stain): Float64Array {
  const { dose } = stain.ledgers.field;
  let zone = 0;
  return Float64Array.from(crowns, (crown) => (crown ? dose[zone++] : 0));
}

/** From the numbers the live overlay uses to those of the ground, which leaves bare square cells out. */
function blockNumbers({ overlay }: LiveOverlayState, { ledger, pavement }: Ground): Int32Array {
  let most = -1;
  for (let piece = 0; piece < pavement.length; piece++)
    for (const block of overlay.cells(piece).block) if (block > most) most = block;
  const number = new Int32Array(most + 1).fill(-1);
  // Cells of both are in the same order, piece by piece.
  let cell = 0;
  for (let piece = 0; piece < pavement.length; piece++)
    for (const block of overlay.cells(piece).block) {
      if (block >= 0) number[block] = ledger.block[cell];
      cell++;
    }
  return number;
}

/** Which pieces have ground in which block: a matter of pavement and blocks alone. */
function piecesOfBlocks({ ledger, blocks }: Ground): number[][] {
  const pieces: number[][] = blocks.map(() => []);
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const list = pieces[ledger.block[cell]];
    if (list !== undefined && list[list.length - 1] !== ledger.piece[cell]) list.push(ledger.piece[cell]);
  }
  return pieces;
}

function trunkFirst(a: BlockPreview, b: BlockPreview, trunkId: string | undefined): number {
  return Number(b.blockId === trunkId) - Number(a.blockId === trunkId);
}
