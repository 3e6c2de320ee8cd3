/**
 * Vegetation indices on constructed pixels. Formulas: Rouse 1974, Gitelson 2002, Woebbecke 1995, Louhaichi 2001, Tucker
 * 1979 (citations from memory, see packages/imagery/src/analysis/vegetation-index.ts); values by arithmetic in Python.
 */
import { indexBand, northUp, VEGETATION_INDICES, vegetationIndex, type Window } from '@crownfall/imagery';
import { describe, expect, test } from 'vitest';

/** The values were computed in double precision. */
const TOLERANCE = 1e-15;

type Row = readonly [name: string, bands: readonly [number, number, number, number], expected: readonly number[]];

/** Red, green, blue, near infrared; then NDVI, VARI, ExG, GLI, NGRDI. */
const ROWS: readonly Row[] = [
  [
    'green leaf',
    [72, 121, 43, 190],
    [0.45038167938931295, 0.32666666666666666, 0.5381355932203389, 0.3557422969187675, 0.2538860103626943],
  ],
  [
    'browned leaf',
    [138, 101, 62, 150],
    [0.041666666666666664, -0.20903954802259886, 0.006644518272425209, 0.004975124378109453, -0.15481171548117154],
  ],
  [
    'dark stain on concrete',
    [60, 55, 48, 70],
    [0.07692307692307693, -0.07462686567164178, 0.012269938650306733, 0.009174311926605505, -0.043478260869565216],
  ],
  [
    'light concrete',
    [190, 186, 178, 200],
    [0.02564102564102564, -0.020202020202020204, 0.0072202166064981865, 0.005405405405405406, -0.010638297872340425],
  ],
  ['asphalt', [70, 70, 72, 75], [0.034482758620689655, 0.0, -0.009433962264150941, -0.0070921985815602835, 0.0]],
  ['vari pole', [50, 50, 100, 120], [0.4117647058823529, Number.NaN, -0.25, -0.2, 0.0]],
];

function pixel([red, green, blue, nearInfrared]: Row[1]) {
  return { red, green, blue, nearInfrared };
}

describe('vegetation indices', () => {
  test.each(ROWS)('%s', (_name, bands, expected) => {
    const got = VEGETATION_INDICES.map((index) => vegetationIndex(index, pixel(bands)));
    got.forEach((reading, i) => {
      if (Number.isNaN(expected[i])) expect(reading.defined).toBe(false);
      else expect(Math.abs((reading.defined ? reading.value : Number.NaN) - expected[i])).toBeLessThan(TOLERANCE);
    });
  });

  test('what has no value is named: pole, zero over zero, no band', () => {
    expect(vegetationIndex('VARI', { red: 50, green: 51, blue: 101 })).toEqual({ defined: false, because: 'pole' });
    // The pole of the published rows is 0/0: green equals red there.
    expect(vegetationIndex('VARI', { red: 50, green: 50, blue: 100 })).toEqual({
      defined: false,
      because: 'zero-over-zero',
    });
    for (const index of VEGETATION_INDICES) {
      const dark = vegetationIndex(index, { red: 0, green: 0, blue: 0, nearInfrared: 0 });
      expect(dark).toEqual({ defined: false, because: 'zero-over-zero' });
    }
    expect(vegetationIndex('NDVI', { red: 1, green: 1, blue: 1 })).toEqual({ defined: false, because: 'no-band' });
    expect(() => vegetationIndex('EVI' as 'NDVI', { red: 1, green: 1, blue: 1 })).toThrow(
      /NDVI, VARI, ExG, GLI, NGRDI/,
    );
  });

  test('a band of an index holds no NaN, and says where it has no value', () => {
    const window = windowOf(ROWS.map((row) => row[1]));
    for (const index of VEGETATION_INDICES) {
      const { values, defined } = indexBand(index, window);
      expect(values.every(Number.isFinite)).toBe(true);
      ROWS.forEach(([, , expected], i) => {
        const value = expected[VEGETATION_INDICES.indexOf(index)];
        expect(defined[i]).toBe(Number.isNaN(value) ? 0 : 1);
        expect(values[i]).toBe(Number.isNaN(value) ? 0 : Math.fround(value));
      });
    }
    expect(() => indexBand('NDVI', { ...window, roles: ['red', 'green', 'blue', 'alpha'] })).toThrow(/near-infrared/);
  });
});

function windowOf(pixels: readonly Row[1][]): Window {
  return {
    width: pixels.length,
    height: 1,
    bands: [0, 1, 2, 3].map((band) => Float64Array.from(pixels, (each) => each[band])),
    roles: ['red', 'green', 'blue', 'near-infrared'],
    missing: new Uint8Array(pixels.length),
    nodata: null,
    transform: northUp(0, 0, 1),
    pixelM: 1,
  };
}
