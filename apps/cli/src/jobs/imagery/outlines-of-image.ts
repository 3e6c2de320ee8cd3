/** Outlines for the points of a whole image, square by square, so that an image of any size fits. */
import type { Coordinates } from '@crownfall/geometry';
import {
  groundToLonLat,
  type Imagery,
  lonLatToGround,
  type OutlineAnswer,
  type PixelWindow,
  proposeOutlines,
  thresholdsOfImage,
} from '@crownfall/imagery';

export interface TreePoint {
  readonly treeId: string;
  readonly lon: number;
  readonly lat: number;
  readonly spreadM?: number;
}

export interface TreeOutline {
  readonly treeId: string;
  readonly answer: OutlineAnswer;
  /** The outline in longitude and latitude; empty when none is proposed. */
  readonly lonLatRing: Coordinates<'lonlat'>;
}

/** Squares of this side are proposed at a time; with this much around them, so that crowns and rivals are whole. */
const SQUARE_M = 60;
const MARGIN_M = 15;

interface Placed extends TreePoint {
  readonly column: number;
  readonly row: number;
}

/**
 * Proposals for the points that lie in the image, in the order given. Squares are taken row by row; what an earlier square
 * proposed, and the outlines drawn already, are not entered by later ones.
 * @param drawn outlines that exist, in longitude and latitude
 */
export async function outlinesOfImage(
  image: Imagery,
  points: readonly TreePoint[],
  drawn: readonly Coordinates<'lonlat'>[],
  onProgress: (share: number) => void,
): Promise<readonly TreeOutline[]> {
  const placed = placedPoints(image, points);
  if (placed.length === 0) return [];
  const thresholds = await thresholdsOfImage(image);
  const occupied = drawn.map((ring) => lonLatToGround(image, ring));
  const answers = new Map<string, TreeOutline>();
  const squares = squaresOf(image, placed);
  for (const [i, square] of squares.entries()) {
    // Ten times, however many squares: without a terminal each is a line.
    if (i % Math.ceil(squares.length / 10) === 0) onProgress(i / squares.length);
    const rivals = placed.filter((point) => !answers.has(point.treeId) && isWithin(point, square.window));
    const window = await image.readWindow(square.window);
    const seeds = rivals.map(({ column, row, spreadM }) => {
      const [x, y] = image.pixelToGround(column, row);
      return { x, y, ...(spreadM === undefined ? {} : { spreadM }) };
    });
    const near = occupied.filter((ring) => touches(image, ring, square.window));
    proposeOutlines(window, seeds, { thresholds, occupied: near }).forEach((answer, k) => {
      if (!isWithin(rivals[k], square.core)) return;
      if (answer.proposed) occupied.push(answer.ring);
      answers.set(rivals[k].treeId, {
        treeId: rivals[k].treeId,
        answer,
        lonLatRing: groundToLonLat(image, answer.proposed ? answer.ring : []),
      });
    });
  }
  return points.flatMap(({ treeId }) => answers.get(treeId) ?? []);
}

function placedPoints(image: Imagery, points: readonly TreePoint[]): readonly Placed[] {
  return points
    .map((point) => {
      const [column, row] = image.lonLatToPixel([point.lon, point.lat]);
      return { ...point, column, row };
    })
    .filter(({ column, row }) => column >= 0 && row >= 0 && column < image.width && row < image.height);
}

interface Square {
  /** Points in here are answered; those around them only compete. */
  readonly core: PixelWindow;
  readonly window: PixelWindow;
}

function squaresOf({ pixelM }: Imagery, points: readonly Placed[]): readonly Square[] {
  const side = Math.max(1, Math.round(SQUARE_M / pixelM));
  const margin = Math.ceil(MARGIN_M / pixelM);
  const corners = new Map<string, readonly [number, number]>();
  for (const { column, row } of points) {
    const corner = [Math.floor(column / side), Math.floor(row / side)] as const;
    corners.set(corner.join(' '), corner);
  }
  const ordered = [...corners.values()].sort((a, b) => a[1] - b[1] || a[0] - b[0]);
  return ordered.map(([column, row]) => {
    const [left, top] = [column * side, row * side];
    const around = side + 2 * margin;
    return {
      core: { left, top, width: side, height: side },
      window: { left: left - margin, top: top - margin, width: around, height: around },
    };
  });
}

function isWithin({ column, row }: Placed, { left, top, width, height }: PixelWindow): boolean {
  return column >= left && row >= top && column < left + width && row < top + height;
}

function touches(image: Imagery, ring: Float64Array, { left, top, width, height }: PixelWindow): boolean {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < ring.length; i += 2) {
    const [x, y] = image.groundToPixel(ring[i], ring[i + 1]);
    [minX, maxX, minY, maxY] = [Math.min(minX, x), Math.max(maxX, x), Math.min(minY, y), Math.max(maxY, y)];
  }
  return minX <= left + width && maxX >= left && minY <= top + height && maxY >= top;
}
