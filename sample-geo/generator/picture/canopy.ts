/** Paints crowns: domes of leaf clumps with ragged edges and gaps, fronds for palms, browned clumps in the true share. */

import type { TreeTruth } from '../life/truth.ts';
import { cellHash, randomFor } from '../random.ts';
import type { TownBlock } from '../town/blocks.ts';
import { onLoop, type Point } from '../town/loop.ts';
import type { Ring } from '../town/shapes.ts';
import type { Town } from '../town/town.ts';
import { type Canvas, CELL_M, YARD_TREE } from './canvas.ts';
import { cloudNoise, clumpAt, smoothNoise } from './noise.ts';

interface CrownShape {
  readonly number: number;
  readonly middle: readonly [number, number];
  readonly radii: readonly number[];
  readonly heightM: number;
  readonly palm: boolean;
  /** Share of gaps through which the ground shows. */
  readonly gaps: number;
}

/** Leaf clumps are about this far apart, m. */
const CLUMP_M = 1.25;

/** Paints all crowns, each above what is lower, then browns the visible part of each to its true share. */
export function paintCanopy(canvas: Canvas, town: Town, truth: readonly TreeTruth[]): void {
  for (const shape of yardTrees(town)) paintCrown(canvas, shape);
  for (const [i, { tree, defoliated }] of truth.entries()) {
    paintCrown(canvas, {
      number: i + 1,
      middle: tree.middle,
      radii: tree.radii,
      heightM: tree.heightM,
      palm: tree.host.form === 'palm',
      gaps: 0.05 + 0.5 * defoliated,
    });
  }
  brownCrowns(canvas, truth);
}

function paintCrown(canvas: Canvas, shape: CrownShape): void {
  forCells(canvas, shape, 0, (cell, x, y, relative, angle) => {
    const height = shape.palm ? palmHeight(shape, relative, angle) : leafHeight(shape, x, y, relative);
    if (height > canvas.heightM[cell]) {
      canvas.heightM[cell] = height;
      canvas.crown[cell] = shape.number;
    }
  });
}

/** Height of the leaves, 0 where there are none. */
function leafHeight(shape: CrownShape, x: number, y: number, relative: number): number {
  const salt = 100 + (shape.number & 63);
  const edge = relative + 0.2 * (smoothNoise(x, y, 0.7, salt) - 0.5);
  if (edge > 1) return 0;
  const clump = clumpAt(x, y, CLUMP_M, salt + 1);
  // Gaps open between clumps, more of them towards the edge.
  if (clump.distance > 0.42 && smoothNoise(x, y, 0.5, salt + 5) < shape.gaps * (0.7 + edge)) return 0;
  const dome = 0.6 + 0.4 * Math.sqrt(1 - edge * edge);
  const bump =
    0.95 * (0.5 - clump.distance) + 0.55 * (clump.own - 0.5) + 0.35 * (smoothNoise(x, y, 0.3, salt + 7) - 0.5);
  return shape.heightM * dome + bump;
}

function palmHeight(shape: CrownShape, relative: number, angle: number): number {
  if (relative > 1) return 0;
  const fronds = 11 + (shape.number % 5);
  const turn = (angle / (2 * Math.PI)) * fronds + cellHash(shape.number, 1, 9);
  const off = Math.abs(turn - Math.round(turn)) * 2;
  const long = 0.78 + 0.22 * cellHash(shape.number, Math.round(turn), 11);
  if (relative > 0.22 && (off > 0.72 - 0.3 * relative || relative > long)) return 0;
  return shape.heightM * (1 - 0.16 * relative * relative) - 0.5 * off;
}

