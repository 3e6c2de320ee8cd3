/**
 * Coordinate systems and the analysis plane against published worked examples.
 *
 * [GN7-2] IOGP Geomatics Guidance Note 7 part 2 (IOGP 373-7-2), examples as carried by the EPSG Dataset, methods 9807, 9802, 1024.
 * [GIGS] IOGP 430-2, test series 5103 parts 2 and 3, as carried in PROJ's test suite.
 * [PROJ] computed with PROJ 9.1.1 (cs2cs) from the EPSG Dataset's definitions.
 * [K13] Karney (2013), Algorithms for geodesics, J. Geodesy 87:43–55, and the tests of GeographicLib.
 */
import {
  type CoordinateSystem,
  equalAreaPlane,
  isCrsFinding,
  METRES_PER_FOOT,
  planeOf,
  resolveCrs,
  signedArea,
} from '@crownfall/geometry';
import { area as sphericalArea, polygon as turfPolygon } from '@turf/turf';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, test } from 'vitest';

const WGS84 = geodesic.Geodesic.WGS84;

function system(text: string): CoordinateSystem {
  const crs = resolveCrs(text);
  if (isCrsFinding(crs)) throw new Error(`${text}: ${JSON.stringify(crs)}`);
  return crs;
}

function expectAt(got: ArrayLike<number>, expected: readonly number[], tolerance: number): void {
  expect(Math.abs(got[0] - expected[0])).toBeLessThan(tolerance);
  expect(Math.abs(got[1] - expected[1])).toBeLessThan(tolerance);
}

type LatLon = readonly [lat: number, lon: number];

function geodesicArea(corners: readonly LatLon[]): number {
  const polygon = WGS84.Polygon(false);
  for (const [lat, lon] of corners) polygon.AddPoint(lat, lon);
  return polygon.Compute(false, true).area ?? Number.NaN;
}

const flat = (corners: readonly LatLon[]) => corners.flatMap(([lat, lon]) => [lon, lat]);

describe('worked examples of the EPSG methods [GN7-2]', () => {
  test('9807 Transverse Mercator: 50°30′N 0°30′E on Airy 1830', () => {
    // The printed example computes with k0 0.9996013 and 1/f 299.32496; the registry's values give 6 to 8 mm less.
    const tm = (a: string, k: string) =>
      system(`+proj=tmerc +lat_0=49 +lon_0=-2 +k=${k} +x_0=400000 +y_0=-100000 ${a} +units=m`);
    const printed = tm('+a=6377563.396 +rf=299.32496', '0.9996013').fromLonLat([0.5, 50.5]);
    expectAt(printed, [577274.99, 69740.5], 0.006);
    const registry = tm('+a=6377563.396 +rf=299.3249646', '0.9996012717').fromLonLat([0.5, 50.5]);
    expectAt(registry, [577274.983813, 69740.492267], 1e-4);
  });

  test('9802 Lambert Conic Conformal (2SP): 28°30′N 96°00′W on Clarke 1866, US survey feet', () => {
    const feet = 1200 / 3937;
    const lcc = system(
      '+proj=lcc +lat_0=27.833333333333332 +lon_0=-99 +lat_1=28.383333333333333 +lat_2=30.283333333333335 ' +
        `+x_0=${2000000 * feet} +y_0=0 +ellps=clrk66 +units=us-ft`,
    );
    expectAt(lcc.fromLonLat([-96, 28.5]), [2963503.91, 254759.8], 0.006);
    expectAt(lcc.toLonLat([2963503.91, 254759.8]), [-96, 28.5], 3e-8);
  });

  test('1024 Popular Visualisation Pseudo-Mercator, both ways', () => {
    const web = system('EPSG:3857');
    expectAt(web.fromLonLat([-(100 + 20 / 60), 24 + 22 / 60 + 54.433 / 3600]), [-11169055.58, 2800000], 0.01);
    expectAt(web.toLonLat([-11169055.58, 2810000]), [-(100 + 20 / 60), 24 + 27 / 60 + 48.889 / 3600], 3e-7);
  });
});

