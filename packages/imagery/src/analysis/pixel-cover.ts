/** The pixels of a window that a shape touches, and how much of each lies inside it. */
export interface PixelCover {
  /** Positions in the window, row-major. */
  readonly pixels: Int32Array;
  /** Share of each pixel inside the shape, 0–1, in the same order. */
  readonly weights: Float64Array;
}
