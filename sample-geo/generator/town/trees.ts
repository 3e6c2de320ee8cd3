/** The street trees: where they stand, how large they are, and the true outline of each crown. */
import { type Random, randomFor } from '../random.ts';
import type { TownBlock } from './blocks.ts';
import type { Grounds } from './grounds.ts';
import { type Host, hostNamed } from './hosts.ts';
import { gap, onLoop, type Point, type Side } from './loop.ts';
import { centroid, distanceToRing, isInside, type Ring } from './shapes.ts';
import { PROMENADE, STREETS } from './streets.ts';

export interface TownTree {
  readonly id: string;
  readonly at: Point;
  readonly host: Host;
  readonly heightM: number;
  /** Distance from the middle of the crown to its outline by direction, at equal steps counter-clockwise from east. */
  readonly radii: readonly number[];
  readonly middle: Point;
  /** The true outline. */
  readonly outline: Ring;
}

const TREE_COUNT = 1200;
const DIRECTIONS = 48;

interface Stand {
  readonly at: Point;
  readonly host: Host;
  /** Distance to the neighbours in the row, m. */
  readonly room: number;
}

export function townTrees(built: readonly (readonly [TownBlock, Grounds])[]): readonly TownTree[] {
  const random = randomFor('trees');
  const stands = built.flatMap(([block, grounds]) => [
    ...block.loop.sides.flatMap((side) => streetStands(block, side, grounds, random)),
    ...promenadeStands(block, random),
    ...parkStands(block, grounds, random),
    ...planterStands(grounds, random),
  ]);
  const spaced = withoutCrowding(stands);
  if (spaced.length < TREE_COUNT)
    throw new RangeError(`trees: expected at least ${TREE_COUNT} stands, got ${spaced.length}`);
  // Gaps in the rows: trees that were felled and not planted again.
  const left = [...spaced];
  while (left.length > TREE_COUNT) left.splice(random.whole(0, left.length - 1), 1);
  return left.map((stand, i) => grown(stand, `T${String(i + 1).padStart(4, '0')}`, random));
}

function streetStands(block: TownBlock, side: Side, grounds: Grounds, random: Random): readonly Stand[] {
  const { hosts } = STREETS[side.street];
  const out = block.verge > 0 ? block.sidewalk + block.verge / 2 : block.sidewalk - 0.75;
  const stands: Stand[] = [];
  const main = random.weighted(hosts);
  let s = side.straightFrom + random.between(0.5, 4);
  while (s < side.straightTo - 0.5) {
    const host = hostNamed(random.chance(0.72) ? main : random.weighted(hosts));
    const room = host.form === 'palm' ? random.between(5.5, 8) : host.spreadM[0] * random.between(0.85, 1.12);
    const blocked = grounds.drives.some((drive) => s > drive.from - 1.2 && s < drive.to + 1.2);
    if (!blocked) stands.push({ at: onLoop(block.loop, s, out + random.between(-0.15, 0.15)), host, room });
    s += blocked ? 1.5 : room;
  }
  return stands;
}

function promenadeStands(block: TownBlock, random: Random): readonly Stand[] {
  const side = block.loop.sides.find((each) => each.street === 'R0');
  if (side === undefined) return [];
  const out = block.kerb + STREETS.R0.width + PROMENADE * 0.4;
  const count = Math.floor((side.to - side.from) / 8.5);
  return Array.from({ length: count }, (_, i) => {
    const s = side.from + ((i + 0.5) * (side.to - side.from)) / count;
    const host = hostNamed(
      random.weighted([
        ['Sabal palmetto', 6],
        ['Coccoloba uvifera', 2],
      ]),
    );
    return { at: onLoop(block.loop, s, out), host, room: 8.5 };
  });
}

function parkStands(block: TownBlock, grounds: Grounds, random: Random): readonly Stand[] {
  const pond = grounds.pond;
  if (pond === null) return [];
  const middle = centroid(block.loop.points);
  const stands: Stand[] = [];
  for (let tries = 0; tries < 400 && stands.length < 46; tries++) {
    const at: Point = [middle[0] + random.between(-90, 90), middle[1] + random.between(-38, 38)];
    const host = hostNamed(
      random.weighted([
        ['Quercus virginiana', 5],
        ['Ficus aurea', 2],
        ['Terminalia buceras', 3],
        ['Sabal palmetto', 3],
        ['Swietenia mahagoni', 2],
      ]),
    );
    const dry = isInside(block.loop.points, at) && !isInside(pond, at) && distanceToRing(pond, at) > 2;
    const free = stands.every((other) => gap(other.at, at) > 0.4 * (other.host.spreadM[0] + host.spreadM[0]));
    if (dry && free && distanceToRing(block.loop.points, at) > 4) stands.push({ at, host, room: 14 });
  }
  return stands;
}

function planterStands(grounds: Grounds, random: Random): readonly Stand[] {
  return grounds.plazas.flatMap(({ planters }) =>
    planters.map((ring) => {
      const host = hostNamed(
        random.weighted([
          ['Terminalia buceras', 3],
          ['Lagerstroemia indica', 1],
        ]),
      );
      return { at: centroid(ring), host, room: 12 };
    }),
  );
}

/** Where two rows meet at a corner, the later tree gives way. */
function withoutCrowding(stands: readonly Stand[]): readonly Stand[] {
  const kept: Stand[] = [];
  for (const stand of stands) {
    if (kept.every((other) => gap(other.at, stand.at) > 0.36 * (other.host.spreadM[0] + stand.host.spreadM[0])))
      kept.push(stand);
  }
  return kept;
}

function grown({ at, host, room }: Stand, id: string, random: Random): TownTree {
  const [mean, sd] = host.spreadM;
  const spread = Math.max(2.2, Math.min(random.normal(mean, sd), room * 1.22));
  const waves = [1, 2, 3, 4, 5, 7].map((k) => ({
    k,
    size: (random.between(0.2, 1) * 0.17) / k,
    turn: random.between(0, 2 * Math.PI),
  }));
  const lobes = host.form === 'palm' ? 0.25 : 1;
  const radii = Array.from({ length: DIRECTIONS }, (_, i) => {
    const angle = (2 * Math.PI * i) / DIRECTIONS;
    const shape = waves.reduce((sum, wave) => sum + wave.size * Math.cos(wave.k * angle + wave.turn), 0);
    return (spread / 2) * (1 + lobes * shape);
  });
  const lean = host.form === 'palm' ? 0.1 : 0.05 * spread;
  const middle: Point = [at[0] + random.normal(0, lean), at[1] + random.normal(0, lean)];
  const heightM = Math.max(3, spread * host.slender * random.between(0.88, 1.14));
  return { id, at, host, heightM, radii, middle, outline: outlineOf(middle, radii) };
}

/** The ring through radii at equal steps counter-clockwise from east. */
export function outlineOf(middle: Point, radii: readonly number[]): Ring {
  return radii.map((radius, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle)];
  });
}
