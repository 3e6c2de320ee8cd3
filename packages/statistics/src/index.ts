/** The door of the statistics room: published methods, each with its source. */

export { abbottEfficacy } from './abbott-efficacy.ts';
export { agreementTable } from './agreement-table.ts';
export { benjaminiHochberg } from './benjamini-hochberg.ts';
export type { BinomialLink } from './binomial-link.ts';
export type { BinomialFit, BinomialModel, Term } from './binomial-model.ts';
export { fitBinomial } from './binomial-regression.ts';
export { type BlandAltmanResult, blandAltman } from './bland-altman.ts';
export {
  type BootstrapOptions,
  type BootstrapResult,
  blockBootstrap,
  percentileBootstrap,
  type ResampledStatistic,
} from './bootstrap.ts';
export { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from './chi-square-distribution.ts';
export { type CircularDays, circularDays } from './circular-day-of-year.ts';
export {
  cochranSampleSize,
  cochranSampleSizeForMean,
  type SampleSize,
  type WantedPrecision,
} from './cochran-sample-size.ts';
export { CompensatedSum, compensatedSum } from './compensated-sum.ts';
export {
  type Defined,
  defined,
  mapDefined,
  reasonInWords,
  type Undefined,
  type UndefinedReason,
  undefinedBecause,
} from './defined.ts';
export {
  type DayTemperatures,
  type DegreeDayCutoff,
  type DegreeDayMethod,
  type DevelopmentThresholds,
  degreeDays,
} from './degree-days.ts';
export { diseaseSeverityIndex, type ScoreCount, type SeverityIndex } from './disease-severity-index.ts';
export { fCdf, fQuantile, fUpper } from './f-distribution.ts';
export { logGamma } from './gamma-function.ts';
export { type GearyResult, gearysC } from './gearys-c.ts';
export { generalG, getisOrd, getisOrdStar, type HotSpot, hotSpots } from './getis-ord.ts';
export { type BeforeAfterCounts, hendersonTiltonEfficacy } from './henderson-tilton-efficacy.ts';
export type { Interval } from './interval.ts';
export {
  type IntraclassEstimate,
  type IntraclassForm,
  type IntraclassResult,
  intraclassCorrelation,
  type MeanSquares,
} from './intraclass-correlation.ts';
export { type IsotonicOptions, isotonicRegression } from './isotonic-regression.ts';
export { type ConcordanceResult, linConcordance } from './lin-concordance.ts';
export { covariance, type Divisor, mean, variance, weightedMean } from './moments.ts';
export { localMoransI, type MoranResult, moransI } from './morans-i.ts';
export { normalCdf, normalCritical, normalQuantile, normalTwoSided } from './normal-distribution.ts';
export { philox4x32 } from './philox.ts';
export { areaUnderProgressCurve, areaUnderProgressStairs, type ProgressArea } from './progress-curve.ts';
export { type QuantileType, quantileOfSorted, quantiles } from './quantile.ts';
export { RandomStream } from './random-stream.ts';
export { coefficientInterval, type Prediction, predictShare } from './regression-inference.ts';
export { sampleWithoutReplacement } from './sample-without-replacement.ts';
export { schneiderOrelliEfficacy } from './schneider-orelli-efficacy.ts';
export { findSeparation, type Separation } from './separation.ts';
export type { SpatialTest } from './spatial-autocorrelation.ts';
export {
  binaryWeights,
  distanceNeighbours,
  includingSelf,
  type NeighbourList,
  rowStandardised,
  type SpatialWeights,
  type WeightedLink,
} from './spatial-weights.ts';
export {
  costOptimalAllocation,
  neymanAllocation,
  proportionalAllocation,
  type Stratum,
  stratifiedMeanVariance,
  stratifiedSampleSize,
  wholeAllocation,
} from './stratified-sampling.ts';
export { studentTCdf, studentTCritical, studentTQuantile, studentTTwoSided } from './student-t-distribution.ts';
export { sunShepardEfficacy } from './sun-shepard-efficacy.ts';
export { type DisagreementWeights, type KappaResult, weightedKappa } from './weighted-kappa.ts';
export { wilsonInterval } from './wilson-interval.ts';
