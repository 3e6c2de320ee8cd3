import type { Finding } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { type ByteStream, oneChunk } from '../byte-stream.ts';
import type { LayerEntry } from '../layer-reading.ts';
import { readGeoJson } from './read-geojson.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);

function read(text: string | object, entry: Partial<LayerEntry> = {}) {
  const bytes = utf8(typeof text === 'string' ? text : JSON.stringify(text));
  return readGeoJson({ bytes: oneChunk(bytes), entry: { path: 'crowns.geojson', ...entry }, layer: 'crowns' });
}

async function* inPieces(bytes: Uint8Array, size: number): ByteStream {
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);

const SQUARE = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
];
const closed = (ring: number[][]) => [...ring, ring[0]];
const feature = (geometry: unknown, properties: object = {}) => ({ type: 'Feature', properties, geometry });
const collection = (...features: unknown[]) => ({ type: 'FeatureCollection', features });

describe('every geometry of RFC 7946, section 3.1', () => {
  test.each([
    [
      { type: 'Point', coordinates: [13.4, 52.5, 40] },
      { kind: 'point', points: Float64Array.of(13.4, 52.5) },
    ],
    [
      {
        type: 'MultiPoint',
        coordinates: [
          [1, 2],
          [3, 4],
        ],
      },
      { kind: 'point', points: Float64Array.of(1, 2, 3, 4) },
    ],
    [
      {
        type: 'LineString',
        coordinates: [
          [1, 2],
          [3, 4],
        ],
      },
      { kind: 'line', lines: [Float64Array.of(1, 2, 3, 4)] },
    ],
    [
      {
        type: 'MultiLineString',
        coordinates: [
          [
            [1, 2],
            [3, 4],
          ],
          [
            [5, 6],
            [7, 8],
          ],
        ],
      },
      { kind: 'line', lines: [Float64Array.of(1, 2, 3, 4), Float64Array.of(5, 6, 7, 8)] },
    ],
    [
      { type: 'Polygon', coordinates: [closed(SQUARE)] },
      { kind: 'area', polygons: [[Float64Array.from(SQUARE.flat())]] },
    ],
    [
      { type: 'MultiPolygon', coordinates: [[closed(SQUARE)], [closed(SQUARE)]] },
      { kind: 'area', polygons: [[Float64Array.from(SQUARE.flat())], [Float64Array.from(SQUARE.flat())]] },
    ],
    [
      {
        type: 'GeometryCollection',
        geometries: [
          { type: 'Point', coordinates: [1, 2] },
          { type: 'Point', coordinates: [3, 4] },
        ],
      },
      { kind: 'point', points: Float64Array.of(1, 2, 3, 4) },
    ],
    [null, { kind: 'none' }],
    // "GeoJSON processors MAY interpret Geometry objects with empty 'coordinates' arrays as null objects."
    [{ type: 'Polygon', coordinates: [] }, { kind: 'none' }],
  ])('%j', async (geometry, expected) => {
    const { layer, findings } = await read(collection(feature(geometry)));
    expect(layer?.features).toEqual([{ row: 1, geometry: expected, properties: {} }]);
    expect(findings).toEqual([]);
  });
});

