/** Paint on the streets and lots, and the cars on them. */
import { type Random, randomFor } from '../random.ts';
import type { TownBlock } from '../town/blocks.ts';
import { onLoop, type Point, type Side } from '../town/loop.ts';
import { type Ring, rectangle } from '../town/shapes.ts';
import { streetLines } from '../town/street-lines.ts';
import { STREETS } from '../town/streets.ts';
import type { Town } from '../town/town.ts';
import { type Canvas, cover } from './canvas.ts';
import { streetStrip } from './ground.ts';
import { material } from './materials.ts';

const BUSY = ['R0', 'R1', 'R3', 'D'];
const CAR_COLOURS = ['car white', 'car white', 'car silver', 'car black', 'car blue', 'car red', 'car silver'];

export function paintMarkings(canvas: Canvas, town: Town): void {
  for (const { street, line } of streetLines())
    if (street !== 'R0' && street !== 'L') paintMiddle(canvas, street, line, town);
  for (const block of town.blocks) {
    for (const side of block.loop.sides) {
      if (BUSY.includes(side.street)) paintCrossings(canvas, block, side);
    }
  }
  for (const lot of town.grounds.flatMap((grounds) => grounds.lots)) paintStalls(canvas, lot);
}

/** Dashes along the middle, ending before each junction. */
function paintMiddle(canvas: Canvas, street: string, line: readonly Point[], town: Town): void {
  const junctions = town.blocks.flatMap((block) =>
    block.face
      .filter((c, i) => block.face[(i + block.face.length - 1) % block.face.length].street !== c.street)
      .map((c) => c.at),
  );
  const colour = material(BUSY.includes(street) ? 'paint yellow' : 'paint white');
  let carried = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i], line[i + 1]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const u: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    let s = carried;
    for (; s < length; s += 9) {
      const at: Point = [a[0] + u[0] * s, a[1] + u[1] * s];
      if (junctions.every((p) => Math.hypot(p[0] - at[0], p[1] - at[1]) > 15))
        cover(canvas, [rectangle(at, u, [3, 0.22])], colour);
    }
    carried = s - length;
  }
}

/** Zebra bars over this half of the street, at both ends of the side. */
function paintCrossings(canvas: Canvas, block: TownBlock, side: Side): void {
  const half = STREETS[side.street].width / (side.street === 'R0' ? 1 : 2);
  for (const s of [side.straightFrom + 0.4, side.straightTo - 3.2]) {
    for (let out = 0.5; out < half; out += 1.05) {
      cover(canvas, [streetStrip(block, [s, s + 2.8], [out, out + 0.5])], material('paint white'));
    }
  }
}

function paintStalls(canvas: Canvas, lot: Ring): void {
  forStalls(lot, (at, u) => {
    cover(
      canvas,
      [rectangle([at[0] - u[0] * 1.25, at[1] - u[1] * 1.25], [-u[1], u[0]], [5, 0.13])],
      material('paint white'),
    );
  });
}

/** Two rows of stalls, 2.5 m apart, along the first edge and along the third. */
function forStalls(lot: Ring, stall: (at: Point, along: Point) => void): void {
  const [a, b, c] = lot;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const depth = Math.hypot(c[0] - b[0], c[1] - b[1]);
  const u: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const v: Point = [(c[0] - b[0]) / depth, (c[1] - b[1]) / depth];
  for (const row of [2.7, depth - 2.7]) {
    for (let s = 2; s < length - 1; s += 2.5) {
      stall([a[0] + u[0] * s + v[0] * row, a[1] + u[1] * s + v[1] * row], u);
    }
  }
}

export function paintCars(canvas: Canvas, town: Town): void {
  const random = randomFor('cars');
  for (const lot of town.grounds.flatMap((grounds) => grounds.lots)) {
    forStalls(lot, (at, u) => {
      if (random.chance(0.58)) paintCar(canvas, at, [-u[1], u[0]], random);
    });
  }
  for (const [i, block] of town.blocks.entries()) {
    for (const side of block.loop.sides) {
      for (let s = side.straightFrom + 7; s < side.straightTo - 7; s += random.between(6, 13)) {
        const atDrive = town.grounds[i].drives.some((drive) => s > drive.from - 3 && s < drive.to + 3);
        if (!atDrive && random.chance(0.4) && side.street !== 'L') paintKerbCar(canvas, block, s, random);
      }
    }
  }
}

function paintKerbCar(canvas: Canvas, block: TownBlock, s: number, random: Random): void {
  const at = onLoop(block.loop, s, block.kerb + 1.25);
  const ahead = onLoop(block.loop, s + 1, block.kerb + 1.25);
  const length = Math.hypot(ahead[0] - at[0], ahead[1] - at[1]);
  paintCar(canvas, at, [(ahead[0] - at[0]) / length, (ahead[1] - at[1]) / length], random);
}

function paintCar(canvas: Canvas, at: Point, u: Point, random: Random): void {
  const colour = material(random.pick(CAR_COLOURS));
  const length = random.between(4.1, 4.9);
  const part = (shift: number, long: number, wide: number) =>
    rectangle([at[0] + u[0] * shift, at[1] + u[1] * shift], u, [long, wide]);
  cover(canvas, [part(0, length, 1.8)], colour, 0.9);
  cover(canvas, [part(-0.15, length * 0.56, 1.6)], material('glass'), 1.25);
  cover(canvas, [part(-0.2, length * 0.32, 1.5)], colour, 1.45);
}
