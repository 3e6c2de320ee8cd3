/**
 * Reprojects a GeoTIFF to Web Mercator tiles. Exact positions on a grid of the tile, bilinear between; the nearest pixel of
 * the level that is at least as fine as the screen.
 */
import { type BytesPort, type Imagery, type ImageryFinding, openImagery, WINDOW_PIXELS_MAX } from '@crownfall/imagery';
import { paintedBands, type Stretch, stretchOf } from './imagery-colours.ts';

const TILE = 256;
/** Cells of the grid of exact positions along a tile's side. */
const GRID = 16;
/** Decoded blocks kept by the reader; the map keeps the tiles themselves. */
const CACHE_BYTES = 96 * 2 ** 20;

export interface TileAddress {
  readonly z: number;
  readonly x: number;
  readonly y: number;
}

export class ImageryTiler {
  readonly image: Imagery;
  /** What a person should know although the image can be shown. */
  readonly notes: readonly ImageryFinding[];
  readonly #stretch: Stretch;
  readonly #bands: readonly number[];

  private constructor(image: Imagery, bands: readonly number[], stretch: Stretch, notes: readonly ImageryFinding[]) {
    this.image = image;
    this.notes = notes;
    this.#bands = bands;
    this.#stretch = stretch;
  }

  /** The tiler, or the findings that say why the image cannot be laid under a map. */
  static async open(port: BytesPort, file: string): Promise<ImageryTiler | readonly ImageryFinding[]> {
    const { image, findings } = await openImagery(port, { file, cacheBytes: CACHE_BYTES });
    if (!image?.placed || !image.crs) return findings.filter(({ severity }) => severity === 'error');
    const bands = paintedBands(image);
    const slow = findings.filter(({ code }) => code === 'imagery-slow-to-stream');
    return new ImageryTiler(image, bands, await stretchOf(image, bands), slow);
  }

  /** West, south, east, north, degrees. */
  bounds(): [number, number, number, number] {
    const { width, height, pixelToLonLat } = this.image;
    const corners = pixelToLonLat([0, 0, width, 0, width, height, 0, height]);
    const lons = corners.filter((_, i) => i % 2 === 0);
    const lats = corners.filter((_, i) => i % 2 === 1);
    return [Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)];
  }

  async tile(address: TileAddress): Promise<ImageData> {
    const out = new ImageData(TILE, TILE);
    const grid = this.image.lonLatToPixel(gridOf(address));
    const level = this.#levelFor(grid);
    const scale = this.image.width / this.image.levels[level].width;
    const window = windowAround(grid, scale, this.image.levels[level]);
    if (!window || window.width * window.height > WINDOW_PIXELS_MAX) return out;
    const read = await this.image.readWindow(window, { level, bands: this.#bands });
    const { colour } = this.#stretch;
    eachPixel(grid, scale, (at, column, row) => {
      const x = column - window.left;
      const y = row - window.top;
      if (x < 0 || y < 0 || x >= read.width || y >= read.height) return;
      const from = y * read.width + x;
      if (read.missing[from]) return;
      colour(read.bands, from, out.data, at);
    });
    return out;
  }

  /** The coarsest level whose pixels are no larger than the tile's. */
  #levelFor(grid: Float64Array): number {
    const end = 2 * GRID;
    const pixelsAcross = Math.hypot(grid[end] - grid[0], grid[end + 1] - grid[1]) / TILE;
    let best = 0;
    this.image.levels.forEach(({ width }, level) => {
      if (this.image.width / width <= Math.max(1, pixelsAcross)) best = level;
    });
    return best;
  }
}

/** Longitude and latitude of the grid's points, row by row. */
function gridOf({ z, x, y }: TileAddress): Float64Array {
  const side = GRID + 1;
  const lonLat = new Float64Array(2 * side * side);
  const tiles = 2 ** z;
  for (let row = 0; row < side; row++) {
    const mercator = Math.PI * (1 - (2 * (y + row / GRID)) / tiles);
    const lat = (Math.atan(Math.sinh(mercator)) * 180) / Math.PI;
    for (let column = 0; column < side; column++) {
      const at = 2 * (row * side + column);
      lonLat[at] = ((x + column / GRID) / tiles) * 360 - 180;
      lonLat[at + 1] = lat;
    }
  }
  return lonLat;
}

/** For each pixel of the tile the pixel of the level that lies under its middle; `at` is its place in RGBA bytes. */
function eachPixel(grid: Float64Array, scale: number, take: (at: number, column: number, row: number) => void): void {
  const side = GRID + 1;
  const cell = TILE / GRID;
  for (let py = 0; py < TILE; py++) {
    const gridRow = Math.floor((py + 0.5) / cell);
    const fy = (py + 0.5) / cell - gridRow;
    for (let px = 0; px < TILE; px++) {
      const gridColumn = Math.floor((px + 0.5) / cell);
      const fx = (px + 0.5) / cell - gridColumn;
      const a = 2 * (gridRow * side + gridColumn);
      const c = a + 2 * side;
      const x = (1 - fy) * ((1 - fx) * grid[a] + fx * grid[a + 2]) + fy * ((1 - fx) * grid[c] + fx * grid[c + 2]);
      const y =
        (1 - fy) * ((1 - fx) * grid[a + 1] + fx * grid[a + 3]) + fy * ((1 - fx) * grid[c + 1] + fx * grid[c + 3]);
      if (!Number.isNaN(x)) take(4 * (py * TILE + px), Math.floor(x / scale), Math.floor(y / scale));
    }
  }
}

/** The part of a level that the grid covers; null when they do not meet. */
function windowAround(grid: Float64Array, scale: number, size: { readonly width: number; readonly height: number }) {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < grid.length; i += 2) {
    minX = Math.min(minX, grid[i]);
    maxX = Math.max(maxX, grid[i]);
    minY = Math.min(minY, grid[i + 1]);
    maxY = Math.max(maxY, grid[i + 1]);
  }
  const left = Math.max(0, Math.floor(minX / scale) - 1);
  const top = Math.max(0, Math.floor(minY / scale) - 1);
  const right = Math.min(size.width, Math.ceil(maxX / scale) + 1);
  const bottom = Math.min(size.height, Math.ceil(maxY / scale) + 1);
  return right > left && bottom > top ? { left, top, width: right - left, height: bottom - top } : null;
}
