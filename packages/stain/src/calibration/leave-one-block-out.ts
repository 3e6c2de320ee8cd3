/** How well k carries over to a block it was not fitted to. */
import { type Defined, defined, undefinedBecause } from '@crownfall/statistics';
import type { BlockwiseError } from './calibration.ts';
import { fitDoseCoefficient } from './fit-dose-coefficient.ts';
import type { QuadratDose } from './quadrat-dose.ts';

/**
 * Leaves out one block after the other, fits k to the rest, and predicts the stained shares of the block's quadrats. Blocks,
 * not single quadrats, because plots of one block resemble each other (spatial cross-validation; Roberts et al. 2017,
 * Ecography 40:913–929, from memory). Quadrats outside every block count as one block. Undefined below two blocks, or when
 * the rest of some block cannot be fitted.
 */
export function leaveOneBlockOut(quadrats: readonly QuadratDose[]): Defined<BlockwiseError> {
  const blocks = [...new Set(quadrats.map(({ block }) => block))];
  if (blocks.length < 2) return undefinedBecause('too-few-observations');
  let squares = 0;
  let squaresOfMean = 0;
  let sum = 0;
  let areaM2 = 0;
  const ks: number[] = [];
  for (const left of blocks) {
    const others = quadrats.filter(({ block }) => block !== left);
    const fit = fitDoseCoefficient(others);
    if (!fit.defined) return fit;
    const k = fit.value.doseCoefficient;
    const meanOfOthers = areaWeightedShare(others);
    ks.push(k);
    for (const quadrat of quadrats.filter(({ block }) => block === left)) {
      const error = stainedShareAt(quadrat, k) - quadrat.stainedShare;
      areaM2 += quadrat.areaM2;
      sum += quadrat.areaM2 * error;
      squares += quadrat.areaM2 * error ** 2;
      squaresOfMean += quadrat.areaM2 * (meanOfOthers - quadrat.stainedShare) ** 2;
    }
  }
  return defined({
    rootMeanSquare: Math.sqrt(squares / areaM2),
    bias: sum / areaM2,
    rootMeanSquareOfMean: Math.sqrt(squaresOfMean / areaM2),
    doseCoefficients: [Math.min(...ks), Math.max(...ks)],
    blocks: blocks.length,
  });
}

/** Expected stained share of a plot with uneven doses. */
function stainedShareAt({ parts }: QuadratDose, k: number): number {
  return parts.reduce((sum, { share, dose }) => sum - share * Math.expm1(-k * dose), 0);
}

function areaWeightedShare(quadrats: readonly QuadratDose[]): number {
  const areaM2 = quadrats.reduce((sum, quadrat) => sum + quadrat.areaM2, 0);
  return quadrats.reduce((sum, quadrat) => sum + quadrat.areaM2 * quadrat.stainedShare, 0) / areaM2;
}
