/** All regions of an overlay, with box indexes to find the neighbours of a piece; zones are made as they are needed. */
import type { Region } from '../ring.ts';
import { BoxIndex, boxOf, EMPTY_BOX, joined, type PackedBoxes } from './box-index.ts';
import type { Box, FalloutZone, OverlayInput, ZoneSource } from './ledger.ts';
import { BLOCK, EXCLUSION, Neighbourhood, ZONE } from './neighbourhood.ts';

/** Zones are kept for the pieces nearby up to this many coordinates (8 bytes each), then dropped all at once. */
const KEPT_COORDINATES = 4_000_000;

export class Scene {
  private readonly pieces: Region[];
  private readonly blocks: readonly Region[];
  private readonly zones: ZoneSource;
  /** Zones that were set after the start, and their boxes. */
  private readonly setZones = new Map<number, { layers: readonly Region[]; box: Box }>();
  private readonly pieceBoxes: Box[];
  private readonly blockBoxes: readonly Box[];
  private readonly pieceIndex: BoxIndex;
  private readonly blockIndex: BoxIndex;
  private readonly zoneIndex: BoxIndex;
  private readonly frame = new Neighbourhood();
  private readonly keptZones = new Map<number, readonly Region[]>();
  private keptCoordinates = 0;

  constructor(input: OverlayInput, packed?: { pieces: PackedBoxes; blocks: PackedBoxes; zones: PackedBoxes }) {
    this.pieces = [...input.pieces];
    this.blocks = input.blocks;
    this.zones = 'count' in input.zones ? input.zones : zonesInMemory(input.zones);
    this.pieceBoxes = input.pieces.map(boxOf);
    this.blockBoxes = input.blocks.map(boxOf);
    this.pieceIndex = new BoxIndex(input.pieces.length, (i) => this.pieceBoxes[i], packed?.pieces);
    this.blockIndex = new BoxIndex(input.blocks.length, (i) => this.blockBoxes[i], packed?.blocks);
    this.zoneIndex = new BoxIndex(this.zones.count, (i) => this.zoneBox(i), packed?.zones);
  }

  /** The indexes of all boxes as bytes, for other threads. */
  packedBoxes(shared: boolean): { pieces: PackedBoxes; blocks: PackedBoxes; zones: PackedBoxes } {
    return {
      pieces: this.pieceIndex.bytes(shared),
      blocks: this.blockIndex.bytes(shared),
      zones: this.zoneIndex.bytes(shared),
    };
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
    const { pieces, blocks } = this;
    if (!neighbourhood.begin(pieces[piece], piece)) {
      return false;
    }
    const box = this.pieceBoxes[piece];
    for (const other of this.pieceIndex.near(box)) {
      if (other < piece && neighbourhood.reaches(this.pieceBoxes[other])) {
        neighbourhood.add(pieces[other], { role: EXCLUSION, number: other, ring: 0 });
      }
    }
    for (const block of this.blockIndex.near(box)) {
      if (neighbourhood.reaches(this.blockBoxes[block])) {
        neighbourhood.add(blocks[block], { role: BLOCK, number: block, ring: 0 });
      }
    }
    for (const zone of this.zoneIndex.near(box)) {
      if (neighbourhood.reaches(this.zoneBox(zone))) {
        this.zoneLayers(zone).forEach((layer, ring) => {
          neighbourhood.add(layer, { role: ZONE, number: zone, ring });
        });
      }
    }
    return true;
  }

  /** Puts a zone (or, with no layers, none) in the place of zone `i`; numbers of the pieces that it or its forerunner may touch. */
  setZone(i: number, layers: readonly Region[]): number[] {
    const before = this.zoneBox(i);
    const box = boxOfLayers(layers);
    this.setZones.set(i, { layers, box });
    this.zoneIndex.move(i);
    return this.piecesNear(before, box).filter(
      (piece) => this.hasInReach(piece, before) || this.hasInReach(piece, box),
    );
  }

  /** The same for a piece: itself, and later pieces, which its overlap is taken from. */
  setPiece(i: number, piece: Region): number[] {
    const before = this.pieceBoxes[i] ?? EMPTY_BOX;
    this.pieces[i] = piece;
    this.pieceBoxes[i] = boxOf(piece);
    this.pieceIndex.move(i);
    const near = this.piecesNear(before, this.pieceBoxes[i]).filter((other) => other > i);
    return [i, ...near];
  }

  /** By the piece's own frame: a street aslant has a wide box that most crowns beside it touch and few reach. */
  private hasInReach(piece: number, box: Box): boolean {
    const { frame } = this;
    return frame.turnTo(this.pieces[piece]) && frame.reaches(box);
  }

  private piecesNear(a: Box, b: Box): number[] {
    const near = new Set([...this.pieceIndex.near(a), ...this.pieceIndex.near(b)]);
    return [...near].sort((one, other) => one - other);
  }

  private zoneBox(zone: number): Box {
    return this.setZones.get(zone)?.box ?? (zone < this.zones.count ? this.zones.box(zone) : EMPTY_BOX);
  }

  private zoneLayers(zone: number): readonly Region[] {
    let layers = this.setZones.get(zone)?.layers ?? this.keptZones.get(zone);
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
  const boxes = zones.map((zone) => boxOfLayers(zone.layers));
  return {
    count: zones.length,
    box: (i) => boxes[i],
    layers: (i) => zones[i].layers,
  };
}

function boxOfLayers(layers: readonly Region[]): Box {
  return layers.map(boxOf).reduce(joined, EMPTY_BOX);
}

/** Interleaves the low 16 bits of two numbers; places that are not numbers go first. */
function mortonCode(x: number, y: number): number {
  let code = 0;
  for (let bit = 15; bit >= 0; bit--) {
    code = 4 * code + 2 * ((y >> bit) & 1) + ((x >> bit) & 1);
  }
  return code;
}
