/** The overlay of crowns' fallout zones on pavement and blocks, piece by piece: the door of the engine. */
import Flatbush from 'flatbush';
import type { Region } from '../ring.ts';
import { ChainStore } from './chains.ts';
import { CoverStates } from './cover-states.ts';
import type { OverlayInput, OverlayLedger } from './ledger.ts';
import { LedgerBuilder } from './ledger-builder.ts';
import { BLOCK, EXCLUSION, Neighbourhood, ZONE } from './neighbourhood.ts';
import { areaByStateInSlabs } from './slabs.ts';
import { Sweep } from './sweep.ts';

/** When the sweep itself cannot vouch for a piece to this bound, the plain twin decides it. */
const DOUBT_LIMIT_M2 = 1e-10;

/**
 * Every square metre of pavement by piece, block and covering zones.
 *
 * Regions are read by the non-zero winding rule; no region is refused. Overlapping pieces (or blocks) share nothing: the
 * common part goes to the one listed first. Pieces, blocks and zones may be empty; the ledger then has no such cells.
 *
 * @example
 * const square = [Float64Array.of(0, 0, 2, 0, 2, 2, 0, 2)];
 * const half = [Float64Array.of(1, 0, 3, 0, 3, 2, 1, 2)];
 * reckonOverlay({ zones: [{ layers: [half] }], pieces: [square], blocks: [] }).areaM2; // [2 (uncovered), 2 (under zone 0)]
 */
export function reckonOverlay(input: OverlayInput): OverlayLedger {
  const scene = new Scene(input);
  const states = new CoverStates();
  const neighbourhood = new Neighbourhood(scene.chains);
  const ledger = new LedgerBuilder();
  const sweep = new Sweep();
  for (let piece = 0; piece < input.pieces.length; piece++) {
    if (!scene.gather(piece, neighbourhood)) {
      continue;
    }
    states.reset();
    sweep.run(neighbourhood, states);
    if (sweep.doubtM2 > DOUBT_LIMIT_M2) {
      ledger.addPiece(piece, neighbourhood.layers, states, areaByStateInSlabs(neighbourhood, states));
    } else {
      ledger.addPiece(piece, neighbourhood.layers, states, sweep.areas.subarray(0, states.count));
    }
  }
  return ledger.finish();
}

/** All regions of the input as chains, with box indexes to find the neighbours of a piece. */
class Scene {
  readonly chains = new ChainStore();
  private readonly pieces: RegionIndex;
  private readonly blocks: RegionIndex;
  private readonly zones: RegionIndex;
  /** First region of each zone; its layers follow. */
  private readonly zoneRegion: Int32Array;
  private readonly layerCount: Uint8Array;

  constructor(input: OverlayInput) {
    this.pieces = new RegionIndex(this.chains, input.pieces);
    this.blocks = new RegionIndex(this.chains, input.blocks);
    this.layerCount = Uint8Array.from(input.zones, (zone) => zone.layers.length);
    this.zoneRegion = Int32Array.from(input.zones, (zone) => {
      const regions = zone.layers.map((layer) => this.chains.add(layer));
      return regions[0] ?? -1;
    });
    this.zones = RegionIndex.ofZones(this.chains, this.zoneRegion, this.layerCount);
  }

  /** Fills the neighbourhood of a piece; false when the piece has no extent. */
  gather(piece: number, neighbourhood: Neighbourhood): boolean {
    const region = this.pieces.first + piece;
    neighbourhood.begin(region);
    if (!(neighbourhood.minX < neighbourhood.maxX && neighbourhood.minY < neighbourhood.maxY)) {
      return false;
    }
    for (const other of this.pieces.near(neighbourhood)) {
      if (other < piece) {
        neighbourhood.add(this.pieces.first + other, { role: EXCLUSION, number: other, ring: 0 });
      }
    }
    for (const block of this.blocks.near(neighbourhood)) {
      neighbourhood.add(this.blocks.first + block, { role: BLOCK, number: block, ring: 0 });
    }
    for (const zone of this.zones.near(neighbourhood)) {
      for (let ring = 0; ring < this.layerCount[zone]; ring++) {
        neighbourhood.add(this.zoneRegion[zone] + ring, { role: ZONE, number: zone, ring });
      }
    }
    return true;
  }
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** A packed box index over consecutive regions of a chain store. Answers come in ascending order. */
class RegionIndex {
  readonly first: number;
  private readonly tree: Flatbush | null;

  constructor(chains: ChainStore, regions: readonly Region[]) {
    this.first = chains.regionCount;
    for (const region of regions) {
      chains.add(region);
    }
    this.tree = packed(regions.length, (i) => chains.bounds.subarray(4 * (this.first + i), 4 * (this.first + i) + 4));
  }

  /** The same over zones: the box of a zone is that of all its layers. */
  static ofZones(chains: ChainStore, zoneRegion: Int32Array, layerCount: Uint8Array): RegionIndex {
    const index = new RegionIndex(chains, []);
    const tree = packed(zoneRegion.length, (zone) => {
      const box = Float64Array.of(Infinity, Infinity, -Infinity, -Infinity);
      for (let region = zoneRegion[zone]; region < zoneRegion[zone] + layerCount[zone]; region++) {
        box[0] = Math.min(box[0], chains.bounds[4 * region]);
        box[1] = Math.min(box[1], chains.bounds[4 * region + 1]);
        box[2] = Math.max(box[2], chains.bounds[4 * region + 2]);
        box[3] = Math.max(box[3], chains.bounds[4 * region + 3]);
      }
      return box;
    });
    return Object.assign(index, { tree });
  }

  near({ minX, minY, maxX, maxY }: Box): number[] {
    return this.tree?.search(minX, minY, maxX, maxY).sort((a, b) => a - b) ?? [];
  }
}

function packed(count: number, box: (i: number) => Float64Array): Flatbush | null {
  if (count === 0) {
    return null;
  }
  const tree = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    const [minX, minY, maxX, maxY] = box(i);
    tree.add(minX, minY, maxX, maxY);
  }
  tree.finish();
  return tree;
}
