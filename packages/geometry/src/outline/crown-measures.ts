/**
 * Crown projection area and mean spread of a recorded crown shape, by closed forms.
 *
 * Sources: polygon through n radii and quadratic mean radius: Pretzsch et al. 2015, Urban For. Urban Green. 14:466–479
 * [from memory]; mean of two perpendicular diameters: Schomaker et al. 2007, GTR-SRS-102 [from memory].
 */
import type { Region } from '../ring.ts';
import type { PlaneCrownShape } from './plane-crown-shape.ts';
import { regionArea } from './region-measures.ts';

/**
 * How n radii become one area: `quadratic_mean` π/n · Σ r² (the outline drawn here has exactly this area); `polygon`
 * ½ sin(2π/n) Σ rᵢ rᵢ₊₁, straight between the tips; `mean_radius` π · r̄².
 */
export type RadiiAreaConvention = 'quadratic_mean' | 'polygon' | 'mean_radius';

/**
 * Crown projection area, m²: circle πd²/4; ellipse πab/4; radii π/n · Σ r²; polygon the sum of signed ring areas, absolute.
 * It equals the area of the region that {@link crownOutline} draws. Sizes are not checked here: a NaN gives NaN.
 *
 * @example crownArea({ from: 'diameters', x: 0, y: 0, aM: 9.2, bM: 7.4, bearingDeg: 0 }) // 53.4699…
 */
export function crownArea(shape: PlaneCrownShape): number {
  switch (shape.from) {
    case 'polygon':
      return Math.abs(regionArea(shape.region));
    case 'spread':
      return (Math.PI * shape.spreadM ** 2) / 4;
    case 'diameters':
      return (Math.PI * shape.aM * shape.bM) / 4;
    case 'radii':
      return crownAreaFromRadii(shape.radiiM, 'quadratic_mean');
  }
}

/**
 * Mean crown spread, m: the spread itself; (a + b)/2; twice the mean radius; of a drawn polygon the diameter of the circle
 * of equal area, 2√(A/π).
 *
 * @example meanSpread({ from: 'diameters', x: 0, y: 0, aM: 9.2, bM: 7.4, bearingDeg: 0 }) // 8.3
 */
export function meanSpread(shape: PlaneCrownShape): number {
  switch (shape.from) {
    case 'polygon':
      return spreadOfArea(shape.region);
    case 'spread':
      return shape.spreadM;
    case 'diameters':
      return (shape.aM + shape.bM) / 2;
    case 'radii':
      return 2 * mean(shape.radiiM);
  }
}

/**
 * Crown area from radii at equal steps of bearing, m², by a published convention. No radii give NaN.
 *
 * @example crownAreaFromRadii([5, 4, 3, 4], 'polygon') // 32
 */
export function crownAreaFromRadii(radiiM: readonly number[], convention: RadiiAreaConvention): number {
  const n = radiiM.length;
  if (convention === 'mean_radius') return Math.PI * mean(radiiM) ** 2;
  if (convention === 'quadratic_mean') return Math.PI * quadraticMeanRadius(radiiM) ** 2;
  const products = radiiM.reduce((sum, r, i) => sum + r * radiiM[(i + 1) % n], 0);
  return (Math.sin((2 * Math.PI) / n) * products) / 2;
}

/** Quadratic mean radius √(Σ r² / n), m: the radius of the circle whose area is the mean of the radii's circles. */
export function quadraticMeanRadius(radiiM: readonly number[]): number {
  return Math.sqrt(mean(radiiM.map((r) => r * r)));
}

function spreadOfArea(region: Region): number {
  return 2 * Math.sqrt(Math.abs(regionArea(region)) / Math.PI);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
