/** The reader on files of our own writer; tests/oracles compares it with GDAL. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { northUp } from './georeference.ts';
import type { Imagery } from './imagery.ts';
import { type OpenImageryOptions, openImagery } from './open-imagery.ts';
import type { Raster, SampleArray } from './raster.ts';
import { type BytesPort, bytesPort } from './source/bytes-port.ts';
import { type GeoTiffOptions, writeGeoTiff } from './write-geotiff.ts';

const TRANSFORM = northUp(922_000, 519_900, 0.5);
const CRS = { epsg: 2236, kind: 'projected' } as const;

function raster(width: number, height: number, count: number, make: (n: number) => SampleArray): Raster {
  const bands = Array.from({ length: count }, (_, b) => {
    const band = make(width * height);
    for (let i = 0; i < band.length; i++) band[i] = (i * 7 + b * 31) % 251;
    return band;
  });
  return { width, height, bands };
}

const bytes = (n: number) => new Uint8Array(n);

function written(image: Raster, options: Partial<GeoTiffOptions> = {}): Uint8Array {
  return writeGeoTiff(image, { transform: TRANSFORM, crs: CRS, tileSize: 32, ...options });
}

async function opened(file: Uint8Array | BytesPort, options: OpenImageryOptions = {}): Promise<Imagery> {
  const port = file instanceof Uint8Array ? bytesPort(file) : file;
  const { image, findings } = await openImagery(port, options);
  if (!image) throw new Error(JSON.stringify(findings));
  return image;
}

/** Counts what is asked for. */
function counted(file: Uint8Array): BytesPort & { requests: number; read_bytes: number } {
  const port = {
    size: file.length,
    requests: 0,
    read_bytes: 0,
    read: async (offset: number, length: number) => {
      port.requests++;
      port.read_bytes += length;
      return file.slice(offset, offset + length);
    },
  };
  return port;
}

describe('samples', () => {
  const kinds: readonly [string, (n: number) => SampleArray][] = [
    ['uint8', bytes],
    ['int8', (n) => new Int8Array(n)],
    ['uint16', (n) => new Uint16Array(n)],
    ['int16', (n) => new Int16Array(n)],
    ['uint32', (n) => new Uint32Array(n)],
    ['int32', (n) => new Int32Array(n)],
    ['float32', (n) => new Float32Array(n)],
    ['float64', (n) => new Float64Array(n)],
  ];
  for (const count of [1, 2, 4]) {
    test.each(kinds)(`%s, ${count} bands, an image that is no multiple of the tile`, async (_, make) => {
      const source = raster(150, 83, count, make);
      const image = await opened(written(source));
      const { bands, missing, findings } = await image.readWindow({ left: 0, top: 0, width: 150, height: 83 });
      expect(bands).toEqual(source.bands);
      expect([missing.includes(1), findings]).toEqual([false, []]);
    });
  }

  test('any window, within the image and beyond it', async () => {
    const source = raster(90, 70, 2, (n) => new Int16Array(n));
    const image = await opened(written(source));
    const corner = fc.integer({ min: -40, max: 100 });
    const side = fc.integer({ min: 1, max: 60 });
    await fc.assert(
      fc.asyncProperty(corner, corner, side, side, async (left, top, width, height) => {
        const { bands, missing, transform } = await image.readWindow({ left, top, width, height }, { bands: [1] });
        for (let i = 0; i < width * height; i++) {
          const [column, row] = [left + (i % width), top + Math.floor(i / width)];
          const inside = column >= 0 && row >= 0 && column < 90 && row < 70;
          expect(missing[i]).toBe(inside ? 0 : 1);
          if (inside) expect(bands[0][i]).toBe(source.bands[1][row * 90 + column]);
        }
        expect([transform.originX, transform.originY]).toEqual([922_000 + 0.5 * left, 519_900 - 0.5 * top]);
      }),
      { seed: 12, numRuns: 60 },
    );
  });

  test('overviews, with pixels of twice the size', async () => {
    const image = await opened(written(raster(128, 128, 3, bytes)));
    expect(image.levels.map((level) => level.width)).toEqual([128, 64, 32]);
    const half = await image.readWindow({ left: 0, top: 0, width: 64, height: 64 }, { level: 1 });
    expect(half.transform.columnX).toBe(1);
    expect(half.pixelM).toBeCloseTo(2 * image.pixelM, 12);
  });
});

