/**
 * Files made to do harm, and files cut or flipped anywhere: always a finding that says what is wrong, never an exception,
 * never more time or memory than the file is worth. What was complete before the damage is kept.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { oneChunk, readLayer } from '@crownfall/exchange';
import { convertLayer } from '@crownfall/exchange/node';
import { describeFinding } from '@crownfall/survey';
import fc from 'fast-check';
import { type Zippable, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { temporaryFolder } from '../temporary-folder.ts';

let folder: string;
beforeAll(() => {
  folder = temporaryFolder('hostile');
});

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

async function read(path: string, bytes: Uint8Array, beside: Readonly<Record<string, Uint8Array>> = {}) {
  const reading = await readLayer({
    bytes: oneChunk(bytes),
    entry: { path },
    layer: 'crowns',
    beside: async (extension) => (Object.hasOwn(beside, extension) ? oneChunk(beside[extension]) : null),
  });
  // Every finding has its words.
  for (const finding of reading.findings)
    expect(describeFinding(finding, 'en').what).not.toMatch(/\{|Cannot read|DataView/);
  return reading;
}

const KML = (body: string, before = ''): string =>
  `<?xml version="1.0" encoding="UTF-8"?>${before}<kml xmlns="http://www.opengis.net/kml/2.2"><Document>${body}</Document></kml>`;
const PLACEMARK = (name: string): string =>
  `<Placemark><name>${name}</name><Point><coordinates>-80.2,25.77,3</coordinates></Point></Placemark>`;

describe('XML', () => {
  test('a billion laughs are not laughed', async () => {
    const levels = Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join('');
    const bomb = KML(PLACEMARK('&l9;'), `<!DOCTYPE kml [<!ENTITY l0 "ha">${levels}]>`);
    const started = performance.now();
    const { layer, findings } = await read('a.kml', bytesOf(bomb));
    expect(performance.now() - started).toBeLessThan(2000);
    expect(findings).toMatchObject([{ code: 'file-refused', severity: 'error', facts: { format: 'KML' } }]);
    expect(layer?.features ?? []).toEqual([]);
  });

  test.each([
    ['a file', 'file:///etc/passwd'],
    ['the network', 'http://127.0.0.1:9/x'],
  ])('an external entity does not reach %s', async (_, url) => {
    const text = KML(PLACEMARK('&x;'), `<!DOCTYPE kml [<!ENTITY x SYSTEM "${url}">]>`);
    const { layer, findings } = await read('a.kml', bytesOf(text));
    expect(findings).toMatchObject([{ code: 'file-refused' }]);
    expect(JSON.stringify(layer ?? {})).not.toContain('root:');
    const external = KML(PLACEMARK('T'), `<!DOCTYPE kml SYSTEM "${url}">`);
    expect((await read('a.kml', bytesOf(external))).findings).toMatchObject([{ code: 'file-refused' }]);
    const gpx = `<!DOCTYPE gpx [<!ENTITY x SYSTEM "${url}">]><gpx><wpt lat="1" lon="2"><name>&x;</name></wpt></gpx>`;
    expect((await read('a.gpx', bytesOf(gpx))).findings).toMatchObject([{ code: 'file-refused' }]);
  });

  test('an entity of no declaration is a fault with its line', async () => {
    const { findings } = await read('a.kml', bytesOf(KML(`\n${PLACEMARK('T-1')}\n${PLACEMARK('&nope;')}`)));
    expect(findings).toMatchObject([{ code: 'file-damaged', severity: 'warning', effect: 'left_out' }]);
    expect(String(findings[0].facts.problem)).toMatch(/3:\d+.*the 1 complete features before it are kept/);
  });

  test('elements a million deep end at two hundred', async () => {
    const { findings } = await read('a.kml', bytesOf(KML('<Folder>'.repeat(1_000_000))));
    expect(findings).toMatchObject([{ code: 'file-refused', facts: { problem: expect.stringContaining('200 deep') } }]);
  });

  test('what belongs to XML is read: the five entities, CDATA, comments, UTF-16, other encodings', async () => {
    const name = (layer: Awaited<ReturnType<typeof read>>): unknown => layer.layer?.features[0].properties.name;
    expect(name(await read('a.kml', bytesOf(KML(PLACEMARK('a &lt;b&gt; &amp; &quot;c&apos; &#252;')))))).toBe(
      'a <b> & "c\' ü',
    );
    expect(name(await read('a.kml', bytesOf(KML(PLACEMARK('<![CDATA[<i>x</i> & y]]><!-- no -->')))))).toBe(
      '<i>x</i> & y',
    );
    const utf16 = Buffer.concat([Buffer.of(0xff, 0xfe), Buffer.from(KML(PLACEMARK('Ü')), 'utf16le')]);
    expect(name(await read('a.kml', utf16))).toBe('Ü');
    const latin = Buffer.from(KML(PLACEMARK('Ü')).replace('UTF-8', 'ISO-8859-1'), 'latin1');
    expect(name(await read('a.kml', latin))).toBe('Ü');
    expect(name(await read('a.kml', bytesOf(KML(PLACEMARK('x').replace('<name>', '<name>__proto__')))))).toBe(
      '__proto__x',
    );
  });
});

describe('zip', () => {
  const kml = bytesOf(KML(PLACEMARK('T-1')));

  test.each(['../../evil.kml', '/etc/evil.kml', 'C:\\evil.kml', 'a/../../b.kml', '..\\b.kml'])(
    'a file named %s is refused, and nothing is written',
    async (name) => {
      const { findings } = await read('a.zip', zipSync({ [name]: kml }));
      expect(findings).toMatchObject([{ code: 'file-refused', facts: { format: 'zip' } }]);
      expect(existsSync('/etc/evil.kml') || existsSync(join(folder, '../evil.kml'))).toBe(false);
    },
  );

  /** Writes what the archive says of a file's unpacked size, in its directory (offset 24) and before the file (22). */
  function saying(archive: Uint8Array, size: number): Uint8Array {
    const lying = archive.slice();
    const view = new DataView(lying.buffer);
    for (let at = 0; at + 4 <= lying.length; at++) {
      const signature = view.getUint32(at, true);
      if (signature === 0x02014b50) view.setUint32(at + 24, size, true);
      if (signature === 0x04034b50) view.setUint32(at + 22, size, true);
    }
    return lying;
  }

  test('a bomb that says its size is refused by that size', async () => {
    const bomb = zipSync({ 'a.kml': kml, 'b.kml': new Uint8Array(64 << 20) }, { level: 9 });
    expect(bomb.length).toBeLessThan(1 << 20);
    const started = performance.now();
    const { findings } = await read('a.zip', bomb);
    expect(findings).toMatchObject([
      { code: 'file-refused', facts: { problem: expect.stringMatching(/swell \d+-fold/) } },
    ]);
    expect(performance.now() - started).toBeLessThan(2000);
    const ten = await read('a.zip', saying(zipSync({ 'a.kml': kml }), 4_000_000_000));
    expect(ten.findings).toMatchObject([{ code: 'file-refused' }]);
  });

  test('a bomb that lies about its size is stopped at the first byte beyond it', async () => {
    const lying = saying(zipSync({ 'a.kml': new Uint8Array(64 << 20) }), 1000);
    const { findings } = await read('a.zip', lying);
    expect(findings).toMatchObject([
      { code: 'file-refused', facts: { problem: expect.stringContaining('more than the 1000 bytes') } },
    ]);
  });

  test('encrypted, wrong checksum, several layers, none: each said', async () => {
    const sound = zipSync({ 'a.kml': kml }, { level: 0 });
    const flipped = sound.slice();
    flipped[60] ^= 1;
    expect((await read('a.zip', flipped)).findings[0]).toMatchObject({
      code: 'file-damaged',
      facts: { problem: expect.stringContaining('checksum') },
    });
    const encrypted = sound.slice();
    encrypted[sound.findLastIndex((byte, i) => byte === 0x50 && sound[i + 2] === 0x01) + 8] |= 1;
    expect((await read('a.zip', encrypted)).findings[0]).toMatchObject({
      code: 'file-refused',
      facts: { problem: 'it is encrypted' },
    });
    const several: Zippable = { 'a.shp': kml, 'b.shp': kml };
    expect((await read('a.zip', zipSync(several))).findings[0].facts.problem).toContain(
      'several layers (a.shp, b.shp)',
    );
    expect((await read('a.zip', zipSync({ 'a.txt': kml }))).findings[0].facts.problem).toContain('no .shp and no .kml');
    expect((await read('a.zip', sound)).layer?.features).toHaveLength(1);
  });
});

