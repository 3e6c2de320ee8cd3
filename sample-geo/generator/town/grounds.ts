/** What stands inside the property line: buildings, parking lots, plazas, drives, pools, lawns. */
import { type Random, randomFor } from '../random.ts';
import type { TownBlock } from './blocks.ts';
import { onLoop, type Point, type Side, strip } from './loop.ts';
import { centroid, circle, convexOverlap, isInside, type Ring, rectangle } from './shapes.ts';

export interface Building {
  readonly ring: Ring;
  readonly roof: 'hip' | 'flat';
  readonly eaves: number;
  readonly colour: number;
}

/** A drive from the kerb over the sidewalk into the property, by its stretch of the loop and how far it goes in. */
export interface Drive {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
}

interface Plaza {
  readonly shell: Ring;
  readonly holes: readonly Ring[];
  /** Which of the holes hold plants (the others water). */
  readonly planters: readonly Ring[];
}

export interface Grounds {
  readonly buildings: readonly Building[];
  readonly drives: readonly Drive[];
  /** Convex, four corners; stalls run across the first edge. */
  readonly lots: readonly Ring[];
  readonly plazas: readonly Plaza[];
  readonly pools: readonly Ring[];
  /** Lawns among the paved yards. */
  readonly beds: readonly Ring[];
  /** Middle lines of park paths with their width; null where nobody measured it. */
  readonly paths: readonly { readonly line: readonly Point[]; readonly width: number | null }[];
  readonly pond: Ring | null;
}

interface Draft {
  readonly buildings: Building[];
  readonly drives: Drive[];
  readonly lots: Ring[];
  readonly plazas: Plaza[];
  readonly pools: Ring[];
  readonly beds: Ring[];
  readonly paths: { readonly line: readonly Point[]; readonly width: number | null }[];
  pond: Ring | null;
}

/** Lays out one block. */
export function groundsOf(block: TownBlock): Grounds {
  const random = randomFor(`grounds ${block.id}`);
  const draft: Draft = { buildings: [], drives: [], lots: [], plazas: [], pools: [], beds: [], paths: [], pond: null };
  if (block.use === 'park') layPark(block, draft);
  else if (block.use === 'plaza') layPlazaBlock(block, draft);
  else {
    if (block.use === 'school' || block.use === 'clinic') layCampus(block, draft);
    if (block.id === 'B13') layMarket(block, draft);
    if (block.use === 'shops') layLot(block, draft, random);
    layBuildings(block, draft, random);
    if (block.use === 'shops') layYard(block, draft, random);
  }
  return draft;
}

function layBuildings(block: TownBlock, draft: Draft, random: Random): void {
  const shops = block.use !== 'homes';
  for (const side of block.loop.sides) {
    let s = side.straightFrom + (shops ? 0.5 : 4);
    while (s < side.straightTo - 9) {
      const frontage = shops ? random.between(13, 27) : random.between(15, 19);
      const inAt = shops ? 0 : 3.6;
      const width = Math.min(shops ? frontage - 0.6 : random.between(9.5, 12.5), side.straightTo - s - inAt - 1);
      const setback = shops ? 0.6 : random.between(5, 7.5);
      const depth = shops ? random.between(14, 24) : random.between(8, 12);
      const ring = quad(block, [s + inAt, s + inAt + width], [-setback - depth, -setback]);
      if (width > 7 && fits(block, draft, ring)) {
        const eaves = shops ? random.between(4, 10.5) : random.between(3, 4.2);
        draft.buildings.push({
          ring,
          roof: shops && random.chance(0.8) ? 'flat' : 'hip',
          eaves,
          colour: random.whole(0, 5),
        });
        if (!shops) layHome(block, draft, random, { s, setback, depth });
      }
      s += frontage;
    }
  }
}

/** Sheds and tree beds behind the shops. */
function layYard(block: TownBlock, draft: Draft, random: Random): void {
  for (const side of block.loop.sides) {
    for (let s = side.straightFrom + 12; s < side.straightTo - 24; s += random.between(15, 24)) {
      const depth = random.between(28, 34);
      const ring = quad(block, [s, s + random.between(8, 17)], [-depth - random.between(7, 13), -depth]);
      if (!fits(block, draft, ring)) continue;
      if (random.chance(0.45)) draft.beds.push(ring);
      else draft.buildings.push({ ring, roof: 'flat', eaves: random.between(3, 6), colour: random.whole(0, 5) });
    }
  }
}

function layHome(
  block: TownBlock,
  draft: Draft,
  random: Random,
  at: { s: number; setback: number; depth: number },
): void {
  const drive = { from: at.s + 0.3, to: at.s + 3.2, depth: at.setback + random.between(1, 5) };
  draft.drives.push(drive);
  const behind = quad(block, [at.s + 5, at.s + 10.5], [-at.setback - at.depth - 7.5, -at.setback - at.depth - 3.5]);
  if (random.chance(0.3) && fits(block, draft, behind)) draft.pools.push(behind);
}

