/** An invented town of straight streets, as big as wanted: carriageway, sidewalks, driveways, and lobed crowns along them. */
import type { NumberedRegion, Region, Ring } from '@crownfall/geometry';
import { RandomStream } from '@crownfall/statistics';

const CROWNS_PER_STREET = 12;
const CELL_M = 60;
/** No street runs along an axis of the coordinates. */
const TURN_RAD = 0.4;

export interface StreetScene {
  readonly crowns: readonly Ring[];
  /** Per street one carriageway, two sidewalks of 40 × 2.5 m and four driveways. */
  readonly pieces: readonly Ring[];
}

/** Streets run by turns along and across their cell of 60 m; crowns have 2.2–5.9 m of radius and `vertices` vertices. */
export function streetScene(crownCount: number, vertices = 123): StreetScene {
  const crowns: Ring[] = [];
  const pieces: Ring[] = [];
  for (let street = 0; street < streetCount(crownCount); street++) {
    const one = streetOf(crownCount, street, vertices);
    pieces.push(...one.pieces);
    crowns.push(...one.crowns);
  }
  return { crowns, pieces };
}

export function streetCount(crownCount: number): number {
  return Math.ceil(crownCount / CROWNS_PER_STREET);
}

/** One street of the town of so many crowns. */
export function streetOf(crownCount: number, street: number, vertices = 123): StreetScene {
  const random = new RandomStream(6, street);
  const place = placerOf(crownCount, street);
  const pieces = pavement(random).map((corners) => place(corners));
  const first = street * CROWNS_PER_STREET;
  const own = Math.min(CROWNS_PER_STREET, crownCount - first);
  return { pieces, crowns: Array.from({ length: own }, (_, t) => place(crown(random, t, vertices))) };
}

/**
 * The same town as sources sorted by least x, a street at a time: what a spatially sorted file gives. Numbers are those of
 * {@link streetScene}.
 */
export function streetStream(crownCount: number): {
  crowns: Iterable<NumberedRegion>;
  pieces: Iterable<NumberedRegion>;
} {
  return {
    crowns: sortedByWest(crownCount, (street) =>
      streetOf(crownCount, street).crowns.map((ring, t) => ({
        number: street * CROWNS_PER_STREET + t,
        region: [ring],
      })),
    ),
    pieces: sortedByWest(crownCount, (street) => {
      const { pieces } = streetOf(crownCount, street, 0);
      return pieces.map((ring, i) => ({ number: street * pieces.length + i, region: [ring] }));
    }),
  };
}

function* sortedByWest(crownCount: number, regionsOf: (street: number) => NumberedRegion[]): Generator<NumberedRegion> {
  const west = Float64Array.from({ length: streetCount(crownCount) }, (_, street) => westOf(crownCount, street));
  const order = Uint32Array.from(west.keys()).sort((a, b) => west[a] - west[b]);
  let waiting: { west: number; one: NumberedRegion }[] = [];
  for (const street of order) {
    const ready = waiting.filter((held) => held.west < west[street]).sort((a, b) => a.west - b.west);
    for (const { one } of ready) yield one;
    waiting = waiting.filter((held) => held.west >= west[street]);
    for (const one of regionsOf(street)) waiting.push({ west: leastX(one.region[0]), one });
  }
  for (const { one } of waiting.sort((a, b) => a.west - b.west)) yield one;
}

/** No crown or pavement of a street reaches beyond this box about it. */
function westOf(crownCount: number, street: number): number {
  return leastX(placerOf(crownCount, street)(rectangle(0, -14, 64, 14)));
}

function leastX(ring: Ring): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i += 2) least = Math.min(least, ring[i]);
  return least;
}

/** A ring as the overlay takes it. */
export function asRegion(ring: Ring): Region {
  return [ring];
}

function pavement(random: RandomStream): number[][] {
  const driveways = [0, 1, 2, 3].map((d) => {
    const x = 14 + 9 * d + 4 * random.uniform();
    return d % 2 === 0 ? rectangle(x, -5.5, x + 3, -4) : rectangle(x, 4, x + 3, 5.5);
  });
  return [rectangle(12, -4, 52, 4), rectangle(12, 5.5, 52, 8), rectangle(12, -8, 52, -5.5), ...driveways];
}

function rectangle(x0: number, y0: number, x1: number, y1: number): number[] {
  return [x0, y0, x1, y0, x1, y1, x0, y1];
}

/** Trees stand by turns on the two sides of the street. */
function crown(random: RandomStream, t: number, vertices: number): number[] {
  const x = 13 + 7 * (t >> 1) + 3 * random.uniform();
  const y = (t % 2 === 0 ? -1 : 1) * (4.7 + 0.3 * random.uniform());
  const radius = random.between(2.5, 5);
  const [three, seven] = [random.between(0, 6), random.between(0, 6)];
  return Array.from({ length: vertices }, (_, j) => (2 * Math.PI * j) / vertices).flatMap((angle) => {
    const r = radius * (1 + 0.12 * Math.sin(3 * angle + three) + 0.06 * Math.sin(7 * angle + seven));
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
  });
}

function placerOf(crownCount: number, street: number): (local: number[]) => Ring {
  const columns = Math.ceil(Math.sqrt(streetCount(crownCount) / 2));
  const cell = street >> 1;
  return placer(street % 2 === 1, (cell % columns) * CELL_M, Math.floor(cell / columns) * CELL_M);
}

/** Into the town; streets across are turned by a right angle. */
function placer(isAcross: boolean, offsetX: number, offsetY: number): (local: number[]) => Ring {
  const [cos, sin] = [Math.cos(TURN_RAD), Math.sin(TURN_RAD)];
  return (local) => {
    const out = new Float64Array(local.length);
    for (let i = 0; i < local.length; i += 2) {
      const x = offsetX + (isAcross ? -local[i + 1] : local[i]);
      const y = offsetY + (isAcross ? local[i] : local[i + 1]);
      out[i] = x * cos - y * sin;
      out[i + 1] = x * sin + y * cos;
    }
    return out;
  };
}
