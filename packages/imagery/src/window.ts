/** A window of an image in memory: what the reader hands out, and what every measure on pixels takes. */
import type { GeoTransform } from './georeference.ts';

/** The samples of one band as the file stores them: row-major from the top left. */
export type Samples =
  | Uint8Array
  | Int8Array
  | Uint16Array
  | Int16Array
  | Uint32Array
  | Int32Array
  | Float32Array
  | Float64Array;

/** What a band shows. `palette` is an index into a colour table, `height` metres of a surface, `other` anything else. */
export type BandRole = 'red' | 'green' | 'blue' | 'near-infrared' | 'grey' | 'alpha' | 'palette' | 'height' | 'other';

export interface Window {
  readonly width: number;
  readonly height: number;
  /** Each of `width · height` samples. Missing samples keep what the file holds there (its no-data value, NaN). */
  readonly bands: readonly Samples[];
  /** The role of each band, in the same order. */
  readonly roles: readonly BandRole[];
  /**
   * 1 where a pixel holds no data, else 0; `width · height` long. No data is: masked by the file, transparent by more than
   * half in a band that is alpha, in a damaged block, outside the image, or no-data or NaN in every band read.
   */
  readonly missing: Uint8Array;
  /** The file's no-data value, for those who look at single bands; null when it states none. */
  readonly nodata: number | null;
  /** Pixel (0, 0) of the window has its outer corner at the origin; in units of the image's coordinate system. */
  readonly transform: GeoTransform;
  /** Side in metres of a square as large as one pixel on the ground, at the image's middle; NaN when that is unknown. */
  readonly pixelM: number;
}
