/** Which rooms on paper are taken, so that no word is printed over another. Rooms are turned boxes: four corners, flat, mm. */

export interface LabelRoom {
  /** Whether a room is free of all taken ones and inside the bounds. */
  isFree(corners: Float64Array): boolean;
  take(corners: Float64Array): void;
}

/** A room of taken places inside a frame `widthMm` × `heightMm` from (0, 0). */
export function labelRoom(widthMm: number, heightMm: number): LabelRoom {
  const taken: Float64Array[] = [];
  return {
    isFree: (corners) => isInside(corners, widthMm, heightMm) && !taken.some((other) => overlaps(corners, other)),
    take: (corners) => {
      taken.push(corners);
    },
  };
}

/**
 * Whether two turned boxes have more than a hair in common: no line along a side of either parts them (separating axes).
 * @example overlaps(Float64Array.of(0, 0, 2, 0, 2, 1, 0, 1), Float64Array.of(2, 0, 3, 0, 3, 1, 2, 1)) // false
 */
export function overlaps(a: Float64Array, b: Float64Array): boolean {
  return !isParted(a, b) && !isParted(b, a);
}

/** Rooms that touch within this do not overlap, mm. */
const HAIR_MM = 0.02;

function isParted(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < 8; i += 2) {
    const [nx, ny] = [a[(i + 3) % 8] - a[i + 1], a[i] - a[(i + 2) % 8]];
    const length = Math.hypot(nx, ny);
    if (length === 0) continue;
    const [lowA, highA] = extent(a, nx / length, ny / length);
    const [lowB, highB] = extent(b, nx / length, ny / length);
    if (highA <= lowB + HAIR_MM || highB <= lowA + HAIR_MM) return true;
  }
  return false;
}

function extent(box: Float64Array, nx: number, ny: number): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (let i = 0; i < 8; i += 2) {
    const at = box[i] * nx + box[i + 1] * ny;
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return [low, high];
}

function isInside(corners: Float64Array, widthMm: number, heightMm: number): boolean {
  for (let i = 0; i < 8; i += 2) {
    if (corners[i] < 0 || corners[i] > widthMm || corners[i + 1] < 0 || corners[i + 1] > heightMm) return false;
  }
  return true;
}