describe('two kinds of feet', () => {
  // [GIGS] 5103: longitude, latitude, printed easting and northing; stated tolerance 0.03 m.
  const UTAH_NORTH: Record<string, number[][]> = {
    'EPSG:2921': [
      [-110, 49, 2003937.27, 6452491.7],
      [-110, 47, 2016621.93, 5717728.61],
      [-110, 45, 2029255.57, 4985920.56],
      [-110, 43, 2041855.08, 4256089.74],
      [-110, 41, 2054436.57, 3527302.73],
      [-108, 41, 2606245.52, 3543182.55],
    ],
    'EPSG:3568': [
      [-110, 49, 2003933.27, 6452478.8],
      [-110, 47, 2016617.9, 5717717.18],
      [-110, 45, 2029251.51, 4985910.59],
      [-110, 43, 2041851.0, 4256081.23],
      [-110, 41, 2054432.46, 3527295.67],
      [-108, 41, 2606240.3, 3543175.46],
    ],
  };

  test.each(Object.keys(UTAH_NORTH))('Utah North, %s, within a hundredth of a foot [GIGS]', (code) => {
    for (const [lon, lat, x, y] of UTAH_NORTH[code]) {
      expectAt(system(code).fromLonLat([lon, lat]), [x, y], 0.011);
      // 1e-7° is about 0.01 m.
      expectAt(system(code).toLonLat([x, y]), [lon, lat], 1e-7);
    }
  });

  test('the feet differ by 2 parts per million: 1200/3937 m and 0.3048 m', () => {
    // 85 FR 62698 (2020): from memory, the definitions are exact.
    expect(system('EPSG:3568').metresPerUnit).toBeCloseTo(0.3048006096012192, 15);
    expect(system('EPSG:2921').metresPerUnit).toBe(METRES_PER_FOOT);
    expect(system('EPSG:3568').metresPerUnit / METRES_PER_FOOT).toBeCloseTo(1.000002000004, 12);
  });
});

describe('State Plane and UTM [PROJ]', () => {
  // EPSG code, longitude, latitude, x, y. Places are only sample positions.
  const POINTS: [string, number, number, number, number][] = [
    ['EPSG:2236', -80.1918, 25.7617, 922158.930222, 519895.912936],
    ['EPSG:26958', -80.1918, 25.7617, 281074.603979, 158464.591192],
    ['EPSG:3086', -80.1918, 25.7617, 781399.012887, 201196.34774],
    ['EPSG:26917', -80.1918, 25.7617, 581046.941562, 2849542.50529],
    ['EPSG:3857', -80.1918, 25.7617, -8926910.341796, 2969596.278517],
    ['EPSG:2236', -81.3792, 28.5383, 534415.623506, 1528607.841924],
    ['EPSG:2236', -81.6557, 30.3322, 449306.037001, 2181339.960181],
    ['EPSG:2237', -82.4572, 27.9506, 508564.727917, 1315020.273624],
    ['EPSG:2229', -118.2437, 34.0522, 6487847.002983, 1841468.251763],
    ['EPSG:26945', -118.2437, 34.0522, 1977499.721407, 561280.645597],
    ['EPSG:2278', -95.3698, 29.7604, 3120099.087756, 13841900.858141],
    ['EPSG:26915', -95.3698, 29.7604, 270857.836198, 3294589.25847],
    ['EPSG:32631', 3, 0, 500000, 0],
    ['EPSG:32631', 0, 0, 166021.443081, 0],
    ['EPSG:32632', 9, 60, 500000, 6651411.190363],
    ['EPSG:32734', 18.4, -33.9, 259583.22166, 6245888.045441],
    ['EPSG:32617', -84, 25.7617, 199077.708211, 2852720.195432],
    ['EPSG:32616', -84, 25.7617, 800922.291789, 2852720.195432],
  ];

  test.each(POINTS)('%s at %d, %d', (code, lon, lat, x, y) => {
    expectAt(system(code).fromLonLat([lon, lat]), [x, y], 1e-4);
    expectAt(system(code).toLonLat([x, y]), [lon, lat], 1e-9);
  });
});