/** Cells of a crown's box grown by `reachM`: index, plan position, distance in radii, angle from east, distance beyond the outline. */
export function forCells(
  canvas: Canvas,
  shape: { readonly middle: readonly [number, number]; readonly radii: readonly number[] },
  reachM: number,
  visit: (cell: number, x: number, y: number, relative: number, angle: number, beyondM: number) => void,
): void {
  const [mx, my] = shape.middle;
  const reach = Math.max(...shape.radii) * 1.1 + reachM;
  const columnFrom = Math.max(0, Math.floor((mx - reach - canvas.left) / CELL_M));
  const columnTo = Math.min(canvas.width - 1, Math.ceil((mx + reach - canvas.left) / CELL_M));
  const rowFrom = Math.max(0, Math.floor((canvas.top - my - reach) / CELL_M));
  const rowTo = Math.min(canvas.height - 1, Math.ceil((canvas.top - my + reach) / CELL_M));
  for (let row = rowFrom; row <= rowTo; row++) {
    const y = canvas.top - (row + 0.5) * CELL_M;
    for (let column = columnFrom; column <= columnTo; column++) {
      const x = canvas.left + (column + 0.5) * CELL_M;
      const distance = Math.sqrt((x - mx) ** 2 + (y - my) ** 2);
      if (distance > reach) continue;
      const angle = Math.atan2(y - my, x - mx);
      const radius = radiusAt(shape.radii, angle);
      visit(row * canvas.width + column, x, y, distance / radius, angle, distance - radius);
    }
  }
}

function radiusAt(radii: readonly number[], angle: number): number {
  const at = ((angle / (2 * Math.PI) + 1) % 1) * radii.length;
  const i = Math.floor(at) % radii.length;
  const t = at - Math.floor(at);
  return radii[i] * (1 - t) + radii[(i + 1) % radii.length] * t;
}

/** Browns those cells of each crown that score highest on a texture of clumps, as many as the truth says. */
function brownCrowns(canvas: Canvas, truth: readonly TreeTruth[]): void {
  for (const [i, { tree, browned }] of truth.entries()) {
    const cells: number[] = [];
    const scores: number[] = [];
    const salt = 300 + (i & 63);
    forCells(canvas, tree, 0, (cell, x, y) => {
      if (canvas.crown[cell] !== i + 1) return;
      cells.push(cell);
      scores.push(
        0.55 * clumpAt(x, y, CLUMP_M, 101 + ((i + 1) & 63)).own +
          0.75 * cloudNoise(x, y, 1.9, salt) +
          0.16 * cellHash(cell, i, 3),
      );
    });
    const order = Array.from(cells.keys()).toSorted((a, b) => scores[b] - scores[a]);
    const count = Math.round(browned * cells.length);
    for (let k = 0; k < count; k++) canvas.browned[cells[order[k]]] = 1;
  }
}

/** Trees and shrubs in private gardens, which no inventory holds; well inside the property line. */
function yardTrees(town: Town): readonly CrownShape[] {
  const random = randomFor('yard trees');
  return town.blocks.flatMap((block, i) =>
    block.use === 'homes' || block.use === 'school'
      ? yardOf(block, random.next)
      : bedTrees(town.grounds[i].beds, random.next),
  );
}

function bedTrees(beds: readonly Ring[], next: () => number): readonly CrownShape[] {
  return beds.flatMap((bed) =>
    Array.from({ length: 3 }, (_, i) => {
      const [a, b] = [bed[0], bed[2]];
      const t = (i + 0.3 + 0.4 * next()) / 3;
      const radius = 1.2 + 1.6 * next();
      const radii = Array.from({ length: 12 }, () => radius * (0.85 + 0.3 * next()));
      const middle: Point = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
      return { number: YARD_TREE, middle, radii, heightM: 2 + radius * (0.8 + 0.7 * next()), palm: false, gaps: 0.06 };
    }),
  );
}

function yardOf(block: TownBlock, next: () => number): readonly CrownShape[] {
  const length = block.loop.along[block.loop.points.length];
  return Array.from({ length: Math.round(length / 9) }, () => {
    const radius = 0.8 + 2.4 * next() * next();
    const middle = onLoop(block.loop, length * next(), -17 - 14 * next() - radius);
    const radii = Array.from({ length: 12 }, () => radius * (0.85 + 0.3 * next()));
    return {
      number: YARD_TREE,
      middle,
      radii,
      heightM: 1 + radius * (0.8 + 0.7 * next()),
      palm: false,
      gaps: 0.06,
    };
  });
}
