/** Paints the ground: sea, lawns, pavement, buildings, markings, cars, boats. */

import { seaRing } from '../life/field-notes.ts';
import { randomFor } from '../random.ts';
import type { TownBlock } from '../town/blocks.ts';
import type { Grounds } from '../town/grounds.ts';
import { drawnOut, type Point, strip } from '../town/loop.ts';
import { type Ring, rectangle } from '../town/shapes.ts';
import { ROW_LINES } from '../town/streets.ts';
import type { Town } from '../town/town.ts';
import { paintBuilding } from './buildings.ts';
import { type Canvas, cover } from './canvas.ts';
import { paintCars, paintMarkings } from './markings.ts';
import { material } from './materials.ts';

const SURFACE_OF = {
  sidewalk: 'concrete',
  carriageway: 'asphalt',
  parking: 'lot',
  plaza: 'pavers',
  driveway: 'driveway',
  path: 'path',
} as const;

export function paintGround(canvas: Canvas, town: Town): void {
  canvas.material.fill(material('scrub'));
  cover(canvas, [seaRing()], material('sea'));
  for (const [i, block] of town.blocks.entries()) paintBlock(canvas, block, town.grounds[i]);
  for (const piece of town.pavement) {
    const name = piece.surface === 'pavers' ? 'pavers' : SURFACE_OF[piece.kind];
    if (piece.shell !== undefined) cover(canvas, [piece.shell, ...(piece.holes ?? [])], material(name));
    else cover(canvas, [ribbon(piece.line ?? [], piece.width ?? 1.4)], material(name));
  }
  for (const block of town.blocks) paintKerb(canvas, block);
  paintMarkings(canvas, town);
  for (const grounds of town.grounds) for (const building of grounds.buildings) paintBuilding(canvas, building);
  paintCars(canvas, town);
  paintShore(canvas);
}

function paintBlock(canvas: Canvas, block: TownBlock, grounds: Grounds): void {
  cover(canvas, [drawnOut(block.loop, block.kerb)], material('lawn'));
  cover(canvas, [block.loop.points], material(block.use === 'shops' ? 'yard' : 'lawn'));
  for (const bed of grounds.beds) cover(canvas, [bed], material('lawn'));
  for (const pool of grounds.pools) cover(canvas, [pool], material('pool'));
  if (grounds.pond !== null) cover(canvas, [grounds.pond], material('pond'));
  for (const { holes, planters } of grounds.plazas) {
    for (const hole of holes) cover(canvas, [hole], material(planters.includes(hole) ? 'soil' : 'pool'));
  }
}

function paintKerb(canvas: Canvas, block: TownBlock): void {
  cover(canvas, [drawnOut(block.loop, block.kerb), drawnOut(block.loop, block.kerb - 0.18)], material('kerb'), 0.12);
}

/** A line with a width as one ring. */
function ribbon(line: readonly Point[], width: number): Ring {
  const side = (sign: number) =>
    line.map((p, i): Point => {
      const a = line[Math.max(0, i - 1)];
      const b = line[Math.min(line.length - 1, i + 1)];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      return [
        p[0] - (sign * width * (b[1] - a[1])) / (2 * length),
        p[1] + (sign * width * (b[0] - a[0])) / (2 * length),
      ];
    });
  return [...side(-1), ...side(1).toReversed()];
}

function paintShore(canvas: Canvas): void {
  const random = randomFor('shore');
  const shore = ROW_LINES[0];
  const wall = [
    ...shore.map(([x, y]): Point => [x, y - 0.25]),
    ...shore.map(([x, y]): Point => [x, y + 0.35]).toReversed(),
  ];
  cover(canvas, [wall], material('seawall'), 0.5);
  for (const x of [150, 268, 430, 540, 690]) {
    const y = shore[Math.round(x / 8) + 1][1];
    const length = random.between(22, 40);
    cover(canvas, [rectangle([x, y - length / 2], [0, 1], [length, 2.6])], material('planks'), 1.2);
    for (let k = 0; k < 3; k++) {
      if (random.chance(0.25)) continue;
      const at: Point = [x + (k % 2 === 0 ? 3.2 : -3.2), y - 8 - k * 8.5];
      paintBoat(canvas, at, random.between(5.5, 8));
    }
  }
}

function paintBoat(canvas: Canvas, [x, y]: Point, length: number): void {
  const half = length * 0.16;
  const hull: Ring = [
    [x - half, y - length / 2],
    [x + half, y - length / 2],
    [x + half, y + length * 0.2],
    [x, y + length / 2],
    [x - half, y + length * 0.2],
  ];
  cover(canvas, [hull], material('car white'), 1.1);
  cover(canvas, [rectangle([x, y - length * 0.12], [0, 1], [length * 0.3, half * 1.3])], material('glass'), 1.6);
}

/** The strip of street along one side, from the kerb to `width` metres beyond it. */
export function streetStrip(block: TownBlock, span: readonly [number, number], out: readonly [number, number]): Ring {
  return strip(block.loop, span, [block.kerb + out[0], block.kerb + out[1]]);
}
