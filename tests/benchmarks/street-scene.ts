/** An invented town of straight streets, as big as wanted: carriageway, sidewalks, driveways, and lobed crowns along them. */
import type { Region, Ring } from '@crownfall/geometry';
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
  const streets = Math.ceil(crownCount / CROWNS_PER_STREET);
  const columns = Math.ceil(Math.sqrt(streets / 2));
  const crowns: Ring[] = [];
  const pieces: Ring[] = [];
  for (let street = 0; street < streets; street++) {
    const random = new RandomStream(6, street);
    const cell = street >> 1;
    const place = placer(street % 2 === 1, (cell % columns) * CELL_M, Math.floor(cell / columns) * CELL_M);
    pieces.push(...pavement(random).map((corners) => place(corners)));
    for (let t = 0; t < CROWNS_PER_STREET && crowns.length < crownCount; t++) {
      crowns.push(place(crown(random, t, vertices)));
    }
  }
  return { crowns, pieces };
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