describe('every document', () => {
  const point = { type: 'Point', coordinates: [1, 2] };
  test.each([
    ['one feature', JSON.stringify(feature(point))],
    ['a bare geometry', JSON.stringify(point)],
    ['a text sequence (RFC 8142)', `\u001e${JSON.stringify(feature(point), null, 1)}\n`],
    ['features by line', `${JSON.stringify(feature(point))}\n`],
    ['a byte order mark', `\ufeff${JSON.stringify(collection(feature(point)))}`],
  ])('%s', async (_, text) => {
    const { layer, findings } = await read(text, { path: text.endsWith('}\n') ? 'a.geojsonl' : 'a.geojson' });
    expect(layer?.features).toEqual([
      { row: 1, geometry: { kind: 'point', points: Float64Array.of(1, 2) }, properties: {} },
    ]);
    expect(findings).toEqual([]);
  });

  test('something else is told with what was expected', async () => {
    const { layer, findings } = await read({ type: 'Topology', objects: {} });
    expect(layer?.features).toEqual([]);
    expect(findings).toMatchObject([
      { code: 'geojson-invalid', facts: { problem: expect.stringContaining('"Topology"') } },
    ]);
  });

  test('the id member names the record when no field does', async () => {
    const { layer } = await read(
      collection({ ...feature(point), id: 'T-7' }, { ...feature(point, { tree_id: 'own' }), id: 8 }),
    );
    expect(layer?.features.map(({ properties }) => properties)).toEqual([{ tree_id: 'T-7' }, { tree_id: 'own' }]);
  });

  test('a key __proto__ is a field like any other', async () => {
    const { layer } = await read('{"type":"Feature","properties":{"__proto__":{"polluted":1}},"geometry":null}', {
      fields: { height_m: 'h' },
    });
    expect(Object.keys(layer?.features[0].properties ?? {})).toEqual(['__proto__']);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

describe('faults are told with the feature', () => {
  test('an unclosed ring is closed by a straight edge', async () => {
    const { layer, findings } = await read(
      collection(feature({ type: 'Polygon', coordinates: [SQUARE] }, { tree_id: 'T-1' })),
    );
    expect(layer?.features[0].geometry).toEqual({ kind: 'area', polygons: [[Float64Array.from(SQUARE.flat())]] });
    expect(findings).toMatchObject([
      { code: 'ring-unclosed', effect: 'mended', where: { feature: 'T-1', file: 'crowns.geojson' } },
    ]);
  });

  test('coordinates that are no numbers are handed on as NaN', async () => {
    const { layer } = await read(
      collection(
        feature({
          type: 'LineString',
          coordinates: [
            [1, null],
            ['2', 3],
            [4, 5],
          ],
        }),
      ),
    );
    expect(layer?.features[0].geometry).toEqual({ kind: 'line', lines: [Float64Array.of(1, NaN, NaN, 3, 4, 5)] });
  });

  test('NaN in the text costs no other feature', async () => {
    const text = JSON.stringify(
      collection(feature({ type: 'Point', coordinates: [1, 2] }, { spread_m: 1 }), feature(null)),
    );
    const { layer, findings } = await read(text.replace('"spread_m":1', '"spread_m":NaN'));
    expect(layer?.features.map(({ properties }) => properties)).toEqual([{ spread_m: null }, {}]);
    expect(findings).toMatchObject([{ code: 'geojson-invalid', facts: { problem: expect.stringContaining('NaN') } }]);
  });

  test.each([
    [{ type: 'Feature', geometry: null }, 'properties'],
    [feature({ type: 'Circle', coordinates: [1, 2] }), 'type must be'],
    [feature({ type: 'Polygon', coordinates: [[]] }), 'empty'],
    [feature({ type: 'Point' }), 'coordinates'],
    [
      feature({
        type: 'GeometryCollection',
        geometries: [
          { type: 'Point', coordinates: [1, 2] },
          {
            type: 'LineString',
            coordinates: [
              [1, 2],
              [3, 4],
            ],
          },
        ],
      }),
      'several kinds',
    ],
    [5, 'JSON Object'],
  ])('%j', async (bad, words) => {
    const { layer, findings } = await read(collection(feature(null), bad));
    expect(layer?.features).toHaveLength(2);
    expect(findings[0]).toMatchObject({ code: 'geojson-invalid', where: { feature: '#2' } });
    expect(findings[0].facts.problem).toContain(words);
  });

  test('after a hundred of a kind, one stands for the rest', async () => {
    const many = Array.from({ length: 250 }, () => feature({ type: 'Polygon', coordinates: [SQUARE] }));
    const { findings } = await read(collection(...many));
    expect(findings).toHaveLength(101);
    expect(findings[100].facts.more).toBe(150);
  });
});

describe('coordinate systems', () => {
  // Oracle: GDAL 3.6.2, `gdaltransform -s_srs EPSG:26911 -t_srs EPSG:4326 -output_xy`, printed to 12 decimals.
  const utm = { type: 'Point', coordinates: [394348.2061, 3736519.93] };

  test('the crs member of older files is heeded, even after the features', async () => {
    const crs = { type: 'name', properties: { name: 'urn:ogc:def:crs:EPSG::26911' } };
    const { layer, findings } = await read({ ...collection(feature(utm)), crs });
    expect(findings).toEqual([]);
    expect(layer?.crs).toBe('EPSG:26911');
    const { geometry } = layer?.features[0] ?? {};
    const [lon, lat] = geometry?.kind === 'point' ? geometry.points : [];
    expect(lon).toBeCloseTo(-118.140882617669, 9);
    expect(lat).toBeCloseTo(33.7635131192267, 9);
  });

  test.each([
    ['projected numbers without a system', collection(feature(utm)), {}, ['crs-missing']],
    [
      'latitude first',
      collection(feature({ type: 'Point', coordinates: [52.5, 113.4] })),
      {},
      ['lonlat-maybe-swapped'],
    ],
    ['a system that cannot be found', collection(feature(utm)), { crs: 'EPSG:99999' }, ['crs-unknown']],
    ['a linked system', { ...collection(), crs: { type: 'link', properties: { href: 'x' } } }, {}, ['crs-unknown']],
    ['NAD27', collection(feature(utm)), { crs: 'EPSG:26711' }, ['crs-datum-refused']],
  ])('%s: the layer is refused', async (_, document, entry, expected) => {
    const { layer, findings } = await read(document, entry);
    expect(layer).toBeNull();
    expect(codes(findings)).toEqual(expected);
    expect(findings[0]).toMatchObject({ severity: 'error', where: { layer: 'crowns', file: 'crowns.geojson' } });
  });

  test('one position out of range among many does not refuse the layer', async () => {
    const good = feature({ type: 'Point', coordinates: [1, 2] });
    const { layer, findings } = await read(collection(good, good, feature({ type: 'Point', coordinates: [5000, 2] })));
    expect(layer?.features).toHaveLength(3);
    expect(findings).toEqual([]);
  });

  test('the project and the file disagree', async () => {
    const crs = { type: 'name', properties: { name: 'EPSG:26912' } };
    const { layer, findings } = await read({ ...collection(feature(utm)), crs }, { crs: 'EPSG:26911' });
    expect(layer?.crs).toBe('EPSG:26911');
    expect(findings).toMatchObject([{ code: 'project-invalid', effect: 'assumed' }]);
  });
});

describe('a stream', () => {
  const features = Array.from({ length: 12 }, (_, i) =>
    feature(
      { type: 'Polygon', coordinates: [closed(SQUARE).map(([x, y]) => [x + i / 7, y])] },
      { tree_id: `T-ü${i}`, n: i, list: [i, { a: null }] },
    ),
  );
  const text = JSON.stringify({ name: 'x', ...collection(...features), crs: null }, null, 1);
  const bytes = utf8(text);

  function stream(part: Uint8Array, size: number) {
    const source = { bytes: inPieces(part, size), entry: { path: 'crowns.geojson' }, layer: 'crowns' as const };
    return readGeoJson(source, 100);
  }

  test('gives what parsing in one go gives, however it is cut', async () => {
    const whole = await read(text);
    for (const size of [1, 2, 3, 61, 997, bytes.length]) expect(await stream(bytes, size)).toEqual(whole);
  });

  test('cut anywhere, all features complete before the cut are kept and the place is told', async () => {
    // Where each feature ends, found by brute force: the shortest prefix that JSON.parse takes when closed by hand.
    const ends: number[] = [];
    for (let cut = 1; cut < text.length; cut++) {
      if (text[cut - 1] !== '}') continue;
      try {
        if (JSON.parse(`${text.slice(0, cut)}]}`).features.length === ends.length + 1)
          ends.push(utf8(text.slice(0, cut)).length);
      } catch {}
    }
    expect(ends).toHaveLength(features.length);
    for (let cut = 40; cut < bytes.length - 1; cut += 13) {
      const kept = ends.filter((end) => end <= cut).length;
      const parts = [await stream(bytes.slice(0, cut), 64), await read(new TextDecoder().decode(bytes.slice(0, cut)))];
      for (const { layer, findings } of parts) {
        expect(layer?.features).toHaveLength(kept);
        expect(findings).toMatchObject([{ code: 'file-truncated', severity: kept === 0 ? 'error' : 'warning' }]);
        if (kept > 0) expect(findings[0].facts.problem).toContain(`${kept} complete features`);
      }
    }
  });

  test('an object too large to hold that is no FeatureCollection is refused', async () => {
    const { findings } = await stream(utf8(JSON.stringify({ ...feature(null), pad: 'x'.repeat(500) })), 50);
    expect(findings).toMatchObject([{ code: 'file-too-large', severity: 'error' }]);
  });
});

describe('a sequence', () => {
  test('a broken line costs that line alone', async () => {
    const line = (n: number) => JSON.stringify(feature({ type: 'Point', coordinates: [n, n] }, { tree_id: n }));
    const text = `${line(1)}\n\n{"type":"Feature",}\r\n${line(3)}\n${line(4).slice(0, 30)}`;
    const { layer, findings } = await read(text);
    expect(layer?.features.map(({ row }) => row)).toEqual([1, 3]);
    expect(findings).toMatchObject([
      { code: 'not-json', where: { feature: '#2' }, facts: { line: 3 } },
      { code: 'file-truncated', where: { feature: '#4' } },
    ]);
  });
});
