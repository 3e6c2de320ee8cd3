import { describe, expect, test } from 'vitest';
import { checkPositions, type LonLatExtent } from './check-positions.ts';
import { isCrsFinding, resolveCrs } from './resolve-crs.ts';

/** Around Miami. */
const HERE: LonLatExtent = [-80.3, 25.7, -80.1, 25.9];

function system(code: string) {
  const crs = resolveCrs(code);
  if (isCrsFinding(crs)) throw new Error(crs.code);
  return crs;
}

describe('checkPositions', () => {
  test('degrees where they ought to be give nothing', () => {
    expect(checkPositions([-80.19, 25.77, -80.2, 25.78], { reference: HERE })).toEqual([]);
    expect(checkPositions([], { reference: HERE })).toEqual([]);
    expect(checkPositions([Number.NaN, 1])).toEqual([]);
  });

  test('projected numbers without a stated system stop the job', () => {
    const found = checkPositions([922158.93, 519895.91], { where: { file: 'crowns.geojson' } });
    expect(found).toMatchObject([
      { code: 'crs-missing', severity: 'error', effect: 'stops', where: { file: 'crowns.geojson', vertex: 1 } },
    ]);
  });

  test('latitude first: beyond 90°, or by the reference extent', () => {
    expect(checkPositions([37.77, -122.42])).toMatchObject([{ code: 'lonlat-maybe-swapped' }]);
    expect(checkPositions([25.77, -80.19], { reference: HERE })).toMatchObject([{ code: 'lonlat-maybe-swapped' }]);
    expect(checkPositions([25.77, -80.19])).toEqual([]);
  });

  test('data elsewhere is not called swapped', () => {
    expect(checkPositions([13.4, 52.5], { reference: HERE })).toEqual([]);
    expect(checkPositions([25.77, -80.19, -80.19, 25.77], { reference: HERE })).toEqual([]);
  });

  test('beyond the range of degrees, and beyond the reach of a projection', () => {
    expect(checkPositions([-80, 25, -80, 125], { crs: system('EPSG:4326') })).toMatchObject([
      { code: 'lonlat-out-of-range', where: { vertex: 2 }, facts: { y: 125, count: 1 } },
    ]);
    expect(checkPositions([-80.19, 25.77, 1e9, 1e9], { crs: system('EPSG:3086') })).toMatchObject([
      { code: 'lonlat-out-of-range', where: { vertex: 2 }, facts: { count: 1 } },
    ]);
    expect(checkPositions([922158.93, 519895.91], { crs: system('EPSG:2236') })).toEqual([]);
  });
});
