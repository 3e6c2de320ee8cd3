import { unzlibSync, zlibSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { northUp } from '../georeference.ts';
import type { Imagery } from '../imagery.ts';
import { openImagery } from '../open-imagery.ts';
import { bytesPort } from '../source/bytes-port.ts';
import type { Samples } from '../window.ts';
import { writeGeoTiff } from '../write-geotiff.ts';
import { memoryParts } from './part-store.ts';
import { type PrepareOptions, prepareImagery } from './prepare-imagery.ts';

const zlib = { deflate: (bytes: Uint8Array) => zlibSync(bytes), inflate: (bytes: Uint8Array) => unzlibSync(bytes) };
const TRANSFORM = northUp(922_000, 519_900, 0.5);
const CRS = { epsg: 2236, kind: 'projected' } as const;
const [WIDTH, HEIGHT] = [150, 70];

function bandsOf(make: (length: number) => Samples, count: number): Samples[] {
  return Array.from({ length: count }, (_, b) => {
    const band = make(WIDTH * HEIGHT);
    for (let i = 0; i < band.length; i++) band[i] = ((i % WIDTH) * 3 + Math.floor(i / WIDTH) * 7 + b * 50) % 240;
    return band;
  });
}

async function opened(bytes: Uint8Array): Promise<Imagery> {
  const { image, findings } = await openImagery(bytesPort(bytes));
  if (!image) throw new Error(findings[0].code);
  return image;
}

async function prepared(
  image: Imagery,
  options: Partial<PrepareOptions> = {},
  store = memoryParts(),
): Promise<Uint8Array> {
  const pieces: number[] = [];
  const write = async (bytes: Uint8Array) => void pieces.push(...bytes);
  await prepareImagery(image, store, write, { job: 'test', zlib, tileSize: 32, ...options });
  return Uint8Array.from(pieces);
}

const whole = (image: Imagery, level = 0) => {
  const { width, height } = image.levels[level];
  return image.readWindow({ left: 0, top: 0, width, height }, { level });
};

describe('a prepared image', () => {
  const kinds: readonly [string, (length: number) => Samples][] = [
    ['uint8', (n) => new Uint8Array(n)],
    ['uint16', (n) => new Uint16Array(n)],
    ['int32', (n) => new Int32Array(n)],
    ['float32', (n) => new Float32Array(n)],
    ['float64', (n) => new Float64Array(n)],
  ];
  test.each(kinds)('holds the same %s samples, place and system', async (_, make) => {
    const bands = bandsOf(make, 2);
    const source = await opened(
      writeGeoTiff({ width: WIDTH, height: HEIGHT, bands }, { transform: TRANSFORM, crs: CRS }),
    );
    const image = await opened(await prepared(source));
    expect(image.transform).toEqual(TRANSFORM);
    expect(image.crs?.code).toBe('EPSG:2236');
    expect((await whole(image)).bands).toEqual(bands);
    expect(image.levels.map((level) => [level.width, level.height])).toEqual([
      [150, 70],
      [75, 35],
      [38, 18],
      [19, 9],
    ]);
  });

  test('is the same bytes as BigTIFF would hold, and that is read too', async () => {
    const bands = bandsOf((n) => new Uint8Array(n), 3);
    const source = await opened(
      writeGeoTiff({ width: WIDTH, height: HEIGHT, bands }, { transform: TRANSFORM, crs: CRS }),
    );
    const big = await prepared(source, { big: true });
    expect(big[2]).toBe(43);
    const image = await opened(big);
    expect((await whole(image)).bands).toEqual(bands);
    expect((await whole(image, 2)).bands).toEqual((await whole(await opened(await prepared(source)), 2)).bands);
  });

  test('overviews are means that leave out what is missing', async () => {
    const bands = [new Float32Array(WIDTH * HEIGHT).fill(6)];
    bands[0].fill(-1, 0, WIDTH * 3);
    const bytes = writeGeoTiff({ width: WIDTH, height: HEIGHT, bands }, { transform: TRANSFORM, crs: CRS, nodata: -1 });
    const image = await opened(await prepared(await opened(bytes)));
    const { bands: half, missing } = await whole(image, 1);
    // Rows 0 and 1 of the source make row 0, all missing; row 2 is missing, row 3 not: their mean is that of row 3.
    expect([half[0][0], missing[0], half[0][75], missing[75]]).toEqual([-1, 1, 6, 0]);
  });

  test('near-infrared is told by name, so that no reader fades the picture', async () => {
    const bands = bandsOf((n) => new Uint8Array(n), 4);
    const bytes = writeGeoTiff({ width: WIDTH, height: HEIGHT, bands }, { transform: TRANSFORM, crs: CRS });
    const image = await opened(await prepared(await opened(bytes)));
    expect(image.roles).toEqual(['red', 'green', 'blue', 'near-infrared']);
  });
});

describe('an interrupted run', () => {
  const source = async () =>
    opened(
      writeGeoTiff(
        { width: WIDTH, height: HEIGHT, bands: bandsOf((n) => new Uint8Array(n), 3) },
        { transform: TRANSFORM, crs: CRS },
      ),
    );

  test('goes on where it stopped, to the same bytes', async () => {
    const expected = await prepared(await source());
    for (const stopAfter of [1, 2, 4, 6]) {
      const store = memoryParts();
      let rows = 0;
      const onProgress = () => {
        if (++rows === stopAfter) throw new Error('stopped');
      };
      await expect(prepared(await source(), { onProgress }, store)).rejects.toThrow('stopped');
      // What a crash leaves in the middle of a row.
      await store.append('level-0.tiles', Uint8Array.of(1, 2, 3));
      await store.append('level-0.sizes', Uint8Array.of(9));
      expect(await prepared(await source(), {}, store)).toEqual(expected);
    }
  });

  test('of another job is thrown away', async () => {
    const store = memoryParts();
    await prepared(await source(), { job: 'another' }, store);
    const seen: number[] = [];
    await prepared(await source(), { onProgress: (share) => seen.push(share) }, store);
    expect(seen.length).toBe(3 + 2 + 1 + 1);
    expect(seen.at(-1)).toBe(1);
  });
});

test('misuse is answered with what was expected', async () => {
  const bytes = writeGeoTiff({ width: 1, height: 1, bands: [new Uint8Array(1)] }, { transform: TRANSFORM, crs: CRS });
  const image = await opened(bytes);
  await expect(prepared(image, { tileSize: 100 })).rejects.toThrow('multiple of 16, got 100');
  await expect(prepared({ ...image, placed: false })).rejects.toThrow('place on the ground');
});
