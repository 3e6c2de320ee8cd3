import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CoordinateSystem } from './coordinate-system.ts';
import { epsgEntry } from './epsg.ts';
import { SAME_AS_WGS84, WITH_HELMERT } from './epsg-table.ts';
import { isCrsFinding, resolveCrs } from './resolve-crs.ts';

function system(text: string): CoordinateSystem {
  const crs = resolveCrs(text);
  if (isCrsFinding(crs)) throw new Error(`${text}: ${JSON.stringify(crs)}`);
  return crs;
}

const codeOf = (text: string) => system(text).code;
const MIAMI = [-80.1918, 25.7617];

/** `.prj` in the ESRI dialect, false origin in feet, no registered code. Parameters as EPSG:2236 has them. */
const FLORIDA_EAST_PRJ =
  'PROJCS["NAD_1983_StatePlane_Florida_East_FIPS_0901_Feet",GEOGCS["GCS_North_American_1983",' +
  'DATUM["D_North_American_1983",SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],' +
  'UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",656166.6666666665],' +
  'PARAMETER["False_Northing",0.0],PARAMETER["Central_Meridian",-81.0],PARAMETER["Scale_Factor",0.9999411764705882],' +
  'PARAMETER["Latitude_Of_Origin",24.33333333333333],UNIT["Foot_US",0.3048006096012192]]';

describe('ways to state a system', () => {
  test('EPSG codes, URNs and addresses in any case', () => {
    for (const text of [
      'EPSG:2236',
      ' epsg:2236 ',
      '2236',
      'EPSG::2236',
      'urn:ogc:def:crs:EPSG::2236',
      'urn:ogc:def:crs:EPSG:9.8.15:2236',
      'urn:x-ogc:def:crs:EPSG::2236',
      'http://www.opengis.net/def/crs/EPSG/0/2236',
      'https://www.opengis.net/def/crs/EPSG/0/2236',
      'http://www.opengis.net/gml/srs/epsg.xml#2236',
      '+init=epsg:2236',
    ]) {
      expect(codeOf(text)).toBe('EPSG:2236');
    }
  });

  test('longitude and latitude by their OGC names; axis order is longitude first for EPSG:4326 too', () => {
    for (const text of ['OGC:CRS84', 'urn:ogc:def:crs:OGC:1.3:CRS84', 'http://www.opengis.net/def/crs/OGC/1.3/CRS84']) {
      expect(codeOf(text)).toBe('OGC:CRS84');
    }
    expect(Array.from(system('EPSG:4326').toLonLat(MIAMI))).toEqual(MIAMI);
    expect(codeOf('ESRI:102100')).toBe('EPSG:3857');
  });

  test('an ESRI .prj in US survey feet: the feet are scaled once', () => {
    const prj = system(FLORIDA_EAST_PRJ);
    expect(prj.unit).toBe('us-survey-foot');
    expect(prj.datum.reading).toBe('taken-as-wgs84');
    const [x, y] = prj.fromLonLat(MIAMI);
    const [x0, y0] = system('EPSG:2236').fromLonLat(MIAMI);
    // The file's scale factor is 16999/17000, the registry's is rounded to nine digits: 1e-10 of the distance.
    expect(Math.hypot(x - x0, y - y0)).toBeLessThan(0.001);
  });

  test('WKT with an EPSG code is read by the code; a compound system by its horizontal part', () => {
    const horizontal = `${FLORIDA_EAST_PRJ.slice(0, -1)},AUTHORITY["EPSG","2236"]]`;
    const heights =
      'VERT_CS["NAVD88 height (ftUS)",VERT_DATUM["NAVD88",2005],UNIT["US survey foot",0.304800609601219]]';
    expect(codeOf(horizontal)).toBe('EPSG:2236');
    expect(codeOf(`COMPD_CS["both",${horizontal},${heights}]`)).toBe('EPSG:2236');
  });

  test('units: metre, both feet, degree', () => {
    expect(system('EPSG:26958')).toMatchObject({ unit: 'metre', metresPerUnit: 1, kind: 'projected' });
    expect(system('EPSG:2921')).toMatchObject({ unit: 'foot', metresPerUnit: 0.3048 });
    expect(system('EPSG:3568')).toMatchObject({ unit: 'us-survey-foot', metresPerUnit: 1200 / 3937 });
    expect(system('EPSG:4269')).toMatchObject({ unit: 'degree', kind: 'geographic' });
  });

  test('a PROJ string without origin works as PROJ does: missing origins are 0', () => {
    const crs = system('+proj=laea +ellps=WGS84');
    expect(crs.fromLonLat([0, 0]).every((value) => Math.abs(value) < 1e-9)).toBe(true);
  });
});

