export type { CrsCode } from './geo-keys.ts';
export type { GeoTransform } from './georeference.ts';
export { coarser, groundToPixel, northUp, pixelToGround } from './georeference.ts';
export type { BytesPort, GeoTiffLevel, OpenGeoTiff, ReadOptions } from './open-geotiff.ts';
export { bytesPort, openGeoTiff, WINDOW_PIXELS_MAX } from './open-geotiff.ts';
export { halved, overviewsOf } from './overviews.ts';
export type { PixelWindow, Raster, SampleArray } from './raster.ts';
export type { GeoTiffOptions } from './write-geotiff.ts';
export { writeGeoTiff } from './write-geotiff.ts';