function layLot(block: TownBlock, draft: Draft, random: Random): void {
  const long = longestSide(block);
  const room = long.straightTo - long.straightFrom;
  if (room < 42) return;
  const width = Math.min(46, room * 0.48);
  const from = long.straightFrom + random.between(0.2, 0.8) * (room - width);
  // Two rows of stalls and an aisle.
  const lot = quad(block, [from, from + width], [-19.5, -2.5]);
  if (!fits(block, draft, lot)) return;
  draft.lots.push(lot);
  draft.drives.push({ from: from + width / 2 - 3, to: from + width / 2 + 3, depth: 2.5 });
}

function layCampus(block: TownBlock, draft: Draft): void {
  const long = longestSide(block);
  const middle = (long.straightFrom + long.straightTo) / 2;
  const half = Math.min(36, (long.straightTo - long.straightFrom) * 0.3);
  const hall = quad(block, [middle - half, middle + half], [-46, -24]);
  draft.buildings.push({ ring: hall, roof: 'flat', eaves: 8, colour: 1 });
  const court = quad(block, [middle - half * 0.7, middle + half * 0.7], [-20, -1]);
  draft.plazas.push({ shell: court, holes: [], planters: [] });
  const lot = quad(block, [middle + half + 3, middle + half + 27], [-21, -3]);
  if (middle + half + 27 < long.straightTo && fits(block, draft, lot)) {
    draft.lots.push(lot);
    draft.drives.push({ from: middle + half + 12, to: middle + half + 18, depth: 3 });
  }
}

/** A market square cut into a block of shops: a fountain and two planters. */
function layMarket(block: TownBlock, draft: Draft): void {
  const side = block.loop.sides[0];
  const middle = (side.straightFrom + side.straightTo) / 2;
  const planter = (s: number) => quad(block, [middle + s - 2, middle + s + 2], [-19, -8]);
  const planters = [planter(-13), planter(13)];
  const fountain = circle(onLoop(block.loop, middle, -13.5), 4.5);
  const shell = strip(block.loop, [middle - 19, middle + 19], [-27, 0]);
  draft.plazas.push({ shell, holes: [fountain, ...planters], planters });
}

/** The whole triangle at the avenue is a plaza. */
function layPlazaBlock(block: TownBlock, draft: Draft): void {
  const middle = centroid(block.loop.points);
  const planters = [-1, 1].map((way) =>
    rectangle([middle[0] + way * 17 - 3, middle[1] + way * 3 + 1], [0.8, 0.6], [7, 3.4]),
  );
  const inside = planters.filter((ring) => ring.every((point) => isInside(block.loop.points, point)));
  draft.plazas.push({ shell: block.loop.points, holes: [circle(middle, 5.5), ...inside], planters: inside });
}

function layPark(block: TownBlock, draft: Draft): void {
  const [south, east, north, west] = block.loop.sides.map((side) =>
    onLoop(block.loop, (side.straightFrom + side.straightTo) / 2, -0.3),
  );
  const middle = centroid(block.loop.points);
  const curve = (a: Point, b: Point, swing: number): readonly Point[] =>
    Array.from({ length: 13 }, (_, i) => {
      const t = i / 12;
      const bow = swing * 4 * t * (1 - t);
      return [
        a[0] + (b[0] - a[0]) * t - (bow * (b[1] - a[1])) / 60,
        a[1] + (b[1] - a[1]) * t + (bow * (b[0] - a[0])) / 60,
      ];
    });
  const pondAt: Point = [middle[0] + 34, middle[1] - 4];
  draft.pond = circle(pondAt, 1, 40).map(([x, y], i) => {
    const r = 12 + 2.6 * Math.sin(i * 0.47) + 1.4 * Math.cos(i * 0.79);
    return [pondAt[0] + (x - pondAt[0]) * r * 1.35, pondAt[1] + (y - pondAt[1]) * r];
  });
  draft.paths.push(
    { line: curve(west, [middle[0] - 8, middle[1]], 6), width: 2.4 },
    { line: curve([middle[0] - 8, middle[1]], south, -5), width: 2 },
    { line: curve([middle[0] - 8, middle[1]], north, 4), width: 2 },
    // Two trodden paths that nobody measured.
    { line: curve(north, east, 9), width: null },
    { line: curve(south, east, -7), width: null },
  );
}

function longestSide(block: TownBlock): Side {
  return block.loop.sides.toSorted((a, b) => b.straightTo - b.straightFrom - (a.straightTo - a.straightFrom))[0];
}

function quad(block: TownBlock, [s0, s1]: Point, [d0, d1]: Point): Ring {
  return [
    onLoop(block.loop, s0, d1),
    onLoop(block.loop, s1, d1),
    onLoop(block.loop, s1, d0),
    onLoop(block.loop, s0, d0),
  ];
}

function fits(block: TownBlock, draft: Draft, ring: Ring): boolean {
  const taken: readonly Ring[] = [
    ...draft.buildings.map((b) => b.ring),
    ...draft.lots,
    ...draft.pools,
    ...draft.beds,
    ...draft.plazas.map((p) => p.shell),
  ];
  return (
    ring.every((point) => isInside(block.loop.points, point)) && taken.every((other) => !convexOverlap(other, ring))
  );
}
