import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isCrsFinding, resolveCrs } from '../crs/resolve-crs.ts';
import { signedArea } from '../ring.ts';
import { equalAreaPlane, planeOf } from './local-plane.ts';

function system(code: string) {
  const crs = resolveCrs(code);
  if (isCrsFinding(crs)) throw new Error(crs.code);
  return crs;
}

describe('the centre', () => {
  test('is the middle of the extent, rounded to 0.01°, in whatever order and parts the data comes', () => {
    const there = equalAreaPlane([-80.2, 25.7, -80.1, 25.8, -80.153, 25.71]);
    const back = equalAreaPlane([Float64Array.of(-80.153, 25.71, -80.1, 25.8), [], [-80.2, 25.7]]);
    expect(there.centre).toEqual({ lon: -80.15, lat: 25.75 });
    expect(back.definition).toBe(there.definition);
    expect(equalAreaPlane([-80.2, 25.7, -80.1, 25.8, -80.099, 25.8]).centre).toEqual(there.centre);
  });

  test('data on both sides of the 180th meridian lies together', () => {
    const plane = equalAreaPlane([179.95, -17, -179.93, -17.02]);
    expect(plane.centre).toEqual({ lon: -179.99, lat: -17.01 });
    const [x0, , x1] = plane.forward([179.95, -17, -179.93, -17.02]);
    expect(x1 - x0).toBeGreaterThan(12_000);
    expect(x1 - x0).toBeLessThan(13_000);
  });

  test('positions that are no positions are passed over; none at all gives (0, 0)', () => {
    expect(equalAreaPlane([Number.NaN, 2, 10, 95, 13.4, 52.5]).centre).toEqual({ lon: 13.4, lat: 52.5 });
    expect(equalAreaPlane([]).centre).toEqual({ lon: 0, lat: 0 });
    expect(equalAreaPlane([[], []]).centre).toEqual({ lon: 0, lat: 0 });
  });

  test('a centre off the globe is misuse', () => {
    expect(() => equalAreaPlane({ lon: 0, lat: 91 })).toThrow(RangeError);
    expect(() => equalAreaPlane({ lon: Number.NaN, lat: 0 })).toThrow(RangeError);
  });
});

describe('laws', () => {
  const near = fc.double({ min: -0.4, max: 0.4, noNaN: true });
  const lat0 = fc.double({ min: -80, max: 80, noNaN: true });
  /** About a millimetre: closer than 0.6 mm to the centre the way back gives the centre. */
  const MILLIMETRE_DEG = 1e-8;
  const lon0 = fc.double({ min: -180, max: 180, noNaN: true });

  test('there and back within a millimetre, anywhere between 80° south and north (seeded)', () => {
    fc.assert(
      fc.property(lon0, lat0, near, near, (lon, lat, east, north) => {
        const plane = equalAreaPlane({ lon, lat });
        const [backLon, backLat] = plane.inverse(plane.forward([lon + east, lat + north]));
        const turn = (backLon - lon - east) / 360;
        expect(Math.abs(turn - Math.round(turn)) * 360).toBeLessThan(MILLIMETRE_DEG);
        expect(Math.abs(backLat - lat - north)).toBeLessThan(MILLIMETRE_DEG);
      }),
      { seed: 20260205, numRuns: 500 },
    );
  });

  test('the area of a triangle is the same in planes with different centres, to 1e-6 (seeded)', () => {
    fc.assert(
      fc.property(lon0, lat0, near, near, (lon, lat, east, north) => {
        const triangle = [lon, lat, lon + 0.002, lat, lon, lat + 0.002];
        const one = signedArea(equalAreaPlane({ lon, lat }).forward(triangle));
        const other = signedArea(equalAreaPlane({ lon: lon + east, lat: lat + north }).forward(triangle));
        expect(Math.abs(other / one - 1)).toBeLessThan(1e-6);
      }),
      { seed: 20260206, numRuns: 200 },
    );
  });
});

describe('planeOf', () => {
  test('feet become metres', () => {
    const inFeet = planeOf(system('EPSG:2236')).forward([-80.1918, 25.7617]);
    const inMetres = planeOf(system('EPSG:26958')).forward([-80.1918, 25.7617]);
    expect(inFeet[0]).toBeCloseTo(inMetres[0], 3);
    expect(inFeet[1]).toBeCloseTo(inMetres[1], 3);
    const [lon, lat] = planeOf(system('EPSG:2236')).inverse(inFeet);
    expect(lon).toBeCloseTo(-80.1918, 9);
    expect(lat).toBeCloseTo(25.7617, 9);
  });

  test('degrees are no plane', () => {
    expect(() => planeOf(system('EPSG:4326'))).toThrow(RangeError);
  });
});