describe('what is missing', () => {
  test('is no-data in every band, and NaN', async () => {
    const bands = [Float32Array.of(-9, -9, 5, Number.NaN), Float32Array.of(-9, 4, -9, -9)];
    const image = await opened(written({ width: 2, height: 2, bands }, { nodata: -9 }));
    const window = { left: 0, top: 0, width: 2, height: 2 };
    expect(Array.from((await image.readWindow(window)).missing)).toEqual([1, 0, 0, 1]);
    expect(Array.from((await image.readWindow(window, { bands: [0] })).missing)).toEqual([1, 1, 0, 1]);
  });

  test('is what transparency hides, whether that band is read or not', async () => {
    const source = raster(40, 40, 4, bytes);
    source.bands[3].fill(255).fill(0, 0, 100);
    const image = await opened(written(source), { roles: ['red', 'green', 'blue', 'alpha'] });
    for (const wanted of [[0], [0, 3]]) {
      const { missing } = await image.readWindow({ left: 0, top: 0, width: 40, height: 40 }, { bands: wanted });
      expect(missing.reduce((sum, one) => sum + one, 0)).toBe(100);
    }
  });

  test('is a block that is damaged, and a finding names it', async () => {
    const file = written(raster(64, 64, 1, bytes), { overviews: false });
    const cut = file.subarray(0, file.length - 40);
    const image = await opened(cut, { file: 'cut.tif' });
    const { missing, findings } = await image.readWindow({ left: 0, top: 0, width: 64, height: 64 });
    expect(missing.reduce((sum, one) => sum + one, 0)).toBe(32 * 32);
    expect(findings).toMatchObject([
      { code: 'imagery-block-damaged', where: { file: 'cut.tif' }, facts: { count: 1, column: 32, row: 32 } },
    ]);
    expect((await image.readWindow({ left: 40, top: 40, width: 4, height: 4 })).findings.length).toBe(1);
  });
});

describe('place and system', () => {
  test('feet are scaled once: Miami is in Miami', async () => {
    const image = await opened(written(raster(40, 40, 1, bytes)));
    // Dependency trap: scaled twice the same position is 220 km off. GDAL: see tests/oracles.
    const [lon, lat] = image.pixelToLonLat([0, 0]);
    expect([Math.round(lon * 10) / 10, Math.round(lat * 10) / 10]).toEqual([-80.2, 25.8]);
    const [column, row] = image.lonLatToPixel([lon, lat]);
    expect(Math.hypot(column, row)).toBeLessThan(1e-6);
    // Half a US survey foot.
    expect(image.pixelM).toBeCloseTo((0.5 * 1200) / 3937, 4);
  });

  test('the user’s word outweighs the file’s', async () => {
    const image = await opened(written(raster(4, 4, 1, bytes)), { crs: 'EPSG:26917' });
    expect(image.crs?.unit).toBe('metre');
  });

  test('NAD27 is refused, and the pixels can still be read', async () => {
    const file = written(raster(4, 4, 1, bytes), { crs: { epsg: 26717, kind: 'projected' } });
    const { image, findings } = await openImagery(bytesPort(file));
    expect(findings).toMatchObject([{ code: 'crs-datum-refused' }]);
    expect(image?.crs).toBeNull();
    expect(image?.pixelM).toBeNaN();
    expect((await image?.readWindow({ left: 0, top: 0, width: 4, height: 4 }))?.bands[0][1]).toBe(7);
  });
});