describe('geodesic areas, the measure of the plane [K13]', () => {
  const POLYGONS: [string, LatLon[], number, number][] = [
    [
      'four corners at 89°N',
      [
        [89, 0],
        [89, 90],
        [89, 180],
        [89, 270],
      ],
      24952305678.0,
      1,
    ],
    [
      'a degree about 0, 0',
      [
        [0, -1],
        [-1, 0],
        [0, 1],
        [1, 0],
      ],
      24619419146.0,
      1,
    ],
    [
      'an octant',
      [
        [90, 0],
        [0, 0],
        [0, 90],
      ],
      63758202715511.0,
      1,
    ],
    [
      'a triangle',
      [
        [2, 1],
        [1, 2],
        [3, 3],
      ],
      18454562325.45119,
      0.001,
    ],
  ];

  test.each(POLYGONS)('%s', (_name, corners, published, tolerance) => {
    expect(Math.abs(geodesicArea(corners) - published)).toBeLessThan(tolerance);
  });

  /** Corners of the figures used below; the area is Planimeter's, GeographicLib 2.1.2. */
  const BLOCK: LatLon[] = [
    [25.76, -80.2],
    [25.76, -80.199],
    [25.761, -80.199],
    [25.761, -80.2],
  ];
  const BLOCK_M2 = 11113.86802;

  test('a block in Miami: the plane gives the geodesic area to 1e-6, wherever its centre', () => {
    for (const centre of [
      { lon: -80.2, lat: 25.76 },
      { lon: -80.6, lat: 25.5 },
      { lon: -79.9, lat: 26.1 },
    ]) {
      const areaM2 = signedArea(equalAreaPlane(centre).forward(flat(BLOCK)));
      expect(Math.abs(areaM2 / BLOCK_M2 - 1)).toBeLessThan(1e-6);
    }
  });

  test('the same block in other planes: what UTM, State Plane and Web Mercator make of it', () => {
    const inPlane = (code: string) => signedArea(planeOf(system(code)).forward(flat(BLOCK)));
    expect(inPlane('EPSG:32617')).toBeCloseTo(11106.747, 3);
    // Closed form on the sphere of EPSG method 1024: R² Δλ (ψ2 − ψ1), ψ the isometric latitude.
    const isometric = (lat: number) => Math.log(Math.tan(Math.PI / 4 + (lat * Math.PI) / 360));
    const webMercator = 6378137 ** 2 * ((0.001 * Math.PI) / 180) * (isometric(25.761) - isometric(25.76));
    expect(inPlane('EPSG:3857')).toBeCloseTo(webMercator, 4);
    expect(inPlane('EPSG:3857') / BLOCK_M2).toBeCloseTo(1.238, 3);
    // State Plane in feet, turned into metres: scale squared, within 2e-4 here.
    expect(Math.abs(inPlane('EPSG:2236') / BLOCK_M2 - 1)).toBeLessThan(2e-4);
    expect(inPlane('EPSG:32617') / BLOCK_M2 - 1).toBeCloseTo(-0.00064, 5);
    // Dividing by 1/cos²φ, the scale of a sphere, leaves the ellipsoid: 0.42 % too much.
    const halfway = (25.7605 * Math.PI) / 180;
    expect((inPlane('EPSG:3857') * Math.cos(halfway) ** 2) / BLOCK_M2 - 1).toBeCloseTo(0.0042, 4);
  });

  test('second opinion on a sphere of 6371008.8 m: what turf must give by closed form', () => {
    const closed = [...BLOCK, BLOCK[0]].map(([lat, lon]) => [lon, lat]);
    const radians = Math.PI / 180;
    // Between parallels and meridians: R² Δλ (sin φ2 − sin φ1). The ellipsoid has 0.20 % less here.
    const closedForm = 6371008.8 ** 2 * 0.001 * radians * (Math.sin(25.761 * radians) - Math.sin(25.76 * radians));
    const turf = sphericalArea(turfPolygon([closed]));
    expect(turf / closedForm - 1).toBeCloseTo(0, 6);
    expect(turf / BLOCK_M2 - 1).toBeCloseTo(meanRadiusRatio(25.7605), 4);
  });

  /** Sphere over ellipsoid, per unit of area at a latitude: R² / (M N) − 1. */
  function meanRadiusRatio(lat: number): number {
    const e2 = 0.0066943799901413165;
    const w = 1 - e2 * Math.sin((lat * Math.PI) / 180) ** 2;
    const meridianTimesNormal = (6378137 ** 2 * (1 - e2)) / w ** 2;
    return 6371008.8 ** 2 / meridianTimesNormal - 1;
  }
});

