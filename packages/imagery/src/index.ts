export type { CrsCode } from './geo-keys.ts';
export type { GeoTransform } from './georeference.ts';
export { coarser, groundToPixel, northUp, pixelToGround } from './georeference.ts';
export type { GeoKeyTags, Imagery, ImageryLevel, ReadWindow, WindowOptions } from './imagery.ts';
export type { ImageryFinding, ImageryFindingCode } from './imagery-findings.ts';
export type { GeoTiffLevel, OpenGeoTiff, ReadOptions } from './open-geotiff.ts';
export { openGeoTiff } from './open-geotiff.ts';
export { type OpenedImagery, type OpenImageryOptions, openImagery } from './open-imagery.ts';
export type { ImagerySidecars } from './open-levels.ts';
export { halved, overviewsOf } from './overviews.ts';
export { type PixelWindow, type Raster, type SampleArray, WINDOW_PIXELS_MAX } from './raster.ts';
export {
  type BlobLike,
  type BytesPort,
  blobPort,
  bytesPort,
  type Cancellation,
  type FileHandleLike,
  fileHandlePort,
} from './source/bytes-port.ts';
export { type FetchLike, type ResponseLike, rangePort } from './source/range-port.ts';
export type { BandRole, Samples, Window } from './window.ts';
export type { GeoTiffOptions } from './write-geotiff.ts';
export { writeGeoTiff } from './write-geotiff.ts';
