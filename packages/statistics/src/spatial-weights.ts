/** Who neighbours whom, and how much each neighbour counts. */

import { expectFinite, expectPositive, expectSameLength } from './expectations.ts';

/** Neighbours of each unit, as positions from 0; a unit is not its own neighbour. Links may be one-sided. */
export type NeighbourList = readonly (readonly number[])[];

/** One link: the neighbour's position and its weight. */
export type WeightedLink = { readonly to: number; readonly weight: number };

/** Links of each unit with their weights, from 0 up. */
export type SpatialWeights = readonly (readonly WeightedLink[])[];

/**
 * Weights of 1 for every neighbour. RangeError for neighbours that do not exist, repeat, or are the unit itself.
 *
 * Example: `binaryWeights([[1], [0]])` gives two units that count each other once.
 */
export function binaryWeights(neighbours: NeighbourList): SpatialWeights {
  return neighbours.map((list, unit) => {
    const seen = new Set<number>([unit]);
    for (const to of list) {
      if (!(Number.isInteger(to) && to >= 0 && to < neighbours.length) || seen.has(to)) {
        throw new RangeError(
          `neighbours: expected other units 0 to ${neighbours.length - 1} once each, got ${to} for unit ${unit}`,
        );
      }
      seen.add(to);
    }
    return list.map((to) => ({ to, weight: 1 }));
  });
}

/** Weights scaled to a sum of 1 per unit; a unit without neighbours stays without. */
export function rowStandardised(weights: SpatialWeights): SpatialWeights {
  return weights.map((links) => {
    const sum = links.reduce((total, link) => total + link.weight, 0);
    return sum === 0 ? [] : links.map(({ to, weight }) => ({ to, weight: weight / sum }));
  });
}

/** The same weights with each unit linked to itself as well, with the given weight: the star of Getis and Ord's Gᵢ*. */
export function includingSelf(weights: SpatialWeights, selfWeight = 1): SpatialWeights {
  return weights.map((links, unit) => [...links, { to: unit, weight: selfWeight }]);
}

/**
 * Neighbours within a distance (inclusive) of each point, in the units of the coordinates, sorted upwards.
 *
 * Points are sorted into square cells as wide as the distance, so the work grows with the number of links. Points at the same
 * place are neighbours. RangeError unless the distance is positive and the lists are equally long.
 *
 * Example: `distanceNeighbours([0, 1, 5], [0, 0, 0], 2)` gives [[1], [0], []].
 */
export function distanceNeighbours(x: ArrayLike<number>, y: ArrayLike<number>, distance: number): number[][] {
  expectSameLength(x, y, 'x and y');
  expectFinite(x, 'x');
  expectFinite(y, 'y');
  expectPositive(distance, 'distance');
  const column = (i: number): number => Math.floor((x[i] as number) / distance);
  const row = (i: number): number => Math.floor((y[i] as number) / distance);
  const cells = new Map<string, number[]>();
  for (let i = 0; i < x.length; i++) {
    const key = `${column(i)} ${row(i)}`;
    const cell = cells.get(key);
    if (cell) cell.push(i);
    else cells.set(key, [i]);
  }
  return Array.from({ length: x.length }, (_, i) => {
    const near: number[] = [];
    for (let dc = -1; dc <= 1; dc++) {
      for (let dr = -1; dr <= 1; dr++) {
        for (const j of cells.get(`${column(i) + dc} ${row(i) + dr}`) ?? []) {
          const away = Math.hypot((x[j] as number) - (x[i] as number), (y[j] as number) - (y[i] as number));
          if (j !== i && away <= distance) near.push(j);
        }
      }
    }
    return near.sort((a, b) => a - b);
  });
}

/** The sums of weights that the moments of spatial statistics are made of. */
export type WeightSums = {
  /** S₀ = ΣΣw. */
  readonly s0: number;
  /** S₁ = ½ΣΣ(w_ij + w_ji)². */
  readonly s1: number;
  /** S₂ = Σ(w_i. + w_.i)². */
  readonly s2: number;
};

/**
 * S₀, S₁ and S₂ of spatial weights. Source: Cliff and Ord (1981), Spatial Processes, section 1.5 (from memory).
 *
 * Example: `weightSums(binaryWeights([[1], [0]]))` gives s0 = 2, s1 = 4, s2 = 8.
 */
export function weightSums(weights: SpatialWeights): WeightSums {
  const lookup = weights.map((links) => new Map(links.map(({ to, weight }) => [to, weight])));
  const both = new Array<number>(weights.length).fill(0);
  let s0 = 0;
  let s1 = 0;
  for (const [from, links] of weights.entries()) {
    for (const { to, weight } of links) {
      const back = lookup[to]?.get(from);
      s0 += weight;
      both[from] = (both[from] as number) + weight;
      both[to] = (both[to] as number) + weight;
      // A pair linked both ways is met twice, so it adds half each time; one linked one way adds its square, once.
      s1 += back === undefined ? weight ** 2 : (weight + back) ** 2 / 2;
    }
  }
  return { s0, s1, s2: both.reduce((sum, w) => sum + w * w, 0) };
}
