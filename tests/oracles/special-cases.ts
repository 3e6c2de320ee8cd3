/** The cases that break overlays: coincident, touching, nearly coincident and degenerate borders, small enough to be judged exactly. */
import type { OverlayInput, Region } from '@crownfall/geometry';
import { type Placing, placed } from './grid-neighbourhood.ts';

const box = (x0: number, y0: number, x1: number, y1: number): Region => [
  Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1),
];
const hole = (x0: number, y0: number, x1: number, y1: number): Region => [
  Float64Array.of(x0, y0, x0, y1, x1, y1, x1, y0),
];
const ring = (...xy: number[]): Region => [Float64Array.from(xy)];
const ALL = box(-2, -3, 17, 12);

/** Pavement first, then crowns. */
const SHAPES: Record<string, readonly Region[]> = {
  'three identical crowns, one of them from another vertex': [
    ALL,
    box(1, 1, 6, 5),
    box(1, 1, 6, 5),
    ring(6, 5, 1, 5, 1, 1, 6, 1),
  ],
  'two crowns wound both ways': [ALL, box(1, 1, 6, 5), hole(1, 1, 6, 5)],
  'edges shared whole': [ALL, box(0, 0, 5, 5), box(5, 0, 9, 5)],
  'edges shared in part': [ALL, box(0, 0, 5, 5), box(5, 2, 9, 9), box(4, 5, 6, 8)],
  'vertex on vertex': [ALL, box(0, 0, 5, 5), box(5, 5, 9, 9), ring(5, 5, 2, 11, -1, 8)],
  'vertex on edge': [ALL, box(0, 0, 5, 5), ring(5, 2.5, 9, 0, 9, 5), ring(2.5, 5, 4, 9, 1, 9), ring(0, 1, 3, 2, 0, 4)],
  'contained with a shared edge': [ALL, box(0, 0, 8, 6), box(2, 0, 5, 3), box(3, 2, 5, 3)],
  'a hole filled exactly': [ALL, [...box(0, 0, 9, 9), ...hole(3, 3, 6, 7)], box(3, 3, 6, 7)],
  'a hole filled by two halves': [
    ALL,
    [...box(0, 0, 9, 9), ...hole(3, 3, 6, 7)],
    ring(3, 3, 6, 3, 6, 7),
    ring(3, 3, 6, 7, 3, 7),
  ],
  "the pavement's edge is the crown's": [box(0, 0, 9, 4), box(2, 4, 6, 8), box(0, 0, 3, 4), box(6, -2, 9, 4)],
  'a pavement hole is the crown': [[...box(0, 0, 9, 9), ...hole(2, 2, 7, 7)], box(2, 2, 7, 7)],
  'a crown is the pavement': [box(0, 0, 9, 4), box(0, 0, 9, 4), ring(9, 4, 0, 4, 0, 0, 9, 0)],
  'a crown that winds twice': [ALL, ring(0, 0, 6, 0, 6, 6, 0, 6, 0, 0, 6, 0, 6, 6, 0, 6)],
  'tilted by 1e-12': [
    ALL,
    box(0, 0, 8, 5),
    ring(0, 0, 8, 8e-12, 8, 5, 0, 5 - 5e-12),
    ring(0, 0, 8, -8e-12, 8, 5, 0, 5),
  ],
  'slivers of 1e-9': [ALL, box(0, 0, 8, 5), box(1e-9, 0, 8 + 1e-9, 5), box(0, 1e-9, 8, 5 - 1e-9)],
  'spikes of no width': [
    ALL,
    ring(0, 0, 4, 0, 4, 2, 9, 2, 4, 2, 4, 5, 0, 5),
    ring(1, 1, 1, 9, 1, 1, 3, 1, 3, 3),
    ring(2, -1, 2, 6),
  ],
  'nearly upright edges': [
    ALL,
    ring(0, 0, 5, 0, 5 + 1e-13, 5, 1e-13, 5),
    ring(5, 0, 9, 0, 9, 5, 5 - 1e-11, 5),
    ring(4.999999, -1, 5.000001, 8, 3, 8),
  ],
  'crowns that cross themselves': [ALL, ring(0, 0, 6, 6, 6, 0, 0, 6), ring(3, -1, 5, 8, 0, 2, 7, 2, 1, 8)],
  'one, two, three vertices': [ALL, ring(1, 1), ring(1, 1, 4, 4), ring(1, 1, 4, 1, 2, 5), ring(3, 3, 3, 3, 3, 3)],
  'vertices said twice, and the first at the end': [
    ALL,
    ring(0, 0, 4, 0, 4, 0, 4, 4, 4, 4, 0, 4, 0, 0),
    box(0, 0, 4, 4),
  ],
  'a comb along the pavement edge': [
    box(0, 0, 9, 4),
    ring(0, 4, 1, 2, 2, 4, 3, 2, 4, 4, 5, 2, 6, 4, 7, 2, 8, 4, 8, 6, 0, 6),
  ],
};

/** Each shape as an overlay, the pavement also as its own first crown ("self with self"). */
export function specialCases(placing: Placing): Record<string, OverlayInput> {
  return Object.fromEntries(
    Object.entries(SHAPES).map(([name, [pavement, ...crowns]]) => {
      const zones = [pavement, ...crowns].map((region) => ({ layers: [placed(region, placing)] }));
      return [name, { pieces: [placed(pavement, placing)], blocks: [], zones }];
    }),
  );
}

/** A nine-lobed crown of `n` vertices about a point. */
export function lobed(n: number, radiusM: number, x: number, y: number): Region {
  const out = new Float64Array(2 * n);
  for (let i = 0; i < n; i++) {
    const angle = (2 * Math.PI * i) / n;
    const r = radiusM * (1 + 0.07 * Math.sin(9 * angle));
    out[2 * i] = x + r * Math.cos(angle);
    out[2 * i + 1] = y + r * Math.sin(angle);
  }
  return [out];
}
