/**
 * The exact judge: areas by cover in whole-number arithmetic, for small neighbourhoods.
 *
 * A double is a whole number times a power of two, so coordinates are taken as given, without rounding: as BigInt multiples
 * of 2⁻²⁵⁶ m. The plane is cut into vertical slabs at every vertex and crossing; in a slab the edges are sorted at mid-slab
 * and areas are distance × width. Only the place of a crossing, the height at mid-slab and the last conversion to a double
 * are rounded, the first two at 2⁻²⁵⁶ m (1e-77 m): a crossing off by that much moves no area a double could show. Edges
 * that compare equal lie on one another there, and their order matters to no area. Shares no code with the engine.
 */
import type { OverlayInput, OverlayLedger, Region } from '@crownfall/geometry';

export type WindingRule = 'non-zero' | 'even-odd';

const FRACTION_BITS = 256;
/** Areas keep this many bits after the point on their way to a double. */
const AREA_BITS = 200n;

/**
 * An overlay cell off by more is wrong, m². The judge takes coordinates as given, however coarse their own steps are far from
 * the origin, so what remains is the engine's rounding: x to 2⁻³⁶ m (7e-12 m at most), times edges of some ten metres.
 */
export const WRONG_M2 = 1e-9;

interface Edge {
  readonly x0: bigint;
  readonly y0: bigint;
  readonly x1: bigint;
  readonly dx: bigint;
  readonly dy: bigint;
  readonly minY: bigint;
  readonly maxY: bigint;
  readonly layer: number;
  readonly sign: number;
}

/**
 * Area of every set of layers that covers some spot, m², by the layers' numbers joined with commas (ascending).
 *
 * @throws RangeError for a coordinate that is not finite or has bits below 2⁻²⁵⁶ m
 * @example areasByCover([unitSquare, unitSquare]) // Map { '0,1' → 1 }
 */
export function areasByCover(layers: readonly Region[], rule: WindingRule = 'non-zero'): Map<string, number> {
  const edges = edgesOf(layers).sort((a, b) => (a.x0 < b.x0 ? -1 : a.x0 > b.x0 ? 1 : 0));
  const cuts = cutsOf(edges);
  const winding = new Int32Array(layers.length);
  const isIn = rule === 'non-zero' ? (w: number) => w !== 0 : (w: number) => (w & 1) !== 0;
  const areas = new Map<string, bigint>();
  let active: Edge[] = [];
  let next = 0;
  for (let i = 0; i + 1 < cuts.length; i++) {
    active = active.filter((edge) => edge.x1 > cuts[i]);
    while (next < edges.length && edges[next].x0 <= cuts[i]) active.push(edges[next++]);
    const middle = (cuts[i] + cuts[i + 1]) >> 1n;
    const heights = active.map((edge) => ({ edge, y: heightAt(edge, middle) }));
    heights.sort((a, b) => (a.y < b.y ? -1 : a.y > b.y ? 1 : 0));
    winding.fill(0);
    for (let k = 0; k + 1 < heights.length; k++) {
      winding[heights[k].edge.layer] += heights[k].edge.sign;
      const rise = heights[k + 1].y - heights[k].y;
      if (rise === 0n) continue;
      const key = coverKey(winding, isIn);
      if (key !== '') areas.set(key, (areas.get(key) ?? 0n) + rise * (cuts[i + 1] - cuts[i]));
    }
  }
  return new Map([...areas].map(([key, area]) => [key, squareMetres(area)]));
}

/** The cells an overlay ought to have, as {@link cellsOf} writes them, without limit of size. */
export function exactCells({ pieces, blocks, zones }: OverlayInput): Map<string, number> {
  if ('count' in zones) throw new TypeError('expected zones in memory, got a source');
  const roles = [
    ...pieces.map((region, number) => ({ region, role: 'piece', number, ring: 0 })),
    ...blocks.map((region, number) => ({ region, role: 'block', number, ring: 0 })),
    ...zones.flatMap(({ layers }, number) => layers.map((region, ring) => ({ region, role: 'zone', number, ring }))),
  ];
  const cells = new Map<string, number>();
  for (const [key, area] of areasByCover(roles.map(({ region }) => region))) {
    const covering = key.split(',').map((i) => roles[Number(i)]);
    const piece = covering.find(({ role }) => role === 'piece');
    if (!piece) continue;
    const block = covering.find(({ role }) => role === 'block');
    const cover = covering
      .filter((c) => c.role === 'zone')
      .filter((c, i, all) => i === 0 || all[i - 1].number !== c.number)
      .map((c) => `${c.number}.${c.ring}`);
    const cell = `${piece.number}/${block?.number ?? -1}/${cover.join('+')}`;
    cells.set(cell, (cells.get(cell) ?? 0) + area);
  }
  return cells;
}

