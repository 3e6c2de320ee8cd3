/** The dose coefficient against R's glm (script and versions: calibration/calibration.R), and on the invented town whose k is known. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { calibrateProject, isStopped } from '@crownfall/assessment';
import { readProject } from '@crownfall/exchange/node';
import { calibrate, type QuadratDose } from '@crownfall/stain';
import { expect, test } from 'vitest';

/** Both fits stop when their steps are below 1e-7 of the estimate's error; the printed digits are 15. */
const TOLERANCE = 1e-8;

const shares = [0.02, 0.1, 0.18, 0.31, 0.27, 0.44, 0.52, 0.05, 0.36, 0.61, 0, 0.23];
const areas = [1, 0.25, 0.5, 1, 1, 0.25, 0.5, 1, 1, 0.5, 0.25, 1];
const inner = [0.05, 0.1, 0.2, 0.4, 0.3, 0.6, 0.8, 0.1, 0.45, 0.9, 0.04, 0.25];
const outer = [0.05, 0.05, 0.2, 0.4, 0.6, 0.6, 0.8, 0, 0.45, 1.4, 0.04, 0.25];
const parts = [1, 0.6, 1, 1, 0.7, 1, 1, 0.5, 1, 0.8, 1, 1];

const quadrats = shares.map(
  (stainedShare, i): QuadratDose => ({
    quadratId: `Q${i + 1}`,
    block: `B${i % 4}`,
    areaM2: areas[i],
    stainedShare,
    parts: [
      { share: parts[i], dose: inner[i] },
      { share: 1 - parts[i], dose: outer[i] },
    ],
  }),
);

/** R 4.2.2, glm(y ~ 1 + offset(log(u)), quasibinomial(link = "cloglog"), weights = area), u iterated. */
const R = {
  k: 0.932251393728102,
  logSe: 0.0413845347269371,
  dispersion: 0.00340063538536285,
  freedom: 11,
  interval: [0.85108820111142, 1.02115463470538],
  doses: [
    0.05, 0.0797194779449275, 0.2, 0.4, 0.3815317296345517, 0.6, 0.8, 0.048835107499361, 0.45, 0.9830640934957258, 0.04,
    0.25,
  ],
  fitted: [
    0.0455428884154037, 0.0716241286535151, 0.1701001754141898, 0.3112662811524415, 0.2993056357758627,
    0.4284200075420784, 0.5256458645224122, 0.0445058110727947, 0.3426332040578419, 0.6000688498384602,
    0.0366033439200544, 0.2078962105212645,
  ],
  standardised: [
    -2.1253931212870096, 0.947793681856429, 0.3265469011042588, -0.0510175888314536, -1.1896681334395329,
    0.2061333955543096, -0.1466833225379949, 0.4620861768162098, 0.6888045472631598, 0.265219224833796,
    -1.6751385880874767, 0.9869028446901167,
  ],
} as const;

const near = (value: number, wanted: number): void =>
  expect(Math.abs(value - wanted), `got ${value}, wanted ${wanted}`).toBeLessThan(
    TOLERANCE * Math.max(1, Math.abs(wanted)),
  );

test('k, its error, interval, dispersion, fitted shares and residuals are those of R', () => {
  const { calibration } = calibrate(quadrats);
  if (calibration === null) throw new Error('expected a fit');
  near(calibration.doseCoefficient, R.k);
  near(calibration.logStandardError, R.logSe);
  near(calibration.dispersion, R.dispersion);
  expect(calibration.residualFreedom).toBe(R.freedom);
  near(calibration.interval.lower, R.interval[0]);
  near(calibration.interval.upper, R.interval[1]);
  calibration.quadrats.forEach((quadrat, i) => {
    near(quadrat.dose, R.doses[i]);
    near(quadrat.fitted, R.fitted[i]);
    near(quadrat.standardisedResidual, R.standardised[i]);
  });
});

test('on the invented town the interval holds the k it was made with', async () => {
  const town = join(import.meta.dirname, '../../sample-geo');
  const truth = JSON.parse(readFileSync(join(town, 'truth.json'), 'utf8'));
  const outcome = calibrateProject(await readProject(town));
  if (isStopped(outcome) || outcome.calibration === null) throw new Error('expected a fit');
  const { interval, quadrats: used, leaveOneBlockOut } = outcome.calibration;
  expect(interval.lower).toBeLessThan(truth.dose_coefficient);
  expect(interval.upper).toBeGreaterThan(truth.dose_coefficient);
  // The interval says something: within a third of k.
  expect(interval.upper - interval.lower).toBeLessThan(truth.dose_coefficient / 3);
  if (!leaveOneBlockOut.defined) throw new Error('expected an error of prediction');
  expect(leaveOneBlockOut.value.rootMeanSquare).toBeLessThan(leaveOneBlockOut.value.rootMeanSquareOfMean / 2);
  // Doses by the overlay against the generator's own, at the true k: apart by rater error only where severities were read.
  const trueDose = new Map<string, number>(
    truth.quadrats.map((one: { quadrat_id: string; dose: number }) => [one.quadrat_id, one.dose]),
  );
  const ratios = used
    .map(({ quadratId, dose }) => (truth.dose_coefficient * dose) / (trueDose.get(quadratId) ?? Number.NaN))
    .sort((a, b) => a - b);
  const median = ratios[Math.floor(ratios.length / 2)];
  expect(median).toBeGreaterThan(0.85);
  expect(median).toBeLessThan(1.15);
});
