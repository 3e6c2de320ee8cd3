/** An open image, as the rest of Crownfall meets it. */
import type { CoordinateSystem } from '@crownfall/geometry';
import type { GeoTransform } from './georeference.ts';
import type { ImageryFinding } from './imagery-findings.ts';
import type { PixelWindow } from './raster.ts';
import type { Cancellation } from './source/bytes-port.ts';
import type { BandRole, Window } from './window.ts';

export interface ImageryLevel {
  readonly width: number;
  readonly height: number;
  readonly transform: GeoTransform;
}

/** A window as it was read, and what was wrong with it. */
export interface ReadWindow extends Window {
  readonly findings: readonly ImageryFinding[];
}

export interface WindowOptions {
  /** 0 (when absent) is the full picture, 1 the finest overview. */
  readonly level?: number;
  /** Bands wanted, from 0; all when absent. */
  readonly bands?: readonly number[];
  readonly signal?: Cancellation;
}

/** GeoKeys as the file holds them, to be carried into another file. */
export interface GeoKeyTags {
  readonly directory: readonly number[];
  readonly doubles: readonly number[];
  readonly ascii: string;
}

export interface Imagery {
  readonly width: number;
  readonly height: number;
  readonly bandCount: number;
  readonly roles: readonly BandRole[];
  /** From the outer corner of the first pixel, whether the file says pixel-is-area or pixel-is-point. */
  readonly transform: GeoTransform;
  /** False when nothing says where the image lies: the transform is then that of pixels. */
  readonly placed: boolean;
  /** null when the file states none, or one that cannot be computed with; a finding says which. */
  readonly crs: CoordinateSystem | null;
  readonly geoKeys: GeoKeyTags | null;
  readonly nodata: number | null;
  readonly hasMask: boolean;
  /** Red, green, blue of each palette entry, 0–65535, as the `ColorMap` tag holds them; null without a palette. */
  readonly colourMap: readonly number[] | null;
  /** The full image first, then its overviews from fine to coarse. */
  readonly levels: readonly ImageryLevel[];
  /** How it is stored: `JPEG, tiles of 512 × 512`. */
  readonly storage: {
    readonly compression: string;
    readonly tiled: boolean;
    readonly blockWidth: number;
    readonly blockHeight: number;
  };
  /** Side in metres of a square as large as one pixel on the ground, at the image's middle; NaN when unknown. */
  readonly pixelM: number;
  readonly pixelToGround: (column: number, row: number) => readonly [x: number, y: number];
  readonly groundToPixel: (x: number, y: number) => readonly [column: number, row: number];
  /** Flat WGS 84 degrees to flat pixel coordinates of level 0; NaN where the projection does not reach, or is unknown. */
  readonly lonLatToPixel: (lonLat: ArrayLike<number>) => Float64Array;
  /** The way back. */
  readonly pixelToLonLat: (pixels: ArrayLike<number>) => Float64Array;
  /**
   * Reads part of a level. The window may reach beyond the image; what is outside is missing. Blocks that are damaged are
   * missing and named in `findings`.
   *
   * @throws RangeError for a level, bands or window that cannot be, or more than `WINDOW_PIXELS_MAX` pixels; Error with
   * `cause` when the port fails
   */
  readonly readWindow: (window: PixelWindow, options?: WindowOptions) => Promise<ReadWindow>;
}
