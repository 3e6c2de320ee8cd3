/** What falls on a measured plot when k is 1: its ground by dose. */

/** A quadrat with the doses that its ground receives at k = 1. */
export interface QuadratDose {
  readonly quadratId: string;
  /** The block that holds it; null outside every block. */
  readonly block: string | null;
  /** As measured, m²: the weight of the observation. */
  readonly areaM2: number;
  /** Observed, 0–1. */
  readonly stainedShare: number;
  /** The plot's ground in parts of equal dose; shares of the plot sum to 1, doses ≥ 0. */
  readonly parts: readonly { readonly share: number; readonly dose: number }[];
}

/** Mean dose over the plot at k = 1, dimensionless. */
export function meanDose({ parts }: Pick<QuadratDose, 'parts'>): number {
  return parts.reduce((sum, part) => sum + part.share * part.dose, 0);
}

/**
 * The even dose that would stain the whole plot as much as its uneven ones do: u* = −ln(Σ share · e^(−k·dose)) / k, so that
 * 1 − e^(−k·u*) is the plot's expected stained share exactly. Between the least dose and the mean dose, and the mean when
 * all parts are alike or k is 0. 0 when nothing falls on it.
 *
 * Example: half the plot at dose 1, half at 0, k = 1: u* = −ln(0.5 e^−1 + 0.5) = 0.3799 (the mean is 0.5).
 */
export function equivalentDose(quadrat: Pick<QuadratDose, 'parts'>, k: number): number {
  if (k === 0) return meanDose(quadrat);
  const least = quadrat.parts.reduce((low, { dose }) => Math.min(low, dose), Number.POSITIVE_INFINITY);
  // Counted from the least dose, so that heavy doses do not round the clean share to 0.
  const stained = quadrat.parts.reduce((sum, { share, dose }) => sum + share * Math.expm1(-k * (dose - least)), 0);
  return least - Math.log1p(stained) / k;
}
