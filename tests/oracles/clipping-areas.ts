/** Areas of set operations on polygons with holes, as sums over cover sets: by the overlay and by the exact judge. */
import { type Region, reckonOverlay } from '@crownfall/geometry';
import type { Operation, Rings } from './clipping-cases.ts';
import { areasByCover } from './exact-area.ts';

/** Beyond the polygons by this much, so that the box's edges lie on none of theirs, m. */
const MARGIN_M = 1;

/** Every ring as a layer of its own; a polygon is where its shell covers and none of its holes does. */
interface Layering {
  readonly layers: readonly Region[];
  readonly polygons: readonly (readonly number[])[][];
}

/** Area (m²) of each operation, every ring read by the non-zero rule and holes taken from their own shell. */
export function overlayOperations(args: readonly (readonly Rings[])[]): Map<Operation, number> {
  const layering = layeringOf(args);
  const ledger = reckonOverlay({
    zones: layering.layers.map((layer) => ({ layers: [layer] })),
    pieces: [boxAround(layering.layers)],
    blocks: [],
  });
  const covers = new Map<string, number>();
  for (let cell = 0; cell < ledger.cellCount; cell++) {
    const cover = ledger.zone.subarray(ledger.coverStart[cell], ledger.coverStart[cell + 1]);
    covers.set(cover.join(','), ledger.areaM2[cell]);
  }
  return operations(layering, covers);
}

/** The same by the exact judge. */
export function exactOperations(args: readonly (readonly Rings[])[]): Map<Operation, number> {
  const layering = layeringOf(args);
  return operations(layering, areasByCover(layering.layers));
}

function layeringOf(args: readonly (readonly Rings[])[]): Layering {
  const layers: Region[] = [];
  const polygons = args.map((arg) => arg.map((rings) => rings.map((ring) => layers.push([ring]) - 1)));
  return { layers, polygons };
}

function operations({ polygons }: Layering, covers: ReadonlyMap<string, number>): Map<Operation, number> {
  const sums = new Map<Operation, number>([
    ['intersection', 0],
    ['union', 0],
    ['difference', 0],
    ['xor', 0],
  ]);
  for (const [key, area] of covers) {
    const covered = new Set(key === '' ? [] : key.split(',').map(Number));
    const inside = polygons.map((arg) =>
      arg.some(([shell, ...holes]) => covered.has(shell) && !holes.some((hole) => covered.has(hole))),
    );
    const count = inside.filter(Boolean).length;
    const add = (operation: Operation, holds: boolean) =>
      holds && sums.set(operation, (sums.get(operation) ?? 0) + area);
    add('intersection', count === polygons.length);
    add('union', count > 0);
    add('difference', inside[0] && count === 1);
    add('xor', count % 2 === 1);
  }
  return sums;
}

function boxAround(layers: readonly Region[]): Region {
  const values = layers.flat().flatMap((ring) => [...ring]);
  const [xs, ys] = [values.filter((_, i) => i % 2 === 0), values.filter((_, i) => i % 2 === 1)];
  if (xs.length === 0) return [];
  const [x0, x1] = [Math.min(...xs) - MARGIN_M, Math.max(...xs) + MARGIN_M];
  const [y0, y1] = [Math.min(...ys) - MARGIN_M, Math.max(...ys) + MARGIN_M];
  return [Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1)];
}
