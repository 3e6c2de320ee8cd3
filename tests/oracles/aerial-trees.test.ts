/**
 * Outline proposals on real aerial tiles (0.6 m, four bands, two places, three years) with trees marked by hand.
 * Data: github jonathanventura/urban-tree-detection-data, commit 78e81bdb, CC BY 4.0; skipped when it is not there.
 * The figures stand in docs/accuracy.md.
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import {
  bytesPort,
  groundToPixel,
  indexBand,
  openImagery,
  outlineThresholds,
  pixelToGround,
  proposeOutline,
  proposeOutlines,
  type ReadWindow,
  type Window,
} from '@crownfall/imagery';
import { RandomStream } from '@crownfall/statistics';
import { describe, expect, test } from 'vitest';

const folder = resolve(
  process.env.CROWNFALL_SHARED ?? resolve(import.meta.dirname, '../../../shared'),
  'data/aerial-trees',
);
const TILES = [
  'claremont_2016_69',
  'claremont_2018_69',
  'claremont_2020_69',
  'long_beach_2016_92',
  'long_beach_2018_92',
  'long_beach_2020_92',
];
const there = existsSync(folder);
if (!there) console.warn(`skipped: needs the aerial tiles in ${folder} (or set CROWNFALL_SHARED)`);

const FOUND = 0.8;
const REFUSED = 0.9;
/** Points on roofs and roads: NDVI below this, and no marked tree within so many metres. */
const BARE_NDVI = 0;
const BARE_AWAY_M = 8;
const BARE_POINTS = 200;

/** Figures are printed when CROWNFALL_FIGURES is set; docs/accuracy.md keeps them. */
const tell = (line: string) => process.env.CROWNFALL_FIGURES && console.log(line);

interface Point {
  readonly x: number;
  readonly y: number;
}

async function tile(name: string): Promise<{ readonly window: ReadWindow; readonly trees: readonly Point[] }> {
  const { image } = await openImagery(bytesPort(readFileSync(`${folder}/${name}.tif`)), { file: name });
  if (image === null) throw new Error(`${name} could not be opened`);
  const window = await image.readWindow({ left: 0, top: 0, width: image.width, height: image.height });
  const file: { features: { geometry: { coordinates: [number, number] } }[] } = JSON.parse(
    readFileSync(`${folder}/${name}.trees.geojson`, 'utf8'),
  );
  return {
    window,
    trees: file.features.map(
      ({
        geometry: {
          coordinates: [x, y],
        },
      }) => ({ x, y }),
    ),
  };
}

/** Seeded points of low NDVI away from trees. */
function barePoints(window: ReadWindow, trees: readonly Point[]): readonly Point[] {
  const { values } = indexBand('NDVI', window);
  const stream = new RandomStream(11);
  const points: Point[] = [];
  while (points.length < BARE_POINTS) {
    const [column, row] = [stream.wholeBelow(window.width), stream.wholeBelow(window.height)];
    const { originX, columnX, originY, rowY } = window.transform;
    const point = { x: originX + (column + 0.5) * columnX, y: originY + (row + 0.5) * rowY };
    const away = trees.every((tree) => Math.hypot(tree.x - point.x, tree.y - point.y) > BARE_AWAY_M);
    if (away && values[row * window.width + column] < BARE_NDVI) points.push(point);
  }
  return points;
}

/** The part of a window of 61 × 61 pixels about a point, smaller at its edges. */
function around(window: ReadWindow, { x, y }: Point): Window {
  const REACH = 30;
  const [column, row] = groundToPixel(window.transform, x, y).map(Math.floor);
  const [left, top] = [Math.max(0, column - REACH), Math.max(0, row - REACH)];
  const width = Math.min(window.width, column + REACH + 1) - left;
  const height = Math.min(window.height, row + REACH + 1) - top;
  const cut = (from: ArrayLike<number>) =>
    Uint8Array.from(
      { length: width * height },
      (_, p) => from[(top + Math.floor(p / width)) * window.width + left + (p % width)],
    );
  const [originX, originY] = pixelToGround(window.transform, left, top);
  const transform = { ...window.transform, originX, originY };
  return { ...window, width, height, bands: window.bands.map(cut), missing: cut(window.missing), transform };
}

/** Even-odd. */
function contains(ring: Float64Array, { x, y }: Point): boolean {
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const crosses = ring[j + 1] > y !== ring[i + 1] > y;
    if (crosses && x < ring[j] + ((ring[i] - ring[j]) * (y - ring[j + 1])) / (ring[i + 1] - ring[j + 1]))
      inside = !inside;
  }
  return inside;
}

function median(values: readonly number[]): number {
  return Float64Array.from(values).sort()[Math.floor(values.length / 2)];
}

describe.skipIf(!there)('outlines on real tiles', () => {
  test.each(TILES)('%s: found at trees, refused on roofs and roads, greener inside', async (name) => {
    const { window, trees } = await tile(name);
    expect(window.roles).toEqual(['red', 'green', 'blue', 'near-infrared']);
    const answers = proposeOutlines(window, trees);
    const good = answers.filter(
      (answer, i) => answer.proposed && contains(answer.ring, trees[i]) && answer.areaM2 >= 3 && answer.areaM2 <= 400,
    );
    // One at a time, in a window of some 36 m: no point is refused because another took its leaves.
    const thresholds = outlineThresholds(window);
    const bare = barePoints(window, trees).map((point) => proposeOutline(around(window, point), point, { thresholds }));
    const refused = bare.filter(({ proposed }) => !proposed);
    const rings = answers.flatMap((answer) => (answer.proposed ? [answer.ring] : []));
    const { values } = indexBand('NDVI', window);
    const [inside, outside]: [number[], number[]] = [[], []];
    const owner = new Uint8Array(values.length);
    for (const ring of rings) markInside(window, ring, owner);
    for (const [p, value] of values.entries()) (owner[p] === 1 ? inside : outside).push(value);
    const areas = answers.flatMap((answer) => (answer.proposed ? [answer.areaM2] : []));
    tell(
      `${name}: ${trees.length} trees, ${((100 * good.length) / trees.length).toFixed(1)} % found, median area ${median(areas).toFixed(0)} m²; ${((100 * refused.length) / bare.length).toFixed(1)} % of ${bare.length} bare points refused; NDVI ${median(inside).toFixed(2)} inside, ${median(outside).toFixed(2)} outside`,
    );
    expect(good.length / trees.length).toBeGreaterThanOrEqual(FOUND);
    expect(refused.length / bare.length).toBeGreaterThanOrEqual(REFUSED);
    expect(median(inside)).toBeGreaterThan(median(outside) + 0.1);
  });
});

function markInside(window: ReadWindow, ring: Float64Array, owner: Uint8Array): void {
  const box = { left: window.width, right: 0, top: window.height, bottom: 0 };
  for (let i = 0; i < ring.length; i += 2) {
    const [column, row] = groundToPixel(window.transform, ring[i], ring[i + 1]);
    box.left = Math.min(box.left, Math.floor(column));
    box.right = Math.max(box.right, Math.ceil(column));
    box.top = Math.min(box.top, Math.floor(row));
    box.bottom = Math.max(box.bottom, Math.ceil(row));
  }
  const { originX, columnX, originY, rowY } = window.transform;
  for (let row = Math.max(0, box.top); row < Math.min(window.height, box.bottom); row++) {
    for (let column = Math.max(0, box.left); column < Math.min(window.width, box.right); column++) {
      const middle = { x: originX + (column + 0.5) * columnX, y: originY + (row + 0.5) * rowY };
      if (contains(ring, middle)) owner[row * window.width + column] = 1;
    }
  }
}
