/**
 * Where pixels lie on the ground: an affine map from pixel coordinates (columns to the right, rows downwards, the top
 * left corner of the image at 0, 0, the middle of its first pixel at 0.5, 0.5) to the units of a coordinate system.
 */
export interface GeoTransform {
  /** x = originX + columnX · column + rowX · row, in the unit of the coordinate system. */
  readonly originX: number;
  readonly columnX: number;
  readonly rowX: number;
  /** y = originY + columnY · column + rowY · row; `rowY` is negative when north is up. */
  readonly originY: number;
  readonly columnY: number;
  readonly rowY: number;
}

/** The usual case: north up, square or rectangular pixels. `left` and `top` are the outer corner of the first pixel. */
export function northUp(left: number, top: number, pixelWidth: number, pixelHeight = pixelWidth): GeoTransform {
  if (!(pixelWidth > 0 && pixelHeight > 0)) {
    throw new RangeError(`northUp: expected positive pixel sizes, got ${pixelWidth} × ${pixelHeight}`);
  }
  return { originX: left, columnX: pixelWidth, rowX: 0, originY: top, columnY: 0, rowY: -pixelHeight };
}

/**
 * Ground position of a pixel coordinate.
 * @example pixelToGround(northUp(500, 900, 2), 0.5, 0.5) // [501, 899], the middle of the first pixel
 */
export function pixelToGround(t: GeoTransform, column: number, row: number): readonly [x: number, y: number] {
  return [t.originX + t.columnX * column + t.rowX * row, t.originY + t.columnY * column + t.rowY * row];
}

/**
 * Pixel coordinate of a ground position, the inverse of `pixelToGround`; take the floor for the pixel's index.
 * @throws RangeError when the transform is singular (pixels of no area).
 * @example groundToPixel(northUp(500, 900, 2), 501, 899) // [0.5, 0.5]
 */
export function groundToPixel(t: GeoTransform, x: number, y: number): readonly [column: number, row: number] {
  const determinant = t.columnX * t.rowY - t.rowX * t.columnY;
  if (determinant === 0 || !Number.isFinite(determinant)) {
    throw new RangeError('groundToPixel: expected pixels with an area, got a singular transform');
  }
  const dx = x - t.originX;
  const dy = y - t.originY;
  return [(dx * t.rowY - dy * t.rowX) / determinant, (dy * t.columnX - dx * t.columnY) / determinant];
}

/** The transform of an overview whose pixels are `factorX` × `factorY` of the full image's. */
export function coarser(t: GeoTransform, factorX: number, factorY: number): GeoTransform {
  return {
    ...t,
    columnX: t.columnX * factorX,
    columnY: t.columnY * factorX,
    rowX: t.rowX * factorY,
    rowY: t.rowY * factorY,
  };
}