describe('accuracy of the plane, as its page states it', () => {
  const PLACES: LatLon[] = [
    [25.77, -80.2],
    [52.5, 13.4],
    [-33.8, 151.2],
    [0, 0],
    [-17, 179.99],
    [60, 25],
  ];

  function worst(lat: number, lon: number, distanceM: number) {
    const plane = equalAreaPlane({ lon, lat });
    const off = { area: 0, length: 0, backM: 0 };
    for (let azimuth = 0; azimuth < 360; azimuth += 15) {
      const middle = WGS84.Direct(lat, lon, azimuth, distanceM);
      const corners: LatLon[] = [];
      for (let bearing = 0; bearing < 360; bearing += 20) {
        const corner = WGS84.Direct(middle.lat2 ?? 0, middle.lon2 ?? 0, -bearing, 300);
        corners.push([corner.lat2 ?? 0, corner.lon2 ?? 0]);
      }
      const xy = plane.forward(flat(corners));
      off.area = Math.max(off.area, Math.abs(signedArea(xy) / geodesicArea(corners) - 1));
      for (let i = 0; i < 9; i++) {
        const [a, b] = [corners[i], corners[i + 9]];
        const inPlane = Math.hypot(xy[2 * i] - xy[2 * i + 18], xy[2 * i + 1] - xy[2 * i + 19]);
        off.length = Math.max(off.length, Math.abs(inPlane / (WGS84.Inverse(a[0], a[1], b[0], b[1]).s12 ?? 0) - 1));
        const back = plane.inverse(xy.subarray(2 * i, 2 * i + 2));
        off.backM = Math.max(off.backM, WGS84.Inverse(back[1], back[0], a[0], a[1]).s12 ?? 0);
      }
    }
    return off;
  }

  test.each(PLACES)(
    'at %d, %d: areas 1e-8, lengths 1e-5 to 35 km and 2e-5 to 50 km, back within 0.1 mm',
    (lat, lon) => {
      for (const [distanceM, lengths] of [
        [1000, 5e-7],
        [35_000, 1e-5],
        [50_000, 2e-5],
      ]) {
        const off = worst(lat, lon, distanceM);
        expect(off.area).toBeLessThan(1e-8);
        expect(off.length).toBeLessThan(lengths);
        expect(off.backM).toBeLessThan(1e-4);
      }
    },
  );

  test('a definition that other programs can use: the same plane by its PROJ string', () => {
    const plane = equalAreaPlane({ lon: -80.2, lat: 25.77 });
    expectAt(
      system(plane.definition).fromLonLat([-80.1918, 25.7617]),
      Array.from(plane.forward([-80.1918, 25.7617])),
      1e-9,
    );
    expect(plane.forward([-80.2, 25.77])).toEqual(Float64Array.of(0, 0));
  });
});