/** Cells of a ledger by `piece/block/zone.layer+zone.layer…`. */
export function cellsOf(ledger: OverlayLedger): Map<string, number> {
  const cells = new Map<string, number>();
  for (let i = 0; i < ledger.cellCount; i++) {
    const cover: string[] = [];
    for (let j = ledger.coverStart[i]; j < ledger.coverStart[i + 1]; j++) {
      cover.push(`${ledger.zone[j]}.${ledger.layer[j]}`);
    }
    cells.set(`${ledger.piece[i]}/${ledger.block[i]}/${cover.join('+')}`, ledger.areaM2[i]);
  }
  return cells;
}

/** The cell in which two sets of cells differ most, and by how much, m²; a missing cell counts as 0, NaN as ∞. */
export function worstCell(got: Map<string, number>, expected: Map<string, number>): { cell: string; offM2: number } {
  let worst = { cell: '', offM2: 0 };
  for (const cell of new Set([...got.keys(), ...expected.keys()])) {
    const off = Math.abs((got.get(cell) ?? 0) - (expected.get(cell) ?? 0));
    const offM2 = Number.isNaN(off) ? Infinity : off;
    if (offM2 > worst.offM2) worst = { cell, offM2 };
  }
  return worst;
}

function coverKey(winding: Int32Array, isIn: (w: number) => boolean): string {
  let key = '';
  for (let layer = 0; layer < winding.length; layer++) {
    if (isIn(winding[layer])) key += key === '' ? layer : `,${layer}`;
  }
  return key;
}

/** Edges that are not vertical, from left to right. */
function edgesOf(layers: readonly Region[]): Edge[] {
  const edges: Edge[] = [];
  layers.forEach((region, layer) => {
    for (const ring of region) {
      const c = Array.from(ring, wholeNumber);
      for (let i = 0, j = c.length - 2; i < c.length; j = i, i += 2) {
        if (c[i] === c[j]) continue;
        const [a, b, sign] = c[j] < c[i] ? [j, i, 1] : [i, j, -1];
        const [y0, y1] = [c[a + 1], c[b + 1]];
        const [minY, maxY] = y0 < y1 ? [y0, y1] : [y1, y0];
        edges.push({ x0: c[a], y0, x1: c[b], dx: c[b] - c[a], dy: y1 - y0, minY, maxY, layer, sign });
      }
    }
  });
  return edges;
}

/** Where slabs begin and end: ends and crossings of edges, which come sorted by their start. */
function cutsOf(edges: readonly Edge[]): bigint[] {
  const cuts: bigint[] = [];
  for (let i = 0; i < edges.length; i++) {
    const a = edges[i];
    cuts.push(a.x0, a.x1);
    for (let j = i + 1; j < edges.length && edges[j].x0 < a.x1; j++) {
      const b = edges[j];
      if (a.maxY < b.minY || b.maxY < a.minY) continue;
      const turn = a.dx * b.dy - b.dx * a.dy;
      if (turn === 0n) continue;
      const x = a.x0 + (a.dx * ((b.x0 - a.x0) * b.dy - (b.y0 - a.y0) * b.dx)) / turn;
      if (x > b.x0 && x < a.x1 && x < b.x1) cuts.push(x);
    }
  }
  cuts.sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  return cuts.filter((x, i) => i === 0 || x !== cuts[i - 1]);
}

function heightAt(edge: Edge, x: bigint): bigint {
  return edge.y0 + (edge.dy * (x - edge.x0)) / edge.dx;
}

/** A double as a multiple of 2⁻²⁵⁶. */
function wholeNumber(value: number): bigint {
  if (!Number.isFinite(value)) throw new RangeError(`expected a finite coordinate, got ${value}`);
  if (value === 0) return 0n;
  const exponent = Math.max(-1022, Math.floor(Math.log2(Math.abs(value)))) - 54;
  const shift = FRACTION_BITS + exponent;
  const mantissa = BigInt(value / 2 ** exponent);
  if (shift >= 0) return mantissa << BigInt(shift);
  const whole = mantissa >> BigInt(-shift);
  if (whole << BigInt(-shift) !== mantissa)
    throw new RangeError(`expected no bits below 2^-${FRACTION_BITS}, got ${value}`);
  return whole;
}

function squareMetres(area: bigint): number {
  return Number(area >> (2n * BigInt(FRACTION_BITS) - AREA_BITS)) / 2 ** Number(AREA_BITS);
}
