/** All regions of an overlay, with box indexes to find the neighbours of a piece; zones are made as they are needed. */
import Flatbush from 'flatbush';
import type { Region } from '../ring.ts';
import type { Box, FalloutZone, OverlayInput, ZoneSource } from './ledger.ts';
import { BLOCK, EXCLUSION, type Neighbourhood, ZONE } from './neighbourhood.ts';

/** Zones are kept for the pieces nearby up to this many coordinates (8 bytes each), then dropped all at once. */
const KEPT_COORDINATES = 4_000_000;

export class Scene {
  private readonly input: OverlayInput;
  private readonly zones: ZoneSource;
  private readonly pieceBoxes: Box[];
  private readonly pieceIndex: Flatbush | null;
  private readonly blockIndex: Flatbush | null;
  private readonly zoneIndex: Flatbush | null;
  private readonly blockBoxes: Box[];
  private readonly keptZones = new Map<number, readonly Region[]>();
  private keptCoordinates = 0;

  constructor(input: OverlayInput) {
    this.input = input;
    this.zones = 'count' in input.zones ? input.zones : zonesInMemory(input.zones);
    this.pieceBoxes = input.pieces.map(boxOf);
    this.pieceIndex = packed(input.pieces.length, (i) => this.pieceBoxes[i]);
    this.blockBoxes = input.blocks.map(boxOf);
    this.blockIndex = packed(input.blocks.length, (i) => this.blockBoxes[i]);
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
    const { pieces, blocks } = this.input;
    if (!neighbourhood.begin(pieces[piece], piece)) {
      return false;
    }
    const box = this.pieceBoxes[piece];
    for (const other of near(this.pieceIndex, box)) {
      if (other < piece && neighbourhood.reaches(this.pieceBoxes[other])) {
        neighbourhood.add(pieces[other], { role: EXCLUSION, number: other, ring: 0 });
      }
    }
    for (const block of near(this.blockIndex, box)) {
      if (neighbourhood.reaches(this.blockBoxes[block])) {
        neighbourhood.add(blocks[block], { role: BLOCK, number: block, ring: 0 });
      }
    }
    for (const zone of near(this.zoneIndex, box)) {
      if (neighbourhood.reaches(this.zones.box(zone))) {
        this.zoneLayers(zone).forEach((layer, ring) => {
          neighbourhood.add(layer, { role: ZONE, number: zone, ring });
        });
      }
    }
    return true;
  }

  private zoneLayers(zone: number): readonly Region[] {
    let layers = this.keptZones.get(zone);
    if (!layers) {
      if (this.keptCoordinates > KEPT_COORDINATES) {
        this.keptZones.clear();
        this.keptCoordinates = 0;
      }
      layers = this.zones.layers(zone);
      this.keptZones.set(zone, layers);
      for (const layer of layers) {
        for (const ring of layer) {
          this.keptCoordinates += ring.length;
        }
      }
    }
    return layers;
  }
}

function zonesInMemory(zones: readonly FalloutZone[]): ZoneSource {
  const boxes = zones.map((zone) => zone.layers.map(boxOf).reduce(joined, EMPTY_BOX));
  return {
    count: zones.length,
    box: (i) => boxes[i],
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
