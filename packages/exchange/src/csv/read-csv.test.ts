import type { Finding } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { oneChunk } from '../byte-stream.ts';
import type { LayerEntry } from '../layer-reading.ts';
import { readCsv } from './read-csv.ts';

function read(content: string | Uint8Array, entry: Partial<LayerEntry> = {}) {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  return readCsv({ bytes: oneChunk(bytes), entry: { path: 'ratings.csv', ...entry }, layer: 'ratings' });
}

const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
async function records(content: string | Uint8Array, entry: Partial<LayerEntry> = {}) {
  const { layer } = await read(content, entry);
  return layer?.features.map(({ properties }) => properties);
}

describe('delimited text by RFC 4180, section 2', () => {
  test.each([
    [
      'rule 1 and 2: CRLF, the last one optional',
      'a,b\r\n1,2\r\n3,4',
      [
        { a: 1, b: 2 },
        { a: 3, b: 4 },
      ],
    ],
    ['rule 4: spaces are part of a field', 'a,b\r\n x, y \r\n', [{ a: ' x', b: ' y ' }]],
    ['rule 6: commas, quotes and line breaks in quotes', 'a,b\r\n"x, ""y""\r\nz",2\r\n', [{ a: 'x, "y"\r\nz', b: 2 }]],
    ['LF alone', 'a,b\n1,2\n', [{ a: 1, b: 2 }]],
    ['CR alone', 'a,b\r1,2\r', [{ a: 1, b: 2 }]],
    ['semicolons', 'a;b\n1;2,5\n', [{ a: 1, b: 2.5 }]],
    ['tabs', 'a\tb\n1\t2\n', [{ a: 1, b: 2 }]],
    ['a named delimiter', 'sep=|\na|b\n1|2\n', [{ a: 1, b: 2 }]],
    ['a byte order mark', '\ufeffa,b\n1,2\n', [{ a: 1, b: 2 }]],
    ['a delimiter in a quoted heading', '"a;b;c",d\n1,2\n', [{ 'a;b;c': 1, d: 2 }]],
    ['one column', 'a\nx\n', [{ a: 'x' }]],
    ['a heading alone', 'a,b\n', []],
    ['nothing', '', []],
  ])('%s', async (_, text, expected) => {
    expect(await records(text)).toEqual(expected);
  });

  test('rows count as in a spreadsheet, empty ones and line breaks in cells included', async () => {
    const { layer } = await read('a,b\n1,"x\ny"\n\n,\n2,z\n');
    expect(layer?.features.map(({ row }) => row)).toEqual([2, 5]);
    expect(layer?.shape).toBe('table');
  });

  test('what else a spreadsheet leaves behind is told', async () => {
    const { layer, findings } = await read('id,id,\n1,2,,spill\n3\n4,5,,\n');
    expect(layer?.features.map(({ properties }) => properties)).toEqual([
      { id: '1', id_2: 2, column_4: 'spill' },
      { id: '3' },
      { id: '4', id_2: 5 },
    ]);
    expect(codes(findings)).toEqual(['csv-header-repeated', 'csv-ragged-row', 'csv-ragged-row']);
    expect(findings[1]).toMatchObject({ where: { row: 2 }, facts: { got: 4, expected: 3 } });
  });

  test('a quote that is never closed', async () => {
    const { findings } = await read('a,b\n1,"x\n2,y\n');
    expect(findings).toMatchObject([{ code: 'csv-quote-unclosed', where: { row: 2 } }]);
  });
});

describe('encodings', () => {
  test('bytes that are not UTF-8 are read as windows-1252, and that is told', async () => {
    // 0xFC is ü, 0x80 the euro sign (windows-1252 code page).
    const bytes = Uint8Array.from([...new TextEncoder().encode('name\nM'), 0xfc, 0x80, 0x0a]);
    const { layer, findings } = await read(bytes);
    expect(layer?.features[0].properties).toEqual({ name: 'Mü€' });
    expect(findings).toMatchObject([{ code: 'encoding-guessed', facts: { encoding: 'windows-1252' } }]);
  });

  test('UTF-16 with its mark, as spreadsheets export "Unicode text"', async () => {
    const text = '\ufeffname\tn\nMü\t1\n';
    const bytes = new Uint8Array(Uint16Array.from(text, (c) => c.charCodeAt(0)).buffer);
    expect(await records(bytes)).toEqual([{ name: 'Mü', n: 1 }]);
  });
});

