/** Doses from severities: `d_t = k · g · w · s`, and how the layers of a fallout zone share them. */
import type { Settings, TreeSeverity } from '@crownfall/survey';

/**
 * Dose of each tree, dimensionless, in the order given: `dose_coefficient` × `weightedSeverity` (g·w·s). A crown whose gate is
 * shut, or of which nothing is known, has dose 0. Example: k 1.2, galled and fouling by frass (w 1), 40 % browned: 0.48.
 */
export function treeDoses(
  severities: readonly TreeSeverity[],
  { dose_coefficient: k }: Pick<Settings, 'dose_coefficient'>,
): Float64Array {
  return Float64Array.from(severities, (severity) => k * severity.weightedSeverity);
}

/** Share of the dose by layer of a fallout zone: the crown itself 1, then each drift ring's. */
export function layerShares({ drift_rings: rings }: Pick<Settings, 'drift_rings'>): Float64Array {
  return Float64Array.of(1, ...rings.map((ring) => ring.share));
}
