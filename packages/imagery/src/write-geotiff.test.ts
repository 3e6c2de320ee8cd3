import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { northUp } from './georeference.ts';
import type { Imagery } from './imagery.ts';
import { openImagery } from './open-imagery.ts';
import type { Raster, SampleArray } from './raster.ts';
import { type BytesPort, bytesPort } from './source/bytes-port.ts';
import { writeGeoTiff } from './write-geotiff.ts';

const TRANSFORM = northUp(700_000, 1_500_000, 0.82, 0.82);

async function opened(port: BytesPort): Promise<Imagery> {
  const { image, findings } = await openImagery(port);
  if (!image) throw new Error(findings[0].code);
  return image;
}

const CRS = { epsg: 2236, kind: 'projected' } as const;

function ramp(width: number, height: number, count: number, make: (length: number) => SampleArray): Raster {
  const bands = Array.from({ length: count }, (_, b) => make(width * height).map((_, i) => (i * 7 + b * 31) % 251));
  return { width, height, bands: bands as SampleArray[] };
}

describe('what is written is read again', () => {
  const cases: readonly [string, (length: number) => SampleArray][] = [
    ['uint8', (n) => new Uint8Array(n)],
    ['uint16', (n) => new Uint16Array(n)],
    ['int16', (n) => new Int16Array(n)],
    ['float32', (n) => new Float32Array(n)],
  ];
  for (const [name, make] of cases) {
    test(`${name}, four bands, an image that is no multiple of the tile`, async () => {
      const raster = ramp(150, 83, 4, make);
      const image = await opened(bytesPort(writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS, tileSize: 64 })));
      expect([image.width, image.height, image.bandCount, image.crs?.code]).toEqual([150, 83, 4, 'EPSG:2236']);
      const all = await image.readWindow({ left: 0, top: 0, width: 150, height: 83 });
      expect(all.bands).toEqual(raster.bands);
    });
  }

  test('windows of random images, negative and large samples included', async () => {
    const samples = fc.array(fc.integer({ min: -32768, max: 32767 }), { minLength: 600, maxLength: 600 });
    await fc.assert(
      fc.asyncProperty(samples, fc.nat(29), fc.nat(19), async (values, left, top) => {
        const raster = { width: 30, height: 20, bands: [Int16Array.from(values)] };
        const image = await opened(bytesPort(writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS, tileSize: 16 })));
        const part = await image.readWindow({ left, top, width: 30 - left, height: 20 - top });
        expect(part.bands[0][0]).toBe(values[top * 30 + left]);
        expect(part.bands[0].at(-1)).toBe(values[599]);
      }),
      { numRuns: 20, seed: 11 },
    );
  });

  test('single bands and overviews are read alone', async () => {
    const raster = ramp(128, 128, 3, (n) => new Uint8Array(n));
    const image = await opened(bytesPort(writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS, tileSize: 32 })));
    expect(image.levels.map((level) => level.width)).toEqual([128, 64, 32]);
    const [blue] = (await image.readWindow({ left: 5, top: 9, width: 1, height: 1 }, { bands: [2] })).bands;
    expect(blue[0]).toBe(raster.bands[2][9 * 128 + 5]);
    // The transform of a level keeps the image's corner and doubles its pixels: their far corners are one point.
    const half = image.levels[1].transform;
    expect(half.originX + 64 * half.columnX).toBeCloseTo(TRANSFORM.originX + 128 * TRANSFORM.columnX, 6);
  });
});

describe('the file', () => {
  test('is the same bytes each time, directories before pixels, coarse pixels before fine ones', async () => {
    const raster = ramp(100, 100, 1, (n) => new Uint8Array(n));
    const write = () => writeGeoTiff(raster, { transform: TRANSFORM, crs: CRS, tileSize: 32 });
    expect(write()).toEqual(write());
    const reads: number[] = [];
    const bytes = write();
    const image = await opened({
      size: bytes.length,
      read: async (offset, length) => {
        reads.push(offset);
        return bytes.slice(offset, offset + length);
      },
    });
    const directoriesEnd = Math.max(...reads);
    const firstRead = async (level: number) => {
      reads.length = 0;
      await image.readWindow({ left: 0, top: 0, width: 1, height: 1 }, { level });
      return Math.max(...reads);
    };
    const [fine, middle, coarse] = [await firstRead(0), await firstRead(1), await firstRead(2)];
    expect(coarse).toBeGreaterThan(directoriesEnd);
    expect(middle).toBeGreaterThan(coarse);
    expect(fine).toBeGreaterThan(middle);
  });

  test('a window is read from its own tiles only', async () => {
    const noise = new Uint8Array(512 * 512).map((_, i) => (Math.imul(i, 2654435761) >>> 13) & 255);
    const bytes = writeGeoTiff({ width: 512, height: 512, bands: [noise] }, { transform: TRANSFORM, crs: CRS });
    let read = 0;
    const image = await opened({
      size: bytes.length,
      read: async (offset, length) => {
        read += length;
        return bytes.slice(offset, offset + length);
      },
    });
    read = 0;
    await image.readWindow({ left: 300, top: 10, width: 20, height: 20 });
    expect(read).toBeLessThan(bytes.length / 3);
  });

  test('NaN no-data and a rotated transform come back', async () => {
    const rotated = { originX: 10, columnX: 0.5, rowX: 0.1, originY: 20, columnY: 0.1, rowY: -0.5 };
    const raster = { width: 2, height: 1, bands: [Float32Array.of(Number.NaN, 3)] };
    const bytes = writeGeoTiff(raster, {
      transform: rotated,
      crs: { epsg: 4326, kind: 'geographic' },
      nodata: Number.NaN,
    });
    const image = await opened(bytesPort(bytes));
    expect(image.transform).toEqual(rotated);
    expect(image.crs?.code).toBe('EPSG:4326');
    expect(image.nodata).toBeNaN();
  });
});

describe('misuse', () => {
  const raster = { width: 2, height: 2, bands: [new Uint8Array(4)] };
  const options = { transform: TRANSFORM, crs: CRS };
  test('is answered with what was expected', () => {
    expect(() => writeGeoTiff({ ...raster, width: 3 }, options)).toThrow('expected 6 samples, got 4');
    expect(() => writeGeoTiff(raster, { ...options, tileSize: 100 })).toThrow('multiple of 16, got 100');
    expect(() => writeGeoTiff(raster, { ...options, bandNames: ['a', 'b'] })).toThrow('expected 1 band names, got 2');
    expect(() => writeGeoTiff(raster, { ...options, crs: { epsg: 99999, kind: 'projected' } })).toThrow('got 99999');
  });
});