describe('requests', () => {
  test('a window costs its own blocks, neighbours in one request, none twice', async () => {
    const noise = bytes(1024 * 1024).map((_, i) => (Math.imul(i, 2654435761) >>> 13) & 255);
    const port = counted(written({ width: 1024, height: 1024, bands: [noise] }, { tileSize: 64 }));
    const image = await opened(port);
    port.requests = 0;
    port.read_bytes = 0;
    await image.readWindow({ left: 0, top: 0, width: 1024, height: 60 });
    expect(port.requests).toBe(1);
    expect(port.read_bytes).toBeLessThan(16 * 64 * 64 * 1.1);
    await image.readWindow({ left: 100, top: 10, width: 300, height: 40 });
    expect(port.requests).toBe(1);
  });

  test('the cache keeps to its size', async () => {
    const source = raster(512, 512, 1, bytes);
    const port = counted(written(source, { tileSize: 64, overviews: false }));
    // Room for four tiles of 4 KB.
    const image = await opened(port, { cacheBytes: 4 * 4096 });
    const window = { left: 0, top: 0, width: 512, height: 512 };
    expect((await image.readWindow(window)).bands).toEqual(source.bands);
    port.requests = 0;
    await image.readWindow({ left: 448, top: 448, width: 64, height: 64 });
    expect(port.requests).toBe(0);
    await image.readWindow({ left: 0, top: 0, width: 64, height: 64 });
    expect(port.requests).toBe(1);
  });

  test('an outage is thrown with its cause, not called damage', async () => {
    const file = written(raster(40, 40, 1, bytes));
    let lost = false;
    const port: BytesPort = {
      size: file.length,
      read: async (offset, length) => {
        if (lost) throw new Error('the line is dead', { cause: 'test' });
        return file.slice(offset, offset + length);
      },
    };
    const image = await opened(port);
    lost = true;
    await expect(image.readWindow({ left: 0, top: 0, width: 4, height: 4 })).rejects.toThrow('the line is dead');
    await expect(openImagery(port)).rejects.toThrow('the line is dead');
  });

  test('a cancelled reading stops', async () => {
    const image = await opened(written(raster(40, 40, 1, bytes)));
    const read = image.readWindow({ left: 0, top: 0, width: 4, height: 4 }, { signal: { aborted: true } });
    await expect(read).rejects.toThrow('cancelled');
  });
});

describe('what cannot be read', () => {
  test.each([
    ['JPEG', [0xff, 0xd8, 0xff, 0xe0, 0, 0]],
    ['JPEG 2000', [0, 0, 0, 12, 0x6a, 0x50]],
    ['an empty file', []],
    ['no TIFF file', [1, 2, 3]],
  ])('%s is named', async (got, head) => {
    const { image, findings } = await openImagery(bytesPort(Uint8Array.from(head)));
    expect(image).toBeNull();
    expect(findings).toMatchObject([{ code: 'format-unknown', effect: 'stops', facts: { got } }]);
  });

  test('a file cut off in its directories is damaged', async () => {
    const { image, findings } = await openImagery(bytesPort(written(raster(40, 40, 1, bytes)).subarray(0, 230)));
    expect(image).toBeNull();
    expect(findings).toMatchObject([{ code: 'file-damaged', severity: 'error' }]);
  });

  test('misuse is answered with what was expected', async () => {
    const image = await opened(written(raster(4, 4, 1, bytes)));
    const window = { left: 0, top: 0, width: 1, height: 1 };
    await expect(image.readWindow(window, { level: 4 })).rejects.toThrow('0 to 0, got 4');
    await expect(image.readWindow(window, { bands: [1] })).rejects.toThrow('bands of 0 to 0, got 1');
    await expect(image.readWindow({ ...window, width: 0.5 })).rejects.toThrow('whole pixels');
    await expect(image.readWindow({ ...window, width: 5000, height: 5000 })).rejects.toThrow('got 25000000');
    await expect(opened(written(raster(4, 4, 2, bytes)), { roles: ['grey'] })).rejects.toThrow('2 band roles, got 1');
  });
});
