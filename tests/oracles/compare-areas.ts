/** Our areas against an outside program's, case by case; where they differ, the exact judge says who is right. */
import { areasByCover } from './exact-area.ts';
import { type OverlayCase, overlayAreas } from './overlay-case.ts';

/** Areas agree when they differ by less than the larger of both: share of the area, and m². */
const RELATIVE = 1e-9;
const ABSOLUTE_M2 = 1e-9;

export interface Disagreement {
  readonly number: number;
  /** Crown, or the number of crowns for their union. */
  readonly area: number;
  readonly ours: number;
  readonly theirs: number;
  readonly exact: number;
}

export class AreaComparison {
  cases = 0;
  areas = 0;
  areasAboveZero = 0;
  /** Cases that the outside program calls not valid. */
  invalid = 0;
  /** Largest difference as a share of what is allowed. */
  worstShare = 0;
  readonly disagreements: Disagreement[] = [];

  /** Compares one case; `theirs` as in {@link overlayAreas}, NaN throughout for a case that is not valid. */
  add(number: number, overlayCase: OverlayCase, theirs: Float64Array, ours = overlayAreas(overlayCase)): void {
    this.cases++;
    if (theirs.every(Number.isNaN)) {
      this.invalid++;
      return;
    }
    let exact: Float64Array | undefined;
    for (let k = 0; k < ours.length; k++) {
      this.areas++;
      this.areasAboveZero += theirs[k] > 0 ? 1 : 0;
      const share = shareOfAllowed(ours[k], theirs[k]);
      this.worstShare = Math.max(this.worstShare, share <= 1 ? share : 0);
      if (share <= 1) continue;
      exact ??= exactAreas(overlayCase);
      this.disagreements.push({ number, area: k, ours: ours[k], theirs: theirs[k], exact: exact[k] });
    }
  }

  /** Disagreements in which the exact judge finds us beyond what is allowed. */
  get ourErrors(): Disagreement[] {
    return this.disagreements.filter(({ ours, exact }) => !(shareOfAllowed(ours, exact) <= 1));
  }
}

/** Difference from what is right, as a share of what is allowed; NaN counts as ∞. */
export function shareOfAllowed(got: number, right: number): number {
  const share = Math.abs(got - right) / Math.max(ABSOLUTE_M2, RELATIVE * Math.abs(right));
  return Number.isNaN(share) ? Infinity : share;
}

/** {@link overlayAreas} by the exact judge. */
export function exactAreas({ pavement, crowns }: OverlayCase): Float64Array {
  const areas = new Float64Array(crowns.length + 1);
  for (const [key, area] of areasByCover([pavement, ...crowns])) {
    const covering = key.split(',').map(Number);
    if (covering[0] !== 0) continue;
    for (const layer of covering.slice(1)) areas[layer - 1] += area;
    if (covering.length > 1) areas[crowns.length] += area;
  }
  return areas;
}