describe('datums', () => {
  test('NAD27 is refused in every spelling, since proj4 has no grid and would shift nothing', () => {
    const nad27 = FLORIDA_EAST_PRJ.replace('D_North_American_1983', 'D_North_American_1927');
    for (const text of ['EPSG:4267', 'EPSG:26717', 'EPSG:32040', '+proj=utm +zone=17 +datum=NAD27', nad27]) {
      expect(resolveCrs(text, { file: 'a.shp' })).toMatchObject({
        code: 'crs-datum-refused',
        severity: 'error',
        effect: 'stops',
        where: { file: 'a.shp' },
        facts: { reason: 'needs-grid' },
      });
    }
  });

  test('a datum whose shift is not known here is refused and named', () => {
    expect(resolveCrs('EPSG:23032')).toMatchObject({
      code: 'crs-datum-refused',
      facts: { datum: 'European Datum 1950', reason: 'shift-unknown' },
    });
    expect(resolveCrs('+proj=utm +zone=32 +datum=carthage')).toMatchObject({ code: 'crs-datum-refused' });
  });

  test('older national grids carry their published shift and its accuracy', () => {
    expect(system('EPSG:27700').datum).toMatchObject({ reading: 'helmert', operation: 'EPSG:1314', accuracyM: 2 });
    expect(system('+proj=utm +zone=32 +ellps=intl +towgs84=-87,-98,-121').datum.reading).toBe('helmert');
  });

  test('NAD83 and its like are taken as WGS 84: not a digit changes', () => {
    for (const code of ['EPSG:4269', 'EPSG:4258', 'EPSG:7844', 'EPSG:6318']) {
      expect(system(code).datum.reading).toBe('taken-as-wgs84');
      expect(Array.from(system(code).toLonLat(MIAMI))).toEqual(MIAMI);
    }
  });
});

describe('refusals', () => {
  test('nothing stated', () => {
    for (const text of ['', '  ', null, undefined]) expect(resolveCrs(text)).toMatchObject({ code: 'crs-missing' });
  });

  test('codes, units, grids and axes that cannot be read', () => {
    const reasons: Record<string, string> = {
      'EPSG:99999': 'code-not-in-table',
      'ESRI:102999': 'code-not-in-table',
      '+proj=nowhere': 'not-readable',
      '+proj=utm +zone=17 +units=furlong': 'not-supported',
      '+proj=tmerc +axis=wsu': 'not-supported',
      '+proj=utm +zone=17 +nadgrids=conus': 'not-supported',
      'LOCAL_CS["site",UNIT["metre",1]]': 'not-readable',
      'State Plane Florida East': 'not-readable',
    };
    for (const [text, reason] of Object.entries(reasons)) {
      expect(resolveCrs(text)).toMatchObject({ code: 'crs-unknown', facts: { reason } });
    }
  });

  test('never throws', () => {
    const fragment = fc.constantFrom(
      'PROJCS["',
      '"],',
      'GEOGCS[',
      'EPSG:',
      '+proj=',
      '{"type":"ProjectedCRS"',
      '[',
      ']',
      '}',
    );
    const text = fc.array(fc.oneof(fragment, fc.string()), { maxLength: 12 }).map((parts) => parts.join(''));
    fc.assert(
      fc.property(text, (given) => {
        expect(resolveCrs(given)).toHaveProperty('code');
      }),
      { seed: 20260203, numRuns: 1000 },
    );
  });
});

describe('the table', () => {
  const codes = `${SAME_AS_WGS84}${WITH_HELMERT}`
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => Number(line.split('|')[0]));

  test('every system can be built, and there are those of the United States', () => {
    expect(codes.length).toBeGreaterThan(1500);
    for (const code of codes) expect(system(`EPSG:${code}`).name).toBe(epsgEntry(code)?.name);
    for (const code of [2236, 26958, 2777, 3086, 6438, 2263, 3435, 2154, 3035, 2193, 28356, 7856]) {
      expect(codes).toContain(code);
    }
  });

  test('there and back within ten micrometres over a zone (seeded)', () => {
    const zones: [string, number, number][] = [
      ['EPSG:2236', -80.5, 27],
      ['EPSG:2921', -111.5, 41],
      ['EPSG:3086', -82, 28],
      ['EPSG:32617', -81, 26],
      ['EPSG:3857', -80, 26],
      ['EPSG:25833', 13.4, 52.5],
      ['EPSG:2154', 2.3, 48.8],
      ['EPSG:2193', 174.8, -36.9],
      ['EPSG:7856', 151.2, -33.8],
      ['EPSG:5070', -96, 38],
    ];
    const offset = fc.double({ min: -1, max: 1, noNaN: true });
    for (const [code, lon, lat] of zones) {
      const crs = system(code);
      fc.assert(
        fc.property(offset, offset, (east, north) => {
          const [backLon, backLat] = crs.toLonLat(crs.fromLonLat([lon + east, lat + north]));
          // 1e-10° is about ten micrometres.
          expect(Math.abs(backLon - lon - east)).toBeLessThan(1e-10);
          expect(Math.abs(backLat - lat - north)).toBeLessThan(1e-10);
        }),
        { seed: 20260204, numRuns: 50 },
      );
    }
  });

  test('positions that are not finite or out of reach become NaN, and leave the others alone', () => {
    const out = system('EPSG:2236').fromLonLat([Number.NaN, 25, -80.1918, 25.7617, -80, 95]);
    expect(out[2]).toBeCloseTo(922158.9302, 3);
    for (const i of [0, 1, 4, 5]) expect(out[i]).toBeNaN();
  });
});
