import { equalAreaPlane } from '@crownfall/geometry';
import { describe, expect, test } from 'vitest';
import { northUp } from '../georeference.ts';
import type { Imagery } from '../imagery.ts';
import { openImagery } from '../open-imagery.ts';
import { bytesPort } from '../source/bytes-port.ts';
import type { Window } from '../window.ts';
import { writeGeoTiff } from '../write-geotiff.ts';
import { type CrownPixels, crownPixels } from './crown-pixels.ts';
import { type CrownsOptions, crownsOfImage, regionInPixels } from './crowns-of-image.ts';

const square = (x0: number, y0: number, x1: number, y1: number) => [Float64Array.of(x0, y0, x1, y0, x1, y1, x0, y1)];

/** 4 × 2 pixels of 1–8, the last without data. */
const WINDOW: Window = {
  width: 4,
  height: 2,
  bands: [Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8)],
  roles: ['grey'],
  missing: Uint8Array.of(0, 0, 0, 0, 0, 0, 0, 1),
  nodata: null,
  transform: northUp(0, 2, 1),
  pixelM: 1,
};

describe('one crown', () => {
  test('counts each pixel by its share', () => {
    const { area, layers, missingShare } = crownPixels(WINDOW, square(0.5, 0, 2, 1));
    expect([area, missingShare]).toEqual([1.5, 0]);
    expect(layers[0].mean).toBeCloseTo((0.5 * 1 + 1 * 2) / 1.5, 12);
  });

  test('leaves out what has no data or lies in shadow, and says how much that is', () => {
    const shadow = Uint8Array.of(1, 0, 0, 0, 0, 0, 0, 1);
    const found = crownPixels(WINDOW, square(0, 0, 4, 2), { shadow });
    expect([found.area, found.missingShare, found.shadowShare]).toEqual([8, 1 / 8, 1 / 8]);
    expect(found.layers[0].mean).toBe((2 + 3 + 4 + 5 + 6 + 7) / 6);
  });

  test('the worked example of docs/methods/pixel-coverage.md', () => {
    const window = { ...WINDOW, width: 2, bands: [Uint8Array.of(10, 99, 20, 30)], missing: new Uint8Array(4) };
    const [found] = crownPixels(window, [Float64Array.of(0, 0, 2, 2, 0, 2)]).layers;
    expect([found.weight, found.mean, found.quantiles[0]]).toEqual([2, 20, 20]);
    expect(found.sd).toBeCloseTo(Math.sqrt(50), 12);
  });

  test('looks at any layer', () => {
    const found = crownPixels(WINDOW, square(0, 0, 1, 1), { layers: [Float32Array.of(0.5, 0, 0, 0, 0, 0, 0, 0)] });
    expect(found.layers[0].mean).toBe(0.5);
    expect(() => crownPixels(WINDOW, square(0, 0, 1, 1), { layers: [new Float32Array(3)] })).toThrow(
      'of 8 samples, got 3',
    );
  });

  test('outside the window it is nothing', () => {
    const found = crownPixels(WINDOW, square(9, 9, 10, 10));
    expect([found.area, found.missingShare, found.layers[0].weight]).toEqual([0, Number.NaN, 0]);
  });
});

describe('crowns of an image', () => {
  /** 1500 × 1300 pixels, red = column mod 251, green = row mod 241. */
  const [width, height] = [1500, 1300];
  const bands = [
    Uint8Array.from({ length: width * height }, (_, i) => (i % width) % 251),
    Uint8Array.from({ length: width * height }, (_, i) => Math.floor(i / width) % 241),
  ];
  const transform = northUp(922_000, 519_900, 0.5);
  const opened = async (): Promise<Imagery> => {
    const bytes = writeGeoTiff({ width, height, bands }, { transform, crs: { epsg: 2236, kind: 'projected' } });
    const { image } = await openImagery(bytesPort(bytes));
    if (!image) throw new Error('not opened');
    return image;
  };

  test('come once each, whatever part of the image they lie in', async () => {
    const image = await opened();
    const corners = [3, 500, 1020, 1400].flatMap((x) => [2, 700, 1019, 1250].map((y) => [x, y] as const));
    const regions = corners.map(([x, y]) => square(x, y, x + 20, y + 10));
    const found = new Map<number, number[]>();
    for await (const part of crownsOfImage(image, regions)) {
      for (const { crown, pixels } of part.crowns)
        found.set(
          crown,
          pixels.layers.map((layer) => layer.mean),
        );
    }
    expect(found.size).toBe(regions.length);
    for (const [i, [x, y]] of corners.entries()) {
      const mean = (from: number, count: number, modulus: number) =>
        Array.from({ length: count }, (_, k) => (from + k) % modulus).reduce((sum, v) => sum + v, 0) / count;
      expect(found.get(i)?.[0]).toBeCloseTo(mean(x, 20, 251), 10);
      expect(found.get(i)?.[1]).toBeCloseTo(mean(y, 10, 241), 10);
    }
  });

  test('are the same whether whole pixels are counted as runs or one by one', async () => {
    const image = await opened();
    const regions = [3, 700, 1015].map((x) => [Float64Array.of(x, 20.3, x + 31.7, 25.5, x + 9.1, 60.2)]);
    const measured = async (options: CrownsOptions) => {
      const all: CrownPixels[] = [];
      for await (const { crowns } of crownsOfImage(image, regions, { ...options, quantiles: [0.1, 0.9] })) {
        all.push(...crowns.map(({ pixels }) => pixels));
      }
      return all;
    };
    const runs = await measured({});
    const single = await measured({ shadowOf: (window) => new Uint8Array(window.width * window.height) });
    for (const [i, { area, layers }] of runs.entries()) {
      expect(area).toBeCloseTo(single[i].area, 10);
      for (const [b, layer] of layers.entries()) {
        expect(layer.mean).toBeCloseTo(single[i].layers[b].mean, 10);
        expect(layer.sd).toBeCloseTo(single[i].layers[b].sd, 10);
        expect(layer.quantiles).toEqual(single[i].layers[b].quantiles);
      }
    }
  });

  test('what reaches beyond the image is missing', async () => {
    const image = await opened();
    for await (const { crowns } of crownsOfImage(image, [square(-10, 0, 30, 10)])) {
      expect(crowns[0].pixels.area).toBe(400);
      expect(crowns[0].pixels.missingShare).toBe(0.25);
    }
  });

  test('an outline in the local plane has its true area in pixels', async () => {
    const image = await opened();
    const middle = image.pixelToLonLat([750, 650]);
    const plane = equalAreaPlane(middle);
    const [x, y] = plane.forward(middle);
    const [pixels] = [regionInPixels(image, plane, square(x - 4, y - 3, x + 4, y + 3))];
    const { area } = crownPixels(await image.readWindow({ left: 600, top: 500, width: 300, height: 300 }), [
      pixels[0].map((value, i) => value - (i % 2 === 0 ? 600 : 500)),
    ]);
    // 48 m² in pixels of half a US survey foot; `pixelM` is true to the State Plane's change of scale within the image.
    expect(area * image.pixelM ** 2).toBeCloseTo(48, 5);
  });
});
