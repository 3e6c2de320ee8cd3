/** The worked example of docs/methods/calibration.md, read from the page itself. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { calibrate } from './calibrate.ts';

const page = readFileSync(new URL('../../../../docs/methods/calibration.md', import.meta.url), 'utf8');

test('the plots on the page give the figures on the page', () => {
  const rows = [...page.matchAll(/^\| (Q\d+) \| (\w) \| ([\d.]+) \| ([\d.]+) \|$/gm)];
  expect(rows.length).toBe(10);
  const { calibration } = calibrate(
    rows.map(([, quadratId, block, dose, stained]) => ({
      quadratId,
      block,
      areaM2: 1,
      stainedShare: Number(stained) / 100,
      parts: [{ share: 1, dose: Number(dose) }],
    })),
  );
  if (calibration === null) throw new Error('expected a fit');
  const { doseCoefficient: k, interval } = calibration;
  const share = 100 * -Math.expm1(-k * 0.5);
  expect(page).toContain(
    `k = ${k.toFixed(3)}, 95 % interval ${interval.lower.toFixed(3)} to ${interval.upper.toFixed(3)}. A plot under a dose of 0.5 is expected to be ${share.toFixed(1)} % stained.`,
  );
});
