/**
 * The whole table of coordinate systems against PROJ's own `cs2cs`, from the systems' geographic systems by EPSG code, and
 * PROJ's WKT dialects against the codes. PROJ is an outside program: without it the test says so and is skipped.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { isCrsFinding, resolveCrs } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';

const HAS_PROJ =
  spawnSync('cs2cs', [], { input: '' }).status === 0 && spawnSync('projinfo', ['EPSG:4326']).status === 0;
if (!HAS_PROJ)
  console.warn('PROJ (cs2cs, projinfo) is not installed: the coordinate system table is not compared with it.');

/** Two programs' series for the same formulas; table parameters are rounded to 15 digits. */
const SAME_FORMULA_M = 0.001;
/** There and back through seven parameters, whose rotation is not inverted exactly. */
const THERE_AND_BACK_M = 0.003;

/** Code, and a longitude and latitude in its area. */
const SYSTEMS: [number, number, number][] = [
  [2222, -110.2, 33.1],
  [2227, -121.5, 37.3],
  [2236, -80.2, 25.8],
  [2263, -73.97, 40.75],
  [2277, -97.7, 30.3],
  [26934, -134.4, 58.3],
  [26931, -133.7, 57],
  [2777, -110.1, 33.1],
  [2921, -111.9, 40.8],
  [3452, -90.1, 29.9],
  [3435, -87.6, 41.9],
  [6438, -80.2, 25.8],
  [6440, -82.3, 29.6],
  [3086, -82, 28],
  [5070, -96, 38],
  [3347, -96, 60],
  [2154, 2.35, 48.86],
  [3035, 13.4, 52.5],
  [25832, 9.2, 48.8],
  [3067, 24.9, 60.2],
  [3006, 18.1, 59.3],
  [2180, 21, 52.2],
  [2157, -6.26, 53.35],
  [2193, 174.8, -36.9],
  [28356, 151.2, -33.8],
  [7856, 151.2, -33.8],
  [3414, 103.85, 1.29],
  [31983, -43.2, -22.9],
  [6677, 139.7, 35.7],
  [3826, 121.5, 25],
  [6372, -99.1, 19.4],
  [32617, -80.2, 25.8],
  [32734, 18.4, -33.9],
  [3395, 18.4, -33.9],
  [3857, 18.4, -33.9],
  // Older datums: from their own geographic systems, so that only the projection is compared.
  [27700, -0.1, 51.5],
  [28992, 4.9, 52.4],
  [2056, 8.5, 47.4],
  [21781, 8.5, 47.4],
  [31467, 9.2, 48.8],
  [31287, 16.4, 48.2],
  [31370, 4.35, 50.85],
  [5514, 14.4, 50.1],
];

/** PROJ's x, y for a longitude and latitude, x first whatever the registry's axis order. */
function cs2cs(definition: string, from: string, lon: number, lat: number): number[] {
  const out = execFileSync('cs2cs', ['-f', '%.6f', from, '+to', definition], { input: `${lon} ${lat}\n` }).toString();
  return out.trim().split(/\s+/).slice(0, 2).map(Number);
}

function projString(code: number): string {
  const text = execFileSync('projinfo', [`EPSG:${code}`, '-o', 'PROJ', '-q'])
    .toString()
    .trim();
  return text.replace('+type=crs', '').replace(/\+towgs84=\S+/, '');
}

function system(text: string) {
  const crs = resolveCrs(text);
  if (isCrsFinding(crs)) throw new Error(`${text}: ${JSON.stringify(crs)}`);
  return crs;
}

describe.skipIf(!HAS_PROJ)('PROJ', () => {
  test.each(SYSTEMS)('EPSG:%i: the projection', (code, lon, lat) => {
    const own = system(`EPSG:${code}`);
    const projected = projString(code);
    const geographic = `+proj=longlat ${/\+(ellps|datum)=\S+/.exec(projected)?.[0] ?? '+ellps=WGS84'} +no_defs`;
    const lonLat = own.datum.towgs84 ? own.toLonLat(cs2cs(projected, geographic, lon, lat)) : Float64Array.of(lon, lat);
    const expected = cs2cs(projected, geographic, lon, lat);
    const got = own.fromLonLat(lonLat);
    const offM = Math.hypot(got[0] - expected[0], got[1] - expected[1]) * own.metresPerUnit;
    expect(offM).toBeLessThan(own.datum.towgs84 ? THERE_AND_BACK_M : SAME_FORMULA_M);
  });

  test.each(SYSTEMS.filter(([code]) => system(`EPSG:${code}`).datum.towgs84))(
    'EPSG:%i: the seven-parameter shift',
    (code, lon, lat) => {
      const own = system(`EPSG:${code}`);
      const shifted = `${projString(code)} +towgs84=${own.datum.towgs84}`;
      const [x, y] = cs2cs(shifted, '+proj=longlat +datum=WGS84 +no_defs', lon, lat);
      const [ownX, ownY] = own.fromLonLat([lon, lat]);
      expect(Math.hypot(ownX - x, ownY - y)).toBeLessThan(SAME_FORMULA_M);
    },
  );

  /** Methods that are refused without a code: oblique Mercator. */
  const UNREADABLE = [2056, 21781, 26931];

  const codeless = (code: number, dialect: string) =>
    execFileSync('projinfo', [`EPSG:${code}`, '-o', dialect, '-q', '--single-line'])
      .toString()
      .trim()
      .replaceAll(/,(AUTHORITY\["[^"]*","[^"]*"\]|ID\["[^"]*",\d+\])/g, '');

  describe.each(['WKT1_GDAL', 'WKT1_ESRI', 'WKT2:2019'])('%s without codes reads as the code does', (dialect) => {
    test.each(SYSTEMS)('EPSG:%i', (code, lon, lat) => {
      const own = system(`EPSG:${code}`);
      const read = resolveCrs(codeless(code, dialect));
      if (isCrsFinding(read)) {
        // Refused in the open is right; read wrongly is not.
        expect(UNREADABLE).toContain(code);
        return;
      }
      const [x, y] = read.fromLonLat([lon, lat]);
      const [ownX, ownY] = own.fromLonLat([lon, lat]);
      expect(Math.hypot(x - ownX, y - ownY) * own.metresPerUnit).toBeLessThan(SAME_FORMULA_M);
      expect(read.unit).toBe(own.unit);
    });
  });
});
