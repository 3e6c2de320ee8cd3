/** All regions of an overlay, with box indexes to find the neighbours of a piece, and chains made as they are needed. */
import Flatbush from 'flatbush';
import type { Region } from '../ring.ts';
import { ChainStore } from './chains.ts';
import type { Box, FalloutZone, OverlayInput, ZoneSource } from './ledger.ts';
import { BLOCK, EXCLUSION, MASK, type Neighbourhood, ZONE } from './neighbourhood.ts';

/** Chains are kept for reuse by nearby pieces up to this many vertices (16 bytes each), then dropped all at once. */
const KEPT_VERTICES = 1_000_000;

export class Scene {
  readonly chains = new ChainStore();
  private readonly input: OverlayInput;
  private readonly zones: ZoneSource;
  private readonly pieceBoxes: Box[];
  private readonly pieceIndex: Flatbush | null;
  private readonly blockIndex: Flatbush | null;
  private readonly zoneIndex: Flatbush | null;
  /** Region numbers in `chains`, by piece, block and zone; for a zone the number of its first layer. */
  private readonly keptPieces = new Map<number, number>();
  private readonly keptBlocks = new Map<number, number>();
  private readonly keptZones = new Map<number, { first: number; count: number }>();

  constructor(input: OverlayInput) {
    this.input = input;
    this.zones = 'count' in input.zones ? input.zones : zonesInMemory(input.zones);
    this.pieceBoxes = input.pieces.map(boxOf);
    this.pieceIndex = packed(input.pieces.length, (i) => this.pieceBoxes[i]);
    this.blockIndex = packed(input.blocks.length, (i) => boxOf(input.blocks[i]));
    this.zoneIndex = packed(this.zones.count, this.zones.box);
  }

  /** Piece numbers so ordered that neighbours in space are near in the list (Morton order of the boxes' middles). */
  piecesBySpace(): Int32Array {
    const all = this.pieceBoxes.reduce(joined, EMPTY_BOX);
    const scale = 0xffff / Math.max(all.maxX - all.minX, all.maxY - all.minY, Number.MIN_VALUE);
    const codes = Float64Array.from(this.pieceBoxes, ({ minX, minY, maxX, maxY }) =>
      mortonCode(((minX + maxX) / 2 - all.minX) * scale, ((minY + maxY) / 2 - all.minY) * scale),
    );
    return Int32Array.from(codes.keys()).sort((a, b) => codes[a] - codes[b] || a - b);
  }

  /** Fills the neighbourhood of a piece; false when the piece has no extent. */
  gather(piece: number, neighbourhood: Neighbourhood): boolean {
    const box = this.pieceBoxes[piece];
    if (!(box.minX < box.maxX && box.minY < box.maxY)) {
      return false;
    }
    this.dropChainsIfMany();
    neighbourhood.begin(box);
    neighbourhood.add(this.pieceRegion(piece), { role: MASK, number: piece, ring: 0 });
    for (const other of near(this.pieceIndex, box)) {
      if (other < piece) {
        neighbourhood.add(this.pieceRegion(other), { role: EXCLUSION, number: other, ring: 0 });
      }
    }
    for (const block of near(this.blockIndex, box)) {
      neighbourhood.add(this.blockRegion(block), { role: BLOCK, number: block, ring: 0 });
    }
    for (const zone of near(this.zoneIndex, box)) {
      const { first, count } = this.zoneRegions(zone);
      for (let ring = 0; ring < count; ring++) {
        neighbourhood.add(first + ring, { role: ZONE, number: zone, ring });
      }
    }
    return true;
  }

  private pieceRegion(piece: number): number {
    return kept(this.keptPieces, piece, () => this.chains.add(this.input.pieces[piece]));
  }

  private blockRegion(block: number): number {
    return kept(this.keptBlocks, block, () => this.chains.add(this.input.blocks[block]));
  }

  private zoneRegions(zone: number): { first: number; count: number } {
    return kept(this.keptZones, zone, () => {
      const first = this.chains.regionCount;
      const layers = this.zones.layers(zone);
      for (const layer of layers) {
        this.chains.add(layer);
      }
      return { first, count: layers.length };
    });
  }

  private dropChainsIfMany(): void {
    if (this.chains.vertexCount > KEPT_VERTICES) {
      this.chains.clear();
      this.keptPieces.clear();
      this.keptBlocks.clear();
      this.keptZones.clear();
    }
  }
}

function kept<T>(store: Map<number, T>, key: number, make: () => T): T {
  let value = store.get(key);
  if (value === undefined) {
    value = make();
    store.set(key, value);
  }
  return value;
}

function zonesInMemory(zones: readonly FalloutZone[]): ZoneSource {
  return {
    count: zones.length,
    box: (i) => zones[i].layers.map(boxOf).reduce(joined, EMPTY_BOX),
    layers: (i) => zones[i].layers,
  };
}

const EMPTY_BOX: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** The box of a region's finite coordinates; an empty region has an empty box (∞, ∞, −∞, −∞). */
function boxOf(region: Region): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const ring of region) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const x = ring[i];
      const y = ring[i + 1];
      if (Number.isFinite(x) && Number.isFinite(y)) {
        minX = Math.min(minX, x);
        maxX = Math.max(maxX, x);
        minY = Math.min(minY, y);
        maxY = Math.max(maxY, y);
      }
    }
  }
  return { minX, minY, maxX, maxY };
}

function joined(a: Box, b: Box): Box {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

function packed(count: number, boxAt: (i: number) => Box): Flatbush | null {
  if (count === 0) {
    return null;
  }
  const index = new Flatbush(count);
  for (let i = 0; i < count; i++) {
    const { minX, minY, maxX, maxY } = boxAt(i);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return index;
}

/** Numbers of the boxes that touch `box`, ascending. */
function near(index: Flatbush | null, box: Box): number[] {
  return index?.search(box.minX, box.minY, box.maxX, box.maxY).sort((a, b) => a - b) ?? [];
}

/** Interleaves the low 16 bits of two numbers; places that are not numbers go first. */
function mortonCode(x: number, y: number): number {
  let code = 0;
  for (let bit = 15; bit >= 0; bit--) {
    code = 4 * code + 2 * ((y >> bit) & 1) + ((x >> bit) & 1);
  }
  return code;
}
