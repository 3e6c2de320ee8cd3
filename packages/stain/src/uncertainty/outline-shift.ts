/**
 * What an outline drawn too small or too large does to the stain, without redoing the geometry. The pavement of each layer of a
 * crown's fallout (under the crown, first ring, …) is taken as spread evenly over the layer's width, so when the outline
 * moves outwards by δ, the part δ/width of a ring comes under the layer inside it, and so on. How much pavement lies along the
 * border is read off the first ring, so a crown whose border runs over a lawn gains none.
 */

/** The fallout of one crown seen from its border, in metres of distance. */
export interface LayerWidths {
  /** Depth of the crown's own pavement: its area over the pavement along its border; infinite when there is none there. */
  readonly depthM: number;
  /** Outer end of each drift ring, growing. */
  readonly ringToM: ArrayLike<number>;
}

/**
 * Depth of a crown's pavement from the areas on the pavement (m²) by layer. Without drift rings, or with none of the first on
 * the pavement while there is nothing to compare, the crown is taken as a disc of `spreadM` evenly paved: depth spread/4.
 */
export function depthOf(areaByLayerM2: ArrayLike<number>, ringToM: ArrayLike<number>, spreadM: number): number {
  if (ringToM.length === 0) return spreadM / 4;
  const alongBorderM = areaByLayerM2[1] / ringToM[0];
  return alongBorderM > 0 ? areaByLayerM2[0] / alongBorderM : Number.POSITIVE_INFINITY;
}

/** A stained share of 1 would be an infinite dose. */
const MOST = 1 - 1e-9;

/**
 * The mean stained share of each layer's ground by this crown alone, 0–1, into `out`, when its true outline lies `shiftM`
 * outside the drawn one (negative: inside). `stained` are the shares of the layers as drawn. Ground beyond the last ring that a
 * larger crown would reach is counted within the last ring. Exact when the layers are paved evenly across their width.
 *
 * Example: rings to 0.5 and 1 m, shares 0.6, 0.35, 0.2, shift 0.25: the first ring's is (0.6 + 0.35)/2 = 0.475.
 */
export function shiftedShares(
  stained: ArrayLike<number>,
  { depthM, ringToM }: LayerWidths,
  shiftM: number,
  out: Float64Array,
): void {
  const last = ringToM.length;
  for (let layer = 0; layer <= last; layer++) {
    const from = layer === 0 ? -depthM : layer === 1 ? 0 : ringToM[layer - 2];
    const to = layer === 0 ? 0 : ringToM[layer - 1];
    // Ground at distance x from the drawn border lies at x − shift from the true one.
    let share =
      from === Number.NEGATIVE_INFINITY ? stained[0] : meanBetween(stained, ringToM, from - shiftM, to - shiftM);
    if (layer === last && shiftM > 0 && Number.isFinite(from) && to > from) {
      share += (shiftM / (to - from)) * meanBetween(stained, ringToM, to - shiftM, to);
    }
    out[layer] = Math.min(MOST, share);
  }
}

/** Mean stained share between two distances from the true border. */
function meanBetween(stained: ArrayLike<number>, ringToM: ArrayLike<number>, from: number, to: number): number {
  if (to <= from) return stained[0];
  let sum = 0;
  let inner = Number.NEGATIVE_INFINITY;
  for (let layer = 0; layer < stained.length; layer++) {
    const outer = layer === 0 ? 0 : ringToM[layer - 1];
    const overlap = Math.min(to, outer) - Math.max(from, inner);
    if (overlap > 0) sum += overlap * stained[layer];
    inner = outer;
  }
  return sum / (to - from);
}
