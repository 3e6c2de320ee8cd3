/** A random town in the plane, from a seed: square blocks, sidewalks with a hole, streets, plazas and crowns in every bad habit. */
import { type FalloutZone, type Region, type Ring, reversed } from '@crownfall/geometry';
import { PAVEMENT_KINDS, type PavementKind } from '@crownfall/survey';

export interface Town {
  readonly zones: readonly FalloutZone[];
  readonly pieces: readonly Region[];
  readonly pieceKind: Uint8Array;
  readonly blocks: readonly Region[];
  readonly dose: Float64Array;
}

export const LAYER_SHARES = [1, 0.5, 0.25];
const BLOCK_M = 60;
const SIDEWALK_M = 2.5;

/** Numbers in [0, 1) from a seed (a Weyl sequence through a 32-bit mixer). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 2 ** 32;
  };
}

/** `across` × `across` blocks with about seven crowns each. */
export function randomTown(seed: number, across = 3): Town {
  const random = seeded(seed);
  const blocks: Region[] = [];
  const pieces: Region[] = [];
  const kinds: PavementKind[] = [];
  const side = across * BLOCK_M;
  for (let row = 0; row < across; row++) {
    for (let column = 0; column < across; column++) {
      const x = column * BLOCK_M;
      const y = row * BLOCK_M;
      blocks.push([rectangle(x, y, x + BLOCK_M, y + BLOCK_M)]);
      const [in0, in1] = [4, BLOCK_M - 4];
      pieces.push([
        rectangle(x + in0, y + in0, x + in1, y + in1),
        reversed(rectangle(x + in0 + SIDEWALK_M, y + in0 + SIDEWALK_M, x + in1 - SIDEWALK_M, y + in1 - SIDEWALK_M)),
      ]);
      kinds.push('sidewalk');
      if (random() < 0.4) {
        // A plaza over part of the sidewalk and beyond: pieces overlap, the first listed keeps the ground.
        pieces.push([rectangle(x + 2, y + 10, x + 20, y + 10 + 20 * random())]);
        kinds.push('plaza');
      }
    }
    // A street along the border of two rows of blocks, so that it lies in all of them.
    pieces.push([rectangle(-5, row * BLOCK_M - 4, side + 5, row * BLOCK_M + 4)]);
    kinds.push('carriageway');
  }
  const zones = crownsOf(random, across);
  return {
    zones,
    pieces,
    pieceKind: Uint8Array.from(kinds, (kind) => PAVEMENT_KINDS.indexOf(kind)),
    blocks,
    dose: Float64Array.from(zones, () => (random() < 0.3 ? 0 : 1.5 * random())),
  };
}

/** The town with every coordinate carried by a rule. */
export function movedTown(town: Town, move: (x: number, y: number) => readonly [number, number]): Town {
  const ring = (from: Ring) => {
    const to = new Float64Array(from.length);
    for (let i = 0; i < from.length; i += 2) [to[i], to[i + 1]] = move(from[i], from[i + 1]);
    return to;
  };
  const region = (from: Region) => from.map(ring);
  return {
    ...town,
    zones: town.zones.map((zone) => ({ layers: zone.layers.map(region) })),
    pieces: town.pieces.map(region),
    blocks: town.blocks.map(region),
  };
}

function rectangle(x0: number, y0: number, x1: number, y1: number): Ring {
  return Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1);
}

/** A star-shaped outline and its two drift rings, as scaled copies so that they nest. */
function star(x: number, y: number, radiusM: number, wobble: () => number = () => 0): FalloutZone {
  const corners = 24;
  const radii = Array.from({ length: corners }, () => radiusM * (1 + 0.3 * wobble()));
  const grown = (byM: number): Region => [
    Float64Array.from({ length: 2 * corners }, (_, i) => {
      const angle = (2 * Math.PI * (i >> 1)) / corners;
      const reach = radii[i >> 1] * (1 + byM / radiusM);
      return i % 2 === 0 ? x + reach * Math.cos(angle) : y + reach * Math.sin(angle);
    }),
  ];
  return { layers: [grown(0), grown(0.5), grown(1)] };
}

function crownsOf(random: () => number, across: number): FalloutZone[] {
  const side = across * BLOCK_M;
  const zones: FalloutZone[] = [];
  for (let i = 0; i < 7 * across * across; i++) {
    // Near a sidewalk: on a block's border, or anywhere along it.
    const along = side * random();
    const beside = BLOCK_M * Math.floor((across + 1) * random()) + 12 * (random() - 0.5);
    const [x, y] = random() < 0.5 ? [along, beside] : [beside, along];
    zones.push(star(x, y, 2 + 4 * random(), random));
    if (random() < 0.1) zones.push(zones[zones.length - 1]);
    // A neighbour that touches at the easternmost vertex.
    if (random() < 0.1) zones.push(star(x + 9, y, 4));
  }
  // One crown over the corner of four blocks, and one far from everything.
  zones.push(star(BLOCK_M, BLOCK_M, 7), star(-500, -500, 5));
  return zones;
}