describe('numbers', () => {
  const column = async (cells: string[], delimiter = ';') => {
    const { layer, findings } = await read(['x1', ...cells].map((cell) => `${cell}${delimiter}k`).join('\n'));
    return { values: layer?.features.map(({ properties }) => properties.x1), codes: codes(findings) };
  };

  test.each([
    [['12,5', '7'], [12.5, 7], ['number-mended']],
    [['1.234,5', '12'], [1234.5, 12], ['number-mended']],
    [['1,234.5', '1,234'], [1234.5, 1234], ['number-mended']],
    [['1,234', '0,500'], [1.234, 0.5], ['number-mended']],
    [['1,234,567', '1'], [1234567, 1], ['number-mended']],
    [['1e3', '-2.5', '+4'], [1000, -2.5, 4], []],
    [['1.5', 'NA', '', '2'], [1.5, 'NA', undefined, 2], []],
    [['1.5', 'about 2'], ['1.5', 'about 2'], []],
    [['02134', '10001'], ['02134', '10001'], []],
    [['12345678901234567890'], ['12345678901234567890'], []],
    [['NA', '-'], ['NA', '-'], []],
  ])('%j', async (cells, values, expected) => {
    expect(await column(cells)).toEqual({ values, codes: expected });
  });

  test('1,234 alone: decimal in a file parted by semicolons, thousands in one parted by tabs, and told', async () => {
    expect(await column(['1,234'])).toEqual({ values: [1.234], codes: ['number-mended'] });
    expect(await column(['1,234'], '\t')).toEqual({ values: [1234], codes: ['number-mended'] });
  });

  test('ids, dates and class codes stay text', async () => {
    expect(await records('tree_id,rated_on,class,bbch\n12,20260503,3,65\n')).toEqual([
      { tree_id: '12', rated_on: '20260503', class: '3', bbch: 65 },
    ]);
  });
});

describe('positions', () => {
  test('lon and lat', async () => {
    const { layer, findings } = await read('tree_id,Lat,LON\nT-1,52.5,13.4\nT-2,,\nT-3,north,13\nT-4,"48,5",7\n');
    expect(layer?.crs).toBe('OGC:CRS84');
    expect(layer?.features.map(({ geometry }) => geometry)).toEqual([
      { kind: 'point', points: Float64Array.of(13.4, 52.5) },
      { kind: 'none' },
      { kind: 'none' },
      { kind: 'point', points: Float64Array.of(7, 48.5) },
    ]);
    expect(findings).toMatchObject([
      { code: 'field-not-a-number', where: { row: 4, field: 'Lat' }, facts: { got: 'north' } },
    ]);
  });

  // Closed form of spherical Mercator: lon = x / 6378137, lat = 2 atan(e^(y / 6378137)) − 90°.
  test('x and y with the system the project states', async () => {
    const { layer } = await read('X;Y\n12897674,3239;-3757874,2832\n', { crs: 'EPSG:3857' });
    const geometry = layer?.features[0].geometry;
    const [lon, lat] = geometry?.kind === 'point' ? geometry.points : [];
    expect(lon).toBeCloseTo(((12897674.3239 / 6378137) * 180) / Math.PI, 9);
    expect(lat).toBeCloseTo(((2 * Math.atan(Math.exp(-3757874.2832 / 6378137)) - Math.PI / 2) * 180) / Math.PI, 9);
  });

  test('x and y that nobody explains are refused', async () => {
    const { layer, findings } = await read('x,y\n1,2\n');
    expect(layer).toBeNull();
    expect(findings).toMatchObject([{ code: 'crs-missing', severity: 'error' }]);
  });

  test('a column of GeoJSON text', async () => {
    const { layer, findings } = await read(
      'tree_id,geometry\nT-1,"{""type"": ""Point"", ""coordinates"": [1, 2]}"\nT-2,{\n',
    );
    expect(layer?.features[0].geometry).toEqual({ kind: 'point', points: Float64Array.of(1, 2) });
    expect(layer?.features[0].properties).toEqual({ tree_id: 'T-1' });
    expect(findings).toMatchObject([{ code: 'geojson-invalid', where: { row: 3 } }]);
  });
});

test('foreign columns are renamed and converted to metres, the others kept', async () => {
  const entry = { fields: { tree_id: 'NO', spread_m: 'CRN_SPRD_FT' }, units: { spread_m: 'ft' } };
  expect(await records('NO;CRN_SPRD_FT;PARK\n7;32,5;yes\n', entry)).toEqual([
    { tree_id: '7', spread_m: 9.906, PARK: 'yes' },
  ]);
});

test('a table beyond what one string holds is refused with the limit', async () => {
  const bytes = new TextEncoder().encode(`a\n${'x\n'.repeat(100)}`);
  const { layer, findings } = await readCsv({ bytes: oneChunk(bytes), entry: { path: 'a.csv' } }, 100);
  expect(layer).toBeNull();
  expect(findings).toMatchObject([{ code: 'file-too-large', severity: 'error' }]);
});
