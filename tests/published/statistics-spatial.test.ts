import { readFileSync } from 'node:fs';
import {
  binaryWeights,
  gearysC,
  generalG,
  getisOrd,
  getisOrdStar,
  hotSpots,
  includingSelf,
  localMoransI,
  moransI,
  rowStandardised,
} from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';
import { columbus } from './statistics/columbus.ts';
import { from1 } from './statistics/from-1.ts';
import { lattice } from './statistics/lattice.ts';
import { required } from './statistics/required.ts';
import { sharedData } from './statistics/shared-data.ts';

const near = (value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted), `got ${value}, wanted ${wanted}`).toBeLessThanOrEqual(tolerance);
const nearAll = (values: readonly number[], wanted: readonly number[], tolerance: number): void => {
  expect(values).toHaveLength(wanted.length);
  for (const [i, value] of values.entries()) near(value, wanted[i] as number, tolerance);
};

describe('Columbus crime (Anselin 1988), values of spdep', () => {
  const { values, expected, tolerance } = columbus;
  const binary = binaryWeights(from1(columbus.neighboursFrom1));
  const standard = rowStandardised(binary);

  test('Moran’s I, row-standardised, both moments', () => {
    const result = required(moransI(values, standard));
    const randomisation = required(result.randomisation);
    near(result.moransI, expected.moran_W.I, tolerance);
    near(randomisation.expectation, expected.moran_W.EI, tolerance);
    near(randomisation.variance, expected.moran_W.var_randomisation, tolerance);
    near(randomisation.z, expected.moran_W.z_randomisation, tolerance);
    near(randomisation.pValue / 2, expected.moran_W.p_greater, tolerance);
    near(required(result.normality).variance, expected.moran_W.var_normality, tolerance);
    near(required(result.normality).z, expected.moran_W.z_normality, tolerance);
  });

  test('Moran’s I, weights of 1', () => {
    const result = required(moransI(values, binary));
    near(result.moransI, expected.moran_B.I, tolerance);
    near(required(result.randomisation).variance, expected.moran_B.var_randomisation, tolerance);
    near(required(result.randomisation).z, expected.moran_B.z_randomisation, tolerance);
  });

  test('Geary’s C and the general G', () => {
    const geary = required(gearysC(values, standard));
    near(geary.gearysC, expected.geary_W.C, tolerance);
    near(required(geary.randomisation).variance, expected.geary_W.var, tolerance);
    // spdep turns the sign, so that likeness is positive.
    near(-required(geary.randomisation).z, expected.geary_W.z, tolerance);
    const g = required(generalG(values, binary));
    near(g.statistic, expected.globalG_B.G, tolerance);
    near(g.expectation, expected.globalG_B.EG, tolerance);
    near(g.variance, expected.globalG_B.var, tolerance);
    near(g.z, expected.globalG_B.z, tolerance);
  });

  test('local statistics', () => {
    nearAll(
      required(getisOrdStar(values, binary)).map(required),
      expected.getis_ord_Gi_star_z_binary_self_included,
      tolerance,
    );
    nearAll(
      required(getisOrdStar(values, rowStandardised(includingSelf(binary)))).map(required),
      expected.getis_ord_Gi_star_z_rowstd_self_included,
      tolerance,
    );
    nearAll(required(getisOrd(values, binary)).map(required), expected.getis_ord_Gi_z_binary, tolerance);
    nearAll(required(localMoransI(values, standard)), expected.local_moran_Ii_W, tolerance);
  });

  test('hot spots at a false discovery rate of 5 %', () => {
    const spots = required(hotSpots(values, binary, 0.05));
    // R 4.2.2: which(p.adjust(2 * pnorm(-abs(z)), "BH") <= 0.05) of the published z; units from 1.
    expect(spots.flatMap(({ spot }, i) => (spot === 'hot' ? [i + 1] : []))).toEqual([16, 24, 28, 29]);
    expect(spots.flatMap(({ spot }, i) => (spot === 'cold' ? [i + 1] : []))).toEqual([32]);
  });
});

describe('5 × 5 lattice, values of spdep', () => {
  const { values, expected, tolerance } = lattice;
  const binary = binaryWeights(from1(lattice.neighboursFrom1));
  test('Moran’s I with both weights', () => {
    for (const [weights, wanted] of [
      [binary, expected.moran_B],
      [rowStandardised(binary), expected.moran_W],
    ] as const) {
      const result = required(moransI(values, weights));
      near(result.moransI, wanted.I, tolerance);
      near(required(result.randomisation).variance, wanted.var_randomisation, tolerance);
      near(required(result.randomisation).z, wanted.z, tolerance);
      near(required(result.randomisation).expectation, -1 / 24, 1e-15);
    }
  });
  test('Gi*', () => {
    nearAll(required(getisOrdStar(values, binary)).map(required), expected.Gi_star_z_binary, tolerance);
  });
});

const galFile = sharedData('stats/columbus.gal');
const dbfFile = sharedData('stats/columbus.dbf');

describe('the Columbus files themselves', () => {
  test.skipIf(!galFile || !dbfFile)('Moran’s I of CRIME read from the files is 0.485770914', () => {
    const values = dbfColumn(readFileSync(dbfFile as string), 'CRIME');
    const neighbours = galNeighbours(readFileSync(galFile as string, 'utf8'), values.length);
    near(required(moransI(values, rowStandardised(binaryWeights(neighbours)))).moransI, 0.485770914, 5e-10);
  });
});

/** GAL: a header, then two lines per unit: its number (from 1) with the count of neighbours, and the neighbours. */
function galNeighbours(text: string, units: number): number[][] {
  const lines = text
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number));
  const body = lines.slice(lines.length - 2 * units);
  return Array.from({ length: units }, (_, i) => (body[2 * i + 1] as number[]).map((unit) => unit - 1));
}

/** One numeric column of a dBASE III table. */
function dbfColumn(bytes: Buffer, name: string): number[] {
  const [records, header, recordLength] = [bytes.readUInt32LE(4), bytes.readUInt16LE(8), bytes.readUInt16LE(10)];
  let start = 1;
  for (let at = 32; bytes[at] !== 0x0d; at += 32) {
    const length = bytes[at + 16] as number;
    if (bytes.toString('latin1', at, at + 11).replace(/\0.*$/s, '') === name) {
      return Array.from({ length: records }, (_, i) => {
        const from = header + i * recordLength + start;
        return Number(bytes.toString('latin1', from, from + length));
      });
    }
    start += length;
  }
  throw new Error(`no column ${name}`);
}