describe('any damage', () => {
  const files: Record<string, Uint8Array> = {};
  const beside: Record<string, Uint8Array> = {};
  const COUNT = 20;

  beforeAll(async () => {
    const features = Array.from({ length: COUNT }, (_, n) => ({
      type: 'Feature',
      properties: { tree_id: `T-${n}`, spread_m: n + 0.5 },
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [n, 1],
            [n + 0.5, 1],
            [n, 1.5],
            [n, 1],
          ],
        ],
      },
    }));
    const source = join(folder, 'in.geojson');
    writeFileSync(source, JSON.stringify({ type: 'FeatureCollection', features }));
    for (const extension of ['fgb', 'parquet']) {
      await convertLayer(source, join(folder, `a.${extension}`));
      files[extension] = Uint8Array.from(readFileSync(join(folder, `a.${extension}`)));
    }
    files.kml = bytesOf(KML(Array.from({ length: COUNT }, (_, n) => PLACEMARK(`T-${n}`)).join('\n')));
    files.gpx = bytesOf(
      `<gpx>${Array.from({ length: COUNT }, (_, n) => `<wpt lat="1" lon="${n}"><name>T-${n}</name></wpt>`).join('')}</gpx>`,
    );
    files.zip = zipSync({ 'a.kml': files.kml });
    if (spawnSync('ogr2ogr', ['-f', 'ESRI Shapefile', join(folder, 'a.shp'), source]).status === 0) {
      for (const extension of ['dbf', 'prj'])
        beside[extension] = Uint8Array.from(readFileSync(join(folder, `a.${extension}`)));
      files.shp = Uint8Array.from(readFileSync(join(folder, 'a.shp')));
    }
  });

  const FORMATS = ['fgb', 'parquet', 'kml', 'gpx', 'zip', 'shp'] as const;
  const usable = (format: string): boolean => files[format] !== undefined;

  test.each(FORMATS)('%s: sound, it is read in full', async (format) => {
    if (!usable(format)) return console.warn('skipped: no GDAL to make a Shapefile with');
    const { layer, findings } = await read(`a.${format}`, files[format], beside);
    expect(findings).toEqual([]);
    expect(layer?.features).toHaveLength(COUNT);
  });

  test.each(FORMATS)(
    '%s: cut anywhere, what was complete is kept and the rest told',
    { timeout: 300_000 },
    async (format) => {
      if (!usable(format)) return;
      const whole = files[format];
      for (let length = 8; length < whole.length; length += Math.max(1, Math.floor(whole.length / 150))) {
        const { layer, findings } = await read(`a.${format}`, whole.subarray(0, length), beside);
        const count = layer?.features.length ?? 0;
        expect(count).toBeLessThanOrEqual(COUNT);
        // A cut between two features of FlatGeobuf or between two shapes leaves a sound, shorter file.
        if (count < COUNT && !['fgb', 'shp'].includes(format)) expect(findings.length).toBeGreaterThan(0);
      }
    },
  );

  test.each(FORMATS)('%s: bytes flipped anywhere throw nothing', { timeout: 300_000 }, async (format) => {
    if (!usable(format)) return;
    const whole = files[format];
    const flips = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 })), {
      minLength: 1,
      maxLength: 8,
    });
    await fc.assert(
      fc.asyncProperty(flips, async (changes) => {
        const changed = whole.slice();
        for (const [at, by] of changes) changed[at] ^= by;
        const { layer } = await read(`a.${format}`, changed, beside);
        expect(layer?.features.length ?? 0).toBeLessThanOrEqual(10 * COUNT);
      }),
      { seed: 7, numRuns: 150 },
    );
  });

  test('a table of another length than its shapes, or none at all', async () => {
    if (!usable('shp')) return;
    const short = await read('a.shp', files.shp, { ...beside, dbf: beside.dbf.slice(0, beside.dbf.length - 400) });
    expect(short.findings[0]).toMatchObject({ code: 'file-damaged', severity: 'warning' });
    const none = await read('a.shp', files.shp, { prj: beside.prj });
    expect(none.findings).toMatchObject([{ code: 'sidecar-missing' }]);
    expect(none.layer?.features).toHaveLength(COUNT);
    const unplaced = await read('a.shp', files.shp, { dbf: beside.dbf });
    expect(unplaced).toMatchObject({ layer: null, findings: [{ code: 'crs-missing', severity: 'error' }] });
  });
});
